package outside

import (
	"archive/zip"
	"encoding/json"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom/geomtest"
)

// TestPage: `drawerwright view` in Chromium does all that a person tries on it, is
// found to be without a serious fault by axe-core, and what it lets download is a build.
func TestPage(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	tried := map[string]bool{}
	for _, r := range lines[struct {
		Tried, Fault, Told string
	}](t, "", "node", "page.mjs", command, dir, strconv.Itoa(geomtest.Cases(60, 300))) {
		tried[r.Tried] = true
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
		if r.Told != "" {
			t.Logf("%s: %s", r.Tried, r.Told)
		}
	}
	for _, must := range []string{"a thickness", "text and form follow each other", "a mistake at its field", "undo and redo", "save", "two tabs", "download", "a name that would be markup", "sheets",
		"units", "sections, copies and removals", "an emptied field", "a cabinet", "the keyboard alone", "light, for everybody", "dark, for everybody", "a phone", "without WebGL", "the end", "many edits"} {
		if !tried[must] {
			t.Errorf("%s was not tried", must)
		}
	}
	z, err := zip.OpenReader(filepath.Join(dir, "bench.zip"))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	names := map[string]*zip.File{}
	for _, f := range z.File {
		names[strings.TrimPrefix(f.Name, "bench/")] = f
	}
	report, err := names["report.json"].Open()
	if err != nil {
		t.Fatal(err)
	}
	defer report.Close()
	data, err := io.ReadAll(report)
	var read struct {
		Parts []struct{ Files struct{ Inside, Stl string } }
	}
	if err == nil {
		err = json.Unmarshal(data, &read)
	}
	if err != nil || len(read.Parts) == 0 {
		t.Fatalf("%v: %.200s", err, data)
	}
	for _, p := range read.Parts {
		if names[p.Files.Stl] == nil || p.Files.Inside != "" && names[p.Files.Inside] == nil {
			t.Errorf("the download has no %+v", p.Files)
		}
	}
}
