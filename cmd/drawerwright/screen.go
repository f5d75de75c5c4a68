package main

import (
	"os"
	"strconv"

	"drawerwright/cmd/internal/present"

	"github.com/spf13/cobra"
	"golang.org/x/term"
)

// allFlag adds the flag that prints more than one screen.
func allFlag(c *cobra.Command, all *bool) {
	c.Flags().BoolVar(all, "all", false, "print all of it on a terminal, not one screen")
}

// show prints what a command has to say, to standard output.
func (s streams) show(what present.Screen) error {
	_, err := s.out.Write(what.Text(sizeOf(s.out), painter(s.out)))
	return err
}

// narrowest is the least width that tables are laid out for.
const narrowest = 40

// sizeOf is that of a stream's screen, or the usual one. A stream that is no terminal takes any
// number of lines: who writes to a file wants all of it. COLUMNS and LINES, where they are numbers,
// say how wide and high any stream is.
func sizeOf(w any) present.Size {
	size := present.UsualSize
	if !terminal(w) {
		size.Height = 0
	}
	if f, ok := unwatched(w).(*os.File); ok {
		if width, height, err := term.GetSize(int(f.Fd())); err == nil && width > 0 && height > 0 {
			size = present.Size{Width: width, Height: height}
		}
	}
	for name, to := range map[string]*int{"COLUMNS": &size.Width, "LINES": &size.Height} {
		if n, err := strconv.Atoi(os.Getenv(name)); err == nil && n > 0 {
			*to = n
		}
	}
	size.Width = max(size.Width, narrowest)
	return size
}

// wrapped is how wide messages with places are: as wide as a screen, and of any width where
// programs look for them.
func wrapped(w any) int {
	if terminal(w) || os.Getenv("COLUMNS") != "" {
		return sizeOf(w).Width
	}
	return 0
}

// painter colors what is good green and what is bad red on a screen that wants color
// (ECMA-48, SGR: 1 bold, 31 red, 32 green).
func painter(w any) func(present.Level, string) string {
	if !color(w) {
		return nil
	}
	return func(l present.Level, text string) string {
		code := map[present.Level]string{present.Good: "32", present.Bad: "1;31"}[l]
		if code == "" {
			return text
		}
		return "\x1b[" + code + "m" + text + "\x1b[0m"
	}
}
