package load

import (
	"fmt"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
)

// TestHintsOfAccuracyInJobs: an accuracy that a hint names, written into the job file as it
// is printed, ends the complaint, and nothing new is said of any drawer.
func TestHintsOfAccuracyInJobs(t *testing.T) {
	followed := 0
	for seed := uint64(0); seed < 24; seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		j, found, before, _ := said(t, text)
		if j == nil {
			continue
		}
		done := make(map[string]bool) // the rows of an entry say much the same
		for _, p := range found {
			if p.Asked.Setting != "accuracy" || done[fmt.Sprint(p.Subject.Check, p.Asked.Key)] {
				continue
			}
			done[fmt.Sprint(p.Subject.Check, p.Asked.Key)] = true
			followed++
			var root yaml.MapSlice
			if err := yaml.UnmarshalWithOptions([]byte(text), &root, yaml.UseOrderedMap()); err != nil {
				t.Fatal(err)
			}
			own, _ := get(root, "accuracy").(yaml.MapSlice)
			changed, err := yaml.Marshal(set(root, "accuracy", set(own, p.Asked.Key, printed(t, p, j).Text(j.Units))))
			if err != nil {
				t.Fatal(err)
			}
			after, problems := job.Read("job.yaml", strings.NewReader(string(changed)))
			if after == nil {
				t.Fatalf("seed %d: %s: %v", seed, p.Shown(j).Hint, problems)
			}
			b, now := batch.Make(t.Context(), after)
			for _, f := range b.Drawers[p.Drawer].Outcome.Measures {
				if f.CheckID == p.Subject.Check && f.OutOfLimits() {
					t.Errorf("seed %d: %s\n%s\nfollowed: likely %.3f to %.3f", seed, p.Shown(j).Message,
						p.Shown(j).Hint, f.Min, f.Max)
				}
			}
			for _, q := range now {
				if a := (about{q.Drawer, q.Code, q.Subject.Part}); before[a] == 0 {
					t.Errorf("seed %d: %s\n%s\nleads into %v %s", seed, p.Shown(j).Message,
						p.Shown(j).Hint, a, q.Shown(after).Message)
				}
			}
		}
	}
	if followed < 5 {
		t.Errorf("%d hints were followed", followed)
	}
}
