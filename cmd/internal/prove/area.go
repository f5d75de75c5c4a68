package prove

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// commonArea is that of what two rings have in common, by the even-odd rule. Between
// the heights of all corners and crossings what they have in common is as wide in
// the middle as on average.
func commonArea(a, b geom.Ring) float64 {
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
	first, second := rings{}.with(a), rings{}.with(b)
	var ins, others []float64
	for i := 1; i < len(heights); i++ {
		if thick := heights[i] - heights[i-1]; thick > 0 {
			y := (heights[i] + heights[i-1]) / 2
			ins, others = first.spans(ins[:0], y), second.spans(others[:0], y)
			area += float64(thick * shared(ins, others))
		}
	}
	return area
}

// crossing is the height at which two sides cross.
func crossing(p, q, u, v geom.Point) (y float64, ok bool) {
	if geom.Around(p, q).Apart(geom.Around(u, v)) {
		return 0, false
	}
	t, _, ok := geom.Meeting(p, q.Sub(p), u, v.Sub(u))
	return p.Lerp(q, t).Y, ok && t >= 0 && t <= 1
}

// shared is the length of what two lists of intervals have in common.
func shared(a, b []float64) float64 {
	sum := 0.0
	for i := 0; i+1 < len(a); i += 2 {
		for k := 0; k+1 < len(b); k += 2 {
			sum += math.Max(0, geom.Interval{Min: a[i], Max: a[i+1]}.Intersect(geom.Interval{Min: b[k], Max: b[k+1]}).Len())
		}
	}
	return sum
}
