package strength

import (
	"math"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
)

// TestHeld, by hand: 40 kg on 400 x 500 are 392.3 N, which two edges of 400 carry with 0.4903 N on each
// mm. A lip 6 deep and 6 high is bent by 6 x 0.4903 x 6 / 36 = 0.4903 N/mm2; a tongue of 4 is sheared
// by 1.5 x 0.4903 / 4 = 0.1839.
func TestHeld(t *testing.T) {
	d := box(6)
	d.Inside.Width, d.Inside.Depth = 500, 400
	d.Dimensions.Seat = joinery.BottomSeat{Rise: 6, Groove: 4.2, Deep: 6, InGroove: 4}
	h := HeldOf(d)
	for what, c := range map[string]struct{ got, want float64 }{
		"lip": {h.Lip, 40 * MaxEdgeStress / 0.490333}, "tongue": {h.Tongue, 40 * MaxEdgeStress / 0.183875},
	} {
		if math.Abs(c.got-c.want) > 1e-4*c.want {
			t.Errorf("%s holds %g kg, want %g", what, c.got, c.want)
		}
	}
	d.Dimensions.Seat.Rise = h.HighEnough(6, 90)
	if higher := HeldOf(d).Lip; math.Abs(higher-90) > 1e-9 {
		t.Errorf("a lip for 90 kg holds %g", higher)
	}
	d.Dimensions.Seat = joinery.BottomSeat{}
	if h := HeldOf(d); h != (Held{}) {
		t.Errorf("without a groove: %+v", h)
	}
}

// TestNoEdgeCarriesMore: of a square sheet that is alike in all directions the middle of an edge
// carries 0.420 q a, of one twice as long 0.503 q a on the long edges (Timoshenko and Woinowsky-Krieger,
// table 8, from memory); two shorter edges would carry 0.5 and 1 q a.
func TestNoEdgeCarriesMore(t *testing.T) {
	for aspect, most := range map[float64]float64{1: 0.420, 2: 0.503} {
		d := box(6)
		d.Inside.Width, d.Inside.Depth = 400, 400*aspect
		d.Dimensions.Seat = joinery.BottomSeat{Rise: 6, Groove: 6, Deep: 6, InGroove: 1.5}
		q := HeldOf(d).Tongue * plate.Gravity / (400 * 400 * aspect)
		if edge := MaxEdgeStress; edge < most*q*400 {
			t.Errorf("aspect %g: %g N/mm, and its middle carries %g", aspect, edge, most*q*400)
		}
	}
}
