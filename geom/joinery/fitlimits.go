package joinery

import "drawerwright/geom"

// Limits are what a shop calls right, in millimeters. The defaults are common
// practice without a source; a job file can change each.
type Limits struct {
	// TongueClearance is the play of a tongue in its dado: below, glue is scraped off;
	// above, the corner can rack while the glue sets.
	TongueClearance geom.Interval
	// GrooveClearance is that of the bottom in its groove. It is not glued, so it may be
	// tighter than a tongue, as long as it slides.
	GrooveClearance geom.Interval
	// BottomClearance is what the bottom is smaller than its grooves each way: below,
	// errors of a cut list's usual size make it too large; above, it holds by less
	// than it should.
	BottomClearance geom.Interval
	// Flush is how far a front may stand back from or before the ends of the sides
	// and still be called flush: what one pass of sanding takes. Front and back each
	// move the depth of a box by as much.
	Flush float64
	// ShoulderGap is how far a shoulder, or another joint that is meant to be closed, may
	// stay open before one sees it.
	ShoulderGap float64
	// EndClearance is the most room between a tongue's end and the floor of its dado: beyond,
	// the end grain has no glue line at all.
	EndClearance float64
	// Width is how far the width of the box may come out from what was asked: what a
	// pair of side-mounted slides takes up between its two sides.
	Width float64
	// Depth is the same of its depth, with the lengths of the sides off too: what a
	// slide's holes take up.
	Depth float64
	// Height is the same of its height: what one stroke of a plane levels.
	Height float64
	// Diagonal is how far the diagonals of a box may be from each other, and each
	// from what it should be: 1 mm is usually called square.
	Diagonal float64
}

// UsualLimits are those of a Spec that gives none, round in its unit. 1 mm, or 1/32 in, between
// diagonals is usually called square; common practice, no source.
func UsualLimits(u geom.Unit) Limits {
	if u != geom.Inch {
		return DefaultLimits
	}
	in := func(inches float64) float64 { return u.Usual(0, inches) }
	return Limits{
		TongueClearance: geom.Interval{Min: in(0.004), Max: in(0.016)},
		GrooveClearance: geom.Interval{Min: in(0.001), Max: in(0.024)},
		BottomClearance: geom.Interval{Min: in(0.020), Max: in(0.200)},
		Flush:           in(0.010), ShoulderGap: in(0.010), EndClearance: in(0.040),
		Width: in(1.0 / 32), Depth: in(0.020), Height: in(0.020), Diagonal: in(1.0 / 32),
	}
}

// DefaultLimits are the usual ones of a job in millimeters.
var DefaultLimits = Limits{
	TongueClearance: geom.Interval{Min: 0.1, Max: 0.4}, GrooveClearance: geom.Interval{Min: 0.03, Max: 0.6}, BottomClearance: geom.Interval{Min: 0.5, Max: 5},
	Flush: 0.25, ShoulderGap: 0.25, EndClearance: 1, Width: 0.8, Depth: 0.5, Height: 0.5, Diagonal: 1,
}

// HopelessGap is where glue no longer bridges a gap or a play, in millimeters; common
// practice, no source.
const HopelessGap = 1.0

// MinHolding is the least wood that is advised of a tongue, and between a dado and the end
// of its board, in millimeters: less breaks off; common practice, no source.
const MinHolding = 3.0

// Limits of the joint that no job changes, in millimeters. All are common practice without a
// source unless their comment says otherwise.
const (
	// bottomRoom is what other parts keep from a bottom that slides.
	bottomRoom = 0.03
	// minBottomClearance is the clearance below which errors of a cut list's usual size, half
	// a millimeter, make the bottom too large for its grooves.
	minBottomClearance = 0.5
	// sameFence is the difference in a fence distance that no fence can be set to.
	sameFence = 0.05
	// minClear is the least clear space inside a box, and the least wood of a
	// side above the groove: under a finger's width, a size is a slip of the pen.
	minClear, minAbove = 20.0, 10.0
	// minHold is how deep a bottom stands in its groove at least, pushed away.
	minHold = 1.5
	// minBackSetback is the least wood of a side behind a housed back.
	minBackSetback = 6.0
	// usualBackSetback is what is advised for one.
	usualBackSetback = 12.0
	// minLip is the least wood of a side between a stopped groove and its end.
	minLip = 1.0
	// reliefRoom is how far beyond a bit's radius the relief of a corner may reach.
	reliefRoom = 0.2
	// minRabbet is the least depth of a rabbet and thickness of a tongue that
	// is a joint at all.
	minRabbet = 1.0
)

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle
