package present

import (
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
)

// TestFitVerdict: what is set within its limits is not called wrong, only some boxes may come out so.
func TestFitVerdict(t *testing.T) {
	for _, c := range []struct {
		nominal float64
		verdict joinery.Verdict
		want    string
	}{
		{18, "as asked", "as asked"}, {18, "deep", "may come out deep"}, {18.6, "deep", "deep"}, {17.4, "shallow", "shallow"},
		{18.5, "deep", "may come out deep"}, {18, "does not go in", "may not go in"}, {19, "does not go in", "does not go in"},
	} {
		judged := joinery.Check{Nominal: c.nominal, LowerLimit: 17.5, UpperLimit: 18.5, Verdict: c.verdict}
		if got := FitVerdict(record.FitAsSet("", judged)); got != c.want {
			t.Errorf("%v %s is %q, want %q", c.nominal, c.verdict, got, c.want)
		}
	}
}
