package proof

import (
	"math"
	"slices"
)

// BottomFit is how a bottom meets the uprights, by how it lies to their lower edges.
type BottomFit uint8

const (
	// InGrooves of all four uprights; or in none that it should be in.
	InGrooves BottomFit = iota
	// SlideIn from behind into three grooves, under a back that ends on it.
	SlideIn
	// Applied to the lower edges of all four from below.
	Applied
	// OnCleats that are fixed to the uprights, in none of their grooves.
	OnCleats
)

func (f BottomFit) String() string { return [...]string{"grooves", "slide-in", "applied", "cleats"}[f] }

// maxLift is how much higher than it was meant to stand a back is put on a thick
// bottom, and a divider, in millimeters: more than boards of one stock differ, less
// than one would overlook at the upper edges.
const maxLift = 0.5

// bottom finds the bottom's place at its uprights.
func (a *assembly) bottom() {
	if len(a.cleats) > 0 {
		a.onCleats()
		return
	}
	under, over := a.base.span(axisZ)
	lowest := math.Inf(1)
	for _, w := range a.uprights() {
		z, _ := w.span(axisZ)
		lowest = math.Min(lowest, z)
	}
	back, _ := a.back.span(axisZ)
	switch {
	case math.Abs(lowest-over) < (over-under)/2:
		a.applied(lowest - over)
		return
	case back > (under+over)/2:
		a.box.BottomFit = SlideIn
	}
	a.intoGrooves()
	for i, w := range a.uprights() {
		a.box.BottomJoints[i].Engagement = a.base.reach(w.Piece, w.axis)
	}
}

// intoGrooves puts the bottom into its uprights' grooves. Where they end too early for it as
// it was meant to lie, it is put in at the height at which it goes in away from their
// ends, and pushed between these.
func (a *assembly) intoGrooves() {
	uprights := a.uprights()
	grooved := uprights[:]
	slid := a.box.BottomFit == SlideIn
	if slid {
		grooved = grooved[:3]
	}
	for _, w := range grooved {
		a.jointWhole(w.Piece, a.base)
	}
	in := a.stand(grooved, 0) || a.stand(grooved, nearEnds)
	if slid {
		a.levelBehind()
	} else {
		a.box.ClearanceY = a.clearance(axisY, grooved, in)
	}
	a.look(grooved)
	a.box.ClearanceX = a.clearance(axisX, grooved, in)
	if slid {
		a.pushIn(grooved, in)
	}
	if a.look(grooved); in {
		a.stand(grooved, 0)
	}
	if slid {
		a.slide()
	}
}

// look takes the sections of the bottom with its uprights anew where it was moved along
// them.
func (a *assembly) look(uprights []upright) {
	for _, w := range uprights {
		if p := a.between(w.Piece, a.base); p != nil && math.Abs(p.moved(p.common)) > stirred {
			if again, ok := a.joinWhole(w.Piece, a.base); ok {
				*p = again
			}
		}
	}
}

// nearEnds is how much of a groove, in millimeters, is left out at both ends of the
// bottom where they may be too early: more than the radius of any bit.
const nearEnds = vicinity

// stand feels the bottom in its grooves, but for so much of its length at both ends, and
// puts it as low in them as it goes. It reports whether it goes into all of them.
func (a *assembly) stand(uprights []upright, but float64) bool {
	level := anywhere
	a.box.BottomJoints = a.box.BottomJoints[:0]
	for _, w := range uprights {
		found, g := a.groove(w, but)
		level = level.and(g)
		a.box.BottomJoints = append(a.box.BottomJoints, found)
	}
	if a.box.GrooveClearance = level.width(); a.box.GrooveClearance < -penetration || math.IsInf(level.low, 0) {
		return false
	}
	a.base.Placement.Origin = shifted(a.base.Placement.Origin, axisZ, level.low)
	return true
}

// groove feels the bottom in the groove of an upright, and gives the range of heights
// in which it can be there.
func (a *assembly) groove(w upright, but float64) (PanelJoint, gap) {
	found, g := PanelJoint{Name: w.Name}, anywhere
	hold := a.base.reach(w.Piece, w.axis)
	if hold < penetration {
		return found, g
	}
	// Half out of the groove, so that a bottom too long is not taken for one too thick.
	if p := a.between(w.Piece, a.base); p != nil {
		low, high := a.base.span(p.common)
		but = math.Min(but, (high-low)/4)
		list := slices.DeleteFunc(p.barring(axisZ, w.out*math.Min(pull, hold/2)),
			func(b barred) bool { return b.at < low+but || b.at > high-but })
		g = around(list)
		found.Clearance = g.width()
		// Below its upright, or on top of it, it is in no groove.
		found.GoesIn = found.Clearance > -penetration && !math.IsInf(found.Clearance, 0)
	}
	return found, g
}

