package load

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/sheets"
)

// hint is what is advised of a job, with the changes that it names as data.
type hint struct {
	at             about
	message, text  string
	remedies, ways int
	edits          [][]job.Edit
	instead        []string
}

// hints are all that is advised of a job, from all that advises: the reader of the file,
// joinery, fit, router, machines, loads, templates, names, and sheets.
func hints(t *testing.T, text string) (all []hint, count map[about]int, failed bool) {
	t.Helper()
	count = make(map[about]int)
	add := func(h hint) {
		if h.text == "" {
			t.Fatalf("%v has no hint: %s", h.at, h.message)
		}
		count[h.at]++
		all = append(all, h)
	}
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	for _, p := range problems {
		add(hint{at: about{-1, string(p.Code), ""}, message: p.Message, text: p.Hint, instead: p.Instead})
	}
	if j == nil {
		return all, count, true
	}
	l := Loaded{Job: j, Problems: problems}
	var found []batch.Problem
	l.Batch, found = batch.Make(j)
	for _, p := range found {
		h := hint{at: about{p.Drawer, p.Code, p.Part}, message: p.Message, text: p.Hint, remedies: len(p.Remedies)}
		for _, w := range p.Ways {
			h.edits = append(h.edits, w.Edits)
			if !strings.Contains(p.Hint, w.Text) {
				t.Fatalf("%q does not say %q", p.Hint, w.Text)
			}
			for _, e := range w.Edits {
				if !strings.Contains(p.Hint, e.Value) {
					t.Fatalf("%q does not say %q", p.Hint, e.Value)
				}
			}
		}
		failed = failed || p.Error
		add(h)
	}
	if failed = failed || problems.Failed(); failed {
		return all, count, failed
	}
	plan, err := sheets.Of(context.Background(), l.Batch, nil, sheets.Search{})
	short := plan.Short(context.Background(), sheets.Search{})
	if p, is := err.(*sheets.Problem); is {
		short = append(short, p)
	}
	for _, p := range short {
		h := hint{at: about{-1, p.Code, p.Stock}, message: p.Message, text: p.Hint}
		if len(p.Edits) > 0 {
			h.edits = [][]job.Edit{p.Edits}
		}
		add(h)
	}
	return all, count, false
}

// asks are the codes whose hint may name no change that could be followed, with the reason.
var asks = map[string]string{}

// TestEveryHintIsFollowed: every hint of every source names a change of the job file as
// data, which ends the complaint and makes no other, or is of a code of which the table says
// why only a person can follow it.
func TestEveryHintIsFollowed(t *testing.T) {
	followed, asked := make(map[string]int), make(map[string]int)
	for seed := range uint64(60) {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		if seed%2 == 1 {
			text = spoilt(text, seed)
		}
		all, before, failed := hints(t, text)
		for _, h := range all {
			if len(h.edits) == 0 {
				if h.remedies+len(h.instead) == 0 { // those are followed by tests of their own
					asked[h.at.code]++
					if asks[h.at.code] == "" {
						t.Errorf("seed %d: %s: %s\n%s\nnames no change, and nothing says why", seed, h.at.code, h.message, h.text)
					}
				}
				continue
			}
			for _, edits := range h.edits {
				changed, err := job.Patch([]byte(text), edits...)
				if err != nil {
					t.Errorf("seed %d: %s\n%s\n%v", seed, h.message, h.text, err)
					continue
				}
				followed[h.at.code]++
				after, now, _ := hints(t, string(changed))
				if now[h.at] >= before[h.at] {
					t.Errorf("seed %d: %s\n%s\nfollowed with %v does not end it", seed, h.message, h.text, edits)
				}
				for at, n := range now {
					if n > before[at] && !(failed && at.drawer < 0) {
						i := slices.IndexFunc(after, func(h hint) bool { return h.at == at })
						t.Errorf("seed %d: %s\n%s\nfollowed with %v leads into %v: %s", seed, h.message, h.text, edits, at, after[i].message)
					}
				}
			}
		}
	}
	t.Log(fmt.Sprint("followed ", followed, " asked ", asked))
}
