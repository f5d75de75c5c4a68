package geom

import "math"

// Vec3 is a place or a direction in space, in millimeters. In a box X runs to
// the right, Y to the back, Z up, from the outside bottom front left corner.
type Vec3 struct{ X, Y, Z float64 }

func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec3) Scale(k float64) Vec3 {
	return Vec3{float64(a.X * k), float64(a.Y * k), float64(a.Z * k)}
}
func (a Vec3) Dot(b Vec3) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z) }
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Norm is the length of a vector.
func (a Vec3) Norm() float64 { return math.Sqrt(a.Dot(a)) }

// Directions of the box.
var (
	Right = Vec3{X: 1}
	Back  = Vec3{Y: 1}
	Up    = Vec3{Z: 1}
)
