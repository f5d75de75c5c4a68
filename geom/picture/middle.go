package picture

import (
	"math"

	"drawerwright/geom"
)

// lookedFor is how many places a side are looked at for the middle of an area.
const lookedFor = 24

// Middle is a place within loops, far from their borders; false where they hold none of the places
// of a grid over them.
func Middle(loops []geom.Loop) (best geom.Point, any bool) {
	far := 0.0
	var box geom.Rect
	for i, l := range loops {
		if i == 0 {
			box = l.Bounds()
		}
		box = box.Union(l.Bounds())
	}
	for i := range lookedFor {
		for k := range lookedFor {
			p := geom.Point{X: box.Min.X + float64(box.Width()*(float64(i)+0.5)/lookedFor),
				Y: box.Min.Y + float64(box.Height()*(float64(k)+0.5)/lookedFor)}
			if d, in := within(loops, p); in && d > far {
				best, far, any = p, d, true
			}
		}
	}
	return best, any
}

// within reports whether an odd number of loops of straight sides covers a place, and how far it is
// from the nearest side.
func within(loops []geom.Loop, p geom.Point) (far float64, in bool) {
	far = math.Inf(1)
	for _, l := range loops {
		for i, v := range l {
			w := l[(i+1)%len(l)]
			far = min(far, Segment{v.Point, w.Point}.Distance(p))
			if (v.Y > p.Y) != (w.Y > p.Y) && p.X < v.X+float64((p.Y-v.Y)/(w.Y-v.Y)*(w.X-v.X)) {
				in = !in
			}
		}
	}
	return far, in
}

// Holds reports whether an odd number of loops of straight sides covers a place.
func Holds(loops []geom.Loop, p geom.Point) bool {
	_, in := within(loops, p)
	return in
}

// Distance is how far a place is from a segment, in mm.
func (s Segment) Distance(p geom.Point) float64 {
	way := s.B.Sub(s.A)
	t := 0.0
	if long := way.Dot(way); long > 0 {
		t = max(0, min(1, p.Sub(s.A).Dot(way)/long))
	}
	return p.To(s.A.Lerp(s.B, t))
}

// Crosses reports whether two segments have a point in common, but where they lie on one line.
func (s Segment) Crosses(t Segment) bool {
	apart := func(s, t Segment) bool {
		way := s.B.Sub(s.A)
		a, b := way.Cross(t.A.Sub(s.A)), way.Cross(t.B.Sub(s.A))
		return a > 0 && b > 0 || a < 0 && b < 0 || a == 0 && b == 0
	}
	return !apart(s, t) && !apart(t, s)
}
