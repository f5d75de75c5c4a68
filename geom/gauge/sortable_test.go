package gauge

import (
	"math"
	"testing"

	"drawerwright/geom/joinery"
)

func TestToOne(t *testing.T) {
	if r := (Range{Min: 12, Max: 12.019}); !r.ToOne() {
		t.Errorf("a caliper tells boards of %g and %g apart", r.Min, r.Max)
	}
	if r := (Range{Min: 12, Max: 12.021}); r.ToOne() {
		t.Errorf("a caliper does not tell boards of %g and %g apart", r.Min, r.Max)
	}
}

func TestLongerThanBetween(t *testing.T) {
	var d joinery.Drawer
	d.Inside.Width = 400
	for length, want := range map[float64]float64{412: 12, 400.03: 0.03, 400.01: 0, 399: 0} {
		d.Dimensions.Walls.EndLen = length
		if more := LongerThanBetween(d); math.Abs(more-want) > 1e-9 {
			t.Errorf("a front of %g between sides 400 apart: %g, want %g", length, more, want)
		}
	}
}
