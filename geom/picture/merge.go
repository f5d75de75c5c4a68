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
		long := s.A.To(s.B)
		ux, uy := (s.B.X-s.A.X)/long, (s.B.Y-s.A.Y)/long
		if ux < 1e-9 && uy < 0 { // upright lines run up
			s.A, s.B, ux, uy = s.B, s.A, -ux, -uy
		}
		lines = append(lines, onLine{
			int64(math.Round(math.Atan2(uy, ux) * 1e5)), int64(math.Round((float64(s.A.X*uy) - float64(s.A.Y*ux)) * 100)),
			float64(s.A.X*ux) + float64(s.A.Y*uy), float64(s.B.X*ux) + float64(s.B.Y*uy), s,
		})
	}
	slices.SortFunc(lines, func(a, b onLine) int {
		return cmp.Or(cmp.Compare(a.angle, b.angle), cmp.Compare(a.off, b.off), cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
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

// rounded is a point to a nanometre, so that the last bits do not show.
func rounded(p geom.Point) geom.Point {
	return geom.Point{X: math.Round(p.X*1e6)/1e6 + 0, Y: math.Round(p.Y*1e6)/1e6 + 0}
}

// Bounds is the box about segments.
func Bounds(list []Segment) (r geom.Rect) {
	for i, s := range list {
		b := geom.Rect{Min: geom.Point{X: min(s.A.X, s.B.X), Y: min(s.A.Y, s.B.Y)}, Max: geom.Point{X: max(s.A.X, s.B.X), Y: max(s.A.Y, s.B.Y)}}
		if i == 0 {
			r = b
		}
		r = r.Union(b)
	}
	return r
}
