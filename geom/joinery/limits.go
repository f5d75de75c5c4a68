package joinery

// Limits of the joint, in millimetres. All are common practice without a
// source unless their comment says otherwise.
const (
	// Play of a tongue in its dado: below, glue is scraped off; above, the
	// corner can rack while the glue sets.
	leastTonguePlay, mostTonguePlay = 0.1, 0.4
	// hopelessPlay is where glue no longer bridges the gap and the cutter is
	// simply the wrong one.
	hopelessPlay = 1.0
	// Play of the bottom in its groove. It is not glued, so it may be tighter
	// than a tongue, as long as it slides.
	leastBottomPlay, mostBottomPlay = 0.03, 0.6
	// leastSlack is the slack below which errors of a cut list's usual size, half
	// a millimetre, make the bottom too large for its grooves.
	leastSlack = 0.5
	// sameFence is the difference in a fence distance that no fence can be set to.
	sameFence = 0.05
	// mostRecess is how far a front may stand back from or before the ends of
	// the sides and still be called flush: what one pass of sanding takes.
	mostRecess = 0.25
	// mostWidth is how far the width of the box may come out from what was asked:
	// what a pair of side-mounted slides takes up between its two sides.
	mostWidth = 0.8
	// mostDepth is how far the depth of a box may come out from what was asked where
	// front and back each give it their own share: mostRecess for each.
	mostDepth = 2 * mostRecess
	// leastClear is the least clear space inside a box, and the least wood of a
	// side above the groove: under a finger's width, a size is a slip of the pen.
	leastClear, leastAbove = 20.0, 10.0
	// leastHold is how deep a bottom stands in its groove at least, pushed away.
	leastHold = 1.5
	// leastSetback is the least wood of a side behind a housed back.
	leastSetback = 6.0
	// leastLip is the least wood of a side between a stopped groove and its end.
	leastLip = 1.0
	// reliefRoom is how far beyond a bit's radius the relief of a corner may reach.
	reliefRoom = 0.2
	// leastRabbet is the least depth of a rabbet and thickness of a tongue that
	// is a joint at all.
	leastRabbet = 1.0
)

// settle is the part of a computed size, in millimetres, that no verdict may hang
// on: ten steps of a geom.Length, whose rounding may add up.
const settle = 1e-5
