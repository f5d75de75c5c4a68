package fit

import "drawerwright/geom/joinery"

// Cuts are the lengths of a drawer's boards as they come out of its machine: each as set,
// with what boards, settings and the single cut add to it. Everything that is said of a
// box in which something is off follows from these. Pairs are of the left and the right
// side, or of the front and the back. What a drawer does not have is 0.
//
// A saw's fence and its cutter's height make the place of a cut and its depth, and so the
// tongue of a front that stands on end, whatever the board. Of a front that lies flat, and
// of a router that counts depths from the top, the machine takes the same wood from every
// board, and the tongue is the rest. A router that counts from the spoilboard leaves the
// same wood, so that a thicker board is cut deeper.
type Cuts struct {
	Side   [2]Linear // thicknesses
	End    [2]Linear
	Bottom Linear

	EndLen  Linear // of the front
	SideLen Linear

	Dado            Linear    // width of the dados for tongues
	Wall            [2]Linear // from the sides' ends to a dado's outer wall; to the shoulder of a side's rabbet
	DadoDeep        [2]Linear // of the dados or the rabbets of the sides
	Tongue          [2]Linear // thickness
	TongueLen       [2]Linear // into the left and the right side
	EndDeep         [2]Linear // of the rabbets of front and back of a double rabbet
	EndRabbet       [2]Linear // how long those of the front are, at its left and its right end
	FingerClearance Linear
	FingerNotch     Linear    // between two fingers
	BackDado        Linear    // width of the dados of a housed back
	Inner           [2]Linear // from the sides' ends to the inside faces of front and back

	Groove       Linear    // width of the bottom's groove
	GroovePlace  [2]Linear // from the lower edge to its lower wall: of the sides, and of front and back
	GrooveDeep   [2]Linear
	GrooveEnds   [2]Linear // depth of the grooves in front and back
	InGroove     Linear    // thickness of what stands in it
	BottomLength Linear    // from side to side
	BottomWidth  Linear

	spec  joinery.Spec
	setup joinery.Setup
	dims  joinery.Dimensions
}

// CutsOf works them out for a drawer that can be built.
func CutsOf(d joinery.Drawer) *Cuts {
	c := &Cuts{spec: d.Spec, setup: d.Setup, dims: d.Dimensions}
	s, walls := d.Spec, d.Dimensions.Walls
	c.Side = [2]Linear{length(s.Sides.Thickness.Mean, leftSide), length(s.Sides.Thickness.Mean, rightSide)}
	c.End = [2]Linear{length(s.Front.Thickness.Mean, front), length(s.Back.Thickness.Mean, back)}
	c.Bottom = length(s.Bottom.Thickness.Mean, bottom)
	c.EndLen, c.SideLen = length(walls.EndLen, frontLength), length(walls.SideLen, sideLength)
	c.corner()
	c.back()
	c.seat()
	return c
}

// joint is how the front, 0, or the back, 1, meets the sides.
func (c *Cuts) joint(e int) joinery.Joint {
	return c.spec.CornerAt([2]joinery.Role{joinery.Front, joinery.Back}[e])
}

// router reports whether a board lies under a bit that follows a drawing, floor whether
// that counts depths from under the board.
func (c *Cuts) router() bool { return c.setup.Cutter.Kind.FollowsDrawing() }
func (c *Cuts) floor() bool  { return c.router() && c.spec.DepthFrom == joinery.FromSpoilboard }

// inside is the depth of a cut from the inside face of a board: as set, or with the same
// wood left under it in every board.
func (c *Cuts) inside(deep, board Linear) Linear {
	if c.floor() {
		return deep.add(board).less(fixed(board.At0))
	}
	return deep
}

// corner works out the cuts of the sides and of the ends that meet them.
func (c *Cuts) corner() {
	cut, ends := c.dims.Corner, [2]int{frontTongue, backTongue}
	dados, walls := [2]int{leftDado, rightDado}, [2]int{frontDado, backDado}
	c.Inner = [2]Linear{fixed(c.dims.Walls.SidesToFront), fixed(c.dims.Walls.SidesToBack)}
	// notches get wider by what fingers get narrower
	c.FingerClearance = length(cut.FingerClearance, frontDado).Plus(off(cutter), 2)
	c.FingerNotch = fixed(cut.FingerNotch).Plus(off(cutter), 1)
	set := height
	if c.spec.Joint == joinery.DadoRabbet && c.setup.DadoHeight > 0 {
		set = dadoHeight
	}
	for i := range 2 {
		c.DadoDeep[i] = c.inside(length(cut.DadoDeep, set, dados[i]), c.Side[i])
		switch c.joint(i) {
		case joinery.DadoRabbet:
			c.Wall[i] = length(cut.Place, fence, walls[i])
			c.Tongue[i] = c.tongue(c.End[i], ends[i])
			c.Inner[i] = c.Wall[i].add(c.Tongue[i])
		case joinery.Rabbet:
			c.Wall[i] = length(c.End[i].At0, fence, walls[i])
			c.Inner[i] = c.Wall[i]
		case joinery.DoubleRabbet, joinery.RabbetedFront: // the side's end meets the floor of the rabbet
			c.EndDeep[i] = c.inside(length(cut.EndDeep, height, ends[i]), c.End[i])
			c.Inner[i] = c.EndDeep[i]
		}
	}
	c.Dado = length(cut.Dado, cutter, dadoWidth)
	c.TongueLen = [2]Linear{c.tongueLen(leftRabbet), c.tongueLen(rightRabbet)}
	c.EndRabbet = [2]Linear{c.fromEnd(cut.EndRabbet[0], leftRabbet), c.fromEnd(cut.EndRabbet[1], rightRabbet)}
}

