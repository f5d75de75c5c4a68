package dxf

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"
)

// commentWidth is how long a comment line gets, in bytes, before it is carried
// on in the next: 255 is the longest line that an old reader has to take.
const commentWidth = 250

// comments writes what the unit is and the drawing's comments, each as groups
// 999, which every reader skips.
func comments(t *tags, unit Unit, lines []string) {
	name := "millimeters"
	if unit == Inch {
		name = "inches"
	}
	t.str(999, "Units: "+name)
	for _, line := range lines {
		for _, part := range commentLines(line) {
			t.str(999, part)
		}
	}
}

// commentLines makes a text safe for a file of one byte a character: a run of
// spaces and control characters (so line ends too) becomes one space, and a
// character beyond ASCII its escape, \U+ and four hexadecimal figures (values from memory). An empty
// comment gives no line.
func commentLines(text string) []string {
	var lines []string
	var line strings.Builder
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }) {
		for i, piece := range escape(word) {
			if i == 0 && line.Len() > 0 {
				piece = " " + piece
			}
			if line.Len()+len(piece) > commentWidth {
				lines = append(lines, line.String())
				line.Reset()
				piece = strings.TrimPrefix(piece, " ")
			}
			line.WriteString(piece)
		}
	}
	if line.Len() > 0 {
		lines = append(lines, line.String())
	}
	return lines
}

// escape gives a word's characters, or its whole where that is plain and short.
func escape(word string) []string {
	plain := len(word) < commentWidth // with the space before it
	for i := range len(word) {
		plain = plain && word[i] < 0x80
	}
	if plain {
		return []string{word}
	}
	var pieces []string
	for _, r := range word {
		if r < 0x80 {
			pieces = append(pieces, string(r))
			continue
		}
		piece := ""
		for _, unit := range utf16.Encode([]rune{r}) {
			piece += fmt.Sprintf(`\U+%04X`, unit)
		}
		pieces = append(pieces, piece)
	}
	return pieces
}
