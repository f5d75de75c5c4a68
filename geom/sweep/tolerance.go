package sweep

// Tolerances, in millimeters unless said. Coordinates up to geom.MaxExtent are
// off by 1e-12; noise, reach, same and fit are each some way over the one before,
// so that what one of them leaves open the next does not see.
const (
	// noise is what a computed distance may be off by: 1e-12 for straight sides,
	// and for an arc the last bits of the largest radius, 1e-10.
	noise = 1e-9
	// reach is how far apart nodes may be that are one.
	reach = 2e-8
	// same is the distance up to which neighboring corners are one, and an arc its
	// chord.
	same = 1e-7
	// fit is how much narrower than the disc a slot may be that counts as wide
	// enough. Lengths are kept in whole steps of as much, see geom.Length, and
	// no shop can measure it. Where there is doubt, about half of it is taken
	// off the radius, so that what fits exactly has room.
	fit = 1e-6
	// pointed is the radius up to which a disc cuts every corner sharp: less
	// than a step of geom.CoarseGrid, on which panels are judged.
	pointed = 1e-4
	// joint is how near to the place where one curve goes on as another they
	// may seem to meet again: sqrt(r noise), where they part by noise, is 0.0001
	// mm for a cutter, and 0.002 mm for the largest radius there is.
	joint = 1e-2
	// crumbs is the length that may be swept away at one place as left over by
	// rounding. Two rails that meet at an angle are kept for a length of
	// sqrt(2 r noise) beyond their meeting, which is 0.0002 mm for a cutter and
	// 0.003 mm for the largest radius there is.
	crumbs = 5e-3
	// scrap is the length of sides that are left out of a result: what is left
	// between two discs where they fit by chance to within fit.
	scrap = 2 * fit
	// speck is the area, in square millimeters, of what is no part of a result:
	// less than the smallest disc, far more than what rounding encloses.
	speck = 1e-8
	// spill is how much larger an opening may seem than its loop, or a closing
	// smaller, in square millimeters: reach along the longest loops.
	spill = 1e-3
)

const (
	// even is the change of direction, in radians, that rounding makes where sides
	// go on without a corner.
	even = 1e-10
	// smooth is the angle, in radians, up to which a corner may count as straight
	// on or straight back: arcs written with six places meet their neighbors as
	// nearly.
	smooth = 1e-6
	// convexSlack is how far, in radians, a corner of a convex loop may seem to
	// turn to the right: the rounding of coordinates on a side of a millimeter.
	convexSlack = 1e-12
	// slack is what a change of direction, in radians, may be off by: corners that
	// the smallest disc cannot tell from straight, of sqrt(4 noise / pointed).
	slack = 1e-2
	// flattest is the largest radius, in millimeters, that is computed as an arc.
	flattest = 1e6
	// flatChord is how far the chords may be from an arc of a larger one: over a
	// sheet's length that is less than a grain of the area promised.
	flatChord = 1e-5
	// ringChord is the chord tolerance, in millimeters, with which a loop is
	// judged, the one of geom.Panel.Check.
	ringChord = 0.01
)

const (
	// MaxSides is the most sides that a loop or path may have. It bounds time
	// and memory; a scanned outline has a tenth.
	MaxSides = 1 << 13
	// maxMeetings bounds how often curves may meet in one computation.
	maxMeetings = 1 << 18
)
