package picture

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
)

// merged joins segments that lie on one line and touch or lie over each other, as
// edges of two parts do where these meet, in an order that does not depend on that of
// the solids.
func merged(list []Segment) []Segment {
	type onLine struct {
		angle, off int64 // of the line, rounded
		from, to   float64
		s          Segment
	}
	lines := make([]onLine, 0, len(list))
	for _, s := range list {
		if cmp.Or(cmp.Compare(s.A.X, s.B.X), cmp.Compare(s.A.Y, s.B.Y)) > 0 {
			s.A, s.B = s.B, s.A
		}
		u := s.B.Sub(s.A).Unit()
		if u.X < 1e-9 && u.Y < 0 { // upright lines run up
			s.A, s.B, u = s.B, s.A, u.Scale(-1)
		}
		lines = append(lines, onLine{
			int64(math.Round(u.Angle() * 1e5)), int64(math.Round(s.A.Cross(u) * 100)), s.A.Dot(u), s.B.Dot(u), s,
		})
	}
	slices.SortFunc(lines, func(a, b onLine) int {
		return cmp.Or(cmp.Compare(a.angle, b.angle), cmp.Compare(a.off, b.off),
			cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	var out []Segment
	for i := 0; i < len(lines); {
		one := lines[i]
		for i++; i < len(lines) && lines[i].angle == one.angle && lines[i].off == one.off && lines[i].from <= one.to+shortest; i++ {
			if lines[i].to > one.to {
				one.to, one.s.B = lines[i].to, lines[i].s.B
			}
		}
		out = append(out, Segment{rounded(one.s.A), rounded(one.s.B)})
	}
	return out
}

// rounded is a point to a nanometer, so that the last bits do not show.
func rounded(p geom.Point) geom.Point {
	return geom.Point{X: math.Round(p.X*1e6)/1e6 + 0, Y: math.Round(p.Y*1e6)/1e6 + 0}
}

// Bounds is the box about segments.
func Bounds(list []Segment) (r geom.Rect) {
	for i, s := range list {
		b := geom.Around(s.A, s.B)
		if i == 0 {
			r = b
		}
		r = r.Union(b)
	}
	return r
}
