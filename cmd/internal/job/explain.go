package job

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// Entry is an entry of the job file as the reference explains it, from the tables that [Read]
// follows.
type Entry struct {
	// Path are the keys that lead to it, with dots between and without the names and numbers of
	// what lists and mappings hold: stock.thickness. Also are other places with the same entry.
	Path string
	Also []string

	Title    string // what a shop calls it
	Doc      string // one sentence without its full stop
	Type     string
	Unit     string // of its numbers; empty where they have none
	Range    string // empty where the type says it all
	Required bool
	Default  string
	Without  string   // what happens without the entry, when it has no default
	Why      string   // why that is so
	Example  string   // lines of a job file, each ended
	Words    []string // those that it takes
	Keys     []string
}

// Entries are all entries of a job file, each with the entries in it after it. Those that
// stand in two places come at the first one, and name the other.
func Entries() []Entry {
	return entriesOf(func(placeOfKey) bool { return true })
}

// Explained are the entries that a path names: one, or all of that name where it could be
// several. The path may leave steps out, and may have the names of stocks, bits and the like
// in it. A word that is no entry's name gives those that have it in their name or among their
// words: overhang, knob. The error says which entry may have been meant.
func Explained(path string) ([]Entry, error) {
	steps := strings.Split(path, ".")
	if k := exactly(jobKeys, steps); k != nil {
		return entriesOf(func(p placeOfKey) bool { return p.key() == k }), nil
	}
	found := entriesOf(func(p placeOfKey) bool { return leadsTo(steps, p.steps()) })
	if len(found) == 0 && len(steps) == 1 {
		found = entriesOf(func(p placeOfKey) bool { return p.key().has(strings.ToLower(path)) })
	}
	if len(found) > 0 {
		return found, nil
	}
	hint := "drawerwright explain lists all"
	for _, try := range []struct {
		word  string
		known []string
	}{{steps[len(steps)-1], keyNames()}, {path, allPaths()}} {
		if nearest(try.word, try.known) != "" {
			hint = DidYouMean(try.word, try.known)
		}
	}
	return nil, errors.New("the job file has no entry " + quote(path) + ": " + hint)
}

// has reports whether a word is a part of the key's name, or one of the words that it takes, or
// what a shop says for one.
func (k *key) has(word string) bool {
	return slices.Contains(strings.Split(k.name, "-"), word) || slices.Contains(k.words, word) || k.trade[word] != ""
}

// exactly is the key at the end of steps from keys; nil where they lead nowhere. After a list
// or a mapping of names, a step that is none of its keys is the name or number of an item.
func exactly(keys []key, steps []string) *key {
	i := slices.IndexFunc(keys, func(k key) bool { return k.name == steps[0] })
	if i < 0 {
		return nil
	}
	k, rest := &keys[i], steps[1:]
	if len(rest) == 0 {
		return k
	}
	if found := exactly(k.keys, rest); found != nil {
		return found
	}
	if k.form != formNamed && k.form != formList {
		return nil
	}
	if item := rest[0]; len(rest) == 1 {
		if _, err := strconv.Atoi(item); err == nil || item == "*" {
			return k
		}
		return nil
	}
	return exactly(k.keys, rest[1:])
}

// leadsTo reports whether steps are some of those of a place, in order, its last one with them.
func leadsTo(steps, place []string) bool {
	if steps[len(steps)-1] != place[len(place)-1] {
		return false
	}
	for _, s := range place {
		if len(steps) > 0 && s == steps[0] {
			steps = steps[1:]
		}
	}
	return len(steps) == 0
}

// entriesOf are the entries that have a place that is asked for, at the first of these.
func entriesOf(wanted func(placeOfKey) bool) (list []Entry) {
	all := placesBelow(jobKeys, nil)
	at := make(map[*key]int)
	for _, p := range all {
		if _, known := at[p.key()]; wanted(p) && !known {
			at[p.key()] = len(list)
			list = append(list, p.entry())
		}
	}
	for _, p := range all {
		if i, known := at[p.key()]; known && p.path() != list[i].Path {
			list[i].Also = append(list[i].Also, p.path())
		}
	}
	return list
}

// placeOfKey is a key of the job file below those that lead to it.
type placeOfKey []*key

func (p placeOfKey) key() *key { return p[len(p)-1] }

func (p placeOfKey) steps() (names []string) {
	for _, k := range p {
		names = append(names, k.name)
	}
	return names
}

func (p placeOfKey) path() string { return strings.Join(p.steps(), ".") }

func placesBelow(keys []key, above placeOfKey) (list []placeOfKey) {
	for i := range keys {
		p := append(slices.Clip(above), &keys[i])
		list = append(append(list, p), placesBelow(keys[i].keys, p)...)
	}
	return list
}

func allPaths() (list []string) {
	for _, p := range placesBelow(jobKeys, nil) {
		list = append(list, p.path())
	}
	return list
}

func keyNames() (list []string) {
	for _, p := range placesBelow(jobKeys, nil) {
		if !slices.Contains(list, p.key().name) {
			list = append(list, p.key().name)
		}
	}
	return list
}

