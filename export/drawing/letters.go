package drawing

import (
	"cmp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"drawerwright/geom"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// letters are the fonts' files, by [Face].
var letters = [faces][]byte{Regular: goregular.TTF, Bold: gobold.TTF, Mono: gomono.TTF}

// cut is a font read, with the widths of its letters in its own units: those of one byte from the beginning, others
// as they come.
type cut struct {
	font  *sfnt.Font
	units float64 // of its body
	ascii [utf8.RuneSelf]float64
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
		c := &cut{font: parsed, units: float64(parsed.UnitsPerEm()), known: make(map[rune]float64)}
		for b := range c.ascii {
			c.ascii[b] = c.advance(rune(b))
		}
		return c
	})
}

// Width of a line of text in mm, its letters' body size mm high.
func Width(f Face, size float64, s string) float64 {
	c := cuts[f]()
	return float64(c.width(s)*size) / c.units
}

// width of a text in the font's units: they are whole, so that the widths of its parts make up just that of all.
func (c *cut) width(s string) (sum float64) {
	for i, r := range s {
		if r >= utf8.RuneSelf {
			return sum + c.widthBeyond(s[i:])
		}
		sum += c.ascii[r]
	}
	return sum
}

// widthBeyond is width of a text with letters of more than one byte.
func (c *cut) widthBeyond(s string) (sum float64) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, r := range s {
		w, ok := c.known[r]
		if !ok {
			w = c.advance(r)
			c.known[r] = w
		}
		sum += w
	}
	return sum
}

// noLetter is drawn for a letter that a font has not: a document may not show a font's own sign for that.
const noLetter = '\u25A1'

// shape is the number of a letter's shape.
func (c *cut) shape(r rune) sfnt.GlyphIndex {
	n, err := c.font.GlyphIndex(&c.buf, r)
	if err != nil || n == 0 {
		n, _ = c.font.GlyphIndex(&c.buf, noLetter) // which the fonts have
	}
	return n
}

// advance is the width of a letter in the font's units.
func (c *cut) advance(r rune) float64 {
	w, err := c.font.GlyphAdvance(&c.buf, c.shape(r), fixed.Int26_6(c.font.UnitsPerEm())<<6, font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(w) / 64
}

// glyph is the number of a letter's shape and its width in thousandths of the body.
func (c *cut) glyph(r rune) (glyph uint16, width float64) {
	c.mu.Lock()
	defer c.mu.Unlock()
	return uint16(c.shape(r)), c.advance(r) * 1000 / c.units
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

// Broken ends a line that a word is broken at the end of: the soft hyphen, which looks like a hyphen, and which no word
// has of its own, so that words on paper can be read back as they were (ISO 32000-1, 14.8.2.2.3).
const Broken = "\u00ad"

// Wrap breaks a text into lines no longer than a width in mm, at blanks but within a mixed
// number; a longer word is broken where it must, with [Broken] at the end of its lines.
func Wrap(f Face, size, width float64, s string) (lines []string) {
	c := cuts[f]()
	fits := func(wide float64) bool { return float64(wide*size)/c.units <= width }
	if plain(s) && float64(c.width(s)*size)/c.units < width-sumsDiffer { // as most cells of tables
		return []string{s}
	}
	words, from, wide := geom.Words(s), 0, 0.0 // the line has the words from there on, and is so wide
	for i, word := range words {
		long := c.width(word)
		if joined := wide + c.ascii[' '] + long; i > from && fits(joined) {
			wide = joined
			continue
		}
		if i > from {
			lines = append(lines, strings.Join(words[from:i], " "))
		}
		for !fits(long) { // room for nothing takes a letter a line
			if whole, part, mixed := strings.Cut(word, " "); mixed {
				lines, word = append(lines, whole), part
			} else if n := fitting(f, size, width, word); n > 0 {
				lines, word = append(lines, word[:n]+Broken), word[n:]
			} else {
				break // one letter
			}
			long = c.width(word)
		}
		words[i], from, wide = word, i, long
	}
	if from < len(words) {
		lines = append(lines, strings.Join(words[from:], " "))
	}
	return lines
}

// sumsDiffer is more than two sums of the widths of letters differ by, taken in another order, in mm.
const sumsDiffer = 1e-6

// plain reports whether a text has words with one blank between them and nothing else.
func plain(s string) bool {
	before := byte(' ')
	for i := range len(s) {
		if c := s[i]; c < ' ' || c >= utf8.RuneSelf || c == ' ' && before == ' ' {
			return false
		}
		before = s[i]
	}
	return before != ' '
}

// fitting is how many bytes of a word, at least one letter, a width has room for with [Broken] behind them; 0 of a
// single letter. A mark stays with its letter. A hyphen of the word's own begins the next line where it can, so that it
// is not taken for that of the break.
func fitting(f Face, size, width float64, word string) (n int) {
	most := 0
	for end, r := range word {
		if end == 0 || unicode.IsMark(r) {
			continue
		}
		if most > 0 && Width(f, size, word[:end]+Broken) > width {
			break
		}
		if most = end; word[end-1] != '-' {
			n = end
		}
	}
	return cmp.Or(n, most)
}
