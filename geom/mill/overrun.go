package mill

import (
	"math"

	"drawerwright/geom"
)

// touching is the distance, in millimetres, within which a side lies on the
// panel's edge: far under what any machine resolves, over what sizes computed in
// two ways differ by.
const touching = 1e-6

// openSides tells which straight sides of a pocket lie on the panel's outline, so
// that the pocket leaves the panel there.
func openSides(pocket, outline geom.Loop) []bool {
	open := make([]bool, len(pocket))
	for i, a := range pocket {
		b := pocket[(i+1)%len(pocket)]
		if a.Bulge != 0 {
			continue
		}
		for j, c := range outline {
			if c.Bulge == 0 && within(a.Point, b.Point, c.Point, outline[(j+1)%len(outline)].Point) {
				open[i] = true
				break
			}
		}
	}
	return open
}

// within tells whether the stretch from a to b lies on that from c to d and runs
// the same way.
func within(a, b, c, d geom.Point) bool {
	length := c.To(d)
	if length < touching || a.To(b) < touching {
		return false
	}
	ux, uy := (d.X-c.X)/length, (d.Y-c.Y)/length
	along := func(p geom.Point) float64 { return float64((p.X-c.X)*ux) + float64((p.Y-c.Y)*uy) }
	off := func(p geom.Point) float64 { return math.Abs(float64((p.X-c.X)*uy) - float64((p.Y-c.Y)*ux)) }
	return off(a) < touching && off(b) < touching && along(a) > -touching && along(b) < length+touching && along(a) < along(b)
}

// overRun moves the open sides of a pocket outwards by a distance. The sides next
// to them are made longer; where these are arcs or run along the edge, a step is
// made.
func overRun(pocket geom.Loop, open []bool, by float64) geom.Loop {
	n := len(pocket)
	moved := func(i int) (shift geom.Point, any bool) {
		if !open[i] {
			return geom.Point{}, false
		}
		a, b := pocket[i].Point, pocket[(i+1)%n].Point
		l := a.To(b)
		return geom.Point{X: by * (b.Y - a.Y) / l, Y: -by * (b.X - a.X) / l}, true
	}
	var out geom.Loop
	for i, v := range pocket {
		before := (i + n - 1) % n
		in, inMoved := moved(before)
		leave, outMoved := moved(i)
		if !inMoved && !outMoved {
			out = append(out, v)
			continue
		}
		if at, ok := corner(pocket, before, i, in, leave); ok {
			out = append(out, geom.Vertex{Point: at, Bulge: v.Bulge})
			continue
		}
		out = append(out, geom.Vertex{Point: geom.Point{X: v.X + in.X, Y: v.Y + in.Y}},
			geom.Vertex{Point: geom.Point{X: v.X + leave.X, Y: v.Y + leave.Y}, Bulge: v.Bulge})
	}
	return out
}

// corner is where two neighbouring straight sides meet after each was shifted.
func corner(l geom.Loop, before, i int, in, leave geom.Point) (geom.Point, bool) {
	if l[before].Bulge != 0 || l[i].Bulge != 0 {
		return geom.Point{}, false
	}
	v, next := l[i].Point, l[(i+1)%len(l)].Point
	prev := l[before].Point
	ax, ay, bx, by := v.X-prev.X, v.Y-prev.Y, next.X-v.X, next.Y-v.Y
	cross := float64(ax*by) - float64(ay*bx)
	// Sides that run on straight have no crossing to speak of.
	if math.Abs(cross) < 1e-3*prev.To(v)*v.To(next) {
		return geom.Point{}, false
	}
	// On the first line: v + in + t a; on the second: v + leave + s b.
	dx, dy := leave.X-in.X, leave.Y-in.Y
	t := (float64(dx*by) - float64(dy*bx)) / cross
	return geom.Point{X: v.X + in.X + float64(t*ax), Y: v.Y + in.Y + float64(t*ay)}, true
}
