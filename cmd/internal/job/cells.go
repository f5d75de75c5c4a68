package job

import (
	"fmt"
	"slices"
	"strconv"

	"drawerwright/geom"
)

// lengths reads a list of lengths.
func (r *reader) lengths(n *node, k *key) []geom.Length {
	if !r.expect(n, list, k.name) {
		return nil
	}
	return r.cellsOf(n, k)
}

// cells reads a count, or a list of lengths and words.
func (r *reader) cells(v *value, n *node, k *key) {
	if n.kind == scalar {
		count := key{name: k.name, min: 1, max: float64(k.most)}
		if r.oneLength(n, count) {
			code := CodeNotNumber
			if countText.MatchString(n.text) {
				code = CodeOutOfRange
			}
			hint := fmt.Sprintf("write `%s: [%s]` for one of that length; a number alone is how many, 1 to %d",
				k.name, n.text, k.most)
			r.fail(code, n.at, hint, "%s cannot be %s", k.name, quote(n.text))
			return
		}
		v.number = r.number(n, &count, countText, "write how many, as in 3, or a list, as in [100, 150]")
		return
	}
	if r.expect(n, list, k.name) {
		v.lengths = r.cellsOf(n, k)
	}
}

// oneLength reports whether a text is a length that no count can be.
func (r *reader) oneLength(n *node, count key) bool {
	l, err := geom.ParseLength(n.text, r.units)
	if err != nil || l <= 0 {
		return false
	}
	many, err := strconv.Atoi(n.text)
	return err != nil || float64(many) > count.max
}

// cellsOf reads the lengths of a list. One of the key's words is 0.
func (r *reader) cellsOf(n *node, k *key) []geom.Length {
	if len(n.items) == 0 || len(n.items) > k.most {
		r.fail(CodeTooMany, n.at, "write one or more, with commas between them",
			"%s takes 1 to %d, and here are %d", k.name, k.most, len(n.items))
		return nil
	}
	parts, ok := r.items(n, k, k.most)
	all := make([]geom.Length, 0, len(parts))
	for _, p := range parts {
		if slices.Contains(k.words, p.text) {
			all = append(all, 0)
			continue
		}
		l, good := r.length(p.text, p.at, k)
		ok = ok && good
		all = append(all, l)
	}
	if !ok {
		return nil
	}
	return all
}

// edges reads one length for all sides of the key, or a list of one for each. It
// gives as many lengths as there are sides.
func (r *reader) edges(n *node, k *key) []geom.Length {
	if n.kind != list {
		if !r.expect(n, scalar, k.name) {
			return nil
		}
		l, ok := r.length(n.text, n.at, k)
		if !ok {
			return nil
		}
		return slices.Repeat([]geom.Length{l}, len(k.sides))
	}
	return r.size(n, k)
}
