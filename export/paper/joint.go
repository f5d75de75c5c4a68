package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Piece is a panel in its place in the box, with its name.
type Piece struct {
	Panel geom.Panel
	At    geom.Placement
	Name  string
}

// Axis of a box, across which a section is taken.
type Axis uint8

const (
	AcrossX Axis = iota // seen from the right: Y runs to the right and Z up
	AcrossZ             // seen from above: X runs to the right and Y up
)

// slice is what a plane shows of a piece: the line across its panel, and where things are.
type slice struct {
	Piece
	axis  Axis
	along geom.Axis
	line  float64 // across the panel
	runs  []geom.Run
}

// cut gives what a plane cuts of a piece; ok is false for one that lies in the plane or off it.
func (p Piece) cut(axis Axis, at float64) (s slice, ok bool) {
	part := func(v geom.Vec3) float64 {
		if axis == AcrossX {
			return v.X
		}
		return v.Z
	}
	x, y := part(p.At.X), part(p.At.Y)
	if x == 0 && y == 0 {
		return s, false
	}
	s = slice{Piece: p, axis: axis, along: geom.AlongX}
	if x != 0 {
		s.along = geom.AlongY
	}
	s.line = (at - part(p.At.Origin)) * (x + y) // one of them is 1 or -1, the other 0
	s.runs = p.Panel.SectionLines(chord).At(s.along, s.line).Runs()
	return s, len(s.runs) > 0
}

// place is where a point of the section is in the plane: along the panel, and above its
// outside face.
func (s slice) place(along, above float64) geom.Point {
	on := s.along.At(along, s.line)
	v := s.At.Apply(geom.Vec3{X: on.X, Y: on.Y, Z: above})
	if s.axis == AcrossX {
		return geom.Point{X: v.Y, Y: v.Z}
	}
	return geom.Point{X: v.X, Y: v.Y}
}

// rings are the outlines of the wood that the plane cuts.
func (s slice) rings() (rings []geom.Ring) {
	for _, l := range profiles(s.runs, s.Panel.Thickness) {
		out := make(geom.Ring, len(l))
		for i, q := range l {
			out[i] = s.place(q.X, q.Y)
		}
		rings = append(rings, out)
	}
	return rings
}

// outlined draws wood that is cut through, in a window, put in its place: hatched, and with
// its outline but for where it goes on beyond the window.
func outlined(d *drawing.Drawing, l geom.Ring, window geom.Rect, put func(geom.Point) geom.Point, falling bool) {
	placed := make(geom.Loop, len(l))
	for i, q := range l {
		placed[i].Point = put(q)
	}
	hatch(d, placed, falling)
	for i := range l {
		if a, b := l[i], l[(i+1)%len(l)]; !border(a, b, window) {
			d.Line(drawing.Thick, placed[i].Point, placed[(i+1)%len(l)].Point)
		}
	}
}

// border reports whether a side lies on the window's edge.
func border(a, b geom.Point, w geom.Rect) bool {
	const on = 1e-9 // mm, rounding
	near := func(p, q, edge float64) bool { return math.Abs(p-edge) < on && math.Abs(q-edge) < on }
	return near(a.X, b.X, w.Min.X) || near(a.X, b.X, w.Max.X) || near(a.Y, b.Y, w.Min.Y) || near(a.Y, b.Y, w.Max.Y)
}
