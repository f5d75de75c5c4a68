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
	// narrow, as a part of it: discs are fitted to a micrometer.
	more = 0.01
	// speck is the area, in mm2, below which nothing is reported.
	speck = 1e-4
)

// leaves is the area of a loop that a disc of radius r leaves, in mm2, where that is
// more than its corners explain; else 0. Covered is what the disc covers of the loop,
// with inward 1, or what it leaves of the loop's surroundings, with -1.
//
// In a corner a disc leaves [geom.CornerArea]. An arc is a corner that turns by its sweep and is
// less sharp than that; corners on
// both ends of a side shorter than the disc can act as one that turns by both angles.
func leaves(l geom.Loop, covered []geom.Loop, r, inward float64) float64 {
	area := 0.0
	for _, c := range covered {
		area += c.Area()
	}
	off := math.Abs(l.Area() - area)
	corner := func(turn float64) float64 {
		return geom.CornerArea(r, min(max(turn, 0), sharpest))
	}
	allowed := 0.0
	for i, v := range l {
		at, after := inward*l.Turn(i), inward*l.Turn(l.After(i))
		allowed += corner(at)
		if v.Bulge != 0 {
			allowed += corner(inward * l.Arc(i).Sweep())
		}
		if v.To(l.Next(i).Point) < 2*r && at > 0 && after > 0 && v.Bulge == 0 {
			allowed += corner(at + after)
		}
	}
	if off > float64(allowed*(1+more))+speck {
		return off
	}
	return 0
}
