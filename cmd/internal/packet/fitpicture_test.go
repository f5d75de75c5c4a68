package packet

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

// TestFitIsDrawn: the packet of every sample draws each measure of its different joints once, says
// its numbers as the record has them, and what is likely is between the worst cases; of what differs from box to box
// it says the numbers of every drawer.
func TestFitIsDrawn(t *testing.T) {
	boxes := 0
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		r := record.MakeKept(b, sheets.Plan{}, nil)
		var said strings.Builder
		bands := 0
		err = lay(t.Context(), b, r, sheets.Plan{}, func(p drawing.Page) {
			for _, w := range p.Texts {
				said.WriteString(w.String + " ")
			}
			for _, s := range p.Shapes {
				if s.Role == paper.RoleAxis {
					bands++
				}
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		want := 0
		for _, group := range (maker{batch: b}).alike() {
			for i, d := range group {
				for _, f := range r.FitOf(d.Spec.Name) {
					row := present.FitRow(f, b.Units)
					of := filepath.Base(file) + ", " + f.Drawer + ", " + f.Name
					drawnAs(t, of, row.Forecast, f)
					parts := []string{f.Short(), row.Numbers, strings.ReplaceAll(row.Help, "+-", "±"), f.Verdict, present.FitOdds(f)}
					if slices.Contains(ofBox, f.Check) {
						boxes++
						parts = append(strings.Fields(f.Short()), f.Of1000, present.FitLimits(f, b.Units)+" "+
							(maker{unit: b.Units}).reported(f.Nominal)+" "+present.FitLikely(f, b.Units))
						if row.Wrong {
							parts = append(parts, "! "+present.FitVerdict(f)+", "+f.Of1000)
						}
					} else if i > 0 {
						continue
					} else {
						want++
					}
					for _, part := range parts {
						if !strings.Contains(said.String(), strings.TrimSpace(part)) {
							t.Errorf("%s: no page says %q", of, part)
						}
					}
				}
			}
		}
		if bands != want {
			t.Errorf("%s draws %d measures of %d", filepath.Base(file), bands, want)
		}
	}
	if boxes < 100 {
		t.Errorf("only %d measures of boxes", boxes)
	}
}

// drawnAs compares what is drawn with the record.
func drawnAs(t *testing.T, of string, drawn paper.Forecast, f record.Fit) {
	t.Helper()
	for what, pair := range map[string][2]geom.Interval{
		"right":  {drawn.Right, {Min: f.Limits[0].MM(), Max: f.Limits[1].MM()}},
		"likely": {drawn.Likely, {Min: f.Likely[0].MM(), Max: f.Likely[1].MM()}},
		"worst":  {drawn.Worst, {Min: f.WorstCase[0].MM(), Max: f.WorstCase[1].MM()}},
		"as set": {{Min: drawn.Set, Max: drawn.Set}, {Min: f.Nominal.MM(), Max: f.Nominal.MM()}},
	} {
		if pair[0] != pair[1] {
			t.Errorf("%s: %s is %v, drawn as %v", of, what, pair[1], pair[0])
		}
	}
	if drawn.Likely.Min < drawn.Worst.Min || drawn.Likely.Max > drawn.Worst.Max {
		t.Errorf("%s: likely %v leaves the worst case %v", of, drawn.Likely, drawn.Worst)
	}
}
