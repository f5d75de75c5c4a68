package batch_test

import (
	"context"
	"reflect"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
)

// TestBareIsMakeWithoutAdvice: without what would help, a job has the same drawers, parts, outcomes and files,
// and the same is said of them.
func TestBareIsMakeWithoutAdvice(t *testing.T) {
	sound, advised := 0, 0
	for seed := range uint64(40) {
		j, problems := job.Read("job.yaml", strings.NewReader(jobtest.Text(seed)))
		if problems.Failed() {
			continue
		}
		made, found := batch.Make(t.Context(), j)
		bare, said := batch.Bare(j)
		if len(found) != len(said) {
			t.Fatalf("job %d: %d problems, and %d without advice", seed, len(found), len(said))
		}
		for i, p := range found {
			if q := said[i]; p.Drawer != q.Drawer || p.Topic() != q.Topic() || p.Level != q.Level ||
				p.Fact.In(j.Units) != q.Fact.In(j.Units) || len(q.Remedies)+len(q.Eases)+len(q.Ways) > 0 {
				t.Errorf("job %d: %+v, and without advice %+v", seed, p, q)
			}
			advised += len(p.Remedies) + len(p.Eases) + len(p.Ways)
		}
		for i, d := range made.Drawers {
			for k, p := range d.Parts {
				if !reflect.DeepEqual(p.Work(), bare.Drawers[i].Parts[k].Work()) {
					t.Errorf("job %d: %s is milled otherwise without advice", seed, p.Name)
				}
			}
		}
		made.ForgetWork()
		bare.ForgetWork()
		for i, d := range made.Drawers {
			if !reflect.DeepEqual(without(d), without(bare.Drawers[i])) || bare.Drawers[i].Advice != nil {
				t.Errorf("job %d: drawer %d is another without advice", seed, i)
			}
		}
		made.Drawers, bare.Drawers = nil, nil
		if !reflect.DeepEqual(made, bare) {
			t.Errorf("job %d is another without advice: %+v, %+v", seed, made, bare)
		}
		sound++
	}
	if sound < 25 || advised < 30 {
		t.Errorf("%d jobs with %d changes that help", sound, advised)
	}
}

// without is a drawer without what is known only to who gives advice.
func without(d batch.Drawer) any {
	var measures []any
	for _, m := range d.Outcome.Measures { // whose stacks have functions, which nothing compares
		measures = append(measures, m.Check, m.Min, m.Max, m.Right, m.Result)
	}
	return []any{d.Drawer, d.Folder, d.Bits, d.Parts, d.Strength, d.Outcome.Verdict, d.Outcome.Right, measures}
}

// TestMakeEndsWithItsContext: nothing is made, and nothing said, once nobody waits for it.
func TestMakeEndsWithItsContext(t *testing.T) {
	j, problems := job.Read("job.yaml", strings.NewReader(jobtest.Text(1)))
	if problems.Failed() {
		t.Fatal(problems)
	}
	gone, leave := context.WithCancel(t.Context())
	leave()
	if b, found := batch.Make(gone, j); len(b.Drawers) > 0 || found != nil {
		t.Errorf("%d drawers, %v", len(b.Drawers), found)
	}
}
