package page

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/geomtest"
)

// refusals are what a section of a sample may say instead of beginning, by the entry.
var refusals = map[string]string{
	"stock.keep-out":       "no drawer is cut with one", // a CNC router
	"stock.boards":         "the parts are cut of sheets; delete `sheet:`",
	"cutter.bits":          "bits is for a router",
	"climate":              "no stock says what it is made of",
	"templates":            "templates are cut from plates of",
	"drawers.drawer-front": "the opening has no drawer fronts",
	"drawers.dividers":     "take a board of", // no board of the sample is as wide as the saw's dado
}

// TestAddsBuild: whatever the form can add to a sample leaves it without a mistake, or is refused
// with the reason.
func TestAddsBuild(t *testing.T) {
	samples, _ := filepath.Glob("../../../samples/*.yaml")
	if geomtest.Cases(0, 1) == 0 { // the same with fewer of them
		samples = slices.DeleteFunc(samples, func(s string) bool {
			few := []string{"bench-drawers.yaml", "router-boxes.yaml", "kitchen-bank.yaml", "inch-chest.yaml"}
			return !slices.Contains(few, filepath.Base(s))
		})
	}
	if len(samples) < 4 {
		t.Fatal(samples)
	}
	added := make(map[string]int)
	for _, sample := range samples {
		data, err := os.ReadFile(sample)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Open(sample)
		if err != nil {
			t.Fatal(err)
		}
		defer p.Close()
		root := job.Outlined(data).Root
		tried := make(map[string]bool)
		for _, path := range addable(job.Keys(), root, nil) {
			entry := strings.Join(names(path), ".")
			if tried[entry] && geomtest.Cases(0, 1) == 0 {
				continue
			}
			tried[entry] = true
			text, err := p.work.apply(data, step("begin", path, "new one"))
			if err == nil {
				added[entry]++
			}
			switch {
			case err != nil && (refusals[entry] == "" || !strings.Contains(err.Error(), refusals[entry])):
				t.Errorf("%s: %v: %v", filepath.Base(sample), path, err)
				continue
			case err != nil:
				continue
			case string(text) == string(data):
				t.Errorf("%s: %v adds nothing", filepath.Base(sample), path)
			}
			if found := p.work.errors(text); len(found) > 0 {
				t.Errorf("%s: %v: %v", filepath.Base(sample), path, found[0])
			}
		}
	}
	for _, entry := range []string{"stock", "openings", "slides", "drawers.pull", "drawers.dividers", "drawers.cutter"} {
		if added[entry] == 0 {
			t.Errorf("%s was never added", entry)
		}
	}
}

// names is a path without the names and numbers of what lists and mappings hold.
func names(path []string) (out []string) {
	keys := job.Keys()
	for _, step := range path {
		for _, k := range keys {
			if k.Name == step {
				out, keys = append(out, step), k.Keys
				break
			}
		}
	}
	return out
}

// addable are the paths at which the form of a job has a button that adds something.
func addable(keys []job.Key, at *job.Node, path []string) (list [][]string) {
	for _, k := range keys {
		way := append(path[:len(path):len(path)], k.Name)
		there := at.Of(k.Name)
		switch {
		case k.Kind == "named", k.Kind == "list" && there == nil, k.Kind == "section" && there == nil && needs(k):
			list = append(list, way)
		}
		switch {
		case there == nil:
		case k.Kind == "section":
			list = append(list, addable(k.Keys, there, way)...)
		case k.Kind == "named":
			for _, e := range there.Entries {
				list = append(list, addable(k.Keys, e.Value, append(way[:len(way):len(way)], e.Key))...)
			}
		case k.Kind == "list":
			for i, item := range there.Items {
				list = append(list, addable(k.Keys, item, append(way[:len(way):len(way)], string(rune('0'+i))))...)
			}
		}
	}
	return list
}

// needs reports whether a section cannot do without some entry.
func needs(k job.Key) bool {
	for _, inner := range k.Keys {
		if inner.Required {
			return true
		}
	}
	return false
}

// TestSwitchesBuild: every drawer of a sample can have its size in the other way, and back, without
// a mistake; what is made for its fields brings none either.
func TestSwitchesBuild(t *testing.T) {
	samples, _ := filepath.Glob("../../../samples/*.yaml")
	for _, sample := range samples[:geomtest.Cases(3, len(samples))] {
		data, err := os.ReadFile(sample)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Open(sample)
		if err != nil {
			t.Fatal(err)
		}
		defer p.Close()
		for i := range drawersOf(job.Outlined(data).Root) {
			path := []string{"drawers", strconv.Itoa(i)}
			text := data
			ways := []job.Step{step("size", path, "opening"), step("make", append(path, "opening"), "hole"),
				step("make", append(path, "slide"), "runner"), step("make", append(path, "sides"), "wood"),
				step("size", path, "size"), step("make", append(path, "bottom"), "board")}
			for _, s := range ways {
				if s.Value == "opening" && job.Outlined(text).Root.Of(append(path, "opening")...) != nil {
					continue
				}
				if text, err = p.work.apply(text, s); err != nil {
					t.Errorf("%s: %v: %v", filepath.Base(sample), s, err)
					break
				}
				if found := p.work.errors(text); len(found) > 0 {
					t.Errorf("%s: %v: %v\n%s", filepath.Base(sample), s, found[0], text)
				}
			}
			if geomtest.Cases(0, 1) == 0 {
				break // the other drawers of a sample differ little
			}
		}
	}
}

// step is a change of a text.
func step(do string, path []string, value string) job.Step {
	return job.Step{Do: do, Path: path, Value: value}
}
