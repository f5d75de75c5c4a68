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
// the plane's coordinates, in mm, at a scale. Neighbouring pieces are hatched in
// different directions; gaps show as wide as they are.
func Joint(pieces []Piece, axis Axis, at float64, window geom.Rect, scale float64) drawing.Drawing {
	d := drawing.Drawing{Width: scale * window.Width(), Height: scale * window.Height()}
	n := 0
	for _, p := range pieces {
		loops := p.cut(axis, at)
		shown := false
		for _, l := range loops {
			l = clip(l, window)
			if len(l) == 0 {
				continue
			}
			shown = true
			placed := make(geom.Loop, len(l))
			for i, q := range l {
				placed[i].Point = geom.Point{X: scale * (q.X - window.Min.X), Y: scale * (q.Y - window.Min.Y)}
			}
			hatch(&d, placed, n%2 == 1)
			for i := range l {
				if a, b := l[i], l[(i+1)%len(l)]; !border(a.Point, b.Point, window) {
					d.Line(drawing.Thick, placed[i].Point, placed[(i+1)%len(l)].Point)
				}
			}
		}
		if shown {
			n++
		}
	}
	return d
}

// cut gives the outlines of what a plane cuts of a piece; none of one that lies in
// the plane.
func (p Piece) cut(axis Axis, at float64) (loops []geom.Loop) {
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
	upright := x != 0
	line := (at - part(p.At.Origin)) * (x + y) // one of them is 1 or -1, the other 0
	for _, l := range profiles(runsOf(p.Panel, upright, line), p.Panel.Thickness) {
		out := make(geom.Loop, len(l))
		for i, q := range l {
			v := geom.Vec3{X: q.X, Y: line, Z: q.Y}
			if upright {
				v.X, v.Y = line, q.X
			}
			if v = p.At.Apply(v); axis == AcrossX {
				out[i].Point = geom.Point{X: v.Y, Y: v.Z}
			} else {
				out[i].Point = geom.Point{X: v.X, Y: v.Y}
			}
		}
		loops = append(loops, out)
	}
	return loops
}

// clip keeps what is in a window (I. E. Sutherland, G. W. Hodgman, Reentrant polygon
// clipping, 1974). Stretches along the window's edge join what lies apart.
func clip(l geom.Loop, w geom.Rect) geom.Loop {
	for _, side := range []func(geom.Point) float64{
		func(p geom.Point) float64 { return p.X - w.Min.X },
		func(p geom.Point) float64 { return w.Max.X - p.X },
		func(p geom.Point) float64 { return p.Y - w.Min.Y },
		func(p geom.Point) float64 { return w.Max.Y - p.Y },
	} {
		var kept geom.Loop
		for i := range l {
			a, b := l[i].Point, l[(i+1)%len(l)].Point
			da, db := side(a), side(b)
			if da >= 0 {
				kept = append(kept, geom.Vertex{Point: a})
			}
			if (da >= 0) != (db >= 0) {
				t := da / (da - db)
				kept = append(kept, geom.Vertex{Point: geom.Point{X: a.X + float64(t*(b.X-a.X)), Y: a.Y + float64(t*(b.Y-a.Y))}})
			}
		}
		l = kept
	}
	if math.Abs(l.Area()) < chord*chord {
		return nil
	}
	return l
}

// border tells whether a side lies on the window's edge.
func border(a, b geom.Point, w geom.Rect) bool {
	const on = 1e-9 // mm, rounding
	near := func(p, q, edge float64) bool { return math.Abs(p-edge) < on && math.Abs(q-edge) < on }
	return near(a.X, b.X, w.Min.X) || near(a.X, b.X, w.Max.X) || near(a.Y, b.Y, w.Min.Y) || near(a.Y, b.Y, w.Max.Y)
}
