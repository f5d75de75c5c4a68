package weight

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// board is 400 x 100 x 10 mm with a groove of 6 x 5 mm along it, a hole of 20 x 10 mm, and a
// pocket that goes through, whose depth in the panel is more than its thickness.
func board() geom.Panel {
	return geom.Panel{Outline: geom.Rectangle(0, 0, 400, 100), Thickness: 10,
		Holes: []geom.Loop{geom.Rectangle(50, 50, 70, 60)},
		Pockets: []geom.Pocket{{Outline: geom.Rectangle(0, 10, 400, 16), Depth: 5},
			{Outline: geom.Rectangle(200, 50, 210, 60), Depth: 12}}}
}

func TestVolume(t *testing.T) {
	// (400 x 100 - 20 x 10) x 10 - 400 x 6 x 5 - 10 x 10 x 10 = 398,000 - 12,000 - 1,000
	if v := Volume(board()); math.Abs(v-385_000) > 1e-6 {
		t.Errorf("volume %g, want 385000", v)
	}
}

func TestBox(t *testing.T) {
	twice := joinery.Part{Panel: board(), Stock: joinery.Stock{Density: 600}, Placements: make([]geom.Placement, 2)}
	// 385,000 mm3 x 600 kg/m3 x 2 = 0.462 kg
	if kg, known := Box(joinery.Drawer{Parts: []joinery.Part{twice}}); !known || math.Abs(kg-0.462) > 1e-9 {
		t.Errorf("%g kg, known %v, want 0.462", kg, known)
	}
	light := twice
	light.Stock.Density = 0
	if kg, known := Box(joinery.Drawer{Parts: []joinery.Part{twice, light}}); known || kg != 0 {
		t.Errorf("a stock without density: %g kg, known %v", kg, known)
	}
}

func TestBoard(t *testing.T) {
	s := joinery.Stock{Density: 680, Thickness: joinery.Thickness{Mean: 12.5}}
	if kg := Board(s); math.Abs(kg-8.5) > 1e-12 { // 680 x 0.0125
		t.Errorf("%g kg a square meter, want 8.5", kg)
	}
}
