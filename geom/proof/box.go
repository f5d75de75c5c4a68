package proof

import (
	"math"
)

// Box is what became of a box's pieces when they were put together.
type Box struct {
	Corners []Corner
	Walls   []Wall // of the bottom; none without one
	// Play of the bottom up and down between all its walls, and its slack along X
	// and Y; below 0 it does not go in.
	BottomPlay, SlackX, SlackY float64
	// BottomStand is how far its underside stands above the lower edges.
	BottomStand float64
	// WidthFront, WidthBack, Depth and Height are outside.
	WidthFront, WidthBack, Depth, Height float64
	// Diagonal is the outside distance between opposite corners; Rack how far the
	// two can differ before the glue has set, by the play of the joints.
	Diagonal, Rack float64
	Overlaps       []Overlap // of all pieces as they stand, in the order of the pieces
	Pieces         []Piece   // where they stand now
}

// Corner is the joint of a front or back with a side.
type Corner struct {
	End, Side string // names of the pieces
	Goes      bool
	Captured  bool    // the end is held both ways, as a tongue in its dado
	Play      float64 // of a captured end; below 0 by how much it is too thick
	// Seat says what stops the side when it is pushed on: its inside face on the
	// end's shoulder, or the floor of its cut. The gaps are what stays open at each.
	OnShoulder            bool
	ShoulderGap, FloorGap float64
	// Recess is how far the end's outside face stands back from the ends of the
	// sides; below 0 it is proud.
	Recess float64
	// Lap is how far the side's outside face stands proud of the end's own end,
	// where they are meant to be level (Laps).
	Laps bool
	Lap  float64
}

// Wall is the joint of the bottom with one wall.
type Wall struct {
	Name string
	Goes bool
	Play float64 // of the bottom in the wall's groove; below 0 by how much it is too thick
	Hold float64 // how deep the bottom stands in it when it lies in the middle
}

// Overlap is what two pieces have in common.
type Overlap struct {
	A, B   string
	Volume float64 // cubic millimetres
}

// Goes tells whether the box goes together. Pieces that are no box do not.
func (b *Box) Goes() bool {
	if len(b.Corners) == 0 {
		return false
	}
	for _, c := range b.Corners {
		if !c.Goes {
			return false
		}
	}
	if !b.BottomGoes() {
		return false
	}
	for _, o := range b.Overlaps {
		if o.Volume > MostOverlap {
			return false
		}
	}
	return true
}

// BottomGoes tells whether the bottom goes into its grooves, if there is one.
func (b *Box) BottomGoes() bool {
	for _, w := range b.Walls {
		if !w.Goes {
			return false
		}
	}
	return len(b.Walls) == 0 || b.SlackX > -penetration && b.SlackY > -penetration && b.BottomPlay > -penetration
}

// MostOverlap is the volume, in cubic millimetres, that two pieces may have in
// common where their faces meet: rounding of a few microns over a joint's faces.
const MostOverlap = 1.0

// pull is how far, in millimetres, a side is pulled off an end while its play is
// felt: enough that a cut too shallow is not taken for a slot too narrow.
const pull = 1.0

// assembly is a box while it is put together.
type assembly struct {
	*work
	box                            Box
	left, right, front, back, base *Piece
	// seats are how far out a side stays on the front and on the back.
	seats [2][2]float64
	// joints are the pairs of ends with sides, and of walls with the bottom.
	joints []*pair
}

// Assembler puts boxes together, with memory that it keeps between them. The zero
// value is ready; it is for one goroutine at a time.
type Assembler struct{ work work }

// Assemble puts a box together. Pieces are told apart by where their inside faces
// look: sides along X, front and back along Y, the bottom up. Others are left where
// they are. A box without two sides, a front and a back is given back as it is.
func (m *Assembler) Assemble(pieces []Piece) Box {
	m.work.begin(pieces)
	a := assembly{work: &m.work}
	a.box.Pieces = append([]Piece(nil), pieces...)
	for i := range a.box.Pieces {
		p := &a.box.Pieces[i]
		switch axis, sign := axisOf(p.Stand.Normal()); {
		case axis == axisX && sign > 0:
			a.left = p
		case axis == axisX:
			a.right = p
		case axis == axisY && sign > 0:
			a.front = p
		case axis == axisY:
			a.back = p
		case axis == axisZ && sign > 0:
			a.base = p
		}
	}
	if a.left == nil || a.right == nil || a.front == nil || a.back == nil {
		return a.box
	}
	a.corners()
	if a.base != nil {
		a.bottom()
	}
	a.measure()
	return a.box
}

