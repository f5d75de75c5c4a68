// Package stroke draws letters as single strokes, for a pen, a laser or an
// engraving bit to follow, because many readers of drawings drop text.
//
// [Text] gives the strokes of a line of text, [Width] its length.
package stroke

import (
	"math"
	"strings"
	"sync"
	"unicode"
)

// Point is a point of a stroke, in the unit of the height that was asked for:
// x from the start of the text to the right, y up from the baseline.
type Point struct{ X, Y float64 }

// capUnits is the height of a capital, and of every glyph's box, in units of
// the grid that glyphs are drawn on.
const capUnits = 12

// gapUnits is the room between two glyphs. At a quarter of the height a bit up
// to a tenth of the height wide leaves neighbors apart.
const gapUnits = 3

// Text gives the strokes of a line of text, glyph by glyph from the left. Each
// is a polyline of two points or more, never closed by itself: a round one ends
// where it began. The baseline is y = 0, the text begins at x = 0, capitals and
// figures are height tall, and nothing reaches above or below them. Small
// letters are drawn as capitals; a character without a glyph is drawn as a box,
// so that it is missed. A height that is not a number above 0 gives no strokes.
func Text(s string, height float64) [][]Point {
	if !drawable(height) {
		return nil
	}
	lines, points := 0, 0
	for _, r := range s {
		g := find(r)
		lines, points = lines+len(g.lines()), points+len(g.strokes)/pointText+1
	}
	strokes, list := make([][]Point, 0, lines), make([]Point, 0, points)
	pen := 0
	for _, r := range s {
		g := find(r)
		for _, line := range g.lines() {
			from := len(list)
			for _, p := range line {
				list = append(list, Point{float64(pen+p.x) / capUnits * height, float64(p.y) / capUnits * height})
			}
			strokes = append(strokes, list[from:len(list):len(list)])
		}
		pen += g.width + gapUnits
	}
	return strokes
}

// units are a point of a glyph.
type units struct{ x, y int }

// pointText is how long a point and what parts it from the next are in a glyph.
const pointText = 3

// read has the strokes of the glyphs that were drawn, by their texts.
var read sync.Map

// lines are the glyph's strokes.
func (g glyph) lines() [][]units {
	if known, ok := read.Load(g.strokes); ok {
		return known.([][]units)
	}
	var lines [][]units
	for part := range strings.SplitSeq(g.strokes, "|") {
		var line []units
		for at := range strings.FieldsSeq(part) {
			x, y := place(at)
			line = append(line, units{x, y})
		}
		if len(line) > 0 {
			lines = append(lines, line)
		}
	}
	read.Store(g.strokes, lines)
	return lines
}

// Set draws a line of text that begins at x, y, stroke by stroke: a round stroke
// without its last point, as closed.
func Set(s string, height, x, y float64, draw func(line []Point, closed bool)) {
	for _, line := range Text(s, height) {
		closed := len(line) > 2 && line[0] == line[len(line)-1]
		if closed {
			line = line[:len(line)-1]
		}
		for i := range line {
			line[i].X += x
			line[i].Y += y
		}
		draw(line, closed)
	}
}

// Width gives the length of a line of text from x = 0 to the end of its last
// glyph's box, in the unit of the height. An empty text, or a height that Text
// does not draw, is 0 long. Two texts set in one line are longer than the sum of
// their widths by the gap between two glyphs, a quarter of the height.
func Width(s string, height float64) float64 {
	if !drawable(height) || s == "" {
		return 0
	}
	units := -gapUnits
	for _, r := range s {
		units += find(r).width + gapUnits
	}
	return float64(units) / capUnits * height
}

func drawable(height float64) bool { return height > 0 && !math.IsInf(height, 0) }

// find gives the glyph of a character.
func find(r rune) glyph {
	if g, ok := glyphs[unicode.ToUpper(r)]; ok {
		return g
	}
	return unknown
}

// place reads a point of a glyph: two hexadecimal figures, x and y in units.
func place(at string) (x, y int) { return figure(at[0]), figure(at[1]) }

func figure(c byte) int {
	if c >= 'a' {
		return int(c-'a') + 10
	}
	return int(c - '0')
}

// Open gives the strokes of a line of text that is 1 high, and its length, for a bit that
// follows them: a round stroke is two, so that each is open.
func Open(s string) (lines [][]Point, wide float64) {
	for _, line := range Text(s, 1) {
		if n := len(line); n > 2 && line[0] == line[n-1] {
			lines = append(lines, line[:n/2+1], line[n/2:])
			continue
		}
		lines = append(lines, line)
	}
	return lines, Width(s, 1)
}
