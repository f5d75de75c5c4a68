package mill

import (
	"math"

	"drawerwright/geom"
)

// UsualOvercut is how far, in mm, a bit runs past the edge beyond its radius, so that no wood is
// left where the stock is a little larger; round in the unit of a job; common practice, no source.
func UsualOvercut(u geom.Unit) float64 { return u.Usual(1, 1.0/32) }

// touching is the distance, in millimeters, within which a side lies on the
// panel's edge: far under what any machine resolves, over what sizes computed in
// two ways differ by.
const touching = 1e-6

// openSides reports which straight sides of a pocket lie on the panel's outline, so
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

// within reports whether the stretch from a to b lies on that from c to d and runs
// the same way.
func within(a, b, c, d geom.Point) bool {
	length := c.To(d)
	if length < touching || a.To(b) < touching {
		return false
	}
	from, left := geom.Beside(a, c, d)
	to, right := geom.Beside(b, c, d)
	return math.Abs(left) < touching && math.Abs(right) < touching && from > -touching && to < length+touching && from < to
}

// overRun moves the open sides of a pocket outward by a distance. The sides next
// to them are made longer; where these are arcs or run along the edge, a step is
// made.
func overRun(pocket geom.Loop, open []bool, by float64) geom.Loop {
	moved := func(i int) (shift geom.Point, any bool) {
		if !open[i] {
			return geom.Point{}, false
		}
		return pocket.Next(i).Sub(pocket[i].Point).Unit().Right().Scale(by), true
	}
	var out geom.Loop
	for i, v := range pocket {
		before := pocket.Before(i)
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
		out = append(out, geom.Vertex{Point: v.Add(in)}, geom.Vertex{Point: v.Add(leave), Bulge: v.Bulge})
	}
	return out
}

// corner is where two neighboring straight sides meet after each was shifted.
func corner(l geom.Loop, before, i int, in, leave geom.Point) (geom.Point, bool) {
	if l[before].Bulge != 0 || l[i].Bulge != 0 {
		return geom.Point{}, false
	}
	v := l[i].Point
	a, b := v.Sub(l[before].Point), l.Next(i).Sub(v)
	// Sides that run on straight have no crossing to speak of.
	if math.Abs(a.Cross(b)) < 1e-3*a.Norm()*b.Norm() {
		return geom.Point{}, false
	}
	t, _, _ := geom.Meeting(in, a, leave, b)
	return v.Add(in).Along(a, t), true
}
