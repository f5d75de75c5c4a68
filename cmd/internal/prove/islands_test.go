package prove

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestIslands: an outline within another of its layer is wood that stays, one within that
// is cut again; on another layer, or beside it, each is a cut of its own.
func TestIslands(t *testing.T) {
	cut := func(layer string, x0, y0, x1, y1 float64) sheetCut {
		var c sheetCut
		c.operation, c.layer, c.loop = "rabbet", layer, geom.Rectangle(x0, y0, x1, y1)
		c.region = ringsOf(c.loop)
		return c
	}
	got := islands([]sheetCut{cut("A", 10, 10, 90, 90), cut("A", 0, 0, 100, 100), cut("A", 40, 40, 60, 60), cut("A", 110, 0, 120, 100), cut("B", 20, 20, 30, 30)})
	if len(got) != 4 {
		t.Fatalf("%d cuts, want 4", len(got))
	}
	for y, want := range map[float64]float64{5: 100, 50: 10 + 10, 95: 100} { // of the first outline, on a level line
		sum := 0.0
		list := got[0].region.spans(nil, y)
		for i := 0; i+1 < len(list); i += 2 {
			sum += list[i+1] - list[i]
		}
		if math.Abs(sum-want) > 1e-9 {
			t.Errorf("at y %g %g mm are cut, want %g", y, sum, want)
		}
	}
}
