package pdf

import (
	"encoding/binary"
	"slices"
)

// truetype is a font file by its published layout (OpenType 1.9, "Font file", "loca", "glyf").
type truetype []byte

var big = binary.BigEndian

// table is one of the file's; none is empty.
func (t truetype) table(tag string) []byte {
	for i := range int(big.Uint16(t[4:])) {
		if entry := t[12+16*i:]; string(entry[:4]) == tag {
			from := big.Uint32(entry[8:])
			return t[from : from+big.Uint32(entry[12:])]
		}
	}
	return nil
}

// measures are what a document says of letters, in thousandths of their body.
type measures struct {
	box             [4]int
	ascent, descent int
}

func (t truetype) measures() (m measures) {
	head, hhea := t.table("head"), t.table("hhea")
	signed := func(b []byte) int { return int(int16(big.Uint16(b))) * 1000 / int(big.Uint16(head[18:])) }
	for i := range m.box {
		m.box[i] = signed(head[36+2*i:])
	}
	m.ascent, m.descent = signed(hhea[4:]), signed(hhea[6:])
	return m
}

// glyph is the outline of a letter.
func (t truetype) glyph(n uint16) []byte {
	loca, glyf := t.table("loca"), t.table("glyf")
	if big.Uint16(t.table("head")[50:]) == 0 { // halves, in two bytes each
		return glyf[2*int(big.Uint16(loca[2*int(n):])) : 2*int(big.Uint16(loca[2*int(n)+2:]))]
	}
	return glyf[big.Uint32(loca[4*int(n):]):big.Uint32(loca[4*int(n)+4:])]
}

// parts are the letters of which one is put together, as accented ones are.
func (t truetype) parts(n uint16) (list []uint16) {
	g := t.glyph(n)
	if len(g) < 10 || int16(big.Uint16(g)) >= 0 {
		return nil
	}
	const words, scale, more, scales, matrix = 1, 1 << 3, 1 << 5, 1 << 6, 1 << 7
	for g = g[10:]; ; {
		flags := big.Uint16(g)
		list = append(list, big.Uint16(g[2:]))
		skip := 6
		if flags&words != 0 {
			skip += 2
		}
		switch {
		case flags&scale != 0:
			skip += 2
		case flags&scales != 0:
			skip += 4
		case flags&matrix != 0:
			skip += 8
		}
		if flags&more == 0 {
			return list
		}
		g = g[skip:]
	}
}

// with is the font with the outlines of some letters alone, which keep their numbers.
func (t truetype) with(glyphs []uint16) []byte {
	kept := make([]bool, big.Uint16(t.table("maxp")[4:]))
	for todo := slices.Clone(glyphs); len(todo) > 0; {
		n := todo[len(todo)-1]
		if todo = todo[:len(todo)-1]; int(n) < len(kept) && !kept[n] {
			kept[n] = true
			todo = append(todo, t.parts(n)...)
		}
	}
	var glyf, loca []byte
	for n, keep := range kept {
		loca = big.AppendUint32(loca, uint32(len(glyf)))
		if keep {
			glyf = padded(append(glyf, t.glyph(uint16(n))...))
		}
	}
	loca = big.AppendUint32(loca, uint32(len(glyf)))
	head := slices.Clone(t.table("head"))
	big.PutUint32(head[8:], 0)  // the sum of all, which comes last
	big.PutUint16(head[50:], 1) // places are bytes, in four bytes each
	return assembled([]namedTable{{"cvt ", t.table("cvt ")}, {"fpgm", t.table("fpgm")}, {"glyf", glyf},
		{"head", head}, {"hhea", t.table("hhea")}, {"hmtx", t.table("hmtx")}, {"loca", loca},
		{"maxp", t.table("maxp")}, {"prep", t.table("prep")}})
}

type namedTable struct {
	tag  string
	data []byte
}

// assembled is a font file of tables, in the order of their tags. Those that are empty are left out.
func assembled(tables []namedTable) []byte {
	tables = slices.DeleteFunc(tables, func(t namedTable) bool { return len(t.data) == 0 })
	power, exponent := 1, 0
	for 2*power <= len(tables) {
		power, exponent = 2*power, exponent+1
	}
	out := big.AppendUint32(nil, 0x00010000)
	for _, n := range []int{len(tables), 16 * power, exponent, 16 * (len(tables) - power)} {
		out = big.AppendUint16(out, uint16(n))
	}
	from, head := 12+16*len(tables), 0
	var body []byte
	for _, t := range tables {
		if t.tag == "head" {
			head = from + len(body)
		}
		out = append(out, t.tag...)
		for _, n := range []uint32{sum(t.data), uint32(from + len(body)), uint32(len(t.data))} {
			out = big.AppendUint32(out, n)
		}
		body = padded(append(body, t.data...))
	}
	out = append(out, body...)
	big.PutUint32(out[head+8:], 0xB1B0AFBA-sum(out))
	return out
}

// padded ends on a multiple of four bytes.
func padded(b []byte) []byte {
	for len(b)%4 != 0 {
		b = append(b, 0)
	}
	return b
}

// sum is that of all words of four bytes, zeros after the last.
func sum(b []byte) (n uint32) {
	b = padded(slices.Clone(b))
	for i := 0; i < len(b); i += 4 {
		n += big.Uint32(b[i:])
	}
	return n
}