// between is the joint of two pieces that was taken before.
func (a *assembly) between(upright, other *Piece) *pair {
	for _, p := range a.joints {
		if p.a == upright && p.b == other {
			return p
		}
	}
	return nil
}

// clearance is how far the bottom can move along an axis, as it lies, until one of its
// uprights stops it: those ahead and behind or, if it is in, the ends of the grooves
// beside it. It is put in the middle.
func (a *assembly) clearance(axis int, uprights []upright, in bool) float64 {
	g := around(a.against(axis, uprights, in))
	if math.IsInf(g.low, 0) || math.IsInf(g.high, 0) {
		return math.Inf(1)
	}
	a.base.Placement.Origin = shifted(a.base.Placement.Origin, axis, (g.low+g.high)/2)
	return g.width()
}

// against lists the parts of uprights that bar the bottom along an axis.
func (a *assembly) against(axis int, uprights []upright, in bool) []barred {
	var list []barred
	for _, w := range uprights {
		p := a.between(w.Piece, a.base)
		switch {
		case p == nil:
		case p.common == axis:
			if hold := a.base.reach(w.Piece, w.axis); in && hold > penetration { // half out of the groove, as above
				var off [3]float64
				off[w.axis] = -w.out * math.Min(pull, hold/2)
				list = append(list, p.barringAlong(off)...)
			}
		default:
			list = append(list, p.barring(axis, 0)...)
		}
	}
	return list
}

// levelBehind puts a bottom that is slid in level with the back's outside face.
func (a *assembly) levelBehind() {
	_, end := a.base.span(axisY)
	_, face := a.back.span(axisY)
	a.base.Placement.Origin = shifted(a.base.Placement.Origin, axisY, face-end)
}

// pushIn finds how far a bottom that is slid in could be pushed further, which is its
// clearance.
func (a *assembly) pushIn(uprights []upright, in bool) {
	a.box.ClearanceY = math.Inf(1)
	if g := around(a.against(axisY, uprights, in)); !math.IsInf(g.low, 0) {
		a.box.ClearanceY = -g.low
	}
}

// slide lets the back down on a bottom that is slid in, or lifts it, and looks whether
// the bottom's way out is free.
func (a *assembly) slide() {
	_, over := a.base.span(axisZ)
	edge, _ := a.back.span(axisZ)
	rests := PanelJoint{Name: a.back.Name, Gap: edge - over}
	rests.GoesIn = rests.Gap > -a.lift-penetration
	if rests.Gap < 0 && rests.GoesIn {
		a.back.Placement.Origin = shifted(a.back.Placement.Origin, axisZ, -rests.Gap)
	}
	a.box.BottomJoints = append(a.box.BottomJoints, rests)
	for _, side := range []*Piece{a.left, a.right} {
		if p, ok := a.joinWhole(side, a.base); ok && ahead(p.barringAlong([3]float64{})) {
			a.box.Blocked = append(a.box.Blocked, side.Name)
		}
	}
	if p, ok := a.join(a.back, a.base); ok && ahead(p.barring(axisY, 0)) {
		a.box.Blocked = append(a.box.Blocked, a.back.Name)
	}
}

// applied puts a bottom against the lowest of the edges over it, so much higher.
func (a *assembly) applied(by float64) {
	a.box.BottomFit = Applied
	a.base.Placement.Origin = shifted(a.base.Placement.Origin, axisZ, by)
	_, over := a.base.span(axisZ)
	a.box.GrooveClearance, a.box.ClearanceX, a.box.ClearanceY = math.Inf(1), math.Inf(1), math.Inf(1)
	for _, w := range a.uprights() {
		edge, _ := w.span(axisZ)
		hold := a.base.reach(w.Piece, w.axis)
		a.box.BottomJoints = append(a.box.BottomJoints,
			PanelJoint{Name: w.Name, GoesIn: hold > penetration, Gap: edge - over, Engagement: hold})
	}
}
