package dxf

import (
	"slices"
	"strings"
	"testing"
)

func TestComments(t *testing.T) {
	word := strings.Repeat("w", 200)
	for _, c := range []struct {
		in   string
		want []string
	}{
		{"", nil},
		{" \r\n\t ", nil},
		{"one", []string{"one"}},
		{"one\n0\nEOF\x00\x1b[2J  two\u0085three", []string{"one 0 EOF [2J two three"}},
		{"Füße ½\" 🪚", []string{`F\U+00FC\U+00DFe \U+00BD" \U+D83E\U+DE9A`}},
		{"bad \xff utf", []string{`bad \U+FFFD utf`}},
		{word + " " + word, []string{word, word}},
		{strings.Repeat("x", 600), []string{strings.Repeat("x", 250), strings.Repeat("x", 250), strings.Repeat("x", 100)}},
	} {
		got := commentLines(c.in)
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.in, got, c.want)
		}
	}
}
