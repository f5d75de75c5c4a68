package pdf

import (
	"fmt"
	"slices"
	"strings"
)

// Letters are those of a TrueType font.
type Letters struct {
	Name string // that it has in documents
	TTF  []byte
	// Glyph is the number of a letter's shape, 0 where the font has none, and its width in thousandths of
	// the body.
	Glyph func(r rune) (glyph uint16, width float64)
}

// Font is letters in a document. They are coded as UTF-16, so that what is written can be read; letters
// beyond its first plane are boxes.
type Font struct {
	Letters
	name string // in pages
	used [1 << 16 / 64]uint64
}

// Font adds letters to a document.
func (f *File) Font(l Letters) *Font {
	font := &Font{Letters: l, name: fmt.Sprintf("F%d", len(f.fonts)+1)}
	f.fonts = append(f.fonts, font)
	return font
}

func (t *Font) use(code uint16) { t.used[code/64] |= 1 << (code % 64) }

func (t *Font) codes() (list []uint16) {
	for i, bits := range t.used {
		for k := range 64 {
			if bits>>k&1 != 0 {
				list = append(list, uint16(64*i+k))
			}
		}
	}
	return list
}

// letters writes the fonts that pages use, and gives the names under which these know them.
func (f *File) letters() string {
	var names strings.Builder
	for _, font := range f.fonts {
		if codes := font.codes(); len(codes) > 0 {
			fmt.Fprintf(&names, "/%s %d 0 R ", font.name, f.font(font, codes))
		}
	}
	return names.String()
}

// font writes one (9.7), and gives the number of its object.
func (f *File) font(t *Font, codes []uint16) int {
	var widths strings.Builder
	glyphs := []uint16{0}
	toGlyph := make([]byte, 2*(int(codes[len(codes)-1])+1))
	for _, code := range codes {
		glyph, width := t.Glyph(rune(code))
		glyphs = append(glyphs, glyph)
		toGlyph[2*int(code)], toGlyph[2*int(code)+1] = byte(glyph>>8), byte(glyph)
		fmt.Fprintf(&widths, "%d [%.0f] ", code, width)
	}
	cut := truetype(t.TTF)
	data := cut.with(glyphs)
	m := cut.measures()
	name := "LETTER+" + t.Name // six capitals say that it is a part of a font: 9.6.4
	file, codeMap, unicode, descriptor, below, font := f.next(), f.next(), f.next(), f.next(), f.next(), f.next()
	f.stream(file, data, fmt.Sprintf(" /Length1 %d", len(data)))
	f.stream(codeMap, toGlyph, "")
	f.stream(unicode, toUnicode(codes), "")
	f.object(descriptor, "<</Type /FontDescriptor /FontName /%s /Flags 4 /FontBBox [%d %d %d %d] /ItalicAngle 0 "+
		"/Ascent %d /Descent %d /CapHeight %d /StemV 80 /FontFile2 %d 0 R>>", name, m.box[0], m.box[1], m.box[2],
		m.box[3], m.ascent, m.descent, m.ascent, file)
	f.object(below, "<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s "+
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> "+
		"/FontDescriptor %d 0 R /DW 1000 /W [%s] "+
		"/CIDToGIDMap %d 0 R>>", name, descriptor, widths.String(), codeMap)
	f.object(font, "<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] "+
		"/ToUnicode %d 0 R>>", name, below, unicode)
	return font
}

// toUnicode says that codes are UTF-16 (9.10.3): those that are used, as none else may be named (A-2, 6.2.11.7.2).
func toUnicode(codes []uint16) []byte {
	out := []byte("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for some := range slices.Chunk(codes, 100) { // which is the most that one list may have
		out = fmt.Appendf(out, "%d beginbfchar\n", len(some))
		for _, c := range some {
			out = fmt.Appendf(out, "<%04X> <%04X>\n", c, c)
		}
		out = append(out, "endbfchar\n"...)
	}
	return append(out, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"...)
}
