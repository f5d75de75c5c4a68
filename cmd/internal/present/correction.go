package present

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Corrected is said where a table says what to move at a machine: for which readings, and by how much.
func Corrected(machine joinery.CutterKind, list []Check) string {
	text := "Every combination of readings within these limits is right; one that is out may be right with the " +
		"others, as drawerwright adjust tells. Without it, move what stands beside it by its difference from what it " +
		"is set to, and read again; where nothing stands, or two ask for opposite moves of one setting, set its " +
		"figures anew and cut another test piece."
	if machine.FollowsDrawing() {
		text += " The diameter is the bit's in the program."
	}
	if slices.ContainsFunc(list, func(c Check) bool { return c.IfMore == fenced[testcut.Cutter][0] }) {
		text += " " + otherCutter[machine]
	}
	return text
}

// otherCutter is what can be done about a cut that is too wide or too narrow, by machine.
var otherCutter = map[joinery.CutterKind]string{
	joinery.Saw: "Thinner cutter: shims or chippers out, or another cutter; two blades alone get no thinner. Thicker: " +
		"shims in, or a second pass, fence farther by the difference.",
	joinery.RouterTable: "Thinner cutter: another bit. Thicker: a second pass, fence farther by the difference.",
}

// corrected says in a few words what to move for a reading that is more, and for one that is less than it should be;
// nothing where that is not certain.
func (m maker) corrected(c testcut.Correction, r gauge.Row) (more, less string) {
	drawn := m.Cutter.Kind.FollowsDrawing()
	if c.Setting == testcut.Cutter && drawn && slices.ContainsFunc(m.Bits,
		func(bit float64) bool { return math.Abs(bit-r.Target) < geom.Settle }) {
		return "", "" // one pass of a bit as wide as the slot: no diameter in the program changes it
	}
	return shortMove(c.Of(1), m.Cutter.Kind), shortMove(c.Of(-1), m.Cutter.Kind)
}

// turns are the words for the moves of settings below 0 and above, of machines without a fence. By hand a width is that
// of the tool; a router that cuts parts out of a sheet has no stop for them.
var turns = map[joinery.CutterKind]map[testcut.Setting][2]string{
	joinery.Hand: {
		testcut.Fence: {"gauge narrower", "gauge wider"}, testcut.Height: {"stop less deep", "stop deeper"},
		testcut.DadoHeight: {"stop less deep", "stop deeper"},
	},
	joinery.Router: {
		testcut.Height: {"zero higher", "zero lower"},
		testcut.Cutter: {"diameter up", "diameter down"}, // in the program: the cut gets the narrower for it
	},
}

// fenced are those of a machine with a fence.
var fenced = map[testcut.Setting][2]string{
	testcut.Fence: {"fence closer", "fence away"}, testcut.EndPlace: {"fence closer", "fence away"},
	testcut.Height: {"cutter lower", "cutter higher"}, testcut.DadoHeight: {"cutter lower", "cutter higher"},
	testcut.RabbetHeight: {"cutter lower", "cutter higher"}, testcut.Cutter: {"thinner cutter", "thicker cutter"},
}

// shortMove is a move in two or three words, as a cell of a table has room for; nothing of what is not moved there.
func shortMove(m testcut.Move, machine joinery.CutterKind) string {
	of := turns[machine]
	if machine.Fenced() {
		of = fenced
	}
	if m.By < 0 {
		return of[m.Setting][0]
	}
	return of[m.Setting][1]
}
