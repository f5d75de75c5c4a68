package proof

import (
	"math"
	"slices"
)

// pull is how far, in millimeters, a side is pulled off an end while its play is
// felt: enough that a cut too shallow is not taken for a slot too narrow.
const pull = 1.0

// corners seats front and back in the sides, and the sides on them.
func (a *assembly) corners() {
	sides := [2]*Piece{a.left, a.right}
	for i, end := range []*Piece{a.front, a.back} {
		a.lift = maxLift // in the end it is the back's
		var both [2]Corner
		var joints [2]*pair
		var each [2]gap
		fingers := false
		for j, side := range sides {
			joints[j] = a.joint(side, end)
			both[j], each[j] = feel(joints[j], end, side, outOf(j))
			both[j], each[j] = beforeTails(both[j], each[j], end, i)
			fingers = fingers || !both[j].Captured && joints[j].notched(outOf(j))
		}
		if fingers {
			a.interlock(end, i, &joints, &both, &each)
		}
		place := each[0].and(each[1])
		// Outward against the dados' outer walls; where nothing holds the end
		// there, inward until it is stopped.
		at, inward := place.low, place.high
		if end == a.back {
			at, inward = inward, at
		}
		held := !math.IsInf(at, 0)
		if !held {
			at = inward
		}
		if math.IsInf(at, 0) {
			at = 0
		}
		for j := range both {
			// An end that nothing holds and that has to leave its place altogether.
			if stop := each[j].toward(i); !held && !math.IsInf(stop,
				0) && float64(outOf(i)*stop) > end.Board.Thickness-pull {
				both[j].GoesTogether = false
			}
		}
		agree(&both, place)
		goes := both[0].GoesTogether && both[1].GoesTogether
		if goes {
			end.Placement.Origin = shifted(end.Placement.Origin, axisY, at)
		}
		for j := range both {
			if goes {
				a.seats[i][j] = joints[j].seat(&both[j], outOf(j))
				if !held {
					both[j].Open = open(each[j], at, i)
				}
			}
			both[j].Laps = both[j].Fingers || !both[j].Captured && end.Lips.X[j] == 0 && joints[j].lapsOver(outOf(j))
			a.box.Corners = append(a.box.Corners, both[j])
		}
	}
	a.settle()
	for j, side := range sides {
		side.Placement.Origin = shifted(side.Placement.Origin, axisX, outOf(j)*a.stays(j))
	}
}

// settle moves front and back across the box where each keeps another side out, so that
// both stand in the middle and the sides are only as far apart as the wider of both
// wants them.
func (a *assembly) settle() {
	wider := math.Max(a.seats[0][0]+a.seats[0][1], a.seats[1][0]+a.seats[1][1])
	spare := a.stays(0) + a.stays(1) - wider
	if spare < penetration {
		return
	}
	// The one that keeps the left side out goes to the right.
	by := spare / 2
	if a.seats[0][0] < a.seats[1][0] {
		by = -by
	}
	for i, end := range []*Piece{a.front, a.back} {
		end.Placement.Origin = shifted(end.Placement.Origin, axisX, by)
		a.seats[i][0], a.seats[i][1] = a.seats[i][0]-by, a.seats[i][1]+by
		by = -by
	}
}

// agree lets an end go in nowhere that would go into either side, but not into both.
func agree(both *[2]Corner, where gap) {
	if both[0].GoesTogether && both[1].GoesTogether && where.width() < -penetration {
		both[0].GoesTogether, both[1].GoesTogether = false, false
		both[0].Clearance, both[1].Clearance = where.width(), where.width()
	}
}

// toward is the end of a gap at which an end that is pushed inward stops: the
// front, 0, at its upper one, the back, 1, at its lower one.
func (g gap) toward(which int) float64 {
	if which == 0 {
		return g.high
	}
	return g.low
}

// open is how far an end that is at a place stays off the stop of one side.
func open(g gap, at float64, which int) float64 {
	stop := g.toward(which)
	if math.IsInf(stop, 0) {
		return 0
	}
	return math.Max(0, float64(outOf(which)*(at-stop)))
}

// stays is how far out a side stands: as the further of front and back wants it.
func (a *assembly) stays(side int) float64 { return math.Max(a.seats[0][side], a.seats[1][side]) }

// joint takes the sections of two pieces; nil for pieces nowhere near each other.
func (a *assembly) joint(upright, other *Piece) *pair { return a.jointOf(upright, other, false) }

// jointWhole is joint with all of both pieces.
func (a *assembly) jointWhole(upright, other *Piece) *pair { return a.jointOf(upright, other, true) }

