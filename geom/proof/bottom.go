package proof

import (
	"math"
)

// BottomFit is how a bottom meets the walls, by how it lies to their lower edges.
type BottomFit uint8

const (
	// InGrooves of all four walls; or in none that it should be in.
	InGrooves BottomFit = iota
	// SlidIn from behind into three grooves, under a back that ends on it.
	SlidIn
	// Applied to the lower edges of all four from below.
	Applied
	// OnCleats that are fixed to the walls, in none of their grooves.
	OnCleats
)

func (f BottomFit) String() string { return [...]string{"grooves", "slid-in", "applied", "cleats"}[f] }

// mostLift is how much higher than it was meant to stand a back is put on a thick
// bottom, and a divider, in millimetres: more than boards of one stock differ, less
// than one would overlook at the upper edges.
const mostLift = 0.5

// bottom finds the bottom's place at its walls.
func (a *assembly) bottom() {
	if len(a.cleats) > 0 {
		a.onCleats()
		return
	}
	under, over := a.base.span(axisZ)
	lowest := math.Inf(1)
	for _, w := range a.walls() {
		z, _ := w.span(axisZ)
		lowest = math.Min(lowest, z)
	}
	back, _ := a.back.span(axisZ)
	switch {
	case math.Abs(lowest-over) < (over-under)/2:
		a.applied(lowest - over)
		return
	case back > (under+over)/2:
		a.box.BottomFit = SlidIn
	}
	level := anywhere
	for _, w := range a.walls() {
		if w.Piece == a.back && a.box.BottomFit == SlidIn {
			continue
		}
		found, g := a.groove(w)
		level = level.and(g)
		a.box.Walls = append(a.box.Walls, found)
	}
	a.box.BottomPlay = level.width()
	if level.width() > -penetration && !math.IsInf(level.low, 0) {
		a.base.Stand.Origin = shifted(a.base.Stand.Origin, axisZ, level.low)
	}
	a.box.SlackX = a.slack(a.left, a.right, axisX)
	if a.box.BottomFit == SlidIn {
		a.slide()
	} else {
		a.box.SlackY = a.slack(a.front, a.back, axisY)
	}
	for i, w := range a.walls() {
		a.box.Walls[i].Hold = a.base.reach(w.Piece, w.axis)
	}
}

// groove feels the bottom in the groove of a wall, and gives the range of heights
// in which it can be there.
func (a *assembly) groove(w wall) (Wall, gap) {
	found, g := Wall{Name: w.Name}, anywhere
	hold := a.base.reach(w.Piece, w.axis)
	if hold < penetration {
		return found, g
	}
	// Half out of the groove, so that a bottom too long is not taken for one too thick.
	if p := a.joint(w.Piece, a.base); p != nil {
		g = around(p.barring(axisZ, w.out*math.Min(pull, hold/2)))
		found.Play = g.width()
		// Below its wall, or on top of it, it is in no groove.
		found.Goes = found.Play > -penetration && !math.IsInf(found.Play, 0)
	}
	return found, g
}

// slack is how far the bottom can move between two walls; it is put in the middle.
func (a *assembly) slack(low, high *Piece, axis int) float64 {
	g := around(a.against(low, high, axis))
	if math.IsInf(g.low, 0) || math.IsInf(g.high, 0) {
		return math.Inf(1)
	}
	a.base.Stand.Origin = shifted(a.base.Stand.Origin, axis, (g.low+g.high)/2)
	return g.width()
}

// against lists what of two walls bars the bottom along an axis.
func (a *assembly) against(low, high *Piece, axis int) []barred {
	var list []barred
	for _, w := range []*Piece{low, high} {
		for _, p := range a.joints {
			if p.a == w && p.b == a.base {
				list = append(list, p.barring(axis, 0)...)
			}
		}
	}
	return list
}

// slide puts a bottom that is slid in level with the back's outside face, lets the
// back down on it or lifts it, and looks whether its way out is free. What it could
// be pushed further in is its slack.
func (a *assembly) slide() {
	_, end := a.base.span(axisY)
	_, face := a.back.span(axisY)
	a.base.Stand.Origin = shifted(a.base.Stand.Origin, axisY, face-end)
	a.box.SlackY = math.Inf(1)
	if g := around(a.against(a.front, a.front, axisY)); !math.IsInf(g.low, 0) {
		a.box.SlackY = -g.low
	}
	_, over := a.base.span(axisZ)
	edge, _ := a.back.span(axisZ)
	rests := Wall{Name: a.back.Name, Gap: edge - over}
	rests.Goes = rests.Gap > -a.lift-penetration
	if rests.Gap < 0 && rests.Goes {
		a.back.Stand.Origin = shifted(a.back.Stand.Origin, axisZ, -rests.Gap)
	}
	a.box.Walls = append(a.box.Walls, rests)
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
	a.base.Stand.Origin = shifted(a.base.Stand.Origin, axisZ, by)
	_, over := a.base.span(axisZ)
	a.box.BottomPlay, a.box.SlackX, a.box.SlackY = math.Inf(1), math.Inf(1), math.Inf(1)
	for _, w := range a.walls() {
		edge, _ := w.span(axisZ)
		hold := a.base.reach(w.Piece, w.axis)
		a.box.Walls = append(a.box.Walls, Wall{Name: w.Name, Goes: hold > penetration, Gap: edge - over, Hold: hold})
	}
}
