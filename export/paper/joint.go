package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Piece is a panel in its place in the box.
type Piece struct {
	Panel geom.Panel
	At    geom.Placement
}

// Axis of a box, across which a section is taken.
type Axis uint8

const (
	AcrossX Axis = iota // seen from the right: Y runs to the right and Z up
	AcrossZ             // seen from above: X runs to the right and Y up
)

// Joint draws what a plane shows of pieces that it cuts through, within a window in
// the plane's coordinates, in mm, at a scale. Neighboring pieces are hatched in
// different directions; gaps show as wide as they are.
func Joint(pieces []Piece, axis Axis, at float64, window geom.Rect, scale float64) drawing.Drawing {
	d := drawing.Drawing{Width: scale * window.Width(), Height: scale * window.Height()}
	n := 0
	for _, p := range pieces {
		rings := p.cut(axis, at)
		shown := false
		for _, l := range rings {
			l = l.ClipTo(window)
			if math.Abs(l.Area()) < chord*chord {
				continue
			}
			shown = true
			put := func(q geom.Point) geom.Point { return q.Sub(window.Min).Scale(scale) }
			outlined(&d, l, window, put, n%2 == 1)
		}
		if shown {
			n++
		}
	}
	return d
}

// cut gives the outlines of what a plane cuts of a piece; none of one that lies in
// the plane.
func (p Piece) cut(axis Axis, at float64) (rings []geom.Ring) {
	part := func(v geom.Vec3) float64 {
		if axis == AcrossX {
			return v.X
		}
		return v.Z
	}
	x, y := part(p.At.X), part(p.At.Y)
	if x == 0 && y == 0 {
		return nil
	}
	along := geom.AlongX
	if x != 0 {
		along = geom.AlongY
	}
	line := (at - part(p.At.Origin)) * (x + y) // one of them is 1 or -1, the other 0
	for _, l := range profiles(p.Panel.SectionLines(chord).At(along, line).Runs(), p.Panel.Thickness) {
		out := make(geom.Ring, len(l))
		for i, q := range l {
			on := along.At(q.X, line)
			if v := p.At.Apply(geom.Vec3{X: on.X, Y: on.Y, Z: q.Y}); axis == AcrossX {
				out[i] = geom.Point{X: v.Y, Y: v.Z}
			} else {
				out[i] = geom.Point{X: v.X, Y: v.Y}
			}
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
