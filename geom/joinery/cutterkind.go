package joinery

// CutterKind is the machine, or the hand, that makes the slots.
type CutterKind string

const (
	Saw         CutterKind = "saw"          // a blade or dado stack: every slot is as wide as the cutter and runs right through
	RouterTable CutterKind = "router-table" // a bit under a table with a fence: as on a saw, and a groove can stop between two stops
	Router      CutterKind = "router"       // a CNC router: a bit that follows a drawing, a slot is made to fit and can stop
	// gauge, knife, saw, chisel and plow plane: a slot is made to fit and can stop
	Hand CutterKind = "hand"
)

// Kinds are all machines, in the order in which they are listed.
var Kinds = []CutterKind{Saw, RouterTable, Router, Hand}

// Fenced reports whether one fence distance and one cutter height make the cuts, in
// slots as wide as the cutter.
func (k CutterKind) Fenced() bool { return k == Saw || k == RouterTable }

// FollowsDrawing reports whether the machine cuts what a drawing says, with bits.
func (k CutterKind) FollowsDrawing() bool { return k == Router }

// MadeToFit reports whether a slot is made as wide as what goes into it wants, though
// never narrower than the bit or the plow iron.
func (k CutterKind) MadeToFit() bool { return k == Router || k == Hand }

// Stops reports whether a groove can end before the end of its board.
func (k CutterKind) Stops() bool { return k != Saw }

// Rounds reports whether a turning bit leaves the inside corners round.
func (k CutterKind) Rounds() bool { return k == Router || k == RouterTable }

// Machine names it in a sentence or a heading.
func (k CutterKind) Machine() string {
	return map[CutterKind]string{Saw: "table saw", RouterTable: "router table", Router: "CNC router", Hand: "hand work"}[k]
}
