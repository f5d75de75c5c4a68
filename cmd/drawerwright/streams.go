package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// streams are where a command reads and writes.
type streams struct {
	in  io.Reader
	out io.Writer
	err io.Writer
}

// terminal tells whether a stream is a person's screen.
func terminal(w any) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// colour tells whether a stream wants colour: a screen, and no NO_COLOR
// (no-color.org: set and not empty).
func colour(w any) bool { return terminal(w) && os.Getenv("NO_COLOR") == "" }

// table writes rows in columns two spaces apart; columns whose head begins with
// ">" are flush right.
func table(w io.Writer, head []string, rows [][]string) error {
	width := make([]int, len(head))
	right := make([]bool, len(head))
	titles := make([]string, len(head))
	for i, h := range head {
		titles[i], right[i] = strings.CutPrefix(h, ">")
	}
	all := append([][]string{titles}, rows...)
	for _, row := range all {
		for i, cell := range row {
			width[i] = max(width[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range all {
		line := ""
		for i, cell := range row {
			pad := strings.Repeat(" ", width[i]-utf8.RuneCountInString(cell))
			if right[i] {
				cell = pad + cell
			} else {
				cell += pad
			}
			line += cell + "  "
		}
		if _, err := fmt.Fprintln(w, strings.TrimRight(line, " ")); err != nil {
			return err
		}
	}
	return nil
}
