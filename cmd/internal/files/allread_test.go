package files_test

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestEveryFileIsReadBack: of every sample, and of the router's with all that its drawings
// may be split into, the proof reads each file that a build writes, but for report.json,
// against which it holds them.
func TestEveryFileIsReadBack(t *testing.T) {
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) < 10 {
		t.Fatal(samples, err)
	}
	for _, name := range samples {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts := []string{string(data)}
		if filepath.Base(name) == "router-boxes.yaml" {
			texts = append(texts, strings.Replace(string(data), "dxf: {", "dxf: {split: cutter, ", 1))
		}
		for _, text := range texts {
			t.Run(filepath.Base(name), func(t *testing.T) { everyFile(t, name, text) })
		}
	}
}

func everyFile(t *testing.T, name, text string) {
	all, r := written(t, text, job.Files(load.Beside(name)))
	to := &folder{files: all}
	p, err := prove.New(record.Keep(r))
	if err != nil {
		t.Fatal(err)
	}
	var lock sync.Mutex
	read := map[string]bool{"report.json": true}
	reading := func(name string) ([]byte, error) {
		lock.Lock()
		read[name] = true
		lock.Unlock()
		return to.ReadFile(name)
	}
	w := p.Worker()
	for i := range p.Drawers() {
		w.Drawer(i, reading, prove.Options{})
	}
	for i := range p.Checks() {
		if c := w.Check(i, reading); len(c.Faults) > 0 || c.Kind != r.Checked[i].Kind || c.Name != r.Checked[i].Name {
			t.Errorf("%+v, when it was built %+v", c, r.Checked[i])
		}
	}
	for _, name := range slices.Sorted(maps.Keys(to.files)) {
		if !read[name] {
			t.Errorf("%s is not read back", name)
		}
	}
}
