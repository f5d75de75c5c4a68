package outside

import (
	"strconv"
	"testing"

	"drawerwright/geom/geomtest"
)

// TestPageSpeed: a few keys go through what `go run ./testdata/peers page` measures, for a drawer, a
// cabinet and five cabinets. Times are shown and not judged.
func TestPageSpeed(t *testing.T) {
	rounds := strconv.Itoa(geomtest.Cases(6, 120))
	measured := 0
	for _, r := range lines[struct {
		Drawers, Bytes           int
		P50, P95, Picture, Paint float64
	}](t, "", "node", "page_speed.mjs", command, t.TempDir(), rounds) {
		measured++
		t.Logf("%d drawers: a key to its numbers %.0f ms in the middle, %.0f ms for 19 of 20, to its picture %.0f ms; "+
			"first paint %.0f ms; %d bytes", r.Drawers, r.P50, r.P95, r.Picture, r.Paint, r.Bytes)
		if r.Bytes > mostPage {
			t.Errorf("the page has %d bytes, at most %d", r.Bytes, mostPage)
		}
	}
	if measured != 3 {
		t.Errorf("%d jobs were measured", measured)
	}
}

// mostPage is how much the page and its letters may load.
const mostPage = 500_000
