package job

import (
	"fmt"
	"io"
	"strings"

	"drawerwright/geom"
)

// Part is a piece of a printed problem that a terminal may show in a color.
type Part int

const (
	PartPlace   Part = iota // file:line:column
	PartError               // the word "error"
	PartWarning             // the word "warning"
	PartCaret               // the mark under the excerpt
	PartHint                // the line that says what would do
	PartNote                // the word "note"
)

// Paint wraps a piece of text in the color of its part. A nil Paint leaves
// everything plain.
type Paint func(part Part, text string) string

// String is the problem as plain text.
func (p Problem) String() string { return p.Format(nil) }

// Format is the problem as lines of text, each with its newline: the place
// and the message, the excerpt with a caret under the place, and the hint.
func (p Problem) Format(paint Paint) string {
	if paint == nil {
		paint = func(_ Part, text string) string { return text }
	}
	part := map[geom.Level]Part{geom.LevelNote: PartNote, geom.LevelWarning: PartWarning, geom.LevelError: PartError}[p.Level]
	word := paint(part, p.Level.String())
	var b strings.Builder
	place := fmt.Sprintf("%s:%d:%d:", printable(p.File), p.Line, p.Column)
	fmt.Fprintf(&b, "%s %s: %s\n", paint(PartPlace, place), word, p.Message)
	if p.Excerpt != "" {
		fmt.Fprintf(&b, "  %s\n  %s%s\n", p.Excerpt, strings.Repeat(" ", p.Caret), paint(PartCaret, "^"))
	}
	if p.Hint != "" {
		fmt.Fprintf(&b, "  %s\n", paint(PartHint, "hint: "+p.Hint))
	}
	return b.String()
}

// Print writes the problems, the first 50 of them in full.
func (ps Problems) Print(w io.Writer, paint Paint) error {
	for _, p := range ps[:min(len(ps), maxPrinted)] {
		if _, err := io.WriteString(w, p.Format(paint)); err != nil {
			return err
		}
	}
	rest := len(ps) - maxPrinted
	if rest <= 0 {
		return nil
	}
	least := ""
	if len(ps) >= MaxProblems {
		least = "at least "
	}
	_, err := fmt.Fprintf(w, "and %s%d more\n", least, rest)
	return err
}
