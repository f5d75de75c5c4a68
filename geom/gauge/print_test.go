package gauge_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/gauge"
)

// TestTargetIsPrintedAsTheSetting: half of a board of 12.15 mm is 6.075, which a float64
// holds a little above or below as it was computed; a sheet has one number for both.
func TestTargetIsPrintedAsTheSetting(t *testing.T) {
	for n := range 4000 {
		half := float64(n)*0.01 + 0.005
		for _, target := range []float64{half, math.Nextafter(half, 0), math.Nextafter(half, 100), half - 1e-9} {
			row := gauge.Row{Target: target, Least: target - 0.5, Most: target + 0.5}
			for _, u := range []geom.Unit{geom.Millimetre, geom.Inch} {
				if got, want := row.Print(u).Target, geom.LengthOf(target).Fixed(u); got != want {
					t.Fatalf("%v in %s: the sheet has %s, the setting %s", target, u, got, want)
				}
			}
		}
	}
}
