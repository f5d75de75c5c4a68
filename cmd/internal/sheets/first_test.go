package sheets

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
)

// TestFirstCuts: a sheet is ripped first, or crosscut first, as is asked, whichever way it lies; what that takes
// more is counted.
func TestFirstCuts(t *testing.T) {
	// Two columns fill a sheet; ripped first, no strip holds both of the high ones with both of the low ones above.
	parts := `kind,name,length,width,count
part,a,490,400,
part,b,490,195,
part,c,490,250,
part,d,490,340,
`
	for _, k := range []struct {
		name, sheet, first string
		count, more        int
	}{
		{"as it comes", "1000,600", "", 1, 0},
		{"crosscut", "1000,600", job.FirstCrosscut, 1, 0},
		{"rip", "1000,600", job.FirstRip, 2, 1},
		{"rip where there is room", "1000,1300", job.FirstRip, 1, 0},
	} {
		l, err := list.Read("list", strings.NewReader(parts+"sheet,s,"+k.sheet+",\n"), geom.Millimeter)
		if err != nil {
			t.Fatal(err)
		}
		c := Cutting{Rules: nest.Rules{Kerf: 3e6, Stages: 3}, FirstCuts: k.first,
			Capacity: Capacity{2000e6, 2000e6, 3000e6}}
		p, err := Listed(t.Context(), "s", l, c, nest.Options{Effort: 20})
		if err != nil {
			t.Fatal(k.name, err)
		}
		s := p.Stocks[0]
		if s.Layout.Count != k.count || s.FirstMore.Sheets != k.more {
			t.Errorf("%s: %d sheets, %d more, want %d and %d", k.name, s.Layout.Count, s.FirstMore.Sheets,
				k.count, k.more)
		}
		for _, cut := range s.Cuts {
			rips := longer(s.Sheets[0]) == (cut.Yields.Length == cut.Workpiece.Length)
			if k.first != "" && cut.Stage == 1 && rips != (k.first == job.FirstRip) {
				t.Errorf("%s: a first cut is %+v", k.name, cut)
			}
		}
		if breakdown.Stages(s.Cuts) < 2 {
			t.Errorf("%s: %d stages", k.name, breakdown.Stages(s.Cuts))
		}
	}
}

// longer reports whether a sheet is longer along x.
func longer(z nest.Sheet) bool { return z.Length >= z.Width }

// TestFirstCutsByMachine: where nothing is asked, a sheet that is too long to crosscut is ripped first, and crosscut
// first where the fence does not open as far as its strips are wide.
func TestFirstCutsByMachine(t *testing.T) {
	const parts = "kind,name,length,width,count\npart,side,580,300,12\nsheet,s,2440,1220,\n"
	l, err := list.Read("list", strings.NewReader(parts), geom.Millimeter)
	if err != nil {
		t.Fatal(err)
	}
	for first, c := range map[string]Capacity{
		job.FirstRip:      {Rip: 900e6, Crosscut: 600e6, MaxOnSled: 2500e6},
		job.FirstCrosscut: {Rip: 250e6, Crosscut: 1300e6, MaxOnSled: 2500e6},
	} {
		how := Cutting{Rules: nest.Rules{Kerf: 3e6}, Capacity: c}
		p, err := Listed(t.Context(), "s", l, how, nest.Options{Effort: 20})
		if err != nil {
			t.Fatal(err)
		}
		for _, cut := range p.Stocks[0].Cuts {
			along := cut.Yields.Length == cut.Workpiece.Length
			if cut.Stage == 1 && along != (first == job.FirstRip) {
				t.Errorf("%s: a first cut is %+v", first, cut)
			}
			if cut.Kind == breakdown.HandHeld {
				t.Errorf("%s: a cut along a guide, which a machine makes: %+v", first, cut)
			}
		}
	}
}
