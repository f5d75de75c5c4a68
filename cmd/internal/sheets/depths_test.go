package sheets

import (
	"context"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
)

// TestDepthsOnOneLayer: outlines over tabs and over a skin, which lie on one sheet, share a
// layer only where each has its elevation; else the way out is named.
func TestDepthsOnOneLayer(t *testing.T) {
	const text = `units: mm
stock: {ply: {thickness: 12, sheet: 1525 x 1525}, thin: {thickness: 6}}
cutter: {kind: router, bits: {up: {diameter: 6, tool: 3}}}
router: {tabs: {}, onion-skin: 0.3}
dxf: {layers: "{operation}_T{tool}", elevation: WHICH}
drawers:
  - {name: large, outside: 400 x 120 x 400, sides: ply, bottom: thin}
  - {name: small, outside: 180 x 60 x 140, sides: ply, bottom: thin}
`
	plan := func(which string) (Plan, error) {
		j, problems := job.Read("job.yaml", strings.NewReader(strings.Replace(text, "WHICH", which, 1)))
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := batch.Make(t.Context(), j)
		return Of(context.Background(), b, nil, Search{})
	}
	_, err := plan("no")
	if p, ok := err.(*Problem); !ok || p.Code != "layers" || !strings.Contains(p.Fact.In(geom.Millimeter), "layer PROFILE_T3 would hold cuts that differ in depth") || !strings.Contains(p.Ask.In(geom.Millimeter), "`elevation: yes`") {
		t.Errorf("without elevations: %v", err)
	}
	made, err := plan("yes")
	if err != nil {
		t.Fatal(err)
	}
	depths := map[float64]bool{}
	for _, d := range made.Stocks[0].Drawn(made.Stocks[0].Laid[0]) {
		for _, l := range d.Layers {
			if l.Name == "PROFILE_T3" {
				depths[l.Depth] = true
			}
		}
	}
	if len(depths) != 2 || !depths[10.5] || !depths[11.7] {
		t.Errorf("outlines of depths %v, want 10.5 over tabs and 11.7 over an onion skin", depths)
	}
}
