package files_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/report"
	"drawerwright/cmd/internal/sheets"
)

// TestSkinIsLeft: a flush bottom is rabbeted all round on its outside face. Cut out from the
// inside, with a skin left on the outside, it would fall out where the rabbets' over-runs
// take the skin away; so it is cut out from its own face, and a skin of 0.4 holds it.
func TestSkinIsLeft(t *testing.T) {
	const text = `units: mm
stock:
  birch: {thickness: [14.6, 14.62], sheet: 1525 x 1525}
cutter: {kind: router, diameter: 6}
router: {tabs: {}, skin: 0.4}
drawers:
  - {name: box, outside: 400 x 200 x 380, sides: birch, bottom: birch, joinery: {bottom-fit: flush}}
`
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(j)
	plan, err := sheets.Of(context.Background(), b, nil, sheets.Search{})
	if err != nil {
		t.Fatal(err)
	}
	to := &folder{files: map[string][]byte{}}
	if err := files.Write(context.Background(), b, to, files.Options{Plan: plan}); err != nil {
		t.Fatal(err)
	}
	var r report.Report
	if err := json.Unmarshal(to.files["report.json"], &r); err != nil {
		t.Fatal(err)
	}
	skins := 0
	for _, c := range r.Checked {
		if c.Sheet != nil {
			skins += c.Sheet.Skin
		}
	}
	layers := r.Sheets[0].Sheets[0].Layers
	own := slices.ContainsFunc(layers, func(l report.Layer) bool {
		return l.Operation == "profile" &&
			l.Face == "outside" && l.Cuts == 1
	})
	if skins != 1 || !own {
		t.Errorf("%d parts hang by a skin, of layers %+v", skins, layers)
	}
}
