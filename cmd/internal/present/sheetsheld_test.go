package present

import (
	"slices"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestHeldBy: a part's pieces hang by so many tabs each; what holds some of them alone is counted.
func TestHeldBy(t *testing.T) {
	held := func(part, by string, tabs int, words string) record.SheetPlacement {
		return record.SheetPlacement{Part: part, Held: &record.Tie{By: by, Tabs: tabs, Text: words}}
	}
	sheet := record.LaidSheet{Placements: []record.SheetPlacement{held("a", "tabs", 8, "8 tabs, 2 shared"),
		held("a", "tabs", 6, "6 tabs"), held("a", "tabs", 7, "7 tabs, 1 shared"), held("b", "tabs", 6, "6 tabs"),
		held("b", "tabs", 6, "6 tabs"), held("d", "skin", 0, "skin of 0.3 mm"), held("d", "tabs", 4, "4 tabs"),
		held("e", "tabs", 4, "4 tabs, 3 shared")}}
	for part, want := range map[string]string{"a": "6 to 8 tabs each", "b": "6 tabs each", "c": "",
		"d": "1 by skin of 0.3 mm; 1 by 4 tabs", "e": "4 tabs"} {
		pieces := slices.DeleteFunc(slices.Clone(sheet.Placements),
			func(p record.SheetPlacement) bool { return p.Part != part })
		if got := HeldBy(pieces); got != want {
			t.Errorf("%s is held by %q, want %q", part, got, want)
		}
	}
}
