package present

import (
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestHeldByCounts: pieces of a part that hang by different tabs are counted.
func TestHeldByCounts(t *testing.T) {
	held := func(part, words string) record.SheetPlacement {
		return record.SheetPlacement{Part: part, Held: &record.Tie{Text: words}}
	}
	sheet := record.LaidSheet{Placements: []record.SheetPlacement{held("a", "8 tabs, 2 shared"),
		held("a", "8 tabs, 1 shared"), held("a", "8 tabs, 1 shared"), held("b", "6 tabs"), held("b", "6 tabs")}}
	for part, want := range map[string]string{"a": "2 by 8 tabs, 1 shared; 1 by 8 tabs, 2 shared", "b": "6 tabs",
		"c": ""} {
		if got := HeldBy(sheet, part); got != want {
			t.Errorf("%s is held by %q, want %q", part, got, want)
		}
	}
}
