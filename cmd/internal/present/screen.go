package present

import (
	"bytes"
	"fmt"
	"strings"
)

// Screen is what a command prints on a terminal: the answer first, at most a screen of what
// matters most below it, and how to see the rest.
type Screen struct {
	Head []Line
	// Brief is what matters most, Whole all of it. Without a Brief the first screen of Whole is
	// shown.
	Brief, Whole func(out *Printed)
	All          bool   // is asked for
	More         string // the command that shows all of it
}

// Line is a line at a level.
type Line struct {
	Level Level
	Text  string
}

// Size is how many columns and lines a terminal has; no Height is one without end.
type Size struct{ Width, Height int }

// UsualSize is that of a terminal that does not tell.
var UsualSize = Size{Width: 80, Height: 24}

// Text is what is printed on a terminal of a size. paint colors what has a level; nil where
// there is no color.
func (s Screen) Text(size Size, paint func(Level, string) string) []byte {
	page := func() *Printed { return &Printed{Width: size.Width, Paint: paint} }
	out := page()
	for _, l := range s.Head {
		if l.Text != "" {
			out.say(l.Level, l.Text)
		}
	}
	all := s.All || size.Height == 0
	write := s.Brief
	if all || write == nil {
		write = s.Whole
	}
	body := page()
	if write != nil {
		write(body)
	}
	lines := strings.Split(strings.Trim(string(body.Wrapped()), "\n"), "\n")
	// The answer, empty lines about the body, how to see more, and the prompt.
	room := max(1, size.Height-bytes.Count(out.Bytes(), []byte("\n"))-4)
	cut := !all && len(lines) > room
	if cut {
		lines = untorn(lines[:room])
	}
	if len(s.Head) > 0 && lines[0] != "" {
		fmt.Fprintln(out)
	}
	text := strings.TrimRight(strings.Join(lines, "\n"), "\n")
	if text != "" {
		out.WriteString(text + "\n")
	}
	if !all && s.More != "" && (cut || s.Brief != nil) {
		fmt.Fprintf(out, "\nmore: %s\n", s.More)
	}
	return out.Bytes()
}

// tornLines is how many lines at the end of a screen are a table or a paragraph of which too little
// is to be seen.
const tornLines = 4

// untorn is a screen that does not end with the mere beginning of a table or a paragraph.
func untorn(lines []string) []string {
	for n := len(lines); n > max(0, len(lines)-tornLines); n-- {
		if n > 1 && lines[n-1] == "" {
			return lines[:n-1]
		}
	}
	return lines
}
