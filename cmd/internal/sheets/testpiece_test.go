package sheets

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// TestOffcutGivesTestPiece: a test piece is 300 mm long along the grain and as wide as the side; without a grain it
// may lie either way.
func TestOffcutGivesTestPiece(t *testing.T) {
	piece := TestPiece{Length: 300, Width: 140}
	mm := func(v float64) int64 { return int64(geom.LengthOf(v)) }
	for _, c := range []struct {
		long, high     float64
		grained, gives bool
	}{{300, 140, true, true}, {299, 140, true, false}, {300, 139, true, false}, {140, 300, true, false},
		{140, 300, false, true}} {
		if got := piece.from(nest.Offcut{Length: mm(c.long), Width: mm(c.high)}, c.grained); got != c.gives {
			t.Errorf("%+v: %t", c, got)
		}
	}
}
