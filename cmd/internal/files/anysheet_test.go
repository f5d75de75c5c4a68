package files_test

import (
	"context"
	"errors"
	"flag"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom/nest"
)

// routerJobs is how many jobs of a router are built; as many as one has time for.
var routerJobs = flag.Int("jobs", 8, "how many random router jobs have their parts and sheets proven")

// TestAnySheetIsProven: of random jobs for a router every part and every sheet is proven:
// each part is cut on its sheet as by its own drawings, and nothing else is.
func TestAnySheetIsProven(t *testing.T) {
	built, laid, parts, tied, skins, loose, numbered := 0, 0, 0, 0, 0, 0, 0
	for seed := uint64(1); built < *routerJobs; seed++ {
		if seed > 20*uint64(*routerJobs) {
			t.Fatalf("of %d jobs %d could be built", seed-1, built)
		}
		text := jobtest.Seeded(seed, jobtest.Want{Machine: "router"}).Text
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			continue
		}
		b, found := batch.Make(t.Context(), j)
		refused := false
		for _, p := range found {
			refused = refused || p.IsError()
		}
		if refused {
			continue
		}
		plan, err := sheets.Of(context.Background(), b, nil, sheets.Search{Options: nest.Options{Effort: 2}})
		if err != nil {
			continue
		}
		to := &folder{files: map[string][]byte{}}
		if err := files.Write(context.Background(), b, to, files.Options{Plan: plan}); err != nil {
			var unproven *files.Unproven
			if errors.As(err, &unproven) {
				for _, c := range unproven.Checked {
					for _, f := range c.Faults {
						t.Errorf("seed %d: %s: %s: %s", seed, f.Place(), f.Part, f.Message)
					}
				}
			}
			t.Errorf("seed %d: %v\n%s", seed, err, text)
			built++
			continue
		}
		built++
		r, err := record.Read(to.files["report.json"])
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range r.Parts {
			if p.Engraved != nil && p.Engraved.Reason == "" {
				numbered++
			}
		}
		for _, p := range r.Proof {
			if !p.Cuttable() {
				t.Errorf("seed %d: %s: %s", seed, p.Drawer, p.Verdict)
			}
		}
		for _, c := range r.Checked {
			for _, f := range c.Faults {
				t.Errorf("seed %d: %s: %s: %s\n%s", seed, f.Place(), f.Part, f.Message, text)
			}
			if s := c.Sheet; s != nil {
				laid, parts, tied, skins, loose = laid+1, parts+s.Parts, tied+s.HeldByTabs, skins+s.HeldByOnionSkin, loose+s.Loose
			}
		}
	}
	t.Logf("%d jobs, %d sheets with %d parts: %d held by bridges, %d by an onion skin, %d by nothing that is drawn; %d parts have a number engraved", built, laid, parts, tied, skins, loose, numbered)
	if laid == 0 || parts == 0 || numbered == 0 {
		t.Error("no sheet was laid out, or no part has a number")
	}
}
