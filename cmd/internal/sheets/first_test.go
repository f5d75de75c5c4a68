package sheets

import (
	"fmt"
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
			Capacity: Capacity{2000e6, 2000e6, 3000e6, 900e6}}
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
		job.FirstRip:      {Rip: 900e6, Crosscut: 600e6, MaxOnSled: 2500e6, MaxStop: 900e6},
		job.FirstCrosscut: {Rip: 250e6, Crosscut: 1300e6, MaxOnSled: 2500e6, MaxStop: 900e6},
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

// TestSquaredFirst: where many strips would be cleaned up one by one, the sheet is cleaned up on both edges before it
// is ripped; where there are few, their ends are.
func TestSquaredFirst(t *testing.T) {
	for count, want := range map[int]bool{24: true, 3: false} {
		parts := fmt.Sprintf("kind,name,length,width,count\npart,side,450,100,%d\nsheet,s,1525,1525,\n", count)
		l, err := list.Read("list", strings.NewReader(parts), geom.Millimeter)
		if err != nil {
			t.Fatal(err)
		}
		how := Cutting{Rules: nest.Rules{Kerf: 3e6}, Trim: 5e6, FirstCuts: job.FirstRip,
			Capacity: Capacity{900e6, 600e6, 1600e6, 900e6}}
		p, err := Listed(t.Context(), "s", l, how, nest.Options{Effort: 20})
		if err != nil {
			t.Fatal(err)
		}
		clean := make(map[int]int) // clean-ups in each stage
		for _, cut := range p.Stocks[0].Cuts {
			if cut.Trim {
				clean[cut.Stage]++
			}
		}
		if want != (clean[1] == 2 && clean[2] == 0) {
			t.Errorf("%d pieces: clean-ups by stage %v", count, clean)
		}
	}
}

// TestNamesApart: no two boards of a job have one name, whatever they are of.
func TestNamesApart(t *testing.T) {
	p, err := Of(t.Context(), read(t, "../../../samples/workshop-bench.yaml"), nil, Search{})
	if err != nil {
		t.Fatal(err)
	}
	of, pieces := make(map[string]string), 0
	for _, s := range p.Stocks {
		for _, q := range s.Pieces {
			pieces += q.Count
		}
		for _, one := range s.Laid {
			for _, name := range one.Called {
				if before, known := of[name]; known {
					t.Errorf("%s is a board of %s and of %s", name, before, s.Name)
				}
				of[name] = s.Name
			}
		}
	}
	if len(p.Stocks) < 2 || len(of) != pieces {
		t.Errorf("%d boards of %d stocks, for %d pieces", len(of), len(p.Stocks), pieces)
	}
}

// TestLargeOfUnknownWeight: where nobody knows what a sheet weighs, one that is larger than 2440 x 1220 is cut in two
// where it lies, by two people, before it comes to a machine; one of that size is not.
func TestLargeOfUnknownWeight(t *testing.T) {
	for size, want := range map[string]bool{"2440,1220": false, "2800,2070": true} {
		parts := "kind,name,length,width,count\npart,side,450,300,24\nsheet,s," + size + ",\n"
		l, err := list.Read("list", strings.NewReader(parts), geom.Millimeter)
		if err != nil {
			t.Fatal(err)
		}
		how := Cutting{Rules: nest.Rules{Kerf: 3e6}, Capacity: Capacity{900e6, 600e6, 1600e6, 900e6}}
		p, err := Listed(t.Context(), "s", l, how, nest.Options{Effort: 20})
		if err != nil {
			t.Fatal(err)
		}
		first := p.Stocks[0].Cuts[0]
		if got := first.Stage == 0 && first.Kind == breakdown.HandHeld && first.NeedsHelper; got != want {
			t.Errorf("%s: the first cut is %+v", size, first)
		}
	}
}
