package load

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestHintsOfLotsInJobs: boards that differ by no more than a hint says, their readings
// written into the job file, end the complaint.
func TestHintsOfLotsInJobs(t *testing.T) {
	followed := 0
	for seed := uint64(0); seed < 40; seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		j, found, _, _ := said(t, text)
		if j == nil {
			continue
		}
		done := make(map[string]bool)
		for _, p := range found {
			if p.Asked.Key != batch.KeyLots || p.Asked.Setting == joinery.FieldDividers || done[fmt.Sprint(p.Subject.Check, p.Asked)] {
				continue
			}
			done[fmt.Sprint(p.Subject.Check, p.Asked)] = true
			differ := printed(t, p, j)
			var root yaml.MapSlice
			if err := yaml.UnmarshalWithOptions([]byte(text), &root, yaml.UseOrderedMap()); err != nil {
				t.Fatal(err)
			}
			spec := j.Drawers[p.Drawer].Spec
			stock := map[string]string{"sides": spec.Sides.Name, "box-front": spec.Front.Name, "back": spec.Back.Name, "bottom": spec.Bottom.Name}[string(p.Asked.Setting)]
			mean := map[string]float64{"sides": spec.Sides.Thickness.Mean, "box-front": spec.Front.Thickness.Mean, "back": spec.Back.Thickness.Mean, "bottom": spec.Bottom.Thickness.Mean}[string(p.Asked.Setting)]
			stocks := get(root, "stock").(yaml.MapSlice)
			like := remove(set(slices.Clone(get(stocks, stock).(yaml.MapSlice)), "thickness", []any{exact(mean - differ.MM()/2), exact(mean + differ.MM()/2)}), "tolerance")
			changed, err := yaml.Marshal(set(root, "stock", set(stocks, stock, like)))
			if err != nil {
				t.Fatal(err)
			}
			after, problems := job.Read("job.yaml", strings.NewReader(string(changed)))
			if after == nil {
				t.Fatalf("seed %d: %s: %v", seed, p.Shown(j).Hint, problems)
			}
			followed++
			b, _ := batch.Make(t.Context(), after)
			for _, f := range b.Drawers[p.Drawer].Outcome.Measures {
				if f.CheckID == p.Subject.Check && f.OutOfLimits() {
					t.Errorf("seed %d: %s\n%s\nfollowed: likely %.3f to %.3f", seed, p.Shown(j).Message,
						p.Shown(j).Hint, f.Min, f.Max)
				}
			}
		}
	}
	if followed < 5 {
		t.Errorf("%d hints were followed", followed)
	}
}

// printed is the bound of the change that a diagnosis asks for, as its hint prints it.
func printed(t *testing.T, p batch.Problem, j *job.Job) geom.Length {
	t.Helper()
	bound := geom.LengthOf(p.Asked.Max).RoundDown(j.Units)
	if hint := p.Shown(j).Hint; !strings.Contains(hint, bound.Text(j.Units)) {
		t.Errorf("%q does not say %s", hint, bound.Text(j.Units))
	}
	return bound
}
