package prove_test

import (
	"bytes"
	"context"
	"io"
	"io/fs"
	"maps"
	"os"
	"strings"
	"sync"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom/nest"
)

// folder is what a build wrote, by name.
type folder struct {
	sync.Mutex
	files map[string][]byte
	t     testing.TB
}

func (f *folder) WriteFile(name string, data []byte) error {
	f.Lock()
	defer f.Unlock()
	f.files[name] = bytes.Clone(data)
	return nil
}

func (f *folder) Stream(name string, fill func(io.Writer) error) error {
	var data bytes.Buffer
	if err := fill(&data); err != nil {
		return err
	}
	return f.WriteFile(name, data.Bytes())
}

func (f *folder) ReadFile(name string) ([]byte, error) {
	f.Lock()
	defer f.Unlock()
	if data, ok := f.files[name]; ok {
		return data, nil
	}
	return nil, fs.ErrNotExist
}

func (f *folder) Open(name string) (io.ReadCloser, error) {
	data, err := f.ReadFile(name)
	return io.NopCloser(bytes.NewReader(data)), err
}

// built writes a job into memory, unproven.
func built(t testing.TB, text string) *folder {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, found := batch.Make(t.Context(), j)
	for _, p := range found {
		if p.IsError() {
			t.Fatal(p.Shown(j))
		}
	}
	f := &folder{files: map[string][]byte{}}
	plan, err := sheets.Of(context.Background(), b, nil, sheets.Search{Options: nest.Options{Effort: 5}})
	if err != nil {
		t.Fatal(err)
	}
	plan.Looks = filing.Looks{PNG: true, Exploded: true}
	if err := files.Write(context.Background(), b, f, files.Options{NoProof: true, Plan: plan}); err != nil {
		t.Fatal(err)
	}
	return f
}

// builds keeps what was built, by the job's text.
var builds = map[string]*folder{}

// build gives a folder of its own to a test. Each job is built once.
func build(t testing.TB, text string) *folder {
	t.Helper()
	if builds[text] == nil {
		builds[text] = built(t, text)
	}
	return &folder{files: maps.Clone(builds[text].files), t: t}
}

// report reads the folder's report.
func (f *folder) report(t testing.TB) record.Report {
	t.Helper()
	r, err := record.Read(f.files["report.json"])
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// edit changes the folder's report.
func (f *folder) edit(t testing.TB, change func(*record.Report)) {
	t.Helper()
	r := f.report(t)
	change(&r)
	data, err := record.JSON(r)
	if err != nil {
		t.Fatal(err)
	}
	f.files["report.json"] = data
}

// proofs proves all drawers of the folder.
func (f *folder) proofs(t testing.TB, o prove.Options) []record.Proof {
	t.Helper()
	p, err := prove.New(record.Keep(f.report(t)))
	if err != nil {
		t.Fatal(err)
	}
	var list []record.Proof
	w := p.Worker()
	for i := range p.Drawers() {
		list = append(list, w.Drawer(i, f.ReadFile, o))
	}
	return list
}

// proof proves a folder of one drawer.
func (f *folder) proof(t testing.TB, o prove.Options) record.Proof {
	t.Helper()
	all := f.proofs(t, o)
	if len(all) != 1 {
		t.Fatalf("%d drawers", len(all))
	}
	return all[0]
}

// sample reads one of the project's samples.
func sample(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile("../../../samples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
