package present

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// TestLaterFences: a groove of 9.2 with a cutter of 6.3 takes a second pass at 7.9 + 9.2 - 6.3 = 10.8. Where all of a
// setting is cut so nothing more is said; beside dados it is said of what, and beside dados of another width how wide.
func TestLaterFences(t *testing.T) {
	cut := func(work setup.Holding, kind string, wide record.Length, passes ...record.Length) CutStep {
		return CutStep{Work: string(work), Kind: kind, Width: wide, Passes: passes}
	}
	groove := cut(setup.Along, "grooves", 9.2, 7.9, 10.8)
	for _, k := range []struct {
		name  string
		fence record.Length
		cuts  []CutStep
		said  string
		big   string
	}{
		{"alone", 7.9, []CutStep{groove}, "fence 7.90 mm, then 10.80 mm, each from its face", "10.80 mm"},
		{"twice", 7.9, []CutStep{groove, groove}, "fence 7.90 mm, then 10.80 mm, each from its face", "10.80 mm"},
		{"beside dados", 7.9, []CutStep{cut(setup.Across, "dados", 6.3, 7.9), groove},
			"fence 7.90 mm, then 10.80 mm for grooves, each from its face", "10.80 mm for grooves"},
		{"beside its like", 7.9, []CutStep{cut(setup.Across, "dados", 6.3, 7.9), cut(setup.Across, "dados", 9.2, 7.9, 10.8)},
			"fence 7.90 mm, then 10.80 mm for dados 9.20 wide, each from its face", "10.80 mm for dados 9.20 wide"},
		{"three", 7.9, []CutStep{cut(setup.Along, "grooves", 17.3, 7.9, 13.4, 18.9)},
			"fence 7.90 mm, then 13.40 mm, then 18.90 mm, each from its face", "13.40 mm 18.90 mm"},
		{"buried", 0, []CutStep{cut(setup.AtEnd, "rabbets", 9.2, 0, 2.9)},
			"sacrificial fence, then 2.90 mm from its face", "2.90 mm"},
		{"one pass", 7.9, []CutStep{cut(setup.Along, "grooves", 6.3, 7.9)}, "fence 7.90 mm from its face", ""},
	} {
		s := Setting{Cutter: 6.3, Height: 6, Fence: k.fence, Cuts: k.cuts}
		if said := s.Heading(1, "saw", geom.Millimeter); !strings.Contains(said, k.said) {
			t.Errorf("%s: %q is not in %q", k.name, k.said, said)
		}
		var big []string
		for _, f := range s.Figures("saw", geom.Millimeter) {
			if f.Name == "then fence" {
				one := f.Value
				if f.Of != "" {
					one += " for " + f.Of
				}
				big = append(big, one)
			}
		}
		if got := strings.Join(big, " "); got != k.big {
			t.Errorf("%s: large %q, want %q", k.name, got, k.big)
		}
	}
}
