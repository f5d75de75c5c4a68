package packet

import (
	"testing"

	"drawerwright/cmd/internal/sheets"
)

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
