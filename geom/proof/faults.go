package proof

// What drawings that are read back may differ by from what was meant, before it is a fault.
const (
	// SameSize is what a size read back may differ from one computed, in mm: files hold six
	// decimals, in inches too.
	SameSize = 0.02
	// SameDepth is what the number in a layer's name may differ by besides its rounding, in mm.
	SameDepth = 1e-3
	// Tick is how near, in mm, a corner is where it should be.
	Tick = 0.01
	// MinLeft is the area, in mm2, of wood that a bit leaves where nobody would see or feel it.
	MinLeft = 0.05
	// MinCut is the area, in mm2, of a cut on a sheet that nobody would see or feel.
	MinCut = 0.5
)

// The least wood that holds, in mm; common practice, no source.
const (
	// minWeb is that under a pocket: with less it has come through its board for all that it
	// is worth.
	minWeb = 0.5
	// MinWall is that of a template between what is cut out and another edge: less breaks.
	MinWall = 1.0
	// MinBridge is the least length of a bridge along an outline that is one: less breaks by
	// itself.
	MinBridge = 1.0
	// minOver is the thickness under which nothing is left of a bridge.
	minOver = 0.1
)

// MinTied is how many bridges hold a part in its sheet: on one it swings.
const MinTied = 2

// ComesThrough reports whether a pocket of a depth in a board of a thickness, both in mm, has
// come through it for all that it is worth.
func ComesThrough(depth, thickness float64) bool { return depth > thickness-minWeb }

// NothingLeft reports whether wood of a thickness in mm is so thin that no bridge holds by it.
func NothingLeft(thickness float64) bool { return thickness < minOver }

// farBelow is how much room may lack, in mm, for it still to be the part that is too large;
// common practice, no source.
const farBelow = 3.0

// Blocked reports whether room that is below 0, in mm, is so far below it that something else
// is in the way: it is no measure of the part.
func Blocked(room float64) bool { return room < -farBelow }
