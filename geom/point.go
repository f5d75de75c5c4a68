package geom

import "math"

// Point is a place in a plane, in millimetres.
type Point struct{ X, Y float64 }

// To gives the distance to another point.
func (p Point) To(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// Rect is an axis-parallel box in a plane, Min at its lower left. The zero Rect
// is a single point at the origin.
type Rect struct{ Min, Max Point }

// Width and Height of the box.
func (r Rect) Width() float64  { return r.Max.X - r.Min.X }
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Union is the smallest box about both.
func (r Rect) Union(s Rect) Rect {
	return Rect{
		Point{math.Min(r.Min.X, s.Min.X), math.Min(r.Min.Y, s.Min.Y)},
		Point{math.Max(r.Max.X, s.Max.X), math.Max(r.Max.Y, s.Max.Y)},
	}
}

func (r Rect) include(p Point) Rect { return r.Union(Rect{p, p}) }
