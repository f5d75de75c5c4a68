package strength

import (
	"math"

	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
)

// MaxEdgeStress is what the wood about the bottom's groove bears for long, in N/mm2: less than the
// tension through the thickness of the boards of EN 622-5, 0.55 and more, and than the planar shear of
// EN 12369-1, about 1; from memory. Wood across its grain bears more.
const MaxEdgeStress = 0.5

// Held is how much load, in kg, what holds a bottom in grooves bears at its edges.
type Held struct {
	Lip    float64 // before the wood of the walls under the groove is pulled off
	Tongue float64 // before what stands in the groove is sheared off
}

// HeldOf works it out as if the two shorter edges carried all of the load, along their whole length, which is no
// less than what the middle of any edge carries. The lip bends where it meets the wall, the load at
// its tip; the shear in the tongue is half as much again in its middle as in the mean. It is the zero
// value of a bottom without grooves.
func HeldOf(d joinery.Drawer) Held {
	seat := d.Dimensions.Seat
	if seat.Groove == 0 {
		return Held{}
	}
	kg := 2 * math.Min(d.Inside.Width, d.Inside.Depth) / plate.Gravity // of 1 N on each mm of an edge
	return Held{
		Lip:    MaxEdgeStress * float64(seat.Rise*seat.Rise) / (6 * seat.Deep) * kg,
		Tongue: MaxEdgeStress * seat.InGroove / 1.5 * kg,
	}
}

// HighEnough is how high a groove has to be for its lip to bear a load in kg, in mm.
func (h Held) HighEnough(rise, load float64) float64 { return rise * math.Sqrt(load/h.Lip) }
