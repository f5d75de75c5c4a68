package fit

import "drawerwright/geom/joinery"

// The measures of a box, each from the cuts that make it. Below, e is 0 of the front and 1
// of the back.

// Clearance is that of a tongue in its dado.
func (c *Cuts) Clearance(e int) Linear { return c.Dado.less(c.Tongue[e]) }

// Recess is how far front or back stands behind the ends of the sides: of one on tongues,
// its tongue against the outer wall of its dado; below 0 it is proud.
func (c *Cuts) Recess(e int) Linear {
	switch c.joint(e) {
	case joinery.DadoRabbet:
		return c.Wall[e].add(c.Tongue[e]).less(c.End[e])
	case joinery.Rabbet:
		return c.Wall[e].less(c.End[e])
	}
	return fixed(c.End[e].At0).less(c.End[e]) // level as drawn
}

// recessInner is that of a tongue against the inner wall, where the whole board counts.
func (c *Cuts) recessInner(e int) Linear { return c.Wall[e].add(c.Dado).less(c.End[e]) }

// ShoulderGap is how far the front's shoulder stays open when its tongue is home; below 0
// there is room at the tongue's end.
func (c *Cuts) ShoulderGap() Linear { return c.TongueLen[0].less(c.DadoDeep[0]) }

// lap is how far the outside face of a side stands behind the ends of front and back;
// below 0 it is proud.
func (c *Cuts) lap(side int) Linear {
	switch c.joint(0) {
	case joinery.DoubleRabbet: // its lip in the rabbet of the front
		return c.EndRabbet[side].add(c.DadoDeep[side]).less(c.Side[side])
	case joinery.RabbetedFront:
		return c.EndRabbet[side].less(c.Side[side])
	}
	return fixed(c.Side[side].At0).less(c.Side[side])
}

// Width is that of the box over its sides.
func (c *Cuts) Width() Response {
	w := straight(c.EndLen)
	for i := range 2 {
		switch c.joint(0) {
		case joinery.DadoRabbet: // by what the front reaches into a side: to its end, or to its shoulder
			w = w.plus(c.Side[i], 1).lessLesser(c.DadoDeep[i], c.TongueLen[i])
		case joinery.Rabbet:
			w = w.plus(c.Side[i], 1).plus(c.DadoDeep[i], -1)
		case joinery.DoubleRabbet, joinery.RabbetedFront, joinery.BoxJoint, joinery.Dovetail:
			// or what stands proud of it
			if c.spec.Lip.Ends() { // of a front with lips, to its shoulders
				w = w.plus(c.Side[i], 1).plus(c.EndRabbet[i], -1)
				continue
			}
			w = w.plusProud(Linear{}.less(c.lap(i)))
		default:
			w = w.plus(c.Side[i], 1)
		}
	}
	return w
}

// Inside is the width between the sides.
func (c *Cuts) Inside() Response {
	switch c.joint(0) {
	case joinery.BoxJoint, joinery.Dovetail: // the sides bear on the floors of the front's notches
		return straight(c.EndLen.less(fixed(2 * c.Side[0].At0)))
	case joinery.RabbetedFront: // or on its shoulders
		return straight(c.EndLen.less(c.EndRabbet[0]).less(c.EndRabbet[1]))
	case joinery.DoubleRabbet: // the floors of their rabbets on its shoulders
		return straight(c.EndLen.less(c.EndRabbet[0]).less(c.EndRabbet[1]).less(c.DadoDeep[0]).less(c.DadoDeep[1]))
	}
	return c.Width().plus(c.Side[0], -1).plus(c.Side[1], -1)
}

// depth is that of the box: of the sides, and what front and back add to it, lips or what is proud.
func (c *Cuts) depth() Response {
	r := straight(c.SideLen)
	for e := range 2 {
		switch c.joint(e) {
		case joinery.Housed: // between the sides
		case joinery.DoubleRabbet, joinery.RabbetedFront: // a lip over the sides' ends
			r = r.plus(c.End[e], 1).plus(c.EndDeep[e], -1)
		default:
			r = r.plusProud(Linear{}.less(c.Recess(e)))
		}
	}
	return r
}

// backPlay is that of a housed back in its dados.
func (c *Cuts) backClearance() Linear { return c.BackDado.less(c.End[1]) }

// bottomPlay is that of what stands in the bottom's groove, and flushness how far a flush
// bottom is over the lower edges; below 0 it hangs down.
func (c *Cuts) grooveClearance() Linear { return c.Groove.less(c.InGroove) }
func (c *Cuts) flushness() Linear       { return c.GroovePlace[0].add(c.InGroove).less(c.Bottom) }

// grooveStep is how far the bottom's groove is higher in the sides than in front and back. One
// setting cuts all of them.
func (c *Cuts) grooveStep() Linear { return c.GroovePlace[0].less(c.GroovePlace[1]) }

// slack is what the bottom is smaller than its grooves, or than the room between the
// walls, from side to side.
func (c *Cuts) bottomClearance() Response {
	return c.Inside().plus(c.GrooveDeep[0], 1).plus(c.GrooveDeep[1], 1).plus(c.BottomLength, -1)
}

// slackDeep is the same from front to back, both pushed outward; of a bottom that is slid
// in, to the outside face of the back.
func (c *Cuts) bottomClearanceDepth() Linear {
	behind := c.GrooveEnds[1]
	if c.spec.BottomFit.SlidesIn() {
		behind = c.End[1]
	}
	return c.insideDepth().add(c.GrooveEnds[0]).add(behind).less(c.BottomWidth)
}

// insideDepth is from box front to back, both pushed outward.
func (c *Cuts) insideDepth() Linear { return c.SideLen.less(c.Inner[0]).less(c.Inner[1]) }

// backOverBottom is from the top of a bottom that is slid in to the lower edge of the back,
// whose upper edge is level with those of the sides.
func (c *Cuts) backOverBottom() Linear {
	return length(c.dims.Seat.BackRise, ripWidth).less(off(backHeight)).less(c.GroovePlace[0]).less(c.InGroove)
}

// height is that of the box.
func (c *Cuts) height(meant float64) Linear {
	h := length(meant, ripWidth)
	if c.spec.BottomFit == joinery.BottomApplied { // the walls stand on it
		h = h.add(off(bottom))
	}
	return h
}

// dividerPlay is that of a divider, from 1, in its dados; its thickness has a source of
// its own.
func (c *Cuts) dividerClearance(item, board int) Linear {
	t := c.spec.Dividers[item-1].Stock.Thickness.Mean
	return c.DividerDado(item).less(length(t, board))
}

// DividerDado is the width of a divider's dados.
func (c *Cuts) DividerDado(item int) Linear {
	return length(c.dims.DividerDados[item-1], cutter, dividerDado)
}
