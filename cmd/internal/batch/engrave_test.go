package batch

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
)

// TestEngraved: parts that are alike have one number, others have others; a bottom has it on
// its underside where its sheets need not be turned over for that.
func TestEngraved(t *testing.T) {
	const text = `units: mm
stock: {ply: {thickness: 12}, thin: {thickness: 6}}
cutter: {kind: router, bits: {six: {diameter: 6}, point: {diameter: 1}}}
router: {engrave: {bit: point}}
drawers:
  - {name: a, outside: 400 x 120 x 450, sides: ply, bottom: thin, joinery: {bottom-height: 15}MORE}
  - {name: b, count: 2, outside: 400 x 120 x 450, sides: ply, bottom: thin, joinery: {bottom-height: 15}}
  - {name: c, outside: 300 x 120 x 450, sides: ply, bottom: thin, joinery: {bottom-height: 15}}
`
	parts := func(text string) map[string]Part {
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := Make(t.Context(), j)
		found := map[string]Part{}
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				found[p.Name] = p
			}
		}
		return found
	}
	alone := parts(strings.Replace(text, "MORE", "", 1))
	for name, p := range alone {
		face := geom.Inside
		if strings.HasSuffix(name, "bottom") {
			face = geom.Outside
		}
		if e := p.Engraved; e == nil || !e.Room.IsEmpty() || e.Face != face || len(p.Work().Faces) != 1 && strings.HasSuffix(name, "bottom") {
			t.Errorf("%s: %+v, cut on %v", name, e, p.Work().Faces)
		}
	}
	number := func(name string) string { return alone[name].Engraved.Number }
	if number("a-side") != number("b-side") || number("a-side") != number("c-side") || number("a-box-front") != number("b-box-front") || number("a-box-front") == number("c-box-front") || number("a-bottom") == number("c-bottom") || number("a-side") == number("a-box-front") {
		t.Errorf("sides %s %s %s, fronts %s %s %s", number("a-side"), number("b-side"), number("c-side"),
			number("a-box-front"), number("b-box-front"), number("c-box-front"))
	}
	// A divider of the bottoms' stock is cut with its inside face up.
	divided := parts(strings.Replace(text, "MORE", ", dividers: [{direction: across, at: 1, stock: thin}]", 1))
	for name, why := range map[string]string{"b-bottom": "it would have to be turned over for it", "a-divider": "all of it shows in the box"} {
		p, known := divided[name]
		if !known {
			for n, q := range divided { // with a label
				if strings.HasPrefix(n, name) {
					p = q
				}
			}
		}
		if p.Engraved == nil || p.Engraved.Room.In(geom.Millimeter) != why || len(p.Work().Faces) != 1 || p.Work().Faces[0] != geom.Inside {
			t.Errorf("%s: %+v, cut on %v", name, p.Engraved, p.Work().Faces)
		}
	}
	if off := parts(strings.Replace(strings.Replace(text, "MORE", "", 1), "{bit: point}", "no", 1)); off["a-side"].Engraved != nil {
		t.Error("engraved where nobody asked for it")
	}
}
