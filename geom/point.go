package geom

import "math"

// Point is a place in a plane, in millimeters, or a vector from one place to
// another. Every product that is added to something is rounded first, so that no
// processor fuses the two.
type Point struct{ X, Y float64 }

func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale multiplies a vector.
func (p Point) Scale(k float64) Point { return Point{float64(p.X * k), float64(p.Y * k)} }

// Along is the place that k times d is away from p.
func (p Point) Along(d Point, k float64) Point {
	return Point{p.X + float64(d.X*k), p.Y + float64(d.Y*k)}
}

// Lerp is the place a share t of the way from p to q: p at 0, q at 1.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X + float64(t*(q.X-p.X)), p.Y + float64(t*(q.Y-p.Y))}
}

// Middle is half way between two places.
func (p Point) Middle(q Point) Point { return Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2} }

func (p Point) Dot(q Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// Cross is above 0 where q points to the left of p; its size is the area of the
// parallelogram of both, in square millimeters.
func (p Point) Cross(q Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// Norm is the length of a vector.
func (p Point) Norm() float64 { return math.Sqrt(p.Dot(p)) }

// To gives the distance to another point.
func (p Point) To(q Point) float64 { return q.Sub(p).Norm() }

// Unit is the direction of a vector, of length 1; not a number for the zero vector.
func (p Point) Unit() Point {
	n := p.Norm()
	return Point{p.X / n, p.Y / n}
}

// Left and Right are a vector turned by a quarter.
func (p Point) Left() Point  { return Point{-p.Y, p.X} }
func (p Point) Right() Point { return Point{p.Y, -p.X} }

// Rotate turns a vector by an angle in radians, counter-clockwise.
func (p Point) Rotate(angle float64) Point {
	sin, cos := math.Sincos(angle)
	return Point{float64(p.X*cos) - float64(p.Y*sin), float64(p.X*sin) + float64(p.Y*cos)}
}

// Angle is a vector's direction from the x axis in radians, above 0 to the left, at
// most half a turn.
func (p Point) Angle() float64 { return math.Atan2(p.Y, p.X) }

// Turn is the angle from one vector to another in radians, above 0 to the left, at
// most half a turn.
func (p Point) Turn(q Point) float64 { return math.Atan2(p.Cross(q), p.Dot(q)) }
