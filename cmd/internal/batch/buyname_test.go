package batch

import (
	"testing"

	"drawerwright/geom"
)

// TestSlideNameHasItsLengthOnce: a slide that a job names by its length is bought by a name with that length once.
func TestSlideNameHasItsLengthOnce(t *testing.T) {
	for _, c := range [][2]string{{"side-mount", "side-mount 500 mm"}, {"side mount 500", "side mount 500 mm"},
		{"runner-500", "runner-500 mm"}, {"side 500 mm", "side 500 mm"}, {"x1500", "x1500 500 mm"},
		{"series 300", "series 300 500 mm"}} {
		if got := slideName(c[0], geom.LengthOf(500), geom.Millimeter); got != c[1] {
			t.Errorf("%q is bought as %q, want %q", c[0], got, c[1])
		}
	}
	if got := slideName("chest 18", geom.LengthOf(18*geom.InchMM), geom.Inch); got != "chest 18 in" {
		t.Error(got)
	}
}
