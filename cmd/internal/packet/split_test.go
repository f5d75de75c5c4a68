package packet

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom/nest"
)

// TestRunCardNamesBitFiles: the packet names the files of single bits in the order of
// cutting, on the run card of a sheet and among the drawings of the parts.
func TestRunCardNamesBitFiles(t *testing.T) {
	b := read(t, "split.yaml", []byte(`units: mm
stock: {b: {thickness: 12, sheet: 2440 x 1220}, c: {thickness: 6, sheet: 1525 x 1525}}
cutter: {kind: router, bits: {big: {diameter: 8, reach: 25, tool: 1}, small: {diameter: 4, reach: 25, tool: 2}}}
joinery: {faces: one}
dxf: {split: cutter, files: "{part}"}
drawers:
 - {name: u, outside: 500 x 200 x 450, sides: b, bottom: c, joint: box-joint, dividers: [{direction: across, at: 1, stock: b}]}
 - {name: t, outside: 400 x 150 x 400, sides: b, bottom: c, joint: double-rabbet}
`))
	plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	if err := lay(t.Context(), b, record.MakeKept(b, plan, nil), plan, func(p drawing.Page) {
		for _, w := range p.Texts {
			said = append(said, w.String)
		}
	}); err != nil {
		t.Fatal(err)
	}
	for _, want := range [][]string{
		{"router/parts/t-side.inside.1.t2-small.dxf", "router/parts/t-side.inside.2.t1-big.dxf"},
		{"router/sheets/b-1.inside.1.t1-big.dxf: steps 1 to 2, with T1 big, 8 mm",
			"router/sheets/b-1.inside.2.t2-small.dxf: steps 3 to 4, with T2 small, 4 mm",
			"router/sheets/b-1.inside.3.t1-big.dxf: step 5, with T1 big, 8 mm"},
	} {
		last := -1
		for _, name := range want {
			at := slices.IndexFunc(said, func(s string) bool { return strings.Contains(s, name) })
			if at <= last {
				t.Errorf("%q is not in its place", name)
			}
			last = at
		}
	}
}
