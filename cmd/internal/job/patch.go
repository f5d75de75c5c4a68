package job

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
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
// too, that is added with the key in braces.
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
			return nil, fmt.Errorf("%s cannot be written to %s: %w", quote(e.Value), quote(strings.Join(e.Path, " > ")), err)
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
	for len(missing) > 0 && (len(missing) > 1 || target.kind == nothing) {
		key := missing[len(missing)-1]
		text = "{" + writeKey(key) + ": " + text + "}"
		value = &node{kind: mapping, entries: []entry{{key: key, value: value}}}
		missing = missing[:len(missing)-1]
	}
	// From here on the tree of the old text becomes the one that is wanted.
	if len(missing) == 0 {
		file = l.replace(target, text)
		*target = *value
	} else {
		at := len(target.entries)
		if target == root {
			at = l.beforeDrawers()
		}
		file = l.insert(target, at, writeKey(missing[0])+": "+text)
		target.entries = slices.Insert(target.entries, at, entry{key: missing[0], value: value})
	}
	switch after, err := readLayout(file); {
	case err != nil:
		return nil, fmt.Errorf("the file could not be read afterwards: %w", err)
	case !same(after.root, root):
		return nil, errors.New("the file would say something else afterwards; put text with a comma, a colon or a bracket in quotes")
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

// same tells whether two trees hold the same, wherever it stands.
func same(a, b *node) bool {
	return a.kind == b.kind && a.text == b.text && slices.EqualFunc(a.items, b.items, same) &&
		slices.EqualFunc(a.entries, b.entries, func(a, b entry) bool { return a.key == b.key && same(a.value, b.value) })
}

// layout is a job file without a mistake in its layout: its tree, and the bytes
// that the marks take.
type layout struct {
	*source
	data   []byte
	starts []int // of the lines, and the end of the file
	root   *node

	marks        []mark
	begins, ends []int            // of the marks
	index        map[Position]int // of the mark that begins there
	closing      map[int]int      // of the bracket that closes the one with this index
}

func readLayout(data []byte) (*layout, error) {
	r := &reporter{}
	src := readSource("", bytes.NewReader(data), r)
	l := &layout{source: src, data: data, index: map[Position]int{}, closing: map[int]int{}}
	if len(r.problems) == 0 {
		l.root = parse(src, r)
	}
	if len(r.problems) > 0 {
		p := r.sorted()[0]
		return nil, fmt.Errorf("%d:%d: %s", p.Line, p.Column, p.Message)
	}
	at := len(data) - len(bytes.TrimPrefix(data, []byte("\ufeff")))
	for _, line := range l.lines {
		l.starts = append(l.starts, at)
		at += len(line)
		at += len(l.newline(at))
	}
	l.starts = append(l.starts, at)
	budget := maxMarks
	l.marks = scan(src, 1, &budget, r)
	return l, l.place()
}

// newline is the newline at an offset, if there is one.
func (l *layout) newline(at int) string {
	for _, s := range []string{"\r\n", "\n"} {
		if bytes.HasPrefix(l.data[at:], []byte(s)) {
			return s
		}
	}
	return ""
}

// place finds the bytes of the marks, in one way through the file, and the
// pairs of brackets.
func (l *layout) place() error {
	var open []int
	line, column, at := 0, 1, 0
	for i, m := range l.marks {
		if m.at.Line > line {
			line, column, at = m.at.Line, 1, l.starts[m.at.Line-1]
		}
		for ; column < m.at.Column && at < len(l.data); column++ {
			_, size := utf8.DecodeRune(l.data[at:])
			at += size
		}
		written := l.written(m, at)
		end := at + len(written)
		if m.at != (Position{line, column}) || end > len(l.data) || strings.ReplaceAll(string(l.data[at:end]), "\t", " ") != written {
			return fmt.Errorf("%d:%d: what stands here could not be found again", m.at.Line, m.at.Column)
		}
		l.begins, l.ends = append(l.begins, at), append(l.ends, end)
		l.index[m.at] = i
		switch m.sign {
		case '[', '{':
			open = append(open, i)
		case ']', '}':
			l.closing[open[len(open)-1]] = i
			open = open[:len(open)-1]
		}
	}
	return nil
}

// written is a mark as it stands in the file, with tabs as spaces.
func (l *layout) written(m mark, at int) string {
	switch {
	case m.sign != 0:
		return string(m.sign)
	case m.inset == 0 || at >= len(l.data):
		return m.text
	}
	quotes, text := string(l.data[at]), m.text
	if escape, ok := escapes[quotes]; ok && m.inset < 0 {
		text = escape.Replace(text)
	}
	return quotes + text + quotes
}

// follow goes along a path as far as there are values, and gives the last one
// with the keys that are missing in it.
func (l *layout) follow(path []string) (n *node, missing []string, err error) {
	if len(path) == 0 || l.root.kind == nothing {
		return nil, nil, errors.New("there is no such place in the file")
	}
	n = l.root
	for i, step := range path {
		next := n
		switch n.kind {
		case mapping:
			var found []entry
			for _, e := range n.entries {
				if e.key == step {
					found = append(found, e)
				}
			}
			if len(found) > 1 {
				return nil, nil, fmt.Errorf("%s is on line %d and again on line %d; delete one of the two", quote(step), found[0].at.Line, found[1].at.Line)
			}
			if len(found) == 1 {
				next = found[0].value
			}
		case list:
			number, err := strconv.Atoi(step)
			if err != nil || number < 0 || number >= len(n.items) || strconv.Itoa(number) != step {
				return nil, nil, fmt.Errorf("the list on line %d has %d entries, counted from 0, and none with the number %s", n.at.Line, len(n.items), quote(step))
			}
			next = n.items[number]
		case scalar:
			return nil, nil, fmt.Errorf("on line %d stands a single value, which has no entry %s", n.at.Line, quote(step))
		}
		if next == n { // the rest is missing
			if missing = path[i:]; len(missing) > 2 {
				return nil, nil, fmt.Errorf("there is no %s in the file", quote(strings.Join(path[:i+1], " > ")))
			}
			return n, missing, nil
		}
		n = next
	}
	return n, nil, nil
}

// last is the index of the last mark of a value; where there is none, of the
// key's colon, or of the dash.
func (l *layout) last(n *node) int {
	i := l.index[n.at]
	switch {
	case n.kind == nothing && l.marks[i].sign == 0 && i+1 < len(l.marks) && l.marks[i+1].sign == ':':
		return i + 1
	case n.kind == nothing || n.kind == scalar:
		return i
	case l.inBrackets(n):
		return l.closing[i]
	case n.kind == mapping:
		return l.last(n.entries[len(n.entries)-1].value)
	}
	return l.last(n.items[len(n.items)-1])
}

func (l *layout) inBrackets(n *node) bool {
	sign := l.marks[l.index[n.at]].sign
	return n.kind == list && sign == '[' || n.kind == mapping && sign == '{'
}

// lastOn is the last mark on the line of the mark i.
func (l *layout) lastOn(i int) int {
	for line := l.marks[i].at.Line; i+1 < len(l.marks) && l.marks[i+1].at.Line == line; {
		i++
	}
	return i
}

// rest is what stands on a line after a byte of it: at most spaces and a comment
// when that is the end of its last mark.
func (l *layout) rest(line, at int) string {
	return string(l.data[at : l.starts[line-1]+len(l.lines[line-1])])
}

// splice writes text instead of the bytes between two offsets.
func (l *layout) splice(from, to int, text string) []byte {
	return slices.Concat(l.data[:from], []byte(text), l.data[to:])
}

// replace writes text in the place of a value.
func (l *layout) replace(n *node, text string) []byte {
	first, last := l.index[n.at], l.last(n)
	from, to := l.begins[first], l.ends[last]
	line, end := l.marks[first].at.Line, l.marks[last].at.Line
	onLine := l.ends[l.lastOn(first)] // of the marks on the first line
	switch {
	case n.kind == nothing && l.marks[last].sign == 0: // a key in braces without its colon
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
	if anchor := first - 1; l.marks[anchor].at.Line < line {
		from = l.ends[anchor]
		return slices.Concat(l.data[:from], []byte(" "+text), l.data[from:l.starts[line-1]], below)
	}
	return slices.Concat(l.data[:from], []byte(text), l.data[onLine:l.starts[line]], below)
}

// newlineOf is the newline of a line, for the last line the one of the first.
func (l *layout) newlineOf(line int) string {
	for _, i := range []int{line, 1} {
		if s := l.newline(l.starts[i-1] + len(l.lines[i-1])); s != "" {
			return s
		}
	}
	return "\n"
}

// insert writes an entry into a mapping before the one with the number at.
func (l *layout) insert(n *node, at int, text string) []byte {
	first, last := l.index[n.at], l.last(n)
	if l.inBrackets(n) {
		behind := l.ends[last-1]
		switch {
		case len(n.entries) == 0:
			return l.splice(behind, behind, text)
		case l.marks[last-1].sign == ',':
			return l.splice(behind, behind, " "+text)
		}
		return l.splice(behind, behind, ", "+text)
	}
	text = strings.Repeat(" ", l.marks[first].at.Column-1) + text
	if at < len(n.entries) {
		line := l.underComment(n.entries[at].at.Line)
		return l.splice(l.starts[line-1], l.starts[line-1], text+l.newlineOf(line))
	}
	line := l.marks[last].at.Line
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
