package present

import (
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// wall has notches at its left end, from low to high each.
func wall(at ...float64) geom.Panel {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 300, 60), Thickness: 12}
	for i := 0; i < len(at); i += 2 {
		p.EdgeCuts = append(p.EdgeCuts, geom.EdgeCut{Kind: geom.FingerCut, Area: geom.Rectangle(0, at[i], 12, at[i+1])}, geom.EdgeCut{Kind: geom.FingerCut, Area: geom.Rectangle(288, at[i], 300, at[i+1])})
	}
	return p
}

// TestJig: notches of 6.1 and fingers of 5.9, a pitch of 12. The lowest finger of the
// front is 14, 8.1 more than the others; the side's lowest notch of 14.1 takes
// 14.1 / 6.1 = 2.3, three passes.
func TestJig(t *testing.T) {
	m := maker{MachineWork: record.MachineWork{Boards: []setup.Board{
		{Name: "front", Role: joinery.Front, Panel: wall(14, 20.1, 26, 32.1, 38, 44.1)},
		{Name: "side", Role: joinery.Side, Panel: wall(0, 14.1, 20, 26.1, 32, 38.1)},
	}}}
	c := setup.Cut{Step: setup.Step{Holding: setup.Fingers, Cutter: 6.1}, Boards: []setup.Piece{{Name: "front"}, {Name: "side"}}}
	said := strings.Join(m.jigNotes(c), "\n")
	for _, want := range []string{"pin as wide as one notch, 6.10 mm", "5.90 mm from the cutter", "front, mm: 14.00 to 20.10, 26.00 to 32.10, 38.00 to 44.10; for the first a spacer of 8.10",
		"side, mm: 0.00 to 14.10 in 3 passes, 20.00 to 26.10, 32.00 to 38.10; mark the first"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in:\n%s", want, said)
		}
	}
	// By hand there is no jig, and no passes.
	c.Holding, c.Cutter = setup.HandSawn, 0
	if said := fmt.Sprint(m.jigNotes(c)); strings.Contains(said, "Jig") || strings.Contains(said, "passes") || !strings.Contains(said, "14.00 to 20.10") {
		t.Errorf("by hand: %s", said)
	}
}
