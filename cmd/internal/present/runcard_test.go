package present

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// TestSlotsBeginWhereOutlinesEnd: with tabs 1.5 high in boards of 12.2 the bit has gone round
// the parts 10.7 deep, and slots take 1.5 more in one pass of up to 6. Where parts are so far
// apart that slots take a strip of waste between them, that stands 12.2 high: 3 passes.
func TestSlotsBeginWhereOutlinesEnd(t *testing.T) {
	for _, c := range []struct {
		rules  string
		begins float64
		passes int
	}{
		{"", 10.7, 1},
		{"sheets: {kerf: 13}", 0, 3},
	} {
		j, problems := job.Read("slots.yaml", strings.NewReader(`units: mm
stock: {b: {thickness: 12.2, sheet: 1525 x 1525}, c: {thickness: 6}}
cutter: {kind: router, bits: {six: {diameter: 6, reach: 25, feed: 3 m/min, plunge: 1 m/min, pass-depth: 6}}}
router: {tabs: {}, onion-skin: 0.5}
`+c.rules+`
drawers: [{name: u, outside: 400 x 150 x 400, sides: b, bottom: c, joint: double-rabbet, count: 3}]
`))
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := batch.Make(t.Context(), j)
		plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
		if err != nil {
			t.Fatal(err)
		}
		run := record.SheetsOf(plan).Stocks[0].Sheets[0].Run
		found, sum := false, 0.0
		for _, s := range run.Faces[0].Steps {
			sum += s.Minutes
			if s.Operation == "slot" {
				found = true
				if s.StartDepth.MM() != c.begins || s.Passes != c.passes {
					t.Errorf("%q: slots begin at %v and take %d passes, want %v and %d",
						c.rules, s.StartDepth, s.Passes, c.begins, c.passes)
				}
			}
		}
		said := strings.Join(RunOrder(run.Faces[0], j.Units), "\n")
		begins := strings.Contains(said, "begins at the floor of PROFILE")
		if !found || begins != (c.begins > 0) || math.Abs(sum-run.Minutes) > 0.051 {
			t.Errorf("%q: slots %t, %q, %v minutes of %v", c.rules, found, said, sum, run.Minutes)
		}
	}
}

// TestPassesNotSaid: a bit without a pass depth has no number of passes, on the card too: what
// the operator's program does is not 1 because the job says nothing.
func TestPassesNotSaid(t *testing.T) {
	face := record.RunFace{Steps: []record.RunStep{{Layer: "A", Depth: 6},
		{Layer: "B", Depth: 6, PassDepth: 2, Passes: 3}}}
	rows := RunTable(face, geom.Millimeter).Pick("passes").Texts()
	if rows[0][0] != "-" || rows[1][0] != "3" {
		t.Errorf("passes are %v", rows)
	}
}

// TestFirstStepNamesItsBit: what a file is cut with stands at its first step and over each group, though the bit was in
// already: who begins with that file has not read the one before.
func TestFirstStepNamesItsBit(t *testing.T) {
	face := record.RunFace{Steps: []record.RunStep{{Layer: "A", Bit: "six", Diameter: 6, Tool: 2},
		{Layer: "B", Bit: "six", Diameter: 6, Tool: 2},
		{Layer: "C", Bit: "six", Diameter: 6, Tool: 2, Speed: 9000}, {Layer: "D", Bit: "fine", Diameter: 1, BitChange: true}}}
	rows := RunTable(face, geom.Millimeter).Pick("bit").Texts()
	for i, want := range []string{"T2 six, 6 mm, stays in", "same bit", "same bit", "fine, 1 mm"} {
		if rows[i][0] != want {
			t.Errorf("step %d: %q, want %q", i+1, rows[i][0], want)
		}
	}
	var sets []string
	for _, g := range RunGroups(face, geom.Millimeter) {
		sets = append(sets, g.Set)
	}
	want := []string{"Bit T2 six, 6 mm, stays in", "Bit T2 six, 6 mm, stays in, 9000 rpm", "Bit fine, 1 mm"}
	if !slices.Equal(sets, want) {
		t.Errorf("groups %q, want %q", sets, want)
	}
}
