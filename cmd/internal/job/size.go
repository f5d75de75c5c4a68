package job

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"drawerwright/geom"
)

// part is one number of a size with its place.
type part struct {
	text string
	at   Position
}

var (
	timesSign = regexp.MustCompile(`[xX×]`)
	lastUnit  = regexp.MustCompile(`[\p{L}` + unitSigns + `]+\.?$`)
)

// size reads as many lengths as the key has sides, from text with x between
// them or from a list. A unit at the last one alone holds for all of them.
func (r *reader) size(n *node, k *key) []geom.Length {
	parts, ok := r.parts(n, k)
	if !ok {
		return nil
	}
	wanted := strings.Join(k.sides, " x ")
	if k.form == formEdges {
		wanted = "one length, or [" + strings.Join(k.sides, ", ") + "]"
	}
	if len(parts) != len(k.sides) {
		found := "fewer"
		if len(parts) > len(k.sides) {
			found = "more"
		}
		r.fail(CodeNotSize, n.at, "write "+wanted, "%s needs %d numbers and has %s", k.name, len(k.sides), found)
		return nil
	}
	if !shareUnit(parts) {
		r.fail(CodeNotSize, n.at, mixedUnits, "some numbers of %s have a unit and some have none", k.name)
		return nil
	}
	if r.wrongUnit(n, parts, k, func(numbers []string, u geom.Unit) string {
		if n.kind == list {
			return inList(numbers, u)
		}
		return strings.Join(numbers, " x ") + " " + u.String()
	}) {
		return nil
	}
	lengths := make([]geom.Length, 0, len(parts))
	for i, p := range parts {
		side := key{name: "the " + k.sides[i] + " of " + k.name, min: k.min, max: k.max}
		if l, ok := r.length(p.text, p.at, &side); ok {
			lengths = append(lengths, l)
		}
	}
	if len(lengths) < len(parts) {
		return nil
	}
	return lengths
}

// inList is a list of lengths, each with its unit.
func inList(numbers []string, u geom.Unit) string {
	return "[" + strings.Join(numbers, " "+u.String()+", ") + " " + u.String() + "]"
}

const mixedUnits = "write a unit after the last number only, or after each"

// shareUnit writes a unit at the last number alone after all of them. It reports whether all
// numbers have a unit then, or none has one.
func shareUnit(parts []part) bool {
	last := parts[len(parts)-1].text
	units := 0
	for _, p := range parts {
		if carriesUnit(p.text) {
			units++
		}
	}
	switch {
	case units == 1 && carriesUnit(last):
		unit := lastUnit.FindString(strings.TrimSpace(last))
		for i := range parts[:len(parts)-1] {
			parts[i].text += " " + unit
		}
	case units > 0 && units < len(parts):
		return false
	}
	return true
}

// SplitSize takes a size as files have it, numbers with x between them, apart into so many
// lengths, each with the unit that a unit at the last one alone gives it.
func SplitSize(text string, sides int) ([]string, error) {
	var parts []part
	for _, number := range timesSign.Split(text, sides+1) {
		parts = append(parts, part{text: strings.TrimSpace(number)})
	}
	if len(parts) != sides {
		return nil, fmt.Errorf("%d numbers are needed, with x between them", sides)
	}
	if !shareUnit(parts) {
		return nil, errors.New(mixedUnits)
	}
	lengths := make([]string, sides)
	for i, p := range parts {
		lengths[i] = p.text
	}
	return lengths, nil
}

// parts takes a size apart into its numbers, as far as one more than it needs.
func (r *reader) parts(n *node, k *key) ([]part, bool) {
	if n.kind == list {
		return r.items(n, k, len(k.sides)+1)
	}
	if !r.expect(n, scalar, k.name) {
		return nil, false
	}
	var parts []part
	from := 0
	add := func(to int) {
		text := n.text[from:to]
		blank := len(text) - len(strings.TrimLeft(text, " "))
		parts = append(parts, part{strings.TrimSpace(text), n.within(from + blank)})
	}
	for _, sign := range timesSign.FindAllStringIndex(n.text, len(k.sides)) {
		add(sign[0])
		from = sign[1]
	}
	add(len(n.text))
	return parts, true
}

// items takes the scalars of a list, at most limit of them.
func (r *reader) items(n *node, k *key, limit int) ([]part, bool) {
	parts, ok := []part{}, true
	for _, item := range n.items[:min(len(n.items), limit)] {
		if r.expect(item, scalar, k.name) {
			parts = append(parts, part{item.text, item.at})
		} else {
			ok = false
		}
	}
	return parts, ok
}

// within is the place of a byte of a scalar. It is the beginning of the scalar
// where escapes make the text differ from the line.
func (n *node) within(offset int) Position {
	if n.inset < 0 {
		return n.at
	}
	return Position{n.at.Line, n.at.Column + n.inset + utf8.RuneCountInString(n.text[:offset])}
}

// readings reads one length or a list of them.
func (r *reader) readings(n *node, k *key) []geom.Length {
	if n.kind == scalar {
		if l, ok := r.length(n.text, n.at, k); ok {
			return []geom.Length{l}
		}
		return nil
	}
	if !r.expect(n, list, k.name) {
		return nil
	}
	if len(n.items) == 0 || len(n.items) > maxReadings {
		r.fail(CodeTooMany, n.at, "write one reading or a list of them",
			"%s takes 1 to %d readings, and here are %d", k.name, maxReadings, len(n.items))
		return nil
	}
	parts, ok := r.items(n, k, maxReadings)
	if ok && r.wrongUnit(n, parts, k, inList) {
		return nil
	}
	lengths := make([]geom.Length, 0, len(parts))
	r.beside = r.inRange(parts, k)
	defer func() { r.beside = nil }()
	for _, p := range parts {
		if l, good := r.length(p.text, p.at, k); good {
			lengths = append(lengths, l)
		}
	}
	if !ok || len(lengths) < len(parts) {
		return nil
	}
	if !r.alike(lengths, n.at, k) {
		return nil
	}
	return lengths
}

// alike refuses readings that differ too much to be of one stock.
func (r *reader) alike(lengths []geom.Length, at Position, k *key) bool {
	least, most, sum := lengths[0], lengths[0], geom.Length(0)
	for _, l := range lengths {
		least, most, sum = min(least, l), max(most, l), sum+l
	}
	mean := sum.MM() / float64(len(lengths))
	spread := (most - least).MM()
	if spread <= maxSpread*mean {
		return true
	}
	r.fail(CodeMixedReadings, at,
		doubted(lengths, r.units)+"look for a mistyped digit, a decimal comma (write "+usualThickness(r.units)+
			"), or a reading of another "+k.noun,
		"the readings of %s run from %s to %s, %.0f %% of their mean: that is not one %s", k.name,
		least.Text(r.units), most.Text(r.units), 100*spread/mean, k.noun)
	return false
}
