package coupon

import (
	"fmt"

	"drawerwright/geom"
)

// shortLength is, in mm, below what a piece is short for a machine: hands come near
// the cutter. Common practice, no source.
const shortLength = 300.0

// steps says how the coupon is cut and read.
func (c Coupon) steps() []string {
	list := []string{
		fmt.Sprintf("Take a board of the stock that the run is cut from, %s thick, for a coupon of %s x %s. Pencil a mark on the end that everything is counted from, the datum end: it has the wide land, %s; the comb is at the other end.",
			c.Asked.text(c.Asked.Thickness), c.Asked.text(c.Panel.Length()), c.Asked.text(c.Panel.Width()), c.Asked.text(c.Slots[0].X)),
		c.caution(),
	}
	if c.Asked.Router {
		list = append(list, c.routed()...)
	} else {
		list = append(list, c.sawn()...)
	}
	return append(list, c.readings()...)
}

// caution says how the piece is held.
func (c Coupon) caution() string {
	const always = "Keep hands away from the line of the cut; use guards, push blocks and hold-downs as the machine's manual and the local rules say."
	if c.Panel.Length() >= shortLength-settle {
		return always
	}
	short := fmt.Sprintf("At %s the coupon is short for a machine: ", c.Asked.text(c.Panel.Length()))
	if c.Asked.Router {
		return short + "cut the slots while it is still part of a long strip or a sheet that is held down, and cut it out last; a loose piece is held by a jig or a carrier, never by hand. " + always
	}
	return short + "cut the slots into the end of a long strip, and cut it to length after that; what is short is held by a jig or a carrier, never by hand alone. " + always
}

// routed says how a router cuts it.
func (c Coupon) routed() []string {
	list := "Meant widths, from the datum end:"
	for i, s := range c.Slots {
		if i > 0 {
			list += ","
		}
		list += fmt.Sprintf(" slot %d %s", s.Number, c.Asked.fixed(s.Width))
	}
	bit := c.Asked.text(c.Asked.Cutter)
	if c.Asked.Bit != "" {
		bit = c.Asked.Bit + " of " + bit
	}
	return []string{
		fmt.Sprintf("Cut slots and comb with the bit that makes them in the run, %s, entered with just that diameter, and with the run's feed, passes and depth, %s.", bit, c.Asked.text(c.Asked.Depth)),
		list + ".",
	}
}

// sawn says how a saw cuts it. Shims are between the end and the stop in the first
// pass, so that one setting of the stop makes a slot: where the stop stands moves the
// slot, and only the shims make its width.
func (c Coupon) sawn() []string {
	a := c.Asked
	list := []string{
		fmt.Sprintf("Set the cutter, %s wide, to the height of the run, %s, and leave it there. The board lies against the miter gauge, its datum end against a stop on it. A slot wider than the cutter takes two passes: the first with shims between the end and the stop, the second without. Feeler gauges do for shims.", a.text(a.Cutter), a.text(a.Depth)),
	}
	for _, s := range c.Slots {
		at := fmt.Sprintf("Slot %d, %s wide: ", s.Number, a.fixed(s.Width))
		if shims := s.Width - a.Cutter; shims > settle {
			list = append(list, at+fmt.Sprintf("with shims of %s in place set the stop so that the cut begins %s from the datum end; pass, take the shims out, pass again.", a.fixed(shims), a.text(s.X)))
		} else {
			list = append(list, at+fmt.Sprintf("set the stop so that the cut begins %s from the datum end; one pass.", a.text(s.X)))
		}
	}
	last := c.Comb.X + float64(teeth*c.Comb.Pitch)
	return append(list, fmt.Sprintf("The comb: set the stop so that the cut begins about %s from the datum end, and cut the last of %d slits in one pass. For each of the others put one more spacer of %s between the end and the stop, and pass again. Without spacers move a fence by a shim of that size, measured, each time. What spacers differ from %s goes straight into the result: measure them.",
		a.text(last), teeth+1, a.fixed(c.Comb.Pitch), a.fixed(c.Comb.Pitch)))
}

// readings says what to measure, under the names by which the readings come back.
func (c Coupon) readings() []string {
	a := c.Asked
	return []string{
		fmt.Sprintf("Brush the slots clean. Measure each with the inside jaws of a caliper near both edges and in the middle, and write down the mean: coupon-1 to coupon-%d.", len(c.Slots)),
		fmt.Sprintf("Push what is to go in, %s of %s, into one slot after the other from either edge. Write down the number of the one in which it slides as you want it: fits.", a.goesIn(), a.text(a.Tongue)),
		fmt.Sprintf("Measure each of the %d teeth of the comb, without pressing, and write down the mean: tooth. It is meant to be %s; the width of the cut is %s less the tooth.", c.Comb.Teeth, a.fixed(c.Comb.Tooth()), a.fixed(c.Comb.Pitch-(c.Comb.Slit-a.Cutter))),
		// With t the teeth and p the pitch as cut, over all is 4 p + t; so a
		// quarter of the difference is what p is off.
		fmt.Sprintf("As a check measure over all %d teeth and the %d slits between them: it should be %s more than the mean tooth. If it is off by more than %s the pitch was not kept: take a quarter of what it is more off the mean tooth, or add a quarter of what it is less.",
			c.Comb.Teeth, c.Comb.Teeth-1, a.fixed(float64(c.Comb.Teeth-1)*c.Comb.Pitch), a.fixed(c.Step)),
	}
}

// goesIn is what is tried in the slots.
func (a Asked) goesIn() string {
	if a.Bottom {
		return "a piece of a bottom"
	}
	return "a tongue"
}

func (a Asked) text(mm float64) string  { return geom.Millimeters(mm).In(a.Unit) }
func (a Asked) fixed(mm float64) string { return geom.Caliper(mm).In(a.Unit) }