// corners seats front and back in the sides, and the sides on them.
func (a *assembly) corners() {
	for i, end := range []*Piece{a.front, a.back} {
		var both [2]Corner
		place := gap{math.Inf(-1), math.Inf(1)}
		var joints [2]*pair
		for j, side := range []*Piece{a.left, a.right} {
			joints[j] = a.joint(side, end)
			c, g := feel(joints[j], end, side, outOf(j))
			both[j] = c
			place = gap{math.Max(place.low, g.low), math.Min(place.high, g.high)}
		}
		// Outwards against the dados' outer walls; where nothing holds the end
		// there, inwards until it is stopped.
		at, inwards := place.low, place.high
		if end == a.back {
			at, inwards = inwards, at
		}
		if math.IsInf(at, 0) {
			at = inwards
		}
		if math.IsInf(at, 0) {
			at = 0
		}
		goes := both[0].Goes && both[1].Goes
		if goes && place.width() < -penetration { // the two sides do not agree
			both[0].Goes, both[1].Goes, goes = false, false, false
			both[0].Play, both[1].Play = place.width(), place.width()
		}
		if goes {
			end.Stand.Origin = shifted(end.Stand.Origin, axisY, at)
		}
		for j := range both {
			if goes {
				a.seats[i][j] = joints[j].seat(&both[j], outOf(j))
			}
			a.box.Corners = append(a.box.Corners, both[j])
		}
	}
	for j, side := range []*Piece{a.left, a.right} {
		side.Stand.Origin = shifted(side.Stand.Origin, axisX, outOf(j)*a.stays(j))
	}
}

// stays is how far out a side stands: as the further of front and back wants it.
func (a *assembly) stays(side int) float64 { return math.Max(a.seats[0][side], a.seats[1][side]) }

// joint takes the sections of two pieces; nil for pieces nowhere near each other.
func (a *assembly) joint(wall, other *Piece) *pair {
	index := func(q *Piece) int {
		for i := range a.box.Pieces {
			if q == &a.box.Pieces[i] {
				return i
			}
		}
		return -1
	}
	p, ok := a.joinAgain(len(a.joints), wall, other, index(wall), index(other))
	if !ok {
		return nil
	}
	a.joints = append(a.joints, &p)
	return &p
}

// outOf is the direction out of the box of side 0, the left one, and side 1.
func outOf(side int) float64 {
	if side == 0 {
		return -1
	}
	return 1
}

// feel pulls a side a little off an end and finds the range of Y in which the end
// can be moved then.
func feel(p *pair, end, side *Piece, out float64) (Corner, gap) {
	c := Corner{End: end.Name, Side: side.Name}
	var g gap
	if p == nil {
		return c, g
	}
	engaged := end.reach(side, axisX)
	for _, by := range []float64{math.Min(pull, engaged/2), engaged * 0.9} {
		g = around(p.barring(axisY, out*by))
		c.Captured = !math.IsInf(g.low, 0) && !math.IsInf(g.high, 0)
		c.Goes = g.width() > -penetration
		if c.Captured {
			c.Play = g.width()
		}
		if c.Goes {
			break
		}
	}
	return c, g
}

// around is the range of offsets between what bars from below and from above.
func around(list []barred) gap {
	g := gap{math.Inf(-1), math.Inf(1)}
	for _, b := range list {
		// One that is in the way on both sides alike counts for both, so that a box
		// seen from behind is judged the same.
		if b.low+b.high < sliver {
			g.low = math.Max(g.low, b.high)
		}
		if b.low+b.high > -sliver {
			g.high = math.Min(g.high, b.low)
		}
	}
	return g
}

// seat pushes a side on an end that stands in its place, and tells how far out the
// side stays; below 0 it goes further in than it was meant to.
func (p *pair) seat(c *Corner, out float64) float64 {
	shoulder, floor := math.Inf(-1), math.Inf(-1)
	for _, b := range p.barring(axisX, 0) {
		// How far out the side must stay for this: the end's offset the other way.
		stay, beyond := b.high, b.low
		if out > 0 {
			stay, beyond = -b.low, -b.high
		}
		if beyond > pull {
			continue // what is behind the side
		}
		if b.shoulder {
			shoulder = math.Max(shoulder, stay)
		} else {
			floor = math.Max(floor, stay)
		}
	}
	at := math.Max(shoulder, floor)
	if math.IsInf(at, 0) {
		return 0
	}
	c.OnShoulder = shoulder >= floor-penetration
	c.ShoulderGap, c.FloorGap = at-shoulder, at-floor
	return at
}

