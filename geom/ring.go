package geom

import (
	"math"
	"slices"
)

// Ring is a closed chain of straight sides, by its corners; the last one joins the
// first.
type Ring []Point

// Axis is a direction in a plane.
type Axis uint8

const (
	AlongX Axis = iota
	AlongY
)

// Of gives a point's coordinate along the axis, and the one across it.
func (a Axis) Of(p Point) (along, across float64) {
	if a == AlongY {
		return p.Y, p.X
	}
	return p.X, p.Y
}

// At is the point with a coordinate along the axis and one across it.
func (a Axis) At(along, across float64) Point {
	if a == AlongY {
		return Point{across, along}
	}
	return Point{along, across}
}

// Area in square millimeters is signed, positive for a counter-clockwise ring.
func (r Ring) Area() float64 {
	sum := 0.0
	for i, p := range r {
		sum += p.Cross(r[(i+1)%len(r)])
	}
	return sum / 2
}

// Bounds is the box about the ring; the zero Rect when empty.
func (r Ring) Bounds() Rect { return Around(r...) }

// Contains reports whether the ring goes round a point an odd number of times. Of
// points on the ring itself, those on left and lower sides are in.
func (r Ring) Contains(p Point) bool {
	in := false
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < crossing(a.X, a.Y, b.X, b.Y, p.Y) {
			in = !in
		}
	}
	return in
}

// Distance of a point from the ring, in millimeters; infinite from an empty one.
func (r Ring) Distance(p Point) float64 {
	least := math.Inf(1)
	for i, a := range r {
		least = math.Min(least, p.To(Nearest(p, a, r[(i+1)%len(r)])))
	}
	return least
}

// crossing is where the line from (s, u) to (t, v) comes to the level at.
func crossing(s, u, t, v, at float64) float64 { return s + float64((at-u)/(v-u)*(t-s)) }

// Crossings appends the places along an axis, in order, at which the line that runs
// along it at a distance across it passes the ring: an even number. The ring is
// between the first and the second, the third and the fourth, and so on.
func (r Ring) Crossings(list []float64, axis Axis, at float64) []float64 {
	first := len(list)
	for i, p := range r {
		s, u := axis.Of(p)
		t, v := axis.Of(r[(i+1)%len(r)])
		if (u > at) != (v > at) {
			list = append(list, crossing(s, u, t, v, at))
		}
	}
	slices.Sort(list[first:])
	return list
}

// clip keeps the part of the ring that lies where a function of places, linear in them, is at
// least 0 (I. E. Sutherland, G. W. Hodgman, Reentrant polygon clipping, CACM 17,
// 1974). Stretches along the border join what lies apart.
func (r Ring) clip(side func(Point) float64) (kept Ring) {
	for i, p := range r {
		q := r[(i+1)%len(r)]
		u, v := side(p), side(q)
		if u >= 0 {
			kept = append(kept, p)
		}
		if (u >= 0) != (v >= 0) {
			kept = append(kept, p.Lerp(q, u/(u-v)))
		}
	}
	return kept
}

// ClipTo keeps what lies in a box.
func (r Ring) ClipTo(box Rect) Ring {
	return r.clip(func(p Point) float64 { return p.X - box.Min.X }).
		clip(func(p Point) float64 { return box.Max.X - p.X }).
		clip(func(p Point) float64 { return p.Y - box.Min.Y }).
		clip(func(p Point) float64 { return box.Max.Y - p.Y })
}
