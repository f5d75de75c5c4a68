package joinery

import "drawerwright/geom"

// GrainDirection is the direction in which a divider runs.
type GrainDirection string

const (
	Across GrainDirection = "across" // from side to side
	Along  GrainDirection = "along"  // from front to back
)

// Divider is one or more equal boards that divide the inside of a box. They stand
// in dados of the two walls that they meet, on the bottom; where two cross, both
// are halved.
type Divider struct {
	Stock     Stock
	Direction GrainDirection
	// At are the distances from the inside face of the front (Across) or of the left
	// side (Along) to the near face of each, in mm; empty with a Count, which spaces
	// as many evenly.
	At    []float64
	Count int
	// Height over the bottom; 0 is as high as the box lets it be.
	Height float64
	// Loose dividers slide in from the top, in dados stopped above the bottom's
	// groove, a little lower and narrower than fixed ones; others are glued in.
	Loose bool
	// Folders hang on each two of them, if their width is not 0: then At and Count are of pairs.
	Folders Folders
}

// Folders are hanging folders as they were measured, in mm: from the middle of one hook's slot to
// that of the other, how far they hang below the rails, and how far they stand up over them.
type Folders struct{ Width, Below, Above float64 }

// Insert is a grid of strips that cross half and half. It stands loose on the bottom and is
// lifted out; its outer cells end at the walls.
type Insert struct {
	Stock Stock
	// Columns, from left to right, and Rows, from the front, are what lies in the cells as it
	// was measured, in mm; those of 0 share the rest, or all do where none is 0.
	Columns, Rows []float64
	Height        float64 // over the bottom; 0 is as high as the box lets it be
	// ContentsClearance is how much larger each measured cell is than what lies in it,
	// WallClearance how much shorter the strips are than the inside of the box.
	ContentsClearance, WallClearance float64
}

// UsualContentsClearance is room for fingers, and UsualWallClearance lets a grid in and out by
// hand, round in the unit of a job; common practice, no source.
func UsualContentsClearance(u geom.Unit) float64 { return u.Usual(10, 3.0/8) }
func UsualWallClearance(u geom.Unit) float64     { return u.Usual(2, 1.0/16) }

// PullShape is a cut by which a drawer is pulled open, in the middle of its front.
type PullShape string

const (
	NoPull       PullShape = ""
	PullHole     PullShape = "hole"       // round, for a finger
	PullHalf     PullShape = "half-round" // out of the top edge
	PullSlot     PullShape = "slot"       // out of the top edge, with round inner corners
	PullHandHold PullShape = "hand-hold"  // a slot with round ends below the top edge
)

// Pull is where fingers take hold of a front. A size of 0 is chosen.
type Pull struct {
	Shape         PullShape
	Width, Height float64 // the diameter of a hole, of a half-round
	FromTop       float64 // from the top edge to the middle of a hole or hand-hold
}

// DrawerFront is a front screwed on to the box from inside. It stands before the
// box, Left and Below beyond the box's outside on those sides (below 0: short of it).
type DrawerFront struct {
	Stock                       Stock
	Width, Height               float64
	OverhangLeft, OverhangBelow float64
	// Handles are the holes for a handle or knob: none, one, or two that are
	// HandleSpacing apart, HandleDiameter wide, in the middle of the front's height
	// unless HandleFromTop says how far below its top edge.
	Handles                                      int
	HandleSpacing, HandleDiameter, HandleFromTop float64
}

// Undermount is what slides under a box ask of it.
type Undermount struct {
	// Flush is how high the underside of the bottom has to stand over the bottom
	// edges, for the slides under it.
	BottomRecess float64
	// MaxSide is the thickest side that goes between slide and opening.
	MaxSide float64
	// NotchWidth and NotchHeight are cut out of the back's lower corners, measured
	// from the inside faces of the sides and from the bottom edge; 0 is no notch.
	NotchWidth, NotchHeight float64
	// The bores for the slides' hooks in the outside face of the back: their
	// diameter, depth, height over the bottom edge and distance from the inside
	// faces of the sides. A diameter of 0 is none.
	HookDiameter, HookDepth, HookHeight, HookIn float64
}
