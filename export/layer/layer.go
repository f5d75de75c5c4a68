// Package layer has what the layers of all drawings have in common: the names of those
// that are not cut, a color for each operation, and how lengths and names are written
// into the names of the others.
package layer

import (
	"strings"
	"unicode"

	"drawerwright/geom"
)

// Layers that are not cut.
const (
	Label = "LABEL" // words, in single strokes
	Blank = "BLANK" // the piece that a part is cut from, its datum, and what is there to line up with
	// Outline is that of parts where it is not cut from this face.
	Outline = "OUTLINE"
	Scale   = "SCALE" // a square to measure, see Square
	Sheet   = "SHEET" // the outline of the sheet that parts are cut from
	Tabs    = "TABS"  // where tabs are to stand, for programs that make their own
)

// NotCut are all of them, with that which every DXF has.
var NotCut = []string{Label, Blank, Outline, Scale, Sheet, Tabs, "0"}

// Square is the side of the square on Scale, by which a shop sees whether a drawing or a
// print is true to size before it is used: 100 mm or 4 in, in that unit.
func Square(u geom.Unit) float64 {
	if u == geom.Inch {
		return 4
	}
	return 100
}

// colors are index numbers of the DXF Reference (group code 62), the same for an
// operation or a layer in all files.
var colors = map[string]int{
	"register": 6, "drill": 5, "mortise": 210, "dado": 3, "groove": 4, "rabbet": 40, "flank": 34, "cutout": 30,
	"profile": 1, "slot": 20, "engrave": 140,
	Label: 8, Blank: 253, Outline: 254, Scale: 9, Sheet: 252, Tabs: 2,
}

// Color of an operation's layers, or of a layer that is not cut.
func Color(of string) int {
	if c, known := colors[of]; known {
		return c
	}
	return 7 // black or white, whichever is seen
}

// Number is a length in a layer's name: two decimals of a millimeter or four of an inch
// and the unit, a dash for the point, as the oldest readers take no other sign.
func Number(mm float64, u geom.Unit) string {
	return strings.Replace(geom.LengthOf(mm).Fine(u), ".", "-", 1) + strings.ToUpper(u.String())
}

// Word makes text fit for a layer's name: capitals, digits and dashes.
func Word(text string) string { return strings.ToUpper(Plain(text)) }

// Plain is text in the letters a to z, digits and single hyphens between them: accents
// are dropped, everything else becomes a hyphen. It is empty where nothing is left.
func Plain(text string) string {
	var b strings.Builder
	gap := false
	for _, c := range strings.ToLower(text) {
		safe := baseLetters[c]
		if 'a' <= c && c <= 'z' || '0' <= c && c <= '9' {
			safe = string(c)
		}
		switch {
		case unicode.IsMark(c): // an accent written as a character of its own
			continue
		case safe == "":
			gap = true
			continue
		case gap && b.Len() > 0:
			b.WriteByte('-')
		}
		gap = false
		b.WriteString(safe)
	}
	return b.String()
}

// baseLetters are the plain letters under those that Latin scripts add.
var baseLetters = func() map[rune]string {
	table := map[rune]string{'ß': "ss", 'æ': "ae", 'œ': "oe", 'þ': "th"}
	for base, accented := range map[string]string{
		"a": "àáâãäåāăą", "c": "çćĉċč", "d": "ďđð", "e": "èéêëēĕėęě", "g": "ĝğġģ", "h": "ĥħ", "i": "ìíîïĩīĭįı",
		"j": "ĵ", "k": "ķ", "l": "ĺļľŀł", "n": "ñńņňŋ", "o": "òóôõöøōŏő", "r": "ŕŗř", "s": "śŝşšș", "t": "ţťŧț",
		"u": "ùúûüũūŭůűų", "w": "ŵẁẃẅ", "y": "ýÿŷ", "z": "źżž",
	} {
		for _, c := range accented {
			table[c] = base
		}
	}
	return table
}()
