package testcut

import (
	"math"
	"slices"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Kind is what was measured.
type Kind string

// Readings. Those of the coupon carry the number of a slot.
const (
	Slot         Kind = "slot"          // width of a dado or groove
	Depth        Kind = "depth"         // of a dado or groove
	Edge         Kind = "edge"          // from the end or edge of the part to the near wall
	Tongue       Kind = "tongue"        // thickness of the tongue
	RabbetDepth  Kind = "rabbet-depth"  // of the rabbet before the tongue
	TongueLength Kind = "tongue-length" // of the rabbet
	// of the front behind the ends of the sides, its tongue pushed outward; below 0 it is proud
	Recess      Kind = "recess"
	Clearance   Kind = "clearance" // of the tongue in the dado, by a feeler gauge
	Width       Kind = "width"     // of the box, dry fitted
	FrontLength Kind = "front-length"
	Front       Kind = "front-thickness"
	Sides       Kind = "sides-thickness"
	Tooth       Kind = "tooth"  // thickness of a tooth of the coupon's comb
	Coupon      Kind = "coupon" // width of a numbered slot of the coupon
)

// Kinds are all kinds of readings, in the order in which a person would take them.
var Kinds = []Kind{Slot, Depth, Edge, Tongue, RabbetDepth, TongueLength, Clearance, Recess, FrontLength, Width, Sides, Front, Tooth, Coupon}

// Reading is one thing measured, in mm. Meant, of the coupon's readings, is what
// would be measured were the cutter as wide as stated.
type Reading struct {
	Kind  Kind
	Value float64
	Meant float64
	Name  string // as the shop wrote it
}

// Standard deviations of measuring, in mm; common practice, no source: a caliper on
// a clean edge, a depth rod or a feeler gauge in a corner, a rule along a box. What
// is read to the caliper's step adds what rounding does.
const (
	caliperSigma = fit.CaliperSigma
	cornerSigma  = 0.05
	ruleSigma    = fit.RuleSigma
)

var roundingSigma = fit.CaliperReads / math.Sqrt(12)

// sigma is the standard deviation of a reading, with what one cut differs by from
// the next: cuts is how many of them are in it.
func (c Model) sigma(k Kind) float64 {
	measured, cuts := caliperSigma, 1.0
	switch k {
	case Recess:
		measured, cuts = cornerSigma, 2
	case Clearance:
		measured, cuts = cornerSigma, 2
	case Width:
		measured, cuts = ruleSigma, 4
	case FrontLength:
		measured, cuts = ruleSigma, 0
	case Front, Sides:
		cuts = 0
	case Tooth:
		cuts = 2
	case Slot:
		if c.moves { // the slot is as much too wide as the fence was moved too far
			measured = math.Hypot(measured, c.noise.Fence/3)
		}
	}
	cut := c.noise.Cut / 3
	return math.Sqrt(float64(measured*measured) + float64(roundingSigma*roundingSigma) + float64(cuts*float64(cut*cut)))
}

// form is what a kind of reading says of the machine; false where this corner or
// this machine does not have it.
func (c Model) form(r Reading, u vector) (form, bool) {
	switch r.Kind {
	case Slot:
		return c.is.slot, true
	case Depth:
		return c.is.depth, true
	case Edge:
		return c.is.edge, true
	case Sides:
		return c.is.side, true
	case Front:
		return c.is.front, true
	case Coupon:
		return form{r.Meant, unit(ofCutter)}, true
	case Tooth:
		return form{r.Meant, vector{}.plus(unit(ofCutter), -1)}, true
	}
	if !c.joined {
		return form{}, false
	}
	switch r.Kind {
	case Tongue:
		return c.is.tongue, true
	case RabbetDepth:
		return c.is.rabbet, true
	case TongueLength:
		return c.is.tongueLength, true
	case Recess:
		return c.is.recess, true
	case Clearance:
		return c.is.play, true
	case Width:
		return c.is.width.near(u), true
	case FrontLength:
		return c.is.length, true
	}
	return form{}, false
}

// ReadingKinds lists the kinds of readings that say something of this cut.
func (c Model) ReadingKinds() []Kind {
	return slices.DeleteFunc(slices.Clone(Kinds), func(k Kind) bool {
		_, ok := c.form(Reading{Kind: k}, vector{})
		return !ok
	})
}

// MaxOff is by how much a reading may be off what is meant and still be of this
// cut, in mm: beyond, another thing was measured, or in another unit.
const MaxOff = 5.0

// MaxDiagonalOff is the same of a diagonal: a box that is not squared yet is far off.
func MaxDiagonalOff(meant float64) float64 { return meant / 10 }

// Takes reports whether a kind of reading says something of this cut.
func (c Model) Takes(k Kind) bool { return slices.Contains(c.ReadingKinds(), k) }

// Plausible gives what a reading should be about, and whether it can be of this cut.
func (c Model) Plausible(r Reading) (meant float64, ok bool) {
	f, known := c.form(r, vector{})
	if !known {
		return 0, false
	}
	return f.at0, math.Abs(r.Value-f.at0) <= MaxOff && (r.Kind == Recess || r.Kind == Clearance || r.Value > 0)
}

// Diagonals are those of a square box of an outside size.
func Diagonals(s joinery.Size) float64 { return math.Hypot(s.Width, s.Depth) }
