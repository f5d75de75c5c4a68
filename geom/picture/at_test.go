package picture

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// isometric is seen from before, to the right and above: box coordinates X to the
// right, Y to the back and Z up all appear equally short.
func isometric() View { return From(-45, math.Atan(math.Sqrt2/2)*180/math.Pi) }

// TestAt: in the isometric view the three axes are equally short, by the square root of
// two thirds, a third of a turn from each other.
func TestAt(t *testing.T) {
	v := isometric()
	var angles []float64
	for _, p := range []geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}} {
		q := v.At(p)
		if l := math.Hypot(q.X, q.Y); math.Abs(l-math.Sqrt(2.0/3)) > 1e-12 {
			t.Errorf("%v is %g long", p, l)
		}
		angles = append(angles, math.Atan2(q.Y, q.X))
	}
	for i, a := range angles {
		d := math.Abs(math.Remainder(a-angles[(i+1)%3], 2*math.Pi))
		if math.Abs(d-2*math.Pi/3) > 1e-12 && math.Abs(d-math.Pi/3) > 1e-12 {
			t.Errorf("%g radians between axes", d)
		}
	}
}
