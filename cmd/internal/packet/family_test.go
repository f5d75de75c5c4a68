package packet

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
)

// TestNoLetterWithoutUse: the fronts of the workshop bench differ in height, and their slots have corners of 8 mm.
// Where a corner begins has no room in the drawing and stands in no table but that of sizes: it has no letter there,
// and the radius is said. W1, the floor of the slot, is needed.
func TestNoLetterWithoutUse(t *testing.T) {
	text := ""
	for _, k := range packets(t) {
		if k.file != "workshop-bench.yaml" {
			continue
		}
		for _, p := range k.pages {
			text += " " + said(p)
		}
	}
	for _, want := range []string{"pull, radius 8.00", "No room in the drawing for W1:", "100.00 x 30.00, radius 15.00"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if slices.Contains(strings.Fields(text), "W2") {
		t.Error("W2 has a letter and no use")
	}
}

// TestWithoutNeedless: letters that a table needs stay, alone or in a range; W11 is not W1.
func TestWithoutNeedless(t *testing.T) {
	sizes := present.NewTable(present.Words("part"), present.Numbers("W1"), present.Numbers("W2"),
		present.Numbers("W11"))
	sizes.Add("a", "1", "2", "3")
	cuts := present.NewTable(present.Words("cut"), present.Words("at"))
	cuts.Add("groove", "0 to W11, (W2 - 3)")
	got, needed := withoutNeedless([]present.Table{sizes, cuts}, []string{"W1", "W2"})
	titles := got[0].Titles()
	if !slices.Equal(titles, []string{"part", "W2", "W11"}) || !slices.Equal(needed, []string{"W2"}) {
		t.Errorf("%v, needed %v", titles, needed)
	}
}