// tongue is how thick one of the front or the back is.
func (c *Cuts) tongue(board Linear, cut int) Linear {
	thick := c.dims.Corner.Tongue
	deep := height // is how deep its rabbet is, of a front that lies flat
	switch {
	case c.setup.FlatTongues:
		deep = endHeight
	case !c.router():
		return length(thick, fence, cut)
	case c.floor():
		return length(thick, cut).less(off(height))
	}
	return board.less(length(board.At0-thick, deep).less(off(cut)))
}

// tongueLen is how long one is: where a stop for the fronts puts the rabbet's end or, of
// a front that stands on end, the cutter's height.
func (c *Cuts) tongueLen(cut int) Linear {
	if long := c.dims.Corner.TongueLen; !c.router() && !c.setup.FlatTongues {
		return length(long, height, cut)
	}
	return c.fromEnd(c.dims.Corner.TongueLen, cut)
}

// fromEnd is how long a rabbet is of a front that lies flat, its end at a stop or the fence.
func (c *Cuts) fromEnd(long float64, cut int) Linear {
	if !c.router() && c.setup.RabbetPasses > 1 { // the last pass is set by the cutter's near side
		return length(long, endFence, cut, cutter)
	}
	return length(long, endFence, cut)
}

// back works out the dados of a housed back.
func (c *Cuts) back() {
	if c.spec.BackJoint != joinery.Housed {
		return
	}
	cut := c.dims.Corner
	c.Wall[1] = length(cut.BackPlace, fence, backDado, backPlace)
	c.BackDado = length(cut.BackDado, cutter, backDado, backWidth)
	c.Inner[1] = c.Wall[1].add(c.End[1])
}

// seat works out the bottom and its grooves.
func (c *Cuts) seat() {
	seat := c.dims.Seat
	c.BottomLength, c.BottomWidth = length(seat.Length, bottomLength), length(seat.Width, bottomWidth)
	if !c.spec.BottomFit.Grooved() {
		return
	}
	for i := range 2 {
		c.GrooveDeep[i] = c.inside(length(seat.Deep, height, grooveDepth), c.Side[i])
		c.GrooveEnds[i] = c.inside(length(seat.Deep, height, grooveDepth), c.End[i])
	}
	c.Groove = length(seat.Groove, c.grooveBlade(), grooveWidth)
	for i, cut := range []int{sideGroove, endGroove} {
		c.GroovePlace[i] = length(seat.Rise, c.grooveWall(), cut)
	}
	if c.spec.Lip.Bottom > 0 && !c.router() { // over the shoulder of its lower rabbet, each with a fence of its own
		c.GroovePlace[1] = length(seat.Rise, c.grooveWall(), endFence, endGroove)
	}
	if !c.router() && c.setup.GroovePasses > 1 {
		c.Groove = c.Groove.add(off(grooveMove))
	}
	c.InGroove = c.Bottom
	if seat.OnTongue {
		c.InGroove = c.bottomTongue()
	}
}

// bottomTongue is what the rabbets of a bottom on a tongue leave.
func (c *Cuts) bottomTongue() Linear {
	thick, deep := c.dims.Seat.InGroove, height
	switch {
	case c.floor():
		return length(thick, bottomTongue).less(off(height))
	case c.router():
	case c.setup.BottomHeight > 0: // it lies flat
		deep = bottomHeight
	case c.setup.BottomFence == c.setup.FenceDistance: // on end, at the setting that serves all cuts
		return length(thick, fence, bottomTongue)
	default:
		return length(thick, bottomFence, bottomTongue)
	}
	return c.Bottom.less(length(c.Bottom.At0-thick, deep).less(off(bottomTongue)))
}

// grooveBlade is the source of the width of one pass over the bottom's grooves.
func (c *Cuts) grooveBlade() int {
	if !c.router() && c.setup.GrooveCutter() != c.setup.Cutter.Width {
		return grooveCutter
	}
	return cutter
}

// grooveWall is the source of where the lower wall of those grooves is.
func (c *Cuts) grooveWall() int {
	if !c.router() && c.setup.OwnGroove() {
		return grooveFence
	}
	return fence
}
