package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"
)

// numbered is a piece with its number, where it is seen, and a place on it.
type numbered struct {
	number string
	at     geom.Point
	area   []geom.Loop
}

// Measures of balloons, in mm: a number of two digits in a circle, how far circles keep
// off each other and the frame, the grid on which they are tried, and the dot on the piece.
const (
	balloonRadius = 4.2
	numberHigh    = 3.5 // of figure
	balloonAir    = 1.2
	balloonStep   = 1.5
	leaderDot     = 0.6
)

// Weights of what is bad about a balloon's place, in mm of its leader's length: a line that the
// circle covers or the leader crosses, another leader, and another piece that the circle stands on.
const (
	coversLine    = 200
	crossesLine   = 4
	crossesLeader = 100
	onOtherPiece  = 60
)

// balloon is one that has its place.
type balloon struct {
	numbered
	center geom.Point
}

// leader is the line from the circle to the piece.
func (b balloon) leader() picture.Segment {
	way := b.at.Sub(b.center)
	return picture.Segment{A: b.center.Add(way.Unit().Scale(balloonRadius)), B: b.at}
}

// balloons puts a number beside each piece, in a circle with a leader. No circle leaves the drawing
// or touches another one or its leader, or hides the end of one; leaders cross only where there is no
// other place.
func balloons(d *drawing.Drawing, pieces []numbered, lines []picture.Segment) {
	var list []balloon
	edge := balloonRadius + seenPen.Width
	for i := range pieces {
		best, found := math.Inf(1), balloon{}
		for x := edge; x <= d.Width-edge; x += balloonStep {
			for y := edge; y <= d.Height-edge; y += balloonStep {
				b := balloon{pieces[i], geom.Point{X: x, Y: y}}
				c := b.cost(list)
				for k, other := range pieces {
					if c < best && k != i {
						c += b.onOther(other)
					}
				}
				if c < best {
					c += b.amid(lines, best-c)
				}
				if c < best {
					best, found = c, b
				}
			}
		}
		if !math.IsInf(best, 1) { // or it is as full as no picture is
			list = append(list, found)
		}
	}
	pen := drawing.Pen{Width: 0.25, Ink: 1}
	for _, b := range list {
		l := b.leader()
		d.Line(pen, l.A, l.B)
		d.Loops(drawing.Pen{}, 1, geom.Circle(l.B, leaderDot))
		d.Loops(pen, drawing.White, geom.Circle(b.center, balloonRadius))
		d.Write(drawing.Text{String: b.number, Size: figure, Align: drawing.Middle, Face: drawing.Bold,
			At: b.center.Sub(geom.Point{Y: numberHigh / 2})})
	}
}

// cost is the length of a balloon's leader; infinite where it cannot be beside others.
func (b balloon) cost(others []balloon) float64 {
	long := b.center.To(b.at) - balloonRadius
	if long < balloonRadius { // or the leader is not seen
		return math.Inf(1)
	}
	leader := b.leader()
	for _, o := range others {
		if o.center.To(b.center) < 2*balloonRadius+balloonAir || leader.Distance(o.center) < balloonRadius+balloonAir ||
			o.leader().Distance(b.center) < balloonRadius+balloonAir {
			return math.Inf(1)
		}
		if leader.Crosses(o.leader()) {
			long += crossesLeader
		}
	}
	return long
}

// onOther says how bad it is that a balloon stands at or on another piece.
func (b balloon) onOther(other numbered) float64 {
	switch {
	case other.at.To(b.center) < balloonRadius+2*balloonAir:
		return math.Inf(1)
	case picture.Holds(other.area, b.center):
		return onOtherPiece
	}
	return 0
}

// amid says how bad lines are that a balloon covers or its leader crosses; what is over a limit
// need not be exact.
func (b balloon) amid(lines []picture.Segment, limit float64) (cost float64) {
	leader := b.leader()
	for _, l := range lines {
		if l.Distance(b.center) < balloonRadius+balloonAir/2 {
			cost += coversLine
		} else if leader.Crosses(l) {
			cost += crossesLine
		}
		if cost >= limit {
			break
		}
	}
	return cost
}
