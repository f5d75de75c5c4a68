// Package joinery turns a drawer box in a shop's words into panels and where
// they stand. [Build] is the one entry: a [Spec] goes in, a [Drawer] comes out,
// with every [geom.Diagnosis] that the shop has to know of.
//
// Everything after it sees panels, faces and pockets only, so that another
// corner, bottom or part is a function here and nothing elsewhere.
package joinery

import (
	"slices"
	"strings"

	"drawerwright/geom"
)

// Role is what a part is in the box.
type Role string

const (
	Side   Role = "side"
	Front  Role = "box-front"
	Back   Role = "back"
	Bottom Role = "bottom"

	DividerRole     Role = "divider"
	InsertRole      Role = "insert"
	DrawerFrontRole Role = "drawer-front"
)

// String is the role in words: a box front is not the drawer front before it.
func (r Role) String() string { return strings.ReplaceAll(string(r), "-", " ") }

// Part is a panel with its stock and a place for each piece of it in the box.
type Part struct {
	Role Role
	// Label tells parts of one role apart: left and right where the sides are no
	// twins, the direction of an insert's strips, a number where there are several; else empty.
	Label      string
	Stock      Stock
	Panel      geom.Panel
	Placements []geom.Placement
}

// Size is a box's width (left to right), height and depth (front to back), in mm.
type Size struct{ Width, Height, Depth float64 }

// Drawer is a box worked out: its parts in cutting order, what its joints will
// do, and the one setting that serves all its cuts.
type Drawer struct {
	Spec    Spec
	Outside Size // as it comes out: deeper than asked where front or back are proud
	Inside  Size // clear, above the bottom
	Parts   []Part
	Fit     []Check
	Setup   Setup
	// Shaped says that all parts are there and stand in their places, though they may not go
	// together: the drawer can be looked at.
	Shaped bool
	// Dimensions of a drawer that has its shape.
	Dimensions Dimensions
	Bores      []Bore
	// DividerPlaces are, of each entry of dividers, the distances of their near faces from the
	// wall, in mm, ascending: the order of their placements.
	DividerPlaces [][]float64
	// BottomOut is by how much a bottom that was slid in stands out behind the back when it
	// has swollen, in mm.
	BottomOut float64
	// Hardware of one box, without slides.
	Hardware []Item
	// OpenEnds of the bottom's grooves, whether plugs are wished for or not.
	OpenEnds []OpenEnds
}

// Bore are holes or mortises in the ends of a part, which no flat drawing shows: a jig or
// a marking gauge places them.
type Bore struct {
	Part            Role
	Label           string
	Diameter, Depth float64
	// FromOutside is the distance of their middles from the part's outside face,
	// Heights those from its lower edge; at both ends.
	FromOutside float64
	Heights     []float64
	// Lengths of mortises along the end, one for each of Heights, Diameter being how wide they
	// are; none of round holes.
	Lengths []float64
}

