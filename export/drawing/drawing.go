// Package drawing is what a sheet of paper or a screen shows: lines, filled shapes
// and words in millimeters, drawn once and written as SVG, PDF and PNG alike.
//
// A [Drawing] has its origin at the lower left, x to the right and y up, as panels
// have. Everything is in shades of one ink, so that it reads as well from a gray
// printer; an area may have a tint besides, which is that shade to such a printer. Words
// are measured with the very letters that the files carry, the Go fonts
// (golang.org/x/image/font/gofont), so that [Text.Box] tells before printing whether two of
// them run into each other.
package drawing

import (
	"slices"

	"drawerwright/geom"
)

// Ink is how dark something is: 0 is not drawn, 1 is black.
type Ink float64

// White hides what is under it: as good as no ink, but not none.
const White Ink = 1e-6

// Pen draws lines. A Width of 0 draws none. Dash lists, in mm, how long the pen is
// down and up in turn.
type Pen struct {
	Width float64 // mm
	Ink   Ink
	Dash  []float64
}

// Pens of a workshop drawing: wide and narrow lines are two to one, of the series of ISO
// 128-2 (0.18, 0.25, 0.35, 0.5, from memory), and still differ on a gray printer.
var (
	Thick  = Pen{Width: 0.5, Ink: 1}
	Medium = Pen{Width: 0.35, Ink: 1}
	Thin   = Pen{Width: 0.25, Ink: 1}
	Hatch  = Pen{Width: 0.18, Ink: 1}
	Hidden = Pen{Width: 0.25, Ink: 1, Dash: []float64{2, 1}}
	Chain  = Pen{Width: 0.25, Ink: 1, Dash: []float64{6, 1.2, 0.6, 1.2}} // where a plane cuts
)

// Tint is a color of an area in sRGB, 8 bits each.
type Tint [3]uint8

// Ink is how dark a tint is (the luma of ITU-R BT.601).
func (t Tint) Ink() Ink {
	return 1 - Ink(float64(299*int(t[0])+587*int(t[1])+114*int(t[2]))/255000)
}

// Capitals is the size of letters whose capitals and figures are so many mm high.
func Capitals(high float64) float64 { return high / capital }

// capital is how high capitals are, in sizes.
const capital = 0.72

// Shape is one or more chains of straight and arc sides, drawn and filled together;
// what an even number of them covers is not filled.
type Shape struct {
	Paths  [][]geom.Vertex
	Closed bool // the last vertex of each joins the first
	Tag    Tag  // what it belongs to on its page
	Pen    Pen
	Fill   Ink
	Tint   Tint // of the fill where colors are to be had; the zero value is none
	// Group is what the shape belongs to, for machines that take drawings apart;
	// shapes of a group stand one after the other.
	Group string
	// Role is what the shape stands for, in a word, where a page may give it colors of its own.
	Role string
}

// Face is a cut of the letters.
type Face uint8

const (
	Regular Face = iota
	Bold
	Mono
	faces = iota
)

// Align is which end of a text is at its place.
type Align uint8

const (
	Left Align = iota
	Middle
	Right
)

// Text is a line of words on a base line that starts, is centered or ends at a
// place, turned by an angle in quarter turns to the left.
type Text struct {
	String  string
	At      geom.Point
	Size    float64 // of the letters' body, mm; capitals are less, as [Capitals] has it
	Quarter int     // turns, 0 to 3
	Align   Align
	Face    Face
	Tag     Tag // what it belongs to on its page
	Ink     Ink
	// Value is set on the number of a dimension.
	Value bool
	// Role is as that of a [Shape].
	Role string
}

// Drawing is a sheet, Width by Height mm.
type Drawing struct {
	Width, Height float64
	Alt           string // what it shows, in words, for who does not see it; may be empty
	Shapes        []Shape
	Texts         []Text
}

// Line draws an open chain of straight sides; fewer than two points are none.
func (d *Drawing) Line(pen Pen, points ...geom.Point) {
	if len(points) < 2 {
		return
	}
	path := make([]geom.Vertex, len(points))
	for i, p := range points {
		path[i].Point = p
	}
	d.Shapes = append(d.Shapes, Shape{Paths: [][]geom.Vertex{path}, Pen: pen})
}

// Lines draws open chains as one shape, if there are any.
func (d *Drawing) Lines(pen Pen, chains ...[]geom.Vertex) {
	if len(chains) > 0 {
		d.Shapes = append(d.Shapes, Shape{Paths: chains, Pen: pen})
	}
}

