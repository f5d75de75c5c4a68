package job

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// layout is a job file without a mistake in its layout: its tree, and the bytes
// that the marks take.
type layout struct {
	*source
	data   []byte
	starts []int // of the lines, and the end of the file
	root   *node

	marks        []mark
	begins, ends []int // of the marks
}

func readLayout(data []byte) (*layout, error) {
	r := &reporter{}
	src, _ := readSource("", bytes.NewReader(data), r)
	l := &layout{source: src, data: data}
	if len(r.problems) == 0 {
		l.root, l.marks = parse(src, r)
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

// place finds the bytes of the marks, in one way through the file.
func (l *layout) place() error {
	line, column, at := 0, 1, 0
	for _, m := range l.marks {
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
	if len(path) == 0 {
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
			return nil, nil, fmt.Errorf("on line %d stands a single value, which has no entry %s",
				n.at.Line, quote(step))
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

func (l *layout) inBrackets(n *node) bool {
	sign := l.marks[n.first].sign
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

// newlineOf is the newline of a line, for the last line the one of the first.
func (l *layout) newlineOf(line int) string {
	for _, i := range []int{line, 1} {
		if s := l.newline(l.starts[i-1] + len(l.lines[i-1])); s != "" {
			return s
		}
	}
	return "\n"
}
