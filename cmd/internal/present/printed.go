package present

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Printed is a text for people in lines: as wide as a screen, or, with a width of 0, as wide as
// it comes, for files and programs that read it. What is written to it is wrapped when it is
// read; a table takes the width as it is printed.
type Printed struct {
	bytes.Buffer
	Width int
	// Paint shows a text at a level on a terminal with color; nil where there is none.
	Paint func(l Level, text string) string
}

// printed is a text of any width.
func printed(write func(out *Printed)) []byte {
	var out Printed
	write(&out)
	return out.Wrapped()
}

// level shows a text at a level in its color, where there is any.
func (p *Printed) level(l Level, text string) string {
	if p.Paint == nil || l == "" {
		return text
	}
	return p.Paint(l, text)
}

// Paragraph writes a text whose lines all begin at the left.
func (p *Printed) Paragraph(text string) { p.say("", text) }

// say writes a paragraph at a level, with a mark where that is bad.
func (p *Printed) say(l Level, text string) {
	if l == Bad {
		text = badMark + text
	}
	for _, line := range wrap(p.Width, text) {
		fmt.Fprintln(p, p.level(l, strings.TrimPrefix(line, setIn)))
	}
}

// setIn is how far what goes on after a line is set in.
const setIn = "  "

// Wrapped is the text in lines no longer than the width: what goes on is set in by two more
// than its line. A word alone may be longer, as the path of a file is.
func (p *Printed) Wrapped() []byte {
	if p.Width == 0 {
		return p.Bytes()
	}
	var out bytes.Buffer
	text := strings.TrimSuffix(p.String(), "\n")
	if text == "" {
		return nil
	}
	for _, line := range strings.Split(text, "\n") {
		for _, l := range wrap(p.Width, line) {
			out.WriteString(l + "\n")
		}
	}
	return out.Bytes()
}

// wrap breaks a line at spaces.
func wrap(width int, line string) (lines []string) {
	if width == 0 || shown(line) <= width {
		return []string{line}
	}
	indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
	more, now := indent+setIn, ""
	for i, word := range strings.Fields(line) {
		switch {
		case i == 0:
			now = indent + word
		case shown(now)+1+shown(word) > width:
			lines = append(lines, now)
			now = more + word
		default:
			now += " " + word
		}
	}
	return append(lines, now)
}

// shown is how many columns a text takes on a screen, without what colors it.
func shown(s string) int {
	n := utf8.RuneCountInString(s)
	for from := 0; ; {
		at := strings.Index(s[from:], "\x1b[")
		if at < 0 {
			return n
		}
		end := strings.IndexByte(s[from+at:], 'm')
		if end < 0 {
			return n
		}
		n -= end + 1
		from += at + end + 1
	}
}
