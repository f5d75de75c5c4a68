package outside

import (
	"path/filepath"
	"testing"

	"drawerwright/geom/geomtest"
)

// lettered is a page for viewer_letters.mjs, and what it says of it.
type lettered struct {
	Name    string   `json:"name"`
	Page    string   `json:"page"`
	Turns   int      `json:"turns"` // in how many ways it is turned in each state
	Views   int      `json:"views"`
	Letters int      `json:"letters"`
	Faults  []string `json:"faults"`
}

// TestLetters: over the boxes of all samples, turned and with all that can be marked, no letters of the
// viewer cover each other or a mark that is not their own, and what has to be told is told.
func TestLetters(t *testing.T) {
	t.Parallel()
	turns := geomtest.Cases(4, 10)
	var pages []lettered
	add := func(name, job string) {
		dir, _ := build(t, job)
		pages = append(pages, lettered{Name: name, Page: filepath.Join(dir, "boxes.html"), Turns: turns})
	}
	add("knobs that meet", knobsMeet)
	add("bank of twelve", bankOfTwelve)
	files, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d samples, %v", len(files), err)
	}
	for _, f := range files {
		add(filepath.Base(f), textOf(t, f))
	}
	for _, l := range letters(t, pages) {
		if l.Views < 5*turns || l.Letters < 3*l.Views {
			t.Errorf("%s: %d letters in %d views", l.Name, l.Letters, l.Views)
		}
		for _, f := range l.Faults {
			t.Errorf("%s: %s", l.Name, f)
		}
	}
}

// TestLettersComparator: letters that look for no free place are seen, and what has to be told and is
// not.
func TestLettersComparator(t *testing.T) {
	t.Parallel()
	dir, _ := build(t, textOf(t, "../../samples/kitchen-bank.yaml"))
	var pages []lettered
	for old, put := range map[string]string{"this.cells.fill(BOX,": "this.cells.fill(0,",
		"cells[at] = number;": "number;", "if (!ask.must && !ask.aside ||": "if (true ||"} {
		pages = append(pages, lettered{Name: old, Page: spoiled(t, dir, "letters", old, put), Turns: 4})
	}
	for _, l := range letters(t, pages) {
		if len(l.Faults) == 0 {
			t.Errorf("without %q no fault is found in %d views", l.Name, l.Views)
		}
	}
}

func letters(t *testing.T, pages []lettered) []lettered {
	t.Helper()
	list := lookedAt[lettered](t, "viewer_letters.mjs", pages)
	if len(list) != len(pages) {
		t.Fatalf("%d pages of %d were looked at", len(list), len(pages))
	}
	return list
}
