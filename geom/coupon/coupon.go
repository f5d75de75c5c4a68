// Package coupon lays out a fit coupon: a small panel, cut from the stock of a run
// before the run, that shows which slot width its boards and tongues really want,
// and how wide the cutter really cuts. It has nine slots, each a step wider than
// the one before, and a comb of slits that are one cutter wide.
//
// [Make] is the one entry. Lengths are millimeters in float64, coordinates those of
// [geom.Panel]; x = 0 is the datum end, from which everything is counted. The wide
// land there and the comb at the other end tell the ends apart.
package coupon

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Asked is what the coupon is made for, in mm.
type Asked struct {
	Thickness float64 // of the board that it is made of
	Tongue    float64 // thickness of what goes into a slot: a tongue, or the bottom
	Bottom    bool    // it is the bottom: the corner has no tongue
	Cutter    float64 // width of the cut: of a router, the diameter of the bit that makes the slots
	Router    bool
	Depth     float64   // of the slots, the cutter height of the job
	Unit      geom.Unit // that steps speak in, and in which they are round
	Bit       string    // the name of the router's bit, where it has several
}

// Slot is one of the slots, in mm. It runs right across the panel.
type Slot struct {
	Number int     // from 1, from the datum end
	Width  float64 // as meant
	X      float64 // of its wall nearer the datum end
}

// Comb is a row of slits at a fixed pitch, with teeth between them, in mm. A slit
// has no room for the jaws of a caliper, a tooth can be measured well.
type Comb struct {
	X     float64 // of the first slit's wall nearer the datum end
	Pitch float64 // from one slit to the next
	// Slit is as wide as the cutter, on a router [mill.SlotRoom] wider: that much the
	// drawing of a slot of just the bit's width may be widened.
	Slit  float64
	Teeth int // one fewer than there are slits
}

// Tooth is how wide each tooth is meant, in mm.
func (c Comb) Tooth() float64 { return c.Pitch - c.Slit }

// Coupon is the panel with what a shop has to know about it.
type Coupon struct {
	Asked Asked
	Panel geom.Panel
	Slots []Slot
	Step  float64 // mm that each slot is wider than the one before
	Comb  Comb
	Steps []string // what to do, in order, in the unit asked for
}

// The slots. All common practice, no source.
const (
	slots = 9
	// stepMM and stepInch are what a hand feels between two fits, and are found among
	// shims and feeler gauges: 0.05 mm, 0.002 in.
	stepMM, stepInch = 0.05, 0.002 * geom.InchMM
	// under is how many steps below the tongue the series begins, so that slots that
	// are too tight are among it where the cutter cuts wide.
	under = 2
)

// The lands and the panel, in mm. All common practice, no source.
const (
	// firstLand, at the datum end, is seen at a glance to be wider than the others.
	firstLand = 25.0
	// minLand is wood that does not flex when a tongue is pushed in beside it;
	// 12 mm would do.
	minLand = 15.0
	// across is what a hand can hold with a push block, away from the cutter.
	across = 80.0
	// gridMM and gridInch are what a rule shows: places of slots are set by it.
	gridMM, gridInch = 1.0, geom.InchMM / 16
)

// The comb. All common practice, no source.
const (
	teeth = 5
	// minTooth is, in mm, what the jaws of a caliper do not bend.
	minTooth = 4.0
	// pitchMM and pitchInch are the grid of the pitch: spacers are made to such sizes.
	pitchMM, pitchInch = 0.5, geom.InchMM / 64
)

// settle is the part of a step or a size, in mm and in steps, that no verdict may
// hang on: far over the rounding of float64, far under what a caliper shows.
const settle = 1e-6

// Make lays a coupon out. Errors are of type [geom.Diagnosis]. The same Asked gives the same
// coupon.
//
// The slots begin two steps below the tongue. A router's are never narrower than the
// bit and [mill.SlotRoom], and begin on the unit's printed grid (upward, by less
// than 0.01 mm or 0.001 in), so that what is printed is what is drawn. A saw's are
// never narrower than its cutter, and wider than that by whole steps, so that shims
// of one step make them all.
func Make(a Asked) (Coupon, error) {
	if err := a.checkSizes(); err != nil {
		return Coupon{}, err
	}
	c := Coupon{Asked: a, Step: stepMM, Comb: Comb{Pitch: upTo(a.Cutter+minTooth, pitchMM), Slit: a.Cutter, Teeth: teeth}}
	grid := gridMM
	if a.Unit == geom.Inch {
		c.Step, grid = stepInch, gridInch
		c.Comb.Pitch = upTo(a.Cutter+minTooth, pitchInch)
	}
	first := a.Tongue - float64(under*c.Step)
	if a.Router {
		c.Comb.Slit += mill.SlotRoom
		first = geom.LengthOf(max(first, a.Cutter+mill.SlotRoom)).RoundUp(a.Unit).MM()
	} else {
		first = a.Cutter + max(0, upTo(first-a.Cutter, c.Step))
	}
	width := func(i int) float64 { return first + float64(float64(i)*c.Step) }
	if err := a.checkCutter(first, width(slots-1)); err != nil {
		return Coupon{}, err
	}

	begin, apart := upTo(firstLand, grid), upTo(width(slots-1)+minLand, grid)
	for i := range slots {
		c.Slots = append(c.Slots, Slot{Number: i + 1, Width: width(i), X: begin + float64(float64(i)*apart)})
	}
	c.Comb.X = begin + float64(slots*apart)
	length := upTo(c.Comb.X+float64(teeth*c.Comb.Pitch)+c.Comb.Slit+minLand, grid)
	if err := a.checkLength(length); err != nil {
		return Coupon{}, err
	}

	c.Panel = geom.Panel{Outline: geom.Rectangle(0, 0, length, upTo(across, grid)), Thickness: a.Thickness}
	for _, s := range c.Slots {
		c.cut(s.X, s.Width)
	}
	for i := range teeth + 1 {
		c.cut(c.Comb.X+float64(float64(i)*c.Comb.Pitch), c.Comb.Slit)
	}
	c.Steps = c.steps()
	return c, nil
}

// cut adds a slot across the panel. A router makes all of them with the one bit that they
// are to tell of, though a wider one would get into the wide ones.
func (c *Coupon) cut(x, width float64) {
	bit := 0.0
	if c.Asked.Router {
		bit = c.Asked.Cutter
	}
	c.Panel.Pockets = append(c.Panel.Pockets, geom.Pocket{Kind: geom.Dado, Face: geom.Inside, Depth: c.Asked.Depth,
		Outline: geom.Rectangle(x, 0, x+width, c.Panel.Width()), Bit: bit})
}

// upTo rounds up to a whole number of steps.
func upTo(mm, step float64) float64 { return math.Ceil(mm/step-settle) * step }
