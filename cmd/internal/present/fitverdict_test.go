package present

import (
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestFitVerdict: what is set within its limits is not called wrong, only some boxes may come out so.
func TestFitVerdict(t *testing.T) {
	limits := [2]record.Length{17.5, 18.5}
	for _, c := range []struct {
		nominal record.Length
		verdict string
		want    string
	}{
		{18, "as asked", "as asked"}, {18, "deep", "may come out deep"}, {18.6, "deep", "deep"}, {17.4, "shallow", "shallow"},
		{18.5, "deep", "may come out deep"}, {18, "does not go in", "may not go in"}, {19, "does not go in", "does not go in"},
	} {
		if got := FitVerdict(record.Fit{Nominal: c.nominal, Limits: limits, Verdict: c.verdict}); got != c.want {
			t.Errorf("%v %s is %q, want %q", c.nominal, c.verdict, got, c.want)
		}
	}
}
