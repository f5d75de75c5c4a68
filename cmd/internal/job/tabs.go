package job

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Where lines are indented by tabs, or by spaces that are no plain ones, the file is read
// as if they were spaces, so that its other mistakes are reported too. How wide the tabs
// were meant is not written: the width is taken with which the lines fit best.

// tabWidths are those that editors have, the usual ones first.
var tabWidths = []int{2, 4, 8, 1, 3}

// plainIndent reports lines that are indented by something else than spaces, the first one
// and how many there are, and indents them by spaces.
func (s *source) plainIndent(r *reporter) {
	type oddity struct {
		sign rune
		at   Position
		more int
	}
	var odd []oddity // tabs, and each other sign
	s.written = make(map[int]string)
	for i, line := range s.lines {
		sign, column := oddIndent(line)
		if sign == 0 {
			continue
		}
		s.written[i] = line
		if n := slices.IndexFunc(odd, func(o oddity) bool { return o.sign == sign }); n >= 0 {
			odd[n].more++
		} else {
			odd = append(odd, oddity{sign: sign, at: Position{i + 1, column}})
		}
	}
	if len(odd) == 0 {
		return
	}
	s.lines = slices.Clone(s.lines)
	s.expand(s.tabWidth())
	for _, o := range odd {
		name, hint := "a tab", "write spaces instead; an editor can replace all tabs at once"
		if o.sign != '\t' {
			name, hint = fmt.Sprintf("a special space, U+%04X", o.sign), "write plain spaces instead"
		}
		also := ""
		if o.more > 0 {
			also = fmt.Sprintf(", and so are %d more", o.more)
		}
		r.fail(CodeTab, o.at, hint, "the line is indented by %s%s", name, also)
	}
}

// oddIndent is the first sign that indents a line and is no plain space; 0 for none.
func oddIndent(line string) (sign rune, column int) {
	if strings.Trim(line, " \t") == "" {
		return 0, 0
	}
	for _, c := range line {
		column++
		switch {
		case c == ' ':
		case unicode.IsSpace(c):
			return c, column
		default:
			return 0, 0
		}
	}
	return 0, 0
}

// tabWidth is the width of a tab with which the fewest lines stand in a wrong column, and the fewest entries are left
// empty by lines that stand beside them, or stand in a section that has no such entry.
func (s *source) tabWidth() int {
	best, least := tabWidths[0], -1
	for _, width := range tabWidths {
		trial := &source{file: s.file, lines: slices.Clone(s.lines), written: s.written}
		trial.expand(width)
		r := &reporter{src: trial}
		root, _ := parse(trial, r)
		if wrong := len(r.problems) + root.empty() + root.strange(jobKeys); least < 0 || wrong < least {
			best, least = width, wrong
		}
		if least == 0 {
			break
		}
	}
	return best
}

// empty counts the entries without a value.
func (n *node) empty() (count int) {
	if n.kind == nothing {
		return 1
	}
	for _, e := range n.entries {
		count += e.value.empty()
	}
	for _, i := range n.items {
		count += i.empty()
	}
	return count
}

// strange counts the entries of a section that are none of its keys, and things with a name that
// have no entries.
func (n *node) strange(keys []key) (count int) {
	for _, e := range n.entries {
		i := slices.IndexFunc(keys, func(k key) bool { return k.name == e.key })
		switch {
		case i < 0:
			count++
		case keys[i].form == formNamed:
			for _, thing := range e.value.entries {
				if count += thing.value.strange(keys[i].keys); thing.value.kind != mapping {
					count++
				}
			}
		case keys[i].form == formList:
			for _, item := range e.value.items {
				count += item.strange(keys[i].keys)
			}
		case keys[i].form == formSection:
			count += e.value.strange(keys[i].keys)
		}
	}
	return count
}

// expand indents lines by spaces, a tab up to the next multiple of a width.
func (s *source) expand(width int) {
	for i, line := range s.written {
		text := strings.TrimLeftFunc(line, unicode.IsSpace)
		column := 0
		for _, c := range line[:len(line)-len(text)] {
			if column++; c == '\t' {
				column += (width - column%width) % width
			}
		}
		s.lines[i] = strings.Repeat(" ", column) + text
	}
}

// inFile is a place of the lines as it is in the file.
func (s *source) inFile(at Position) Position {
	line, odd := s.written[at.Line-1]
	if !odd {
		return at
	}
	text := strings.TrimLeftFunc(line, unicode.IsSpace)
	before := utf8.RuneCountInString(line) - utf8.RuneCountInString(text)
	shift := s.indent(at.Line) - 1 - before
	at.Column = max(at.Column-shift, min(at.Column, before+1))
	return at
}
