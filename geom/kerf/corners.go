package kerf

import (
	"math"

	"drawerwright/geom"
)

const (
	// sharpest is the largest turn, in radians, of what still counts as a corner: 150
	// degrees, a tip of 30 (common practice, no source).
	sharpest = 5 * math.Pi / 6
	// more is how much more than by the formula may stay before a place counts as too
	// narrow, as a part of it: discs are fitted to a micrometre.
	more = 0.01
	// speck is the area, in mm2, below which nothing is told.
	speck = 1e-4
)

// leaves is the area of a loop that a disc of radius r leaves, in mm2, where that is
// more than its corners explain; else 0. Covered is what the disc covers of the loop,
// with inward 1, or what it leaves of the loop's surroundings, with -1.
//
// In a corner that turns by an angle t a disc leaves r^2 (tan(t/2) - t/2): the kite
// between the corner, the centre and the two places that it touches, less the sector.
// An arc is a corner that turns by its sweep and is less sharp than that; corners on
// both ends of a side shorter than the disc can act as one that turns by both angles.
func leaves(l geom.Loop, covered []geom.Loop, r, inward float64) float64 {
	area := 0.0
	for _, c := range covered {
		area += c.Area()
	}
	off := math.Abs(l.Area() - area)
	corner := func(turn float64) float64 {
		t := min(max(turn, 0), sharpest)
		return float64(r * r * (math.Tan(t/2) - t/2))
	}
	allowed := 0.0
	for i := range l {
		before, s, next := sideOf(l, (i+len(l)-1)%len(l)), sideOf(l, i), sideOf(l, (i+1)%len(l))
		at, after := inward*turnOf(before.end(), s.start()), inward*turnOf(s.end(), next.start())
		allowed += corner(at)
		if s.radius > 0 {
			allowed += corner(inward * s.sweep)
		}
		if s.a.To(s.b) < 2*r && at > 0 && after > 0 && s.radius == 0 {
			allowed += corner(at + after)
		}
	}
	if off > float64(allowed*(1+more))+speck {
		return off
	}
	return 0
}

// start and end are the directions of a side at its ends.
func (s side) start() geom.Point { return s.direction(s.a) }
func (s side) end() geom.Point   { return s.direction(s.b) }

func (s side) direction(p geom.Point) geom.Point {
	if s.radius == 0 {
		return geom.Point{X: s.b.X - s.a.X, Y: s.b.Y - s.a.Y}
	}
	x, y := p.X-s.centre.X, p.Y-s.centre.Y
	if s.sweep < 0 {
		x, y = -x, -y
	}
	return geom.Point{X: -y, Y: x}
}

// turnOf is the angle from one direction to another, to the left.
func turnOf(d, e geom.Point) float64 {
	return math.Atan2(float64(d.X*e.Y)-float64(d.Y*e.X), float64(d.X*e.X)+float64(d.Y*e.Y))
}
