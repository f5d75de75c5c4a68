package sweep

import (
	"math"

	"drawerwright/geom"
)

// Points serve as vectors here. Every product that is added to something is
// rounded first, so that no processor fuses the two.

func sub(p, q geom.Point) geom.Point { return geom.Point{X: p.X - q.X, Y: p.Y - q.Y} }

func dot(p, q geom.Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// cross is positive when q lies to the left of p.
func cross(p, q geom.Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

func size(p geom.Point) float64 { return math.Sqrt(dot(p, p)) }

func distance(p, q geom.Point) float64 { return size(sub(p, q)) }

// move goes from p by k times d.
func move(p, d geom.Point, k float64) geom.Point {
	return geom.Point{X: p.X + float64(d.X*k), Y: p.Y + float64(d.Y*k)}
}

func middle(p, q geom.Point) geom.Point { return geom.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2} }

// left and right are a quarter turn from d.
func left(d geom.Point) geom.Point  { return geom.Point{X: -d.Y, Y: d.X} }
func right(d geom.Point) geom.Point { return geom.Point{X: d.Y, Y: -d.X} }

// rotate turns d by an angle in radians, counter-clockwise.
func rotate(d geom.Point, angle float64) geom.Point {
	sin, cos := math.Sincos(angle)
	return geom.Point{X: float64(d.X*cos) - float64(d.Y*sin), Y: float64(d.X*sin) + float64(d.Y*cos)}
}

// turn is the angle from d to e in radians, positive to the left, at most a half turn.
func turn(d, e geom.Point) float64 { return math.Atan2(cross(d, e), dot(d, e)) }

// grow makes a box larger by k on every side.
func grow(r geom.Rect, k float64) geom.Rect {
	return geom.Rect{Min: geom.Point{X: r.Min.X - k, Y: r.Min.Y - k}, Max: geom.Point{X: r.Max.X + k, Y: r.Max.Y + k}}
}

func apart(r, s geom.Rect) bool {
	return r.Max.X < s.Min.X || s.Max.X < r.Min.X || r.Max.Y < s.Min.Y || s.Max.Y < r.Min.Y
}
