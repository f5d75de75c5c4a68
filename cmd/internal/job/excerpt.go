package job

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"drawerwright/cmd/internal/words"
)

// Position is a place in a job file. Both numbers count from 1, columns in
// characters.
type Position struct {
	Line, Column int
}

// place fills in the file, the position and the excerpt of a problem, and
// makes its texts safe to print. A
// position outside the file is moved to the nearest one inside.
func (s *source) place(p Problem, at Position) Problem {
	p.File, p.Message, p.Hint = s.file, printable(p.Message), printable(p.Hint)
	if len(s.lines) == 0 {
		p.Line, p.Column = 1, 1
		return p
	}
	at = s.inFile(at)
	p.Line = min(max(at.Line, 1), len(s.lines))
	line, odd := s.written[p.Line-1]
	if !odd {
		line = s.lines[p.Line-1]
	}
	var offset int
	offset, p.Column = seek(line, at.Column)
	p.Excerpt, p.Caret = excerpt(line, offset)
	return p
}

// seek finds the byte offset of a column, and the column that is nearest to it
// in the line. The place after the last character belongs to the line.
func seek(line string, column int) (offset, nearest int) {
	nearest = 1
	for nearest < column && offset < len(line) {
		_, size := utf8.DecodeRuneInString(line[offset:])
		offset += size
		nearest++
	}
	return offset, nearest
}

// indent is the column of the first character of a line that is no space.
func (s *source) indent(line int) int {
	column := 1
	for _, c := range s.lines[line-1] {
		if c != ' ' {
			break
		}
		column++
	}
	return column
}

// excerpt cuts a line around a byte offset and says how many columns of a
// terminal precede that place.
func excerpt(line string, offset int) (text string, caret int) {
	from, before := offset, 0
	for ; from > 0 && before < maxExcerpt*2/3; before++ {
		_, size := utf8.DecodeLastRuneInString(line[:from])
		from -= size
	}
	to := offset
	for n := before; to < len(line) && n < maxExcerpt; n++ {
		_, size := utf8.DecodeRuneInString(line[to:])
		to += size
	}
	head, tail := printable(line[from:offset]), printable(line[offset:to])
	if from > 0 {
		head = "…" + head
	}
	if to < len(line) {
		tail += "…"
	}
	for _, r := range head {
		caret += columns(r)
	}
	return head + tail, caret
}

// printable replaces what would not print, or would change how other
// characters print, by a dot and every kind of space by a plain one.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case words.Unprintable(r):
			return '·'
		}
		return r
	}, text)
}

// columns is the width of a character in a terminal.
func columns(r rune) int {
	switch {
	case unicode.Is(unicode.Mn, r):
		return 0
	case unicode.In(r, unicode.Han, unicode.Hangul, unicode.Hiragana, unicode.Katakana):
		return 2
	}
	return 1
}
