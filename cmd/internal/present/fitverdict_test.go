package present

import (
	"strconv"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/geomtest"
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

// TestNumbersKeepTheVerdict: the likely range and the limits, as every table prints them, are within each other where
// the verdict says so, and where it does not they are not.
func TestNumbersKeepTheVerdict(t *testing.T) {
	between := func(text string) (v [2]float64) {
		a, b, two := strings.Cut(text, " to ")
		if !two {
			b = a
		}
		for i, s := range []string{a, b} {
			n, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatalf("%q is no range", text)
			}
			v[i] = n
		}
		return v
	}
	count := map[bool]int{}
	for seed := range geomtest.Cases(60, 1000) {
		j, problems := job.Read("job.yaml", strings.NewReader(jobtest.Text(uint64(seed))))
		if problems.Failed() {
			continue
		}
		b, _ := batch.Make(t.Context(), j)
		for _, d := range b.Drawers {
			for _, m := range d.Outcome.Measures {
				f := record.FitOf(d, m)
				likely, right := between(FitLikely(f, b.Units)), between(FitLimits(f, b.Units))
				within := likely[0] >= right[0] && likely[1] <= right[1]
				if asked := m.Verdict == m.Verdicts.Within; within != asked && m.Verdict != joinery.WillNot {
					t.Errorf("seed %d, %s: %s beside %s: %s", seed, f.Name,
						FitLikely(f, b.Units), FitLimits(f, b.Units), f.Verdict)
				}
				count[within]++
			}
		}
	}
	if count[true] < 100 || count[false] < 20 {
		t.Errorf("%d measures within their limits and %d beyond", count[true], count[false])
	}
}
