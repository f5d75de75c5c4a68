package batch_test

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
)

// TestHintsOfOneDrawer: what is said of a drawer that a shop drew without much thought.
func TestHintsOfOneDrawer(t *testing.T) {
	const stocks = "units: in\nstock:\n  half: {thickness: 0.472}\n  even: {thickness: [0.500, 0.505]}\n  quarter: {thickness: 0.205}\n"
	for name, c := range map[string]struct{ text, code, hint, never string }{
		// A slot of 0.25 for 0.205, which a standard lets be 1/64 off: an eighth makes it to fit.
		"saw":          {"cutter: {kind: saw, width: 1/4}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: half, bottom: quarter}]\n", "groove-clearance", "write `cutter: {groove-cutter: 1/8 in}` and write `joinery: {groove-clearance:", ""},
		"router table": {"cutter: {kind: router-table, diameter: 1/4}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: half, bottom: quarter}]\n", "groove-clearance", "write `cutter: {groove-cutter: 1/8 in}` and write `joinery: {groove-clearance:", ""},
		"wide blade":   {"cutter: {kind: saw, width: 1/4, groove-cutter: 1/4}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: half, bottom: quarter}]\n", "groove-clearance", "write `cutter: {groove-cutter: 1/8 in}`", ""},
		"iron":         {"cutter: {kind: hand, width: 1/4}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: half, bottom: quarter}]\n", "groove-clearance", "take a plow iron of 0.197 in", ""},
		// One reading: more of them are the first thing to ask for.
		"one reading": {"cutter: {kind: saw, width: 1/4}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: half, bottom: quarter}]\n", "recess", "measure half 2 more times", "lots"},
		// Nobody keeps a cut by hand within a hair.
		"by hand": {"cutter: {kind: hand, width: 1/8}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: even, bottom: quarter}]\n", "tongue-clearance", "change the drawer's entries", "accuracy"},
		// A fence that gives the tongue its play would stand the front proud: the stack is shimmed.
		"fence": {"cutter: {kind: saw, width: 0.252}\njoinery: {fence-distance: 0.248}\ndrawers: [{name: a, outside: 16 x 5 x 18, sides: even, bottom: even, joinery: {bottom-fit: applied}}]\n", "tongue-clearance", "set the dado stack", "fence-distance"},
	} {
		j, problems := job.Read("job.yaml", strings.NewReader(stocks+c.text))
		if problems.Failed() {
			t.Fatalf("%s: %v", name, problems)
		}
		_, found := batch.Make(t.Context(), j)
		said := ""
		for _, p := range found {
			if string(p.Code) == c.code {
				said += p.Shown(j).Hint + "\n"
			}
		}
		if !strings.Contains(said, c.hint) || c.never != "" && strings.Contains(said, c.never) {
			t.Errorf("%s: %q does not say %q, or %q", name, said, c.hint, c.never)
		}
	}
}
