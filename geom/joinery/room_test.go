package joinery

import (
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestTooSmallEveryWay: a size of inches in a job of millimeters is one error, which says so and names a size that is
// just large enough: 2 x 12.2 and 20 wide and deep, and 10 over the groove, whose upper wall is 6.1 + 6.35 over the
// lower edge. A size that is too small one way is one error about that.
func TestTooSmallEveryWay(t *testing.T) {
	ply, thin := sheet("ply", 12.2), sheet("thin", 5.9)
	room := func(width, height, depth float64) (list []geom.Diagnosis) {
		_, problems := Build(saw(width, height, depth, 6.35, ply, thin))
		for _, p := range problems {
			if p.Code == "room" {
				list = append(list, p)
			}
		}
		return list
	}
	one := room(18, 5, 20)
	if len(one) != 1 {
		t.Fatalf("%d errors: %v", len(one), one)
	}
	if first := one[0].First.In(geom.Millimeter); first != "write 18 x 5 x 20 in, if it is inches" {
		t.Errorf("it says %q", first)
	}
	for _, part := range []string{"18 mm x 5 mm x 20 mm", "24.4 mm of the width, 12.45 mm of the height and 24.4 mm of the depth"} {
		if said := fact(one[0]); !strings.Contains(said, part) {
			t.Errorf("it says %q, without %q", said, part)
		}
	}
	if len(one[0].Remedies) != 1 || len(one[0].Remedies[0].Changes) != 3 {
		t.Fatalf("the way out is %+v", one[0].Remedies)
	}
	for i, want := range []float64{44.4, 22.45, 44.4} {
		if got := one[0].Remedies[0].Changes[i].Min; got != want {
			t.Errorf("size %d: %g, not %g", i, got, want)
		}
	}
	if left := room(44.4, 22.45, 44.4); len(left) != 0 {
		t.Errorf("at the size that is named: %v", left)
	}
	for _, size := range [][3]float64{{18, 140, 500}, {460, 5, 500}, {460, 140, 20}} {
		if list := room(size[0], size[1], size[2]); len(list) != 1 || !list[0].First.IsEmpty() {
			t.Errorf("%v: %v", size, list)
		}
	}
}
