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
			"fence 0.00 mm, then 2.90 mm, each from the sacrificial fence's face", "2.90 mm"},
		{"buried and touching", 0, []CutStep{cut(setup.AtEnd, "rabbets", 6, 0), cut(setup.AtEnd, "rabbets", 9.2, 0, 2.9)},
			"sacrificial fence, then 2.90 mm for rabbets 9.20 wide from its face", "2.90 mm for rabbets 9.20 wide"},
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

// TestBuried: a cutter that is wider than a rabbet is buried in the sacrificial fence; one that makes a wider rabbet in
// passes begins at the fence, 0.00, and nothing of it is.
func TestBuried(t *testing.T) {
	narrow := CutStep{Work: string(setup.AtEnd), Kind: "rabbets", Width: 6, Passes: []record.Length{0}}
	wide := CutStep{Work: string(setup.AtEnd), Kind: "rabbets", Width: 9.2, Passes: []record.Length{0, 2.9}}
	for _, k := range []struct {
		cuts         []CutStep
		begins, says string
		fence        Figure
	}{
		{[]CutStep{narrow}, "Part of the cutter is buried", "stands out of it", Figure{Name: "out of sacrificial fence", Value: "6.00 mm"}},
		{[]CutStep{wide}, "For the first pass the cutter just touches", "none of it buried",
			Figure{Name: "sacrificial fence", Value: "0.00 mm"}},
		{[]CutStep{narrow, wide}, "Cuts of one pass: part of the cutter is buried", "Cuts of several: for the first pass",
			Figure{Name: "fence", Words: "sacrificial fence"}},
	} {
		s := Setting{Cutter: 6.3, Height: 6, Cuts: k.cuts}
		if said := s.Buried("saw"); !strings.HasPrefix(said, k.begins) || !strings.Contains(said, k.says) {
			t.Errorf("said: %q", said)
		}
		if got := s.Figures("saw", geom.Millimeter)[0]; got != k.fence {
			t.Errorf("the fence is %+v", got)
		}
	}
}
