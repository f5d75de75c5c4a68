package mill

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestPinBelow: of boards from 11.5 to 12.1, 11.8 as a mean, holes go 5.3 below that one, and
// so 5 into the spoilboard below the thickest; from the spoilboard they go 5, whatever lies
// on it.
func TestPinBelow(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 11.8,
		Pockets: []geom.Pocket{{Kind: geom.Dado, Face: geom.Inside, Depth: 6, Outline: geom.Rectangle(50, 0, 57, 200)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 10, 200)}}}
	for from, want := range map[bool]float64{false: 5.3, true: 5} {
		w, faults := Prepare(Part{Panel: panel, MinThickness: 11.5, MaxThickness: 12.1},
			Settings{Bits: []Bit{{Name: "six", Diameter: 6}}, Overcut: 1, FromSpoilboard: from})
		count := 0
		for _, c := range w.Cuts {
			if c.Operation == Registering {
				if count++; math.Abs(c.Below-want) > 1e-9 {
					t.Errorf("from the spoilboard %t: %v below the board, want %v", from, c.Below, want)
				}
			}
		}
		if count != 2 {
			t.Errorf("%d holes: %v", count, faults)
		}
	}
}
