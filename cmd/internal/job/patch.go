package job

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// Edit is one value to write into a job file.
type Edit struct {
	// Path leads to the value from the root: keys, and the numbers of list items
	// from 0 in decimal, as in "drawers", "2", "joinery", "fence-distance".
	Path []string
	// Value is the YAML of the new value on one line, without a comment, such as
	// 6.35 mm or [11.96, 12.02].
	Value string
}

// Patch writes values into the text of a job file, one edit after the other,
// and leaves every other byte as it is. A scalar or a value in brackets is
// replaced where it begins, a block of lines on the line of its key or dash,
// together with the comments inside it; a comment at the end of that line stays.
//
// A key that its mapping does not have yet is added as the last one, at the root
// before the drawers and the comment on top of them. If its mapping is missing
// too, that is added with the key in braces. In a file that holds nothing, or comments alone, it
// is added below them.
//
// The new text is read again: unless it holds the new value and otherwise what
// it held before, nothing is written. The error says which value could not be
// written, and why: the file or the value has a mistake, the path does not lead
// to a value, or a key on it is in the file twice.
func Patch(file []byte, edits ...Edit) ([]byte, error) {
	file = bytes.Clone(file)
	for _, e := range edits {
		next, err := patch(file, e)
		if err != nil {
			return nil, fmt.Errorf("%s cannot be written to %s: %w", quote(e.Value),
				quote(strings.Join(e.Path, " > ")), err)
		}
		file = next
	}
	return file, nil
}

func patch(file []byte, e Edit) ([]byte, error) {
	text := strings.Trim(e.Value, " \t")
	value, err := readValue(text)
	if err != nil {
		return nil, err
	}
	l, err := readLayout(file)
	if err != nil {
		return nil, fmt.Errorf("the job file must be read first: %w", err)
	}
	target, missing, err := l.follow(e.Path)
	if err != nil {
		return nil, err
	}
	root := l.root
	for len(missing) > 0 && (len(missing) > 1 || target.kind == nothing && target != root) {
		key := missing[len(missing)-1]
		text = "{" + writeKey(key) + ": " + text + "}"
		value = &node{kind: mapping, entries: []entry{{key: key, value: value}}}
		missing = missing[:len(missing)-1]
	}
	// From here on the tree of the old text becomes the one that is wanted.
	switch {
	case len(missing) == 0:
		file = l.replace(target, text)
		*target = *value
	case target.kind == nothing:
		file = l.append(writeKey(missing[0]) + ": " + text)
		*target = node{kind: mapping, entries: []entry{{key: missing[0], value: value}}}
	default:
		at := len(target.entries)
		if target == root {
			at = l.beforeDrawers()
		}
		file = l.insert(target, at, writeKey(missing[0])+": "+text)
		target.entries = slices.Insert(target.entries, at, entry{key: missing[0], value: value})
	}
	switch after, err := readLayout(file); {
	case err != nil:
		return nil, fmt.Errorf("the file could not be read afterward: %w", err)
	case !same(after.root, root):
		return nil, errors.New("the file would say something else afterward; put text with a comma, a colon or a bracket in quotes")
	}
	return file, nil
}

// readValue reads the value of an edit.
func readValue(text string) (*node, error) {
	if text == "" || strings.ContainsAny(text, "\r\n") {
		return nil, errors.New("a value is text on one line")
	}
	l, err := readLayout([]byte("v: " + text))
	if err != nil {
		return nil, fmt.Errorf("the value is no YAML of a job file: %w", err)
	}
	if l.root.kind != mapping || len(l.root.entries) != 1 || l.ends[len(l.ends)-1] != len(l.data) {
		return nil, errors.New("a value is one text, number, list or mapping, without a comment")
	}
	return l.root.entries[0].value, nil
}

// plainKey is a key that means the same with and without quotes, also in braces.
var plainKey = regexp.MustCompile(`^[\pL\pN]([\pL\pN ./_-]*[\pL\pN])?$`)

func writeKey(key string) string {
	if plainKey.MatchString(key) {
		return key
	}
	return `"` + escapes[`"`].Replace(key) + `"`
}

