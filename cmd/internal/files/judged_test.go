package files_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
)

// TestPageOfBoxesJudges: the page of a build has the verdict of the forecast on each clearance that
// is not right. A slot of 6.7 is 0.6 wider than the tongues, half of 12.2, and 0.8 than the bottom.
func TestPageOfBoxesJudges(t *testing.T) {
	const text = `units: mm
stock: {birch: {thickness: [12.2, 12.21]}, hard: {thickness: [5.9, 5.91]}}
cutter: {kind: saw, width: 6.7}
drawers: [{name: wide, outside: 460 x 140 x 500, sides: birch, bottom: hard}]
`
	built, _ := written(t, text)
	data := regexp.MustCompile(`(?s)<script[^>]*application/json[^>]*>(.*?)</script>`).FindSubmatch(built[filing.Page])
	if data == nil {
		t.Fatal("the page has no data")
	}
	var scene struct {
		Boxes []struct {
			Plays []struct{ Name, Measure, Verdict string }
		}
	}
	if err := json.Unmarshal(data[1], &scene); err != nil {
		t.Fatal(err)
	}
	j, _ := job.Read("job.yaml", strings.NewReader(text))
	b, _ := batch.Make(t.Context(), j)
	want := map[string]string{}
	for _, m := range b.Drawers[0].Outcome.Measures {
		want[m.Name] = string(m.Verdict)
	}
	loose := 0
	for _, p := range scene.Boxes[0].Plays {
		switch {
		case p.Measure == "":
			t.Errorf("nothing judges %s", p.Name)
		case p.Verdict != want[p.Measure] && (p.Verdict != "" || want[p.Measure] == "loose"):
			t.Errorf("%s is %q, the forecast %q", p.Name, p.Verdict, want[p.Measure])
		case p.Verdict == "loose":
			loose++
		}
	}
	if loose != 8 { // two tongues in either side, the bottom in all four walls
		t.Errorf("%d are loose of %+v", loose, scene.Boxes[0].Plays)
	}
}
