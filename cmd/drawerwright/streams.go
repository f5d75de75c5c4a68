package main

import (
	"io"
	"os"

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
