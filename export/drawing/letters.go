package drawing

import (
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// letters are the fonts' files, by [Face].
var letters = [faces][]byte{Regular: goregular.TTF, Bold: gobold.TTF, Mono: gomono.TTF}

// cut is a font read, with the widths of its letters in its own units.
type cut struct {
	font  *sfnt.Font
	units float64 // of its body
	mu    sync.Mutex
	known map[rune]float64
	buf   sfnt.Buffer
}

var cuts = [faces]func() *cut{Regular: read(Regular), Bold: read(Bold), Mono: read(Mono)}

// read reads a font when it is first asked for. Those in the binary can be read.
func read(f Face) func() *cut {
	return sync.OnceValue(func() *cut {
		parsed, err := sfnt.Parse(letters[f])
		if err != nil {
			panic(err)
		}
		return &cut{font: parsed, units: float64(parsed.UnitsPerEm()), known: make(map[rune]float64)}
	})
}

// Width of a line of text in mm, its letters' body size mm high.
func Width(f Face, size float64, s string) float64 {
	c := cuts[f]()
	c.mu.Lock()
	defer c.mu.Unlock()
	sum := 0.0
	for _, r := range s {
		w, ok := c.known[r]
		if !ok {
			w = c.advance(r)
			c.known[r] = w
		}
		sum += w
	}
	return float64(sum*size) / c.units
}

// advance is the width of a letter in the font's units. A letter that it has not
// is drawn as a box, which is as wide as glyph 0.
func (c *cut) advance(r rune) float64 {
	glyph, err := c.font.GlyphIndex(&c.buf, r)
	if err != nil {
		return 0
	}
	w, err := c.font.GlyphAdvance(&c.buf, glyph, fixed.Int26_6(c.font.UnitsPerEm())<<6, font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(w) / 64
}

// glyph is the number of a letter's shape and its width in thousandths of the body.
func (c *cut) glyph(r rune) (glyph uint16, width float64) {
	c.mu.Lock()
	defer c.mu.Unlock()
	n, err := c.font.GlyphIndex(&c.buf, r)
	if err != nil {
		n = 0
	}
	return uint16(n), c.advance(r) * 1000 / c.units
}

// Fit is a text cut short, with dots at its end, so that it is no longer than a
// width in mm.
func Fit(f Face, size, width float64, s string) string {
	if Width(f, size, s) <= width {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n]) + "…"; Width(f, size, short) <= width {
			return short
		}
	}
	return ""
}

// FitMiddle is a text cut short in its middle, for names that differ at their ends.
func FitMiddle(f Face, size, width float64, s string) string {
	if Width(f, size, s) <= width {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n/2]) + "…" + string(runes[len(runes)-(n-n/2):]); Width(f, size, short) <= width {
			return short
		}
	}
	return ""
}

// Missing is the first letter of a text that the printed letters lack; ok is false
// where they have all.
func Missing(s string) (r rune, ok bool) {
	c := cuts[Regular]()
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, r := range s {
		if g, err := c.font.GlyphIndex(&c.buf, r); err != nil || g == 0 {
			return r, true
		}
	}
	return 0, false
}

// Wrap breaks a text into lines no longer than a width in mm, at blanks; a longer
// word is broken where it must.
func Wrap(f Face, size, width float64, s string) (lines []string) {
	line := ""
	for _, word := range strings.Fields(s) {
		joined := word
		if line != "" {
			joined = line + " " + word
		}
		if Width(f, size, joined) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line = word; line != "" && Width(f, size, line) > width; { // room for nothing takes a letter a line
			n := fitting(f, size, width, line)
			lines = append(lines, line[:n])
			line = line[n:]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// fitting is how many bytes of a word, at least one letter, a width has room for.
func fitting(f Face, size, width float64, word string) int {
	_, n := utf8.DecodeRuneInString(word)
	for end := range word {
		if end > n && Width(f, size, word[:end]) <= width {
			n = end
		}
	}
	return n
}
