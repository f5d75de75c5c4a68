package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Hold is how a part is held for a cut.
type Hold uint8

const (
	Flat  Hold = iota // on the table, an end or an edge against the fence
	AtEnd             // on the table, the cutter partly buried in a sacrificial fence
	OnEnd             // stood on end or edge, a face against the fence
	OnJig             // stood on end against a finger jig, a face to the operator
)

// Cut is a cut at a saw or a router table, in mm.
type Cut struct {
	Hold      Hold
	Cutter    float64 // its width
	Height    float64 // over the table
	Fence     float64 // from its face to the near side of the cutter; below 0 as much of it is buried there
	Thickness float64 // of the part
}

// Measures of the drawing, in mm of the machine: what is shown to the left of the
// cutter and of a part's length, how far the fence and a stood part reach up.
const (
	shownLeft = 38.0
	tallFence = 34.0
	lowFence  = 18.0
	fenceDeep = 12.0
	tableDeep = 5.0
)

var (
	tableInk = drawing.Ink(0.25)
	fenceInk = drawing.Ink(0.15)
	steel    = drawing.Ink(0.75)
)

// Operator draws a cut as the operator sees it who feeds away from himself, the
// fence at his right: table, cutter, fence and part, with the distances to set.
func Operator(c Cut, number Number) drawing.Drawing {
	const scale = 1.5
	var d drawing.Drawing
	// The near side of the cutter is at 0, the fence's face right of it. Buried in a
	// sacrificial fence the cutter reaches into that.
	face := c.Fence
	if c.Hold == OnJig {
		face = 14
	}
	low, high := -max(shownLeft, c.Cutter+12), max(face, 0)+fenceDeep
	box := func(pen drawing.Pen, fill drawing.Ink, x0, y0, x1, y1 float64) {
		d.Loops(pen, fill, geom.Rectangle(x0, y0, x1, y1))
	}
	tall := max(tallFence, c.Height+12)
	if c.Hold == Flat || c.Hold == AtEnd {
		tall = max(lowFence, c.Thickness+4)
	}
	box(drawing.Medium, tableInk, low, -tableDeep, high, 0)
	if c.Hold != OnJig {
		box(drawing.Medium, fenceInk, face, 0, high, tall)
	}
	part := func(l geom.Loop) {
		hatch(&d, l, false)
		d.Loops(drawing.Thick, 0, l)
	}
	t := c.Thickness
	cutter := geom.Rectangle(-c.Cutter, -tableDeep, 0, c.Height)
	switch c.Hold {
	case Flat:
		// The wood is open towards the left, where it goes on.
		part(notched(low+2, face, t, -c.Cutter, 0, c.Height))
	case AtEnd:
		part(notched(low+2, face, t, -c.Cutter, face, c.Height))
	case OnEnd:
		part(notched(face-t, face, tall, -c.Cutter, min(0, face), c.Height))
	case OnJig:
		part(notched(low+4, 10, tall, -c.Cutter, 0, c.Height))
	}
	d.Loops(drawing.Medium, steel, cutter)
	out := drawing.Drawing{Width: scale*(high-low) + 12, Height: scale*(tall+tableDeep) + 16}
	at := func(x, y float64) geom.Point { return geom.Point{X: scale * (x - low), Y: 16 + scale*(y+tableDeep)} }
	out.Add(d, at(0, 0), scale)
	// Sizes below the table, each in a row of its own, and the height beside the cutter.
	switch c.Hold {
	case OnJig:
	case AtEnd:
		row(&out, at(-c.Cutter, -tableDeep), at(face, -tableDeep), 5, "out of the fence "+number(c.Cutter+c.Fence))
	default:
		row(&out, at(0, -tableDeep), at(face, -tableDeep), 5, "fence "+number(c.Fence))
	}
	row(&out, at(-c.Cutter, -tableDeep), at(0, -tableDeep), 11, "cutter "+number(c.Cutter))
	left := at(-c.Cutter-6, 0)
	top := at(-c.Cutter-6, c.Height)
	out.Line(drawing.Thin, at(-c.Cutter, c.Height), geom.Point{X: left.X - 1, Y: top.Y})
	arrow(&out, left, top)
	label := drawing.Text{String: "height " + number(c.Height), Size: numeral, Align: drawing.Right, Value: true, At: geom.Point{X: left.X - 2, Y: (left.Y+top.Y)/2 - numeral/3}}
	// Where the part covers that place the words stand on white.
	b := label.Box()
	out.Loops(drawing.Pen{}, drawing.White, geom.Rectangle(b.Min.X-0.5, b.Min.Y-0.3, b.Max.X+0.5, b.Max.Y+0.3))
	out.Write(label)
	return out
}

// notched is a part from x0 to x1 and up to y1 with a cut from below.
func notched(x0, x1, y1, from, to, height float64) geom.Loop {
	from, to = max(from, x0), min(to, x1)
	switch {
	case from >= to || height <= 0 || height >= y1:
		return geom.Rectangle(x0, 0, x1, y1)
	case to >= x1:
		return geom.Polygon(geom.Point{X: x0}, geom.Point{X: from}, geom.Point{X: from, Y: height}, geom.Point{X: x1, Y: height}, geom.Point{X: x1, Y: y1}, geom.Point{X: x0, Y: y1})
	case from <= x0:
		return geom.Polygon(geom.Point{X: x0, Y: height}, geom.Point{X: to, Y: height}, geom.Point{X: to}, geom.Point{X: x1}, geom.Point{X: x1, Y: y1}, geom.Point{X: x0, Y: y1})
	}
	return geom.Polygon(geom.Point{X: x0}, geom.Point{X: from}, geom.Point{X: from, Y: height}, geom.Point{X: to, Y: height}, geom.Point{X: to}, geom.Point{X: x1}, geom.Point{X: x1, Y: y1}, geom.Point{X: x0, Y: y1})
}

// row writes a dimension between two places of an edge, so far below it, the words
// to the right of it.
func row(d *drawing.Drawing, a, b geom.Point, down float64, words string) {
	y := a.Y - down
	for _, p := range []geom.Point{a, b} {
		d.Line(drawing.Thin, geom.Point{X: p.X, Y: p.Y - 0.8}, geom.Point{X: p.X, Y: y - 1})
	}
	p, q := geom.Point{X: a.X, Y: y}, geom.Point{X: b.X, Y: y}
	arrow(d, p, q)
	d.Write(drawing.Text{String: words, At: geom.Point{X: max(p.X, q.X) + 2, Y: y - numeral/3}, Size: numeral, Value: true})
}

// arrow draws a line with a stroke across at both ends, as joiners do.
func arrow(d *drawing.Drawing, a, b geom.Point) {
	d.Line(drawing.Thin, a, b)
	const tick = 0.8
	for _, p := range []geom.Point{a, b} {
		d.Line(drawing.Medium, geom.Point{X: p.X - tick, Y: p.Y - tick}, geom.Point{X: p.X + tick, Y: p.Y + tick})
	}
}
