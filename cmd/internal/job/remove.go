package job

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Remove takes a value out of the text of a job file, with its key or dash and the
// comment at the end of its line, and leaves every other line as it is. A mapping
// that loses its only entry becomes {}; the only item of a list takes the list and
// its key with it. The text is read again as [Patch] does.
func Remove(file []byte, path ...string) ([]byte, error) {
	out, err := remove(file, path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be removed: %w", quote(strings.Join(path, " > ")), err)
	}
	return out, nil
}

func remove(file []byte, path []string) ([]byte, error) {
	l, parent, at, err := openAt(file, path)
	if err != nil {
		return nil, err
	}
	above := path[:len(path)-1]
	var out []byte
	switch {
	case parent.kind == mapping && len(parent.entries) == 1:
		if len(above) == 0 {
			return nil, errors.New("it is all that the file holds")
		}
		return Patch(file, Edit{Path: above, Value: "{}"})
	case parent.kind == mapping:
		out, err = l.without(parent, at)
		parent.entries = slices.Delete(parent.entries, at, at+1)
	case len(parent.items) == 1:
		if len(above) == 0 {
			return nil, errors.New("it is all that the file holds")
		}
		return remove(file, above)
	default:
		out, err = l.without(parent, at)
		parent.items = slices.Delete(parent.items, at, at+1)
	}
	if err != nil {
		return nil, err
	}
	return out, l.holds(out)
}

// Copy writes an item of a list, or an entry of a mapping, once more behind itself,
// with its comments. An entry gets the name as its key, an item as its entry "name",
// if it has one.
func Copy(file []byte, name string, path ...string) ([]byte, error) {
	out, err := copied(file, name, path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be copied: %w", quote(strings.Join(path, " > ")), err)
	}
	return out, nil
}

func copied(file []byte, name string, path []string) ([]byte, error) {
	l, parent, at, err := openAt(file, path)
	if err != nil {
		return nil, err
	}
	if parent.kind == mapping {
		out, err := l.twice(parent, at, writeKey(name))
		if err != nil {
			return nil, err
		}
		parent.entries = slices.Insert(parent.entries, at+1, entry{key: name, value: parent.entries[at].value})
		return out, l.holds(out)
	}
	out, err := l.twice(parent, at, "")
	if err != nil {
		return nil, err
	}
	item := parent.items[at]
	parent.items = slices.Insert(parent.items, at+1, item)
	if err := l.holds(out); err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(item.entries, func(e entry) bool { return e.key == "name" }) {
		return out, nil
	}
	return Patch(out, Edit{Path: append(slices.Clone(path[:len(path)-1]), strconv.Itoa(at+1), "name"), Value: writeKey(name)})
}

// openAt reads a file and finds the mapping or list that holds a value, and the
// number of the value in it.
func openAt(file []byte, path []string) (l *layout, parent *node, at int, err error) {
	if l, err = readLayout(slices.Clone(file)); err != nil {
		return nil, nil, 0, fmt.Errorf("the job file must be read first: %w", err)
	}
	_, missing, err := l.follow(path)
	if err != nil {
		return nil, nil, 0, err
	}
	if len(missing) > 0 {
		return nil, nil, 0, errors.New("it is not in the file")
	}
	parent = l.root
	if len(path) > 1 {
		parent, _, _ = l.follow(path[:len(path)-1]) // on the way of the one above
	}
	step := path[len(path)-1]
	if parent.kind == list {
		at, _ = strconv.Atoi(step)
		return l, parent, at, nil
	}
	return l, parent, slices.IndexFunc(parent.entries, func(e entry) bool { return e.key == step }), nil
}

// holds reports whether a text holds the tree of the layout.
func (l *layout) holds(file []byte) error {
	switch after, err := readLayout(file); {
	case err != nil:
		return fmt.Errorf("the file could not be read afterward: %w", err)
	case !same(after.root, l.root):
		return errors.New("the file would say something else afterward")
	}
	return nil
}

// errLine refuses what shares a line with the sign of something around it.
var errLine = errors.New("it shares its line with other signs; change the text")

// marksOf are the first mark, a key or a dash, and the last one of an entry or an item.
func (l *layout) marksOf(parent *node, at int) (first, last int) {
	if parent.kind == mapping {
		e := parent.entries[at]
		return e.mark, e.value.last
	}
	item := parent.items[at]
	first = item.first
	if !l.inBrackets(parent) && item.kind != nothing {
		first--
	}
	return first, item.last
}

// leads reports whether a mark is the first on its line.
func (l *layout) leads(mark int) bool {
	return strings.TrimSpace(string(l.data[l.starts[l.marks[mark].at.Line-1]:l.begins[mark]])) == ""
}

// without takes out one of several entries or items.
func (l *layout) without(parent *node, at int) ([]byte, error) {
	first, last := l.marksOf(parent, at)
	from, to := l.begins[first], l.ends[last]
	line, end := l.marks[first].at.Line, l.marks[last].at.Line
	if l.inBrackets(parent) {
		switch {
		case l.marks[last+1].sign == ',' && l.marks[last+2].at.Line == end:
			to = l.begins[last+2]
		case l.marks[last+1].sign == ',' && l.marks[first-1].sign == ',' && l.marks[first-1].at.Line == line:
			from = l.begins[first-1] // the comma behind it stays at the end of the line
		case l.marks[last+1].sign == ',':
			to = l.ends[last+1]
		case l.marks[first-1].at.Line == line: // the comma before; one at the end of a line may stay
			from = l.begins[first-1]
		}
		return l.splice(from, to, ""), nil
	}
	if l.leads(first) {
		return l.splice(l.starts[line-1], l.starts[end], ""), nil
	}
	if parent.kind == list || at > 0 {
		return nil, errLine
	}
	// The first entry behind a dash: the next one moves up.
	next, _ := l.marksOf(parent, 1)
	return l.splice(from, l.begins[next], ""), nil
}

// twice writes an entry or item again behind itself, under another key if one is given.
func (l *layout) twice(parent *node, at int, key string) ([]byte, error) {
	first, last := l.marksOf(parent, at)
	from, to := l.begins[first], l.ends[last]
	line, end := l.marks[first].at.Line, l.marks[last].at.Line
	before := ""
	switch {
	case l.inBrackets(parent):
		if line != end {
			return nil, errLine
		}
		before = ", "
	case !l.leads(first):
		return nil, errLine
	default:
		from, to = l.starts[line-1], l.starts[end-1]+len(l.lines[end-1])
		before = l.newlineOf(end)
	}
	text := string(l.data[from:to])
	if key != "" {
		text = text[:l.begins[first]-from] + key + text[l.ends[first]-from:]
	}
	return l.splice(to, to, before+text), nil
}