func (a *assembly) jointOf(upright, other *Piece, whole bool) *pair {
	index := func(q *Piece) int {
		for i := range a.box.Pieces {
			if q == &a.box.Pieces[i] {
				return i
			}
		}
		return -1
	}
	p, ok := a.joinAgain(len(a.joints), a.box.Pieces, index(upright), index(other), whole)
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
func feel(p *pair, end, side *Piece, out float64) (c Corner, g gap) {
	c = Corner{End: end.Name, Side: side.Name}
	if p == nil {
		return c, g
	}
	engaged := end.reach(side, axisX)
	if engaged < pull { // it stands before the side's face, with nothing about it
		c.GoesTogether = true
		return c, anywhere
	}
	for _, by := range []float64{math.Min(pull, engaged/2), engaged * 0.9} {
		g = around(p.barring(axisY, out*by))
		c.Captured = !math.IsInf(g.low, 0) && !math.IsInf(g.high, 0)
		c.GoesTogether = g.width() > -penetration
		if c.Captured {
			c.Clearance = g.width()
		}
		if c.GoesTogether {
			break
		}
	}
	return c, g
}

// interlock looks whether an end has fingers in its sides. It takes them a little
// off each other, finds the range of heights in which the end can be moved then,
// and moves it to the nearest.
func (a *assembly) interlock(end *Piece, which int, joints *[2]*pair, both *[2]Corner, each *[2]gap) {
	var found [2]gap
	for j, p := range joints {
		if p == nil || both[j].Captured {
			return
		}
		off := [3]float64{axisX: -outOf(j) * pull, axisY: outOf(which) * pull}
		if end.leans() { // tails hold it the other way: it stands at their shoulders
			off[axisY] = each[j].toward(which)
		}
		g := around(p.barringAlong(off))
		if math.IsInf(g.low, 0) || math.IsInf(g.high, 0) {
			return
		}
		found[j] = g
	}
	for j := range both {
		c := &both[j]
		c.Captured, c.Fingers, c.Clearance = true, true, found[j].width()
		c.GoesTogether = c.Clearance > -penetration
	}
	heights := found[0].and(found[1])
	agree(both, heights)
	*each = [2]gap{anywhere, anywhere}
	if !both[0].GoesTogether || !both[1].GoesTogether {
		return
	}
	up := heights.nearest(0)
	a.lift = math.Min(a.lift, heights.high-up)
	if math.Abs(up) > stirred { // other heights meet than were laid out
		end.Placement.Origin = shifted(end.Placement.Origin, axisZ, up)
		for j, side := range [2]*Piece{a.left, a.right} {
			if p, ok := a.join(side, end); ok {
				joints[j] = &p
				a.joints = append(a.joints, &p)
			}
		}
	}
	for j, side := range [2]*Piece{a.left, a.right} {
		if _, each[j] = feel(joints[j], end, side, outOf(j)); end.leans() {
			each[j] = each[j].home(which)
		}
	}
}

// beforeTails is what is felt of an end; of one with pins only that it stands at shoulders: tails are felt by
// themselves.
func beforeTails(c Corner, g gap, end *Piece, which int) (Corner, gap) {
	if !end.leans() {
		return c, g
	}
	c.Captured, c.Clearance = false, 0
	return c, g.home(which)
}

// leans reports whether a piece has pins, whose walls lean.
func (p *Piece) leans() bool {
	return slices.ContainsFunc(p.Board.Cuts, func(c Cut) bool { return c.Lean != 0 })
}

// home is a gap for an end that tails hold: it is pushed inward on their shoulders, as long as it can be moved
// from there at all.
func (g gap) home(which int) gap {
	if g.width() <= -penetration {
		return g
	}
	if which == 0 {
		return gap{math.Inf(-1), g.high}
	}
	return gap{g.low, math.Inf(1)}
}

// last is the wood of the second piece, an end, that is furthest toward a side.
func (p *pair) last(s *strip, out float64) (last rect, there bool) {
	t := s.sections[0]
	for _, r := range p.w.rects[t.second:t.end] {
		if !there || out > 0 && r.high[axisX] > last.high[axisX] || out < 0 && r.low[axisX] < last.low[axisX] {
			last, there = r, true
		}
	}
	return last, there
}

// notched reports whether an end does not reach equally far into a side all over the
// height.
func (p *pair) notched(out float64) bool {
	if p == nil {
		return false
	}
	least, most := math.Inf(1), math.Inf(-1)
	for i := range p.strips {
		if r, there := p.last(&p.strips[i], out); there {
			at := r.high[axisX]
			if out < 0 {
				at = r.low[axisX]
			}
			least, most = math.Min(least, at), math.Max(most, at)
		}
	}
	return most-least > pull
}

// lapsOver reports whether an end is rabbeted on its inside face where it ends, for
// the side to be lapped by what is left: over most of the height.
func (p *pair) lapsOver(out float64) bool {
	if p == nil {
		return false
	}
	yes := 0.0
	for i := range p.strips {
		s := &p.strips[i]
		switch r, there := p.last(s, out); {
		case !there:
		case r.uncut:
			yes -= s.to - s.from
		default:
			yes += s.to - s.from
		}
	}
	return yes > 0
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

// seat pushes a side on an end that stands in its place, and reports how far out the
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