// same reports whether two trees hold the same, wherever it stands.
func same(a, b *node) bool {
	return a.kind == b.kind && a.text == b.text && slices.EqualFunc(a.items, b.items, same) &&
		slices.EqualFunc(a.entries, b.entries,
			func(a, b entry) bool { return a.key == b.key && same(a.value, b.value) })
}

// splice writes text instead of the bytes between two offsets.
func (l *layout) splice(from, to int, text string) []byte {
	return slices.Concat(l.data[:from], []byte(text), l.data[to:])
}

// replace writes text in the place of a value.
func (l *layout) replace(n *node, text string) []byte {
	from, to := l.begins[n.first], l.ends[n.last]
	line, end := l.marks[n.first].at.Line, l.marks[n.last].at.Line
	onLine := l.ends[l.lastOn(n.first)] // of the marks on the first line
	switch {
	case n.kind == nothing && l.marks[n.last].sign == 0: // a key in braces without its colon
		return l.splice(to, to, ": "+text)
	case n.kind == nothing:
		return l.splice(to, to, " "+text)
	case n.kind == scalar || l.inBrackets(n):
		if comment := l.rest(line, onLine); end > line && strings.TrimSpace(comment) != "" {
			text += comment
			behind := l.rest(end, to)
			if more := strings.TrimLeft(behind, " \t"); more != "" { // it cannot stand behind the comment
				text += l.newlineOf(line) + strings.Repeat(" ", l.indent(end)-1)
				to += len(behind) - len(more)
			}
		}
		return l.splice(from, to, text)
	}
	// A block takes whole lines; those below the line of its key or dash go.
	below := l.data[l.starts[end]:]
	if anchor := n.first - 1; l.marks[anchor].at.Line < line {
		from = l.ends[anchor]
		return slices.Concat(l.data[:from], []byte(" "+text), l.data[from:l.starts[line-1]], below)
	}
	return slices.Concat(l.data[:from], []byte(text), l.data[onLine:l.starts[line]], below)
}

// append writes a line behind all others.
func (l *layout) append(text string) []byte {
	newline := "\n"
	if len(l.lines) > 0 {
		newline = l.newlineOf(len(l.lines))
	}
	if n := len(l.data); n > 0 && l.data[n-1] != '\n' && !bytes.Equal(l.data, []byte("\ufeff")) {
		text = newline + text
	}
	return slices.Concat(l.data, []byte(text+newline))
}

// insert writes an entry into a mapping before the one with the number at.
func (l *layout) insert(n *node, at int, text string) []byte {
	if l.inBrackets(n) {
		behind := l.ends[n.last-1]
		switch {
		case len(n.entries) == 0:
			return l.splice(behind, behind, text)
		case l.marks[n.last-1].sign == ',':
			return l.splice(behind, behind, " "+text)
		}
		return l.splice(behind, behind, ", "+text)
	}
	text = strings.Repeat(" ", l.marks[n.first].at.Column-1) + text
	if at < len(n.entries) {
		line := l.underComment(n.entries[at].at.Line)
		return l.splice(l.starts[line-1], l.starts[line-1], text+l.newlineOf(line))
	}
	line := l.marks[n.last].at.Line
	end := l.starts[line-1] + len(l.lines[line-1])
	return l.splice(end, end, l.newlineOf(line)+text)
}

// beforeDrawers is the number of the entry of the root that new ones are put
// before.
func (l *layout) beforeDrawers() int {
	at := slices.IndexFunc(l.root.entries, func(e entry) bool { return e.key == "drawers" })
	if at < 0 || l.inBrackets(l.root) {
		return len(l.root.entries)
	}
	return at
}

// underComment is the first line of the comment that stands on top of a line,
// else the line itself. The comment that begins the file belongs to all of it.
func (l *layout) underComment(line int) int {
	top := line
	for top > 1 && strings.HasPrefix(l.lines[top-2], "#") {
		top--
	}
	if top == 1 {
		return line
	}
	return top
}
