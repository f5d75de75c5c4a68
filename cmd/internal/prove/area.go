package prove

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// commonArea is that of what two rings have in common, by the even-odd rule. Between
// the heights of all corners and crossings what they have in common is as wide in
// the middle as on average.
func commonArea(a, b []geom.Point) float64 {
	var heights []float64
	for _, p := range a {
		heights = append(heights, p.Y)
	}
	for _, p := range b {
		heights = append(heights, p.Y)
	}
	for i, p := range a {
		q := a[(i+1)%len(a)]
		for k, u := range b {
			if y, ok := crossing(p, q, u, b[(k+1)%len(b)]); ok {
				heights = append(heights, y)
			}
		}
	}
	slices.Sort(heights)
	area := 0.0
	var ins, others []float64
	for i := 1; i < len(heights); i++ {
		if thick := heights[i] - heights[i-1]; thick > 0 {
			y := (heights[i] + heights[i-1]) / 2
			ins, others = across(ins[:0], a, y), across(others[:0], b, y)
			area += float64(thick * shared(ins, others))
		}
	}
	return area
}

// crossing is the height at which two sides cross.
func crossing(p, q, u, v geom.Point) (y float64, ok bool) {
	if math.Max(p.Y, q.Y) < math.Min(u.Y, v.Y) || math.Max(u.Y, v.Y) < math.Min(p.Y, q.Y) ||
		math.Max(p.X, q.X) < math.Min(u.X, v.X) || math.Max(u.X, v.X) < math.Min(p.X, q.X) {
		return 0, false
	}
	dx, dy, ex, ey := q.X-p.X, q.Y-p.Y, v.X-u.X, v.Y-u.Y
	d := float64(dx*ey) - float64(dy*ex)
	if d == 0 {
		return 0, false
	}
	t := (float64((u.X-p.X)*ey) - float64((u.Y-p.Y)*ex)) / d
	return p.Y + float64(t*dy), t >= 0 && t <= 1
}

// across appends where a ring crosses a height, in order.
func across(list []float64, ring []geom.Point, y float64) []float64 {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if (p.Y > y) != (q.Y > y) {
			list = append(list, p.X+float64((y-p.Y)/(q.Y-p.Y)*(q.X-p.X)))
		}
	}
	slices.Sort(list)
	return list
}

// shared is the length of what two lists of intervals have in common.
func shared(a, b []float64) float64 {
	sum := 0.0
	for i := 0; i+1 < len(a); i += 2 {
		for k := 0; k+1 < len(b); k += 2 {
			sum += math.Max(0, math.Min(a[i+1], b[k+1])-math.Max(a[i], b[k]))
		}
	}
	return sum
}
