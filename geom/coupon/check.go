package coupon

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Fault says why there is no coupon for what was asked.
type Fault struct {
	Message string // the fact, with the measured values
	Hint    string // what the shop can change
}

func (f *Fault) Error() string { return f.Message + "; " + f.Hint }

// What is refused, in mm. All common practice without a source.
const (
	// leastTongue is the thickness below which a tongue is no joint, and leastDepth
	// the depth below which a slot holds nothing.
	leastTongue, leastDepth = 1.0, 1.0
	// leastCutter is thinner than any blade and bit that makes slots.
	leastCutter = 0.5
	// mostLength is that of a coupon, and more than any of its sizes: a larger one is
	// a piece of work and no coupon.
	mostLength = 600.0
	// mostPlay is where the narrowest slot is so loose that glue bridges none of them.
	mostPlay = 1.0
	// overlap is what two passes have in common, so that no wood is left between.
	overlap = 0.2
)

func (a Asked) fault(message, hint string) error { return &Fault{Message: message, Hint: hint} }

// checkSizes judges each number that was asked for, and the depth against the board.
func (a Asked) checkSizes() error {
	for _, n := range []struct {
		what      string
		mm, least float64
	}{
		{"the board's thickness", a.Thickness, geom.MinWeb + leastDepth},
		{"the tongue's thickness", a.Tongue, leastTongue},
		{a.tool() + "'s width", a.Cutter, leastCutter},
		{"the slots' depth", a.Depth, leastDepth},
	} {
		if !(n.mm >= n.least-settle && n.mm <= mostLength) {
			return a.fault(fmt.Sprintf("%s is given as %s", n.what, a.text(n.mm)),
				fmt.Sprintf("a coupon can be made with %s to %s", a.atLeast(n.least), a.atMost(mostLength)))
		}
	}
	if web := a.Thickness - a.Depth; web < geom.MinWeb-settle {
		return a.fault(fmt.Sprintf("slots %s deep leave %s of a board of %s; it needs %s to hold together", a.text(a.Depth), a.text(web), a.text(a.Thickness), a.text(geom.MinWeb)),
			fmt.Sprintf("cut %s deep or less, or take a board of %s or more", a.atMost(a.Thickness-geom.MinWeb), a.atLeast(a.Depth+geom.MinWeb)))
	}
	return nil
}

// checkCutter judges the cutter against the narrowest and the widest slot.
func (a Asked) checkCutter(narrow, wide float64) error {
	room := 0.0
	if a.Router {
		room = mill.SlotRoom
	}
	if narrow > a.Tongue+mostPlay+settle {
		return a.fault(fmt.Sprintf("the narrowest slot that %s of %s makes is %s wide, %s more than the tongue of %s: it fits none", a.tool(), a.text(a.Cutter), a.fixed(narrow), a.fixed(narrow-a.Tongue), a.text(a.Tongue)),
			fmt.Sprintf("take one of %s or less", a.atMost(a.Tongue-room)))
	}
	if most := 2*a.Cutter - overlap; !a.Router && wide > most+settle {
		return a.fault(fmt.Sprintf("two passes of a cutter of %s make slots up to %s, and the widest is %s", a.text(a.Cutter), a.fixed(most), a.fixed(wide)),
			fmt.Sprintf("take a cutter about as wide as the tongue, %s", a.text(a.Tongue)))
	}
	return nil
}

// checkLength judges how long the coupon comes out.
func (a Asked) checkLength(length float64) error {
	if length <= mostLength+settle {
		return nil
	}
	return a.fault(fmt.Sprintf("with a tongue of %s and %s of %s the coupon is %s long, more than %s", a.text(a.Tongue), a.tool(), a.text(a.Cutter), a.text(length), a.text(mostLength)),
		"ask for a thinner tongue, or a narrower cutter")
}

// tool is what the machine cuts with.
func (a Asked) tool() string {
	if a.Router {
		return "the bit"
	}
	return "the cutter"
}

func (a Asked) text(mm float64) string { return geom.LengthOf(mm).Text(a.Unit) }
func (a Asked) fixed(mm float64) string {
	return geom.LengthOf(mm).Fixed(a.Unit) + " " + a.Unit.String()
}
func (a Asked) atLeast(mm float64) string { return geom.LengthOf(mm).RoundUp(a.Unit).Text(a.Unit) }
func (a Asked) atMost(mm float64) string  { return geom.LengthOf(mm).RoundDown(a.Unit).Text(a.Unit) }