// bottom finds the bottom's place in the grooves of its walls.
func (a *assembly) bottom() {
	level := gap{math.Inf(-1), math.Inf(1)}
	walls := []struct {
		wall *Piece
		axis int
		out  float64
	}{{a.left, axisX, -1}, {a.right, axisX, 1}, {a.front, axisY, -1}, {a.back, axisY, 1}}
	for _, w := range walls {
		hold := a.base.reach(w.wall, w.axis)
		found := Wall{Name: w.wall.Name}
		if hold > penetration {
			// Half out of the groove, so that a bottom too long is not taken for one too thick.
			if p := a.joint(w.wall, a.base); p != nil {
				g := around(p.barring(axisZ, w.out*math.Min(pull, hold/2)))
				found.Play = g.width()
				// Below its wall, or on top of it, it is in no groove.
				found.Goes = found.Play > -penetration && !math.IsInf(found.Play, 0)
				level = gap{math.Max(level.low, g.low), math.Min(level.high, g.high)}
			}
		}
		a.box.Walls = append(a.box.Walls, found)
	}
	a.box.BottomPlay = level.width()
	if level.width() > -penetration && !math.IsInf(level.low, 0) {
		a.base.Stand.Origin = shifted(a.base.Stand.Origin, axisZ, level.low)
	}
	a.box.SlackX = a.slack(a.left, a.right, axisX)
	a.box.SlackY = a.slack(a.front, a.back, axisY)
	for i, w := range walls {
		a.box.Walls[i].Hold = a.base.reach(w.wall, w.axis)
	}
}

// slack is how far the bottom can move between two walls; it is put in the middle.
func (a *assembly) slack(low, high *Piece, axis int) float64 {
	var list []barred
	for _, w := range []*Piece{low, high} {
		for _, p := range a.joints {
			if p.a == w && p.b == a.base {
				list = append(list, p.barring(axis, 0)...)
			}
		}
	}
	g := around(list)
	if math.IsInf(g.low, 0) || math.IsInf(g.high, 0) {
		return math.Inf(1)
	}
	a.base.Stand.Origin = shifted(a.base.Stand.Origin, axis, (g.low+g.high)/2)
	return g.width()
}

// measure takes the sizes of the finished box, and what its pieces have in common.
func (a *assembly) measure() {
	l0, l1 := a.left.span(axisY)
	r0, r1 := a.right.span(axisY)
	front, _ := a.front.span(axisY)
	_, back := a.back.span(axisY)
	x0, _ := a.left.span(axisX)
	_, x1 := a.right.span(axisX)
	width := x1 - x0
	closed := width - a.stays(0) - a.stays(1)
	// An end that laps over the sides can be wider than they stand.
	across := func(end *Piece, sides float64) float64 {
		e0, e1 := end.span(axisX)
		return math.Max(sides, e1-e0)
	}
	a.box.WidthFront, a.box.WidthBack = across(a.front, closed+a.seats[0][0]+a.seats[0][1]), across(a.back, closed+a.seats[1][0]+a.seats[1][1])
	a.box.Depth = math.Max(math.Max(l1, r1), back) - math.Min(math.Min(l0, r0), front)
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range []*Piece{a.left, a.right, a.front, a.back} {
		z0, z1 := p.span(axisZ)
		low, high = math.Min(low, z0), math.Max(high, z1)
	}
	if a.base != nil {
		under, over := a.base.span(axisZ)
		a.box.BottomStand = under - low
		low, high = math.Min(low, under), math.Max(high, over)
	}
	a.box.Height = high - low
	outer := (a.box.WidthFront + a.box.WidthBack) / 2
	a.box.Diagonal = math.Hypot(outer, a.box.Depth)
	play := 0.0
	for i := range a.box.Corners {
		c := &a.box.Corners[i]
		if c.Captured {
			play = math.Max(play, c.Play)
		}
		end, side := a.front, a.left
		if i >= 2 {
			end = a.back
		}
		if i%2 == 1 {
			side = a.right
		}
		e0, e1 := end.span(axisY)
		s0, s1 := side.span(axisY)
		c.Recess = e0 - s0
		if i >= 2 {
			c.Recess = s1 - e1
		}
		ex0, ex1 := end.span(axisX)
		sx0, sx1 := side.span(axisX)
		c.Lap = ex0 - sx0
		if i%2 == 1 {
			c.Lap = sx1 - ex1
		}
		c.Laps = !c.Captured
	}
	a.box.Rack = 2 * play * a.box.Depth / a.box.Diagonal
	all := a.box.Pieces
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			if v := a.overlap(&all[i], &all[j]); v > leastOverlap {
				a.box.Overlaps = append(a.box.Overlaps, Overlap{all[i].Name, all[j].Name, v})
			}
		}
	}
}

// overlap is the volume in two pieces as they stand. The sections of a joint serve
// again, unless its pieces have been moved along them.
func (a *assembly) overlap(p, q *Piece) float64 {
	for _, joint := range a.joints {
		if (joint.a == p && joint.b == q || joint.a == q && joint.b == p) && math.Abs(joint.moved(joint.common)) < stirred {
			return joint.overlap()
		}
	}
	joint, ok := a.join(p, q)
	if !ok {
		return 0
	}
	return joint.overlap()
}

// stirred is how far, in millimetres, pieces may have moved along their common axis
// and still show the same sections.
const stirred = 1e-6

// leastOverlap is rounding: a micron over a face of a few square centimetres.
const leastOverlap = 0.1