// Loops draws closed loops, and fills what is inside an odd number of them.
func (d *Drawing) Loops(pen Pen, fill Ink, loops ...geom.Loop) {
	paths := make([][]geom.Vertex, len(loops))
	for i, l := range loops {
		paths[i] = l
	}
	d.Shapes = append(d.Shapes, Shape{Paths: paths, Closed: true, Pen: pen, Fill: fill})
}

// Area fills what is inside an odd number of loops with a tint.
func (d *Drawing) Area(tint Tint, loops ...geom.Loop) {
	d.Loops(Pen{}, tint.Ink(), loops...)
	d.Shapes[len(d.Shapes)-1].Tint = tint
}

// Write adds a text in black.
func (d *Drawing) Write(t Text) {
	if t.Ink == 0 {
		t.Ink = 1
	}
	if t.String != "" {
		d.Texts = append(d.Texts, t)
	}
}

// Words adds words that begin at a place.
func (d *Drawing) Words(x, y, size float64, face Face, s string) {
	d.Write(Text{String: s, At: geom.Point{X: x, Y: y}, Size: size, Face: face})
}

// Parts of a text's size that letters take above the base line and below it.
const (
	ascent  = 0.76
	descent = 0.21
)

// Box is the rectangle that a text covers.
func (t Text) Box() geom.Rect {
	long := Width(t.Face, t.Size, t.String)
	from := 0.0
	switch t.Align {
	case Middle:
		from = -long / 2
	case Right:
		from = -long
	}
	low, high := -float64(descent*t.Size), float64(ascent*t.Size)
	a, b := t.turned(from, low), t.turned(from+long, high)
	return geom.Around(a, b)
}

// turned is a place x along a text's base line and y above it.
func (t Text) turned(x, y float64) geom.Point {
	switch t.Quarter & 3 {
	case 1:
		x, y = -y, x
	case 2:
		x, y = -x, -y
	case 3:
		x, y = y, -x
	}
	return t.At.Add(geom.Point{X: x, Y: y})
}

// Add puts another drawing into this one, its origin at a place, scaled; pens and
// letters keep their sizes.
func (d *Drawing) Add(other Drawing, at geom.Point, scale float64) {
	d.take(other, 0, func(p geom.Point) geom.Point { return at.Along(p, scale) })
}

// Put is Add, of a drawing that is not used any more: its places are moved where they are, in no other drawing
// and each in one shape.
func (d *Drawing) Put(other Drawing, at geom.Point, scale float64) {
	for _, s := range other.Shapes {
		for _, p := range s.Paths {
			for i := range p {
				p[i].Point = at.Along(p[i].Point, scale)
			}
		}
	}
	for i := range other.Texts {
		other.Texts[i].At = at.Along(other.Texts[i].At, scale)
	}
	d.Shapes, d.Texts = append(d.Shapes, other.Shapes...), append(d.Texts, other.Texts...)
}

// Turned is the drawing turned by a quarter to the left.
func (d Drawing) Turned() Drawing {
	out := Drawing{Width: d.Height, Height: d.Width}
	out.take(d, 1, func(p geom.Point) geom.Point { return geom.Point{X: d.Height - p.Y, Y: p.X} })
	return out
}

// take puts another drawing into this one, its places moved and its texts turned by so
// many quarters.
func (d *Drawing) take(other Drawing, quarters int, place func(geom.Point) geom.Point) {
	chains, corners := 0, 0
	for _, s := range other.Shapes {
		chains += len(s.Paths)
		for _, p := range s.Paths {
			corners += len(p)
		}
	}
	paths, list := make([][]geom.Vertex, 0, chains), make([]geom.Vertex, 0, corners) // of all shapes
	d.Shapes, d.Texts = slices.Grow(d.Shapes, len(other.Shapes)), slices.Grow(d.Texts, len(other.Texts))
	for _, s := range other.Shapes {
		first := len(paths)
		for _, p := range s.Paths {
			from := len(list)
			for _, v := range p {
				list = append(list, geom.Vertex{Point: place(v.Point), Bulge: v.Bulge})
			}
			paths = append(paths, list[from:len(list):len(list)])
		}
		s.Paths = paths[first:len(paths):len(paths)]
		d.Shapes = append(d.Shapes, s)
	}
	for _, t := range other.Texts {
		t.At, t.Quarter = place(t.At), t.Quarter+quarters
		d.Texts = append(d.Texts, t)
	}
}
