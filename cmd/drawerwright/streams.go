package main

import (
	"io"
	"os"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/term"
)

// streams are where a command reads and writes.
type streams struct {
	in  io.Reader
	out io.Writer
	err io.Writer
}

// watched keeps the first error of its writer, to which several may write at once.
type watched struct {
	io.Writer
	one    sync.Mutex
	failed error
}

func (w *watched) Write(p []byte) (int, error) {
	w.one.Lock()
	defer w.one.Unlock()
	n, err := w.Writer.Write(p)
	if w.failed == nil {
		w.failed = err
	}
	return n, err
}

// plain makes text with names from outside safe for a terminal: control
// characters, but for line ends, become question marks.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\t' {
			return ' '
		}
		if r != '\n' && !unicode.IsPrint(r) {
			return '?'
		}
		return r
	}, s)
}

// unwatched is the stream that a program was given.
func unwatched(w any) any {
	if seen, ok := w.(*watched); ok {
		return seen.Writer
	}
	return w
}

// terminal reports whether a stream is a person's screen.
func terminal(w any) bool {
	f, ok := unwatched(w).(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// color reports whether a stream wants color: a screen, and no NO_COLOR
// (no-color.org: set and not empty).
func color(w any) bool { return terminal(w) && os.Getenv("NO_COLOR") == "" }
