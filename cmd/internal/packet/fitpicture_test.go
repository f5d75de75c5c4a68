package packet

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

// TestFitIsDrawn: the packet of every sample draws each measure of its different corners once, says
// its numbers as the record has them, and what is likely is between the worst cases.
func TestFitIsDrawn(t *testing.T) {
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		r := record.Make(b, sheets.Plan{}, nil)
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
			for _, f := range r.FitOf(group[0].Spec.Name) {
				want++
				row := present.FitRow(f, b.Units)
				of := filepath.Base(file) + ", " + f.Name
				drawnAs(t, of, row.Forecast, f)
				for _, part := range []string{f.Short(), row.Numbers, row.Help, f.Verdict, present.FitOdds(f)} {
					if !strings.Contains(said.String(), strings.TrimSpace(part)) {
						t.Errorf("%s: no page says %q", of, part)
					}
				}
			}
		}
		if bands != want {
			t.Errorf("%s draws %d measures of %d", filepath.Base(file), bands, want)
		}
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