// Setup is the fence distance f and the cutter height h of every cut, in mm.
type Setup struct {
	Cutter                      Cutter
	FenceDistance, CutterHeight float64
	// DadoHeight is the cutter height of the dados where the glue room makes it
	// another one; 0 where it is CutterHeight too.
	DadoHeight float64
	// RabbetPasses is how many passes the widest rabbet takes on a saw, the first
	// at FenceDistance, the last at LastFence, the others evenly between, so that
	// none is further from the next than the cutter is wide. The rabbets of the
	// [DoubleRabbet] are measured from the end of the part: the first pass is at 0,
	// along the end, and so is a single one, part of the cutter being buried in the
	// fence.
	RabbetPasses int
	LastFence    float64
	// FlatTongues says that front and back are too long, too short or too narrow to stand on end: the
	// rabbets of their tongues are cut flat on the table, outside face down, the cutter as
	// high as they are deep, so that a thicker board has a thicker tongue. Passes and
	// LastFence are then from the end of the part, as of the [DoubleRabbet].
	FlatTongues bool
	// BottomFence is the fence distance for the rabbets of a bottom on a tongue that is stood
	// on end and on edge; 0 where there are none. BottomHeight is how high the cutter is for
	// those of one that is too long or too short for it, either way: it lies flat for all
	// of them, outside face down, and a thicker board has a thicker tongue. 0 of any other.
	BottomFence, BottomHeight float64
	// GrooveFence is the fence distance of the bottom's grooves where they are at
	// another height than FenceDistance; 0 where they are not.
	GrooveFence float64
	// GroovePasses is how many passes the cutter for grooves takes over the bottom's
	// grooves, and GrooveWidth how wide they get; 0 without such a cutter.
	// [Setup.GrooveFences] has the distances.
	GroovePasses int
	GrooveWidth  float64
	// FingerRow is the row from below, 1 the lowest, whose fingers are FingerHeight high
	// and not as high as the others that a jig makes: a spacer before the notch below or
	// above it. 0 is no such row.
	FingerRow    int
	FingerHeight float64
	// BackFence is that of the dados of a housed back, from the rear end to the
	// nearer wall; BackPasses how many passes a saw takes over one, LastBackFence the
	// distance for the last. 0 without.
	BackFence     float64
	BackPasses    int
	LastBackFence float64
}

// Build works out a drawer box. Errors among the problems mean that it cannot
// be made as asked; then the drawer holds what could be worked out and is not
// to be cut. Where it has its shape all the same, it can be looked at.
func Build(s Spec) (Drawer, []geom.Diagnosis) {
	drawers, problems := BuildRows([]Spec{s})
	return drawers[0], problems[0]
}

// LayOut is [Build] without trying what would help: its problems name no change. It reports
// whether the drawer can be made as asked.
func LayOut(s Spec) (d Drawer, problems []geom.Diagnosis, sound bool) {
	l := newLayout(s)
	l.work()
	for i := range l.problems {
		l.problems[i].Remedies = nil
	}
	return l.drawer, l.problems, !l.failed()
}

// BuildRows is Build for the rows of an opening, whose boxes share all entries but their
// size: what is advised for one of them does for the others too.
func BuildRows(rows []Spec) ([]Drawer, [][]geom.Diagnosis) {
	all := make([]*layout, len(rows))
	for i, s := range rows {
		all[i] = newLayout(s)
		all[i].work()
	}
	drawers, problems := make([]Drawer, len(rows)), make([][]geom.Diagnosis, len(rows))
	for i, l := range all {
		l.fellows = append(slices.Clone(all[:i]), all[i+1:]...)
	}
	for i, l := range all {
		l.advise()
		drawers[i], problems[i] = l.drawer, l.problems
	}
	return drawers, problems
}

// work lays the drawer out and judges it.
func (l *layout) work() {
	switch l.Joint {
	case DadoRabbet:
		l.dadoRabbet()
	case DoubleRabbet:
		l.doubleRabbet()
	case Rabbet:
		l.rabbet()
	case Butt:
		l.butt()
	case BoxJoint:
		l.boxJoint()
	case RabbetedFront:
		l.rabbetedFront()
	case Dovetail:
		l.dovetail()
	default:
		l.fail(geom.Diagnosis{
			Code: "joint", Subject: about(SettingJoint, ""),
			Fact: geom.Sentencef("there is no corner called %q", l.Joint),
			Ask: geom.Sentencef("write %s, %s, %s, %s, %s, %s or %s", DadoRabbet, DoubleRabbet, Rabbet, Butt,
				BoxJoint, RabbetedFront, Dovetail),
		})
	}
	l.then(l.plugs)
	l.addFittings()
	l.then(l.checkApart)
	l.then(func() {
		l.drawer.Dimensions = l.dimensions()
		l.checkPanels()
	})
	l.drawer.Shaped = !l.shapeless
}
