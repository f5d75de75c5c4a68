package job

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/geom"
)

// value is what the reader made of the value of a key.
type value struct {
	at       Position
	given    bool          // written in the file, whether or not it could be read
	text     string        // of a title, name, stock or word
	lengths  []geom.Length // of a length, readings or a size; empty when they could not be read
	number   float64       // of a count or price
	section  *section
	sections []*section // of named things or drawers
	words    []string   // of a list of words
}

// section is a mapping of the file, with a value for each of its keys.
type section struct {
	at     Position
	name   string // the key of a stock
	values map[string]value
}

// mm is the i-th length of a value in millimetres; 0 when it has none.
func (v value) mm(i int) float64 {
	if i < len(v.lengths) {
		return v.lengths[i].MM()
	}
	return 0
}

// reader turns nodes into values as the tables of keys say.
type reader struct {
	*reporter
	units      geom.Unit
	unitsKnown bool
}

// section reads the entries of a mapping. title names it in messages.
func (r *reader) section(n *node, keys []key, title string) *section {
	s := &section{at: n.at, values: make(map[string]value, len(keys))}
	if !r.expect(n, mapping, title) {
		s.fallBack(r, keys)
		return s
	}
	lines, meant := map[string]int{}, map[string]bool{}
	for _, e := range n.entries {
		if r.full() {
			break
		}
		i := slices.IndexFunc(keys, func(k key) bool { return k.name == e.key })
		switch {
		case i < 0:
			meant[r.unknownKey(e, keys, title)] = true
		case lines[e.key] > 0:
			r.fail(CodeDuplicateKey, e.at, "delete one of the two", "%s is already on line %d", e.key, lines[e.key])
		default:
			lines[e.key] = e.at.Line
			s.values[e.key] = r.value(e.value, &keys[i])
		}
	}
	for _, k := range keys {
		if _, ok := s.values[k.name]; k.required && !ok && !meant[k.name] && !r.lost {
			r.fail(CodeMissingKey, n.at, "write `"+k.name+":` there; "+strings.ToLower(k.doc[:1])+k.doc[1:], "%s has no %s", title, k.name)
		}
	}
	s.fallBack(r, keys)
	return s
}

// fallBack reads the fallbacks of the keys that the file does not have.
func (s *section) fallBack(r *reader, keys []key) {
	for i, k := range keys {
		if _, ok := s.values[k.name]; ok {
			continue
		}
		v := value{at: s.at}
		if k.fallback != "" {
			v = r.value(&node{kind: scalar, at: s.at, text: k.fallback}, &keys[i])
		}
		v.given = false
		s.values[k.name] = v
	}
}

// unknownKey reports an entry that does not exist, and gives the one that was
// probably meant, if any.
func (r *reader) unknownKey(e entry, keys []key, title string) (meant string) {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = k.name
	}
	hint, meant := didYouMean(e.key, names), nearest(e.key, names)
	if before, _, found := strings.Cut(e.key, ":"); found && slices.Contains(names, before) {
		hint, meant = "write a space after the colon", before
	}
	if e.key != "" && e.key[0] >= '0' && e.key[0] <= '9' {
		hint = "write a decimal point, as in 5.8: a comma ends the value"
	}
	r.fail(CodeUnknownKey, e.at, hint, "%s has no entry %s", title, quote(e.key))
	return meant
}

// expect reports a value of another kind than the wanted one.
func (r *reader) expect(n *node, want nodeKind, title string) bool {
	names := map[nodeKind]string{scalar: "a single value", mapping: "entries with keys", list: "a list"}
	hints := map[nodeKind]string{
		scalar:  "write one value after the colon",
		mapping: "write `key: value` lines below it, indented, or {key: value, key: value}",
		list:    "begin each of its entries with a dash and a space",
	}
	switch n.kind {
	case want:
		return true
	case broken: // reported before
	case nothing:
		r.fail(CodeNoValue, n.at, "write a value, or delete the line", "%s has no value", title)
	default:
		r.fail(CodeWrongKind, n.at, hints[want], "%s needs %s, and this is %s", title, names[want], names[n.kind])
	}
	return false
}

// value reads one value as its key says.
func (r *reader) value(n *node, k *key) value {
	v := value{at: n.at, given: true}
	switch k.form {
	case formSection:
		v.section = r.section(n, k.keys, k.name)
	case formNamed:
		v.sections = r.named(n, k)
	case formWords:
		v.words = r.words(n, k)
	case formDrawers:
		v.sections = r.drawers(n, k)
	case formReadings:
		v.lengths = r.readings(n, k)
	case formSize:
		v.lengths = r.size(n, k)
	default:
		if r.expect(n, scalar, k.name) {
			r.scalar(&v, n, k)
		}
	}
	return v
}

// named reads a mapping of names to sections.
func (r *reader) named(n *node, k *key) []*section {
	if !r.expect(n, mapping, k.name) {
		return nil
	}
	if len(n.entries) == 0 && !r.lost {
		r.fail(CodeTooMany, n.at, "write `name: {"+k.keys[0].name+": ...}` for each", "%s lists no %s", k.name, k.noun)
	}
	var all []*section
	taken := names{}
	for _, e := range n.entries {
		if len(all) == k.most {
			r.fail(CodeTooMany, e.at, "leave out those that no drawer uses", "there are more than %d of %s", k.most, k.name)
			break
		}
		taken.check(r, e.key, e.at, k.noun)
		s := r.section(e.value, k.keys, "the "+k.noun+" "+quote(e.key))
		s.name = e.key
		all = append(all, s)
	}
	return all
}

// drawers reads a list of sections.
func (r *reader) drawers(n *node, k *key) []*section {
	if !r.expect(n, list, k.name) {
		return nil
	}
	if len(n.items) == 0 && !r.lost {
		r.fail(CodeTooMany, n.at, "write `- name: ...` with the entries of a drawer below", "there is no drawer")
	}
	var all []*section
	taken := names{}
	for _, item := range n.items {
		if r.full() {
			break
		}
		if len(all) == maxDrawers {
			r.fail(CodeTooMany, item.at, "divide the job into several files", "there are more than %d drawers", maxDrawers)
			break
		}
		s := r.section(item, k.keys, "the drawer")
		if name := s.values["name"]; name.text != "" {
			taken.check(r, name.text, name.at, "drawer")
		}
		all = append(all, s)
	}
	return all
}

// names are the names of one kind of thing, by the files they give.
type names map[string]struct {
	name string
	line int
}

// check reports a name that cannot be one, or that an earlier one excludes.
func (ns names) check(r *reader, name string, at Position, kind string) {
	if fault := nameFault(name); fault != "" {
		r.fail(CodeBadName, at, fmt.Sprintf("begin with a letter or digit; letters, digits, spaces and - _ . + ( ) may follow, %d characters in all", maxName),
			"the name %s %s", quote(name), fault)
		return
	}
	file := FileName(name)
	first, taken := ns[file]
	switch {
	case !taken:
		first.name, first.line = name, at.Line
		ns[file] = first
	case first.name == name:
		r.fail(CodeSameName, at, "give each "+kind+" a name of its own", "the %s %s is already on line %d", kind, quote(name), first.line)
	default:
		r.fail(CodeSameName, at, "let the names differ in a letter a to z or a digit",
			"the %s %s would have the same files as %s on line %d: %s", kind, quote(name), quote(first.name), first.line, file)
	}
}
