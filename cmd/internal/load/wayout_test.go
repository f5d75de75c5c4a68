package load

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom/geomtest"
)

// told is what is said of a text.
func told(text string) Loaded {
	l := Read("job.yaml", strings.NewReader(text), nil)
	l.Lay(context.Background(), nil, sheets.Search{})
	return l
}

// TestWaysOut: whatever a button offers beside a problem of a job ends that problem, in jobs that
// are drawn and in such with one length spoilt. Of a problem of several drawers at one place fewer
// are left.
func TestWaysOut(t *testing.T) {
	tried := make(map[job.Code]int)
	for seed := uint64(0); seed < uint64(geomtest.Cases(12, 80)); seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		if seed%2 == 1 {
			text = spoilt(text, seed)
		}
		before := told(text)
		outline := job.Outlined([]byte(text))
		for _, p := range before.Problems {
			for _, w := range outline.WaysOut(p) {
				if len(w.Lead) > 0 {
					continue // what is to be written there a person has to measure
				}
				after := text
				for _, s := range w.Steps {
					texts, err := s.Texts([]byte(after), nil)
					if err != nil {
						t.Fatalf("seed %d: %s\n%q: %v", seed, p.Message, w.Label, err)
					}
					after = string(texts[0])
				}
				tried[p.Code]++
				now := told(after)
				if left, was := alikeIn(now, p), alikeIn(before, p); left >= was {
					t.Errorf("seed %d: %s\n%s\nis there after %q:\n%v\n%s",
						seed, p.Message, p.Hint, w.Label, now.Problems, after)
				}
			}
		}
	}
	t.Log(tried)
	if len(tried) < 8 {
		t.Errorf("only ways out of %v were tried", tried)
	}
}

// alikeIn is how many problems say the same as one, but for the numbers in it.
func alikeIn(l Loaded, p job.Problem) (n int) {
	for _, q := range l.Problems {
		if q.Code == p.Code && figures.ReplaceAllString(q.Message, "") == figures.ReplaceAllString(p.Message, "") {
			n++
		}
	}
	return n
}

var figures = regexp.MustCompile(`[0-9./ ]+`)
