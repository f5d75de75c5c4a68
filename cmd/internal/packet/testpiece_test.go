package packet

import (
	"testing"

	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// TestOffcutGivesTestPiece: a test piece is 300 mm long along the grain and as wide as the side; without a grain it
// may lie either way.
func TestOffcutGivesTestPiece(t *testing.T) {
	mm := func(v float64) int64 { return int64(geom.LengthOf(v)) }
	for _, c := range []struct {
		long, high     float64
		grained, gives bool
	}{{300, 140, true, true}, {299, 140, true, false}, {300, 139, true, false}, {140, 300, true, false},
		{140, 300, false, true}} {
		if got := gives(nest.Offcut{Length: mm(c.long), Width: mm(c.high)}, 140, c.grained); got != c.gives {
			t.Errorf("%+v: %t", c, got)
		}
	}
}

// TestOffcutSizeIsTrimmed: the label of what a saw leaves says that its size is that without the edges that are
// trimmed.
func TestOffcutSizeIsTrimmed(t *testing.T) {
	plain := beforeUse(&sheets.Stock{})
	if sawn := beforeUse(&sheets.Stock{Trim: 5}); sawn == plain {
		t.Error(sawn)
	}
	if routed := beforeUse(&sheets.Stock{Trim: 5, Routed: true}); routed != plain {
		t.Error(routed)
	}
}
