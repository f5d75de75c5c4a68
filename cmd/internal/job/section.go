package job

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"drawerwright/geom"
)

// value is what the reader made of the value of a key.
type value struct {
	at       Position
	given    bool          // written in the file, whether or not it could be read
	text     string        // of a title, name, stock, file or word
	lengths  []geom.Length // empty when they could not be read; of cells, a word is 0
	number   float64       // of a count, price or measure
	section  *section
	sections []*section // of a list or of named things
	words    []string   // of a list of words
}

// section is a mapping of the file, with a value for each of its keys that the file has or that
// has a fallback: thousands of rows have no others.
type section struct {
	at     Position
	name   string // the key of a named thing
	values map[string]value
	read   bool            // it is a mapping
	meant  map[string]bool // keys that unknown entries were probably meant for
	number int             // among those of a list, from 0
	lot    *lot            // nil where the file has it so
}

// mm is the i-th length of a value in millimeters; 0 when it has none.
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
	open       func(name string) (io.ReadCloser, error) // a file that the job names; nil refuses
	shared     Problems                                 // those of that file
	usuals     map[*key]value                           // of keys that it leaves out
	illegible  bool                                     // letters that paper lacks were told of
	lots       *Sorted                                  // nil for a job as it is written
	beside     []geom.Length                            // of the list that is read, what is in range
}

// section reads the entries of a mapping. title names it in messages.
func (r *reader) section(n *node, keys []key, title string) *section {
	s := &section{at: n.at, values: make(map[string]value, len(n.entries))}
	if !r.expect(n, mapping, title) {
		s.fallBack(r, keys)
		return s
	}
	s.read = true
	for _, e := range n.entries {
		if r.full() {
			break
		}
		i := slices.IndexFunc(keys, func(k key) bool { return k.name == e.key })
		switch {
		case i < 0:
			if s.meant == nil {
				s.meant = make(map[string]bool)
			}
			s.meant[r.unknownKey(e, n, keys, title)] = true
		case s.values[e.key].given:
			first := slices.IndexFunc(n.entries, func(o entry) bool { return o.key == e.key })
			r.fail(CodeDuplicateKey, e.at, "delete one of the two", "%s is already on line %d", e.key,
				n.entries[first].at.Line)
		default:
			s.values[e.key] = r.value(e.value, &keys[i])
		}
	}
	for _, k := range keys {
		if _, ok := s.values[k.name]; k.required && !ok && !s.meant[k.name] && !r.lost {
			r.add(Problem{Level: geom.LevelError, Code: CodeMissingKey, Key: k.name, Message: fmt.Sprintf("%s has no %s", title, k.name),
				Hint: "write `" + k.name + ":` there; " + strings.ToLower(k.doc[:1]) + k.doc[1:]}, n.at)
		}
	}
	s.fallBack(r, keys)
	return s
}

// fallBack reads the fallbacks of the keys that the file does not have.
func (s *section) fallBack(r *reader, keys []key) {
	for i, k := range keys {
		if _, ok := s.values[k.name]; ok || k.usual(r.units) == "" {
			continue
		}
		v := r.usual(&keys[i])
		v.at, v.given = s.at, false
		s.values[k.name] = v
	}
}

// usual is the value of a key that the file does not have, which is read once.
func (r *reader) usual(k *key) value {
	v, known := r.usuals[k]
	if !known {
		v = r.value(&node{kind: scalar, text: k.usual(r.units)}, k)
		if r.usuals == nil {
			r.usuals = make(map[*key]value)
		}
		r.usuals[k] = v
	}
	return v
}

// unknownKey reports an entry that does not exist, and gives the one that was
// probably meant, if any: none that the mapping has already.
func (r *reader) unknownKey(e entry, of *node, keys []key, title string) (meant string) {
	var names, called []string
	for _, k := range keys {
		if !slices.ContainsFunc(of.entries, func(o entry) bool { return o.key == k.name }) {
			names, called = append(names, k.name), append(called, k.called)
		}
	}
	other := suggestion{hint: "delete it"}
	near := near(e.key, names)
	meant = nearest(e.key, names)
	if i := slices.Index(called, nearest(e.key, append(called, names...))); i >= 0 && called[i] != "" {
		meant, near = names[i], names[i:i+1]
	}
	switch away := elsewhere(e.key); {
	case len(near) > 0:
		other = anyOf(near)
	case away != "":
		other.hint = away
	case len(names) > 0:
		other = didYouMean(e.key, names)
	}
	if before, _, found := strings.Cut(e.key, ":"); found && slices.Contains(names, before) {
		other, meant = suggestion{hint: "write a space after the colon"}, before
	}
	if e.key != "" && e.key[0] >= '0' && e.key[0] <= '9' {
		other = suggestion{hint: "write a decimal point, as in 5.8: a comma ends the value"}
	}
	r.suggest(CodeUnknownKey, e.at, other, "%s has no entry %s", title, quote(e.key))
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
		if n.kind == scalar && len(k.words) > 0 {
			v.text = r.word(n, k)
		} else {
			v.section = r.section(n, k.keys, k.name)
		}
	case formNamed:
		v.sections = r.named(n, k)
	case formWords:
		v.words = r.words(n, k)
	case formList:
		v.sections = r.list(n, k)
	case formReadings:
		v.lengths = r.readings(n, k)
	case formLengths:
		v.lengths = r.lengths(n, k)
	case formCells:
		r.cells(&v, n, k)
	case formEdges:
		v.lengths = r.edges(n, k)
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
			r.fail(CodeTooMany, e.at, "leave out those that no drawer uses",
				"there are more than %d of %s", k.most, k.name)
			break
		}
		taken.check(r, e.key, e.at, k.noun)
		s := r.section(e.value, k.keys, "the "+k.noun+" "+quote(e.key))
		s.name = e.key
		all = append(all, s)
	}
	return all
}

// list reads a list of sections; those that have names have different ones.
func (r *reader) list(n *node, k *key) []*section {
	if !r.expect(n, list, k.name) {
		return nil
	}
	if len(n.items) == 0 && !r.lost {
		r.fail(CodeTooMany, n.at, "write `- "+k.keys[0].name+": ...` with the other entries below", "there is no %s", k.noun)
	}
	var all []*section
	taken := names{}
	for _, item := range n.items {
		if r.full() {
			break
		}
		if len(all) == k.most {
			hint := "leave some out"
			if k.noun == "drawer" {
				hint = "divide the job into several files"
			}
			r.fail(CodeTooMany, item.at, hint, "there are more than %d %ss", k.most, k.noun)
			break
		}
		s := r.section(item, k.keys, "the "+k.noun)
		s.number = len(all)
		if name := s.values["name"]; name.text != "" {
			taken.check(r, name.text, name.at, k.noun)
		}
		all = append(all, s)
	}
	return all
}
