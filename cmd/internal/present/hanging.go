package present

import (
	"bufio"
	"bytes"
	"io"
	"strings"
	"unicode/utf8"
)

// hangingWidth is how long a line of a file of text is at most; hangingIndent is how far what goes on of it is set
// in, which no line of its own is.
const (
	hangingWidth  = 120
	hangingIndent = "        "
)

// hanging writes a text, and breaks those of its lines that are too long at blanks, and loses none of them: what goes
// on, after the blank at which it was broken, stands behind [hangingIndent]. A word alone may be longer.
func hanging(w io.Writer, text []byte) error {
	out := bufio.NewWriter(w)
	for of := range bytes.Lines(text) {
		line := string(of)
		for begun := ""; ; begun = hangingIndent {
			at := foldAt(line, hangingWidth-len(begun))
			if at < 0 {
				out.WriteString(begun + line)
				break
			}
			out.WriteString(begun + line[:at] + "\n")
			line = line[at+1:]
		}
	}
	return out.Flush() // the first error of all the writes above
}

// foldAt is the place of the last blank of a line at which it can be broken within a width, the first
// of several that stand together; -1 where it is short enough, or has none.
func foldAt(line string, width int) int {
	if utf8.RuneCountInString(strings.TrimSuffix(line, "\n")) <= width {
		return -1
	}
	last, wide := -1, 0
	for i, r := range line {
		if wide++; r == ' ' && i > 0 && line[i-1] != ' ' && strings.TrimSpace(line[:i]) != "" &&
			(last < 0 || wide <= width+1) && !inFraction(line[:i], line[i+1:]) {
			last = i
		}
	}
	return last
}

// inFraction reports whether a blank is within a mixed number, as in 17 5/8.
func inFraction(before, after string) bool {
	digit := func(s string) bool { return s != "" && '0' <= s[0] && s[0] <= '9' }
	word, _, _ := strings.Cut(after, " ")
	return digit(before[len(before)-1:]) && digit(word) && strings.Contains(word, "/")
}
