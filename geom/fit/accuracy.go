package fit

import "drawerwright/geom/joinery"

// Accuracy is by how much a shop's cuts are off either way, in mm: what all but a
// few in a thousand keep.
type Accuracy struct {
	// Cutter is how well the width of the slot is known: from one mounting of the
	// cutter to the next, and from its runout.
	Cutter float64
	// Cut is by how much one cut differs from the next without a change of setting.
	Cut float64
	// Fence is how well a fence is set to its distance; of a router, how well a board
	// is placed under it.
	Fence float64
	// Height is how well a cutter is set to its height; of a router, its zero and the
	// flatness of what the board lies on.
	Height float64
	// Length is how well parts are cut to length and width.
	Length float64
	// Log is what a log of test cuts tells beside; nil without one. The lengths are then what follows from it.
	Log *Logged
}

// What is usual; common practice, no source: settings made by a test cut that is
// measured with a caliper, a bit under a table that its fence flexes from a little more
// than a saw's, a router whose zero is touched off on the board, and cuts to a knife
// line that are pared to fit.
var (
	SawAccuracy    = Accuracy{Cutter: 0.03, Cut: 0.03, Fence: 0.05, Height: 0.05, Length: 0.3}
	TableAccuracy  = Accuracy{Cutter: 0.03, Cut: 0.05, Fence: 0.05, Height: 0.05, Length: 0.3}
	RouterAccuracy = Accuracy{Cutter: 0.03, Cut: 0.02, Fence: 0.05, Height: 0.1, Length: 0.1}
	HandAccuracy   = Accuracy{Cutter: 0.1, Cut: 0.15, Fence: 0.1, Height: 0.15, Length: 0.3}
)

// AccuracyOf is what is usual for a machine.
func AccuracyOf(k joinery.CutterKind) Accuracy {
	switch k {
	case joinery.RouterTable:
		return TableAccuracy
	case joinery.Router:
		return RouterAccuracy
	case joinery.Hand:
		return HandAccuracy
	}
	return SawAccuracy
}
