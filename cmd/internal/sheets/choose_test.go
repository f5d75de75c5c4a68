package sheets

import (
	"reflect"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
)

// TestPreferred: what a job prefers is the layout with the best figure of the list, as it is cut then; none costs more
// than the layout in any number of stages, and the same job is laid out alike twice.
func TestPreferred(t *testing.T) {
	b := read(t, "../../../samples/workshop-bench.yaml")
	worst := make(map[string]int)
	for _, word := range []string{job.PreferSettings, job.PreferTime, job.PreferOffcut} {
		b.Sheets.Prefer = word
		var plans [2]Plan
		for i := range plans {
			var err error
			if plans[i], err = Of(t.Context(), b, nil, Search{}); err != nil {
				t.Fatal(err)
			}
		}
		if !reflect.DeepEqual(plans[0].Stocks, plans[1].Stocks) {
			t.Errorf("%s: two layouts of one job", word)
		}
		for _, s := range plans[0].Stocks {
			least, err := nest.Lay(t.Context(), s.Pieces, s.Sheets, s.Rules, nest.Options{Effort: Effort})
			more := s.Layout.Cost > least.Cost || len(s.Layout.Sheets) > len(least.Sheets)
			if err != nil || more || s.Remaining() > 0 {
				t.Errorf("%s: %s costs %g, the least %g, %v", word, s.Name, s.Layout.Cost, least.Cost, err)
			}
			if len(s.Choices) != 3 {
				t.Fatalf("%s: %d choices", s.Name, len(s.Choices))
			}
			for _, c := range s.Choices {
				if c.Taken != (c.Prefer == word) {
					t.Errorf("%s is taken: %t, where %s is preferred", c.Prefer, c.Taken, word)
				}
				if c.Taken && (c.Settings != breakdown.Settings(s.Cuts) || c.Seconds != breakdown.Seconds(s.Cuts)) {
					t.Errorf("%s: %+v is not what is cut", s.Name, c)
				}
				area := func(c Choice) int64 { return c.Offcut.Length * c.Offcut.Width }
				for _, d := range s.Choices {
					better := map[string]bool{job.PreferSettings: d.Settings < c.Settings, job.PreferTime: d.Seconds < c.Seconds,
						job.PreferOffcut: area(d) > area(c)}
					if better[c.Prefer] {
						t.Errorf("%s: %+v is better than %+v", s.Name, d, c)
					}
				}
				worst[c.Prefer] += c.Settings
			}
		}
	}
	if worst[job.PreferSettings] >= worst[job.PreferOffcut] {
		t.Errorf("nothing is gained: %v", worst)
	}
}
