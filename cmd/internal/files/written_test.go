package files_test

import (
	"context"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
)

// written is the folder of a job and its report; files that the job names are found by options.
func written(t *testing.T, text string, options ...job.Option) (map[string][]byte, record.Report) {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(text), options...)
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	plan, err := sheets.Of(context.Background(), b, nil, sheets.Search{})
	if err != nil {
		t.Fatal(err)
	}
	plan.Looks = filing.Looks{PNG: true, Exploded: true}
	to := &folder{files: map[string][]byte{}}
	if err := files.Write(context.Background(), b, to, files.Options{Plan: plan}); err != nil {
		t.Fatal(err)
	}
	r, err := record.Read(to.files["report.json"])
	if err != nil {
		t.Fatal(err)
	}
	return to.files, r
}