func (p placeOfKey) entry() Entry {
	k := p.key()
	section := ""
	if len(p) > 1 {
		section = p[len(p)-2].name
	}
	e := Entry{Path: p.path(), Title: titleOf(section, k.name),
		Doc: k.doc, Type: k.typeInWords(), Required: k.required, Default: k.fallbacks(),
		Without: k.without, Why: k.why, Words: k.words, Example: p.example()}
	switch {
	case k.isLength():
		e.Unit, e.Range = "of the file, or after the number: 12 mm, 1/2 in, 17 5/8\"", k.span()
	case k.form == formMeasure:
		e.Unit, e.Range = strings.Join(k.units(), ", "), k.span()
	case k.form == formCount || k.form == formPrice:
		e.Range = fmt.Sprintf("%.0f to %.0f", k.min, k.max)
	}
	for _, inner := range k.keys {
		e.Keys = append(e.Keys, inner.name)
	}
	return e
}

// isLength reports whether the numbers of a key are lengths.
func (k *key) isLength() bool {
	switch k.form {
	case formLength, formReadings, formLengths, formCells, formEdges, formSize:
		return true
	}
	return false
}

// span is the range of a key's numbers.
func (k *key) span() string {
	if k.form == formMeasure {
		return k.numbers()
	}
	return k.spanIn(geom.Millimeter) + ", or " + k.spanIn(geom.Inch)
}

// spanIn is the range of a key's numbers in one unit, where they have one.
func (k *key) spanIn(u geom.Unit) string {
	if k.form == formMeasure {
		return k.numbers()
	}
	least, most := k.endsIn(u)
	return least + " to " + most
}

// typeInWords says what is written for the key.
func (k *key) typeInWords() string {
	words := strings.Join(k.words, ", ")
	switch k.form {
	case formTitle:
		return fmt.Sprintf("text of up to %d characters", maxTitle)
	case formName:
		return fmt.Sprintf("a name of up to %d characters", maxName)
	case formStock:
		return "the name of a stock of the file"
	case formRef:
		if words != "" {
			return "a name that the file gives, or one of " + words
		}
		return "a name that the file gives"
	case formPath:
		return "the name of a file"
	case formWord:
		return "one of " + words
	case formLength:
		return "a length"
	case formReadings:
		return fmt.Sprintf("a length, or a list of up to %d", maxReadings)
	case formLengths:
		return fmt.Sprintf("a list of up to %d lengths", k.most)
	case formCells:
		if words != "" {
			return fmt.Sprintf("a whole number, or a list of up to %d lengths or %s", k.most, words)
		}
		return fmt.Sprintf("a whole number, or a list of up to %d lengths", k.most)
	case formEdges:
		return "a length, or a list of those for " + strings.Join(k.sides, ", ")
	case formSize:
		return "lengths: " + strings.Join(k.sides, " x ")
	default:
		return k.otherType(words)
	}
}

func (k *key) otherType(words string) string {
	switch k.form {
	case formCount:
		return "a whole number"
	case formPrice:
		return "a number"
	case formMeasure:
		return "a number"
	case formNamed:
		return fmt.Sprintf("up to %d names, each with entries of its own", k.most)
	case formWords:
		return "a list of any of " + words
	case formPattern:
		return "text with any of " + words
	case formList:
		return fmt.Sprintf("a list of up to %d, each with entries of its own", k.most)
	}
	if words != "" {
		return "entries of its own, or one of " + words
	}
	return "entries of its own"
}

// named are the names that examples give to what a mapping of names holds.
var named = map[string]string{"stock": "birch", "cutter.bits": "large", "openings": "base", "slides": "quiet",
	"stock.other-sheets": "half", "drawers.cutter.bits": "large"}

// example are the lines of a job file with the example of the key, below those that lead to it.
func (p placeOfKey) example() string {
	var b strings.Builder
	indent, dash := "", ""
	line := func(text string) {
		b.WriteString(indent + dash + text + "\n")
		indent, dash = indent+strings.Repeat(" ", len(dash)), ""
	}
	for i, k := range p[:len(p)-1] {
		line(k.name + ":")
		indent += "  "
		switch k.form {
		case formNamed:
			line(named[p[:i+1].path()] + ":")
			indent += "  "
		case formList:
			dash = "- "
		}
	}
	k := p.key()
	if k.with != "" {
		for _, with := range strings.Split(k.with, "\n") {
			line(with)
		}
	}
	items, before := k.examples()
	if items == nil {
		line(k.name + ": " + k.example)
		return b.String()
	}
	line(k.name + ":")
	indent += "  "
	for _, item := range items {
		line(before + item)
	}
	return b.String()
}

// examples are the items of an example of a list or a mapping of names, each for a line of its
// own, and what stands before each.
func (k *key) examples() (items []string, before string) {
	inside := strings.Trim(k.example, "[]")
	switch k.form {
	case formNamed:
		inside = inside[1 : len(inside)-1]
	case formList:
		before = "- "
	default:
		return nil, ""
	}
	items = strings.SplitAfter(inside, "},")
	for i := range items {
		items[i] = strings.Trim(items[i], " ,")
	}
	return items, before
}
