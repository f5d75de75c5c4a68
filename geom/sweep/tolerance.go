package sweep

// Tolerances, in millimetres unless said. Each is far over the ones before it,
// so that what one of them leaves open the next cannot see: coordinates up to
// geom.MaxExtent are off by 1e-12.
const (
	// noise is what a computed distance may be off by: 1e-12 for straight sides,
	// and for an arc the last bits of the largest radius, 1e-10.
	noise = 1e-9
	// reach is how far apart nodes may be that are one.
	reach = 2e-8
	// same is the distance up to which neighbouring corners are one.
	same = 1e-7
	// fit is how much narrower than the disc a slot may be that counts as wide
	// enough. Lengths are kept in whole steps of as much, see geom.Length, and
	// no shop can measure it. Half of it is taken off the radius, so that what
	// fits exactly has room, and fillets are that much smaller.
	fit = 1e-6
	// pointed is the radius up to which a disc cuts every corner sharp: less
	// than a step of geom.CoarseGrid, on which panels are judged.
	pointed = 1e-4
	// joint is how near to the place where one curve goes on as another they
	// may seem to meet again: arcs of 10 m that touch are told apart 4e-7 mm
	// away, those of a kilometre 0.02 mm.
	joint = 1e-3
	// crumbs is the length of what may be swept away as left over by rounding.
	crumbs = 1e-3
	// specks are left out of what is covered, and of what is left standing in
	// it, in square millimetres.
	speck = 1e-6
)

const (
	// smooth is the change of direction, in radians, up to which sides go on
	// without a corner, as geom.Loop.MinInsideRadius has it.
	smooth = 1e-6
	// convexSlack is how far, in radians, a corner of a convex loop may seem to
	// turn to the right: the rounding of coordinates on a side of a millimetre.
	convexSlack = 1e-12
	// slack is what a change of direction in radians may be off by: nodes within
	// reach on the smallest arcs that are not points.
	slack = 1e-4
	// flattest is the largest radius, in millimetres, that is computed as an arc.
	flattest = 1e6
	// flatChord is how far the chords may be from an arc of a larger one: over a
	// sheet's length that is less than a grain of the area promised.
	flatChord = 1e-5
	// ringChord is the chord tolerance, in millimetres, with which a loop is
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
