package prove_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// openings are the shapes that a wall may have beside its joints, with the layers of the
// lines that make them and the part that has them.
var openings = map[string]struct{ more, layer, part string }{
	"a hole":             {"pull: {shape: hole}", "CUTOUT", "box-front"},
	"a hand hold":        {"pull: {shape: hand-hold}", "CUTOUT", "box-front"},
	"a half-round":       {"pull: {shape: half-round}", "PROFILE", "box-front"},
	"a slot":             {"pull: {shape: slot}", "PROFILE", "box-front"},
	"a row of holes":     {"drawer-front: {stock: birch, width: 480, height: 160, overhang-left: 10, overhang-below: 10, handles: knob}", "DRILL", "box-front"},
	"notches at a slide": {"", "PROFILE", "back"},
}

// openingJob has a wall with an opening, its parts on sheets and held by tabs.
func openingJob(more string) string {
	drawer := "{name: one, outside: 460 x 140 x 500, sides: birch, bottom: ply, joinery: {dado-clearance: 0.2}, " + more + "}"
	places := ""
	if more == "" {
		places = "openings: {base: {width: 520, height: 160, depth: 560, cabinet: frameless, fronts: none}}\n"
		drawer = "{name: one, opening: base, slide: undermount, sides: birch, bottom: ply, joinery: {dado-clearance: 0.2, bottom-height: 14}}"
	}
	return fmt.Sprintf(`job: Openings
units: mm
stock:
  birch: {thickness: 12.2, sheet: 1500 x 1200}
  ply: {thickness: 5.9, sheet: 1500 x 1200}
cutter: {kind: router, diameter: 3}
router: {tabs: {}, onion-skin: 0.3}
sheets: {trim: 25, kerf: 12}
dxf: {files: "{part}"}
%sdrawers:
  - %s
`, places, drawer)
}

// TestOpeningsAreProven: each shape is in the proof of its part and of its sheet, which
// find it moved or lost; no tab stands in it, and every part is held.
func TestOpeningsAreProven(t *testing.T) {
	for name, c := range openings {
		t.Run(name, func(t *testing.T) {
			text := openingJob(c.more)
			f := build(t, text)
			for _, p := range f.proofs(t, prove.Options{}) {
				if len(p.Faults) > 0 {
					t.Fatalf("unharmed: %+v", p.Faults)
				}
			}
			all := f.checked(t)
			if found := faultsOf(all); len(found) > 0 {
				t.Fatalf("unharmed: %+v", found)
			}
			held := 0
			for _, s := range all {
				if s.Sheet != nil {
					held += s.Sheet.HeldByTabs + s.Sheet.HeldByOnionSkin
					if s.Sheet.Loose > 0 {
						t.Errorf("%s: %+v", s.Name, *s.Sheet)
					}
				}
			}
			if held == 0 {
				t.Error("nothing is held")
			}
			part := ""
			for _, p := range f.report(t).Parts {
				if p.Role == c.part {
					part = p.Files.Inside
				}
			}
			for file, faults := range map[string]func(*folder) []record.Fault{
				part:                               func(f *folder) []record.Fault { return f.proof(t, prove.Options{}).Faults },
				"router/sheets/birch-1.inside.dxf": func(f *folder) []record.Fault { return faultsOf(f.checked(t)) },
			} {
				for _, harm := range []string{"moved", "lost"} {
					f := build(t, text)
					d := drawn(t, f.files[file])
					list := slices.DeleteFunc(d.on(c.layer),
						func(e entity) bool { return c.layer == "PROFILE" && !shaped(e) })
					if len(list) == 0 {
						t.Fatalf("%s has no %s with an opening", file, c.layer)
					}
					e := list[0]
					line := e.line()
					if harm == "moved" {
						e.points(moved(1, 1))
					} else if d.remove(e); true {
						line = 0
					}
					f.files[file] = d.data()
					found := faults(f)
					if !slices.ContainsFunc(found, func(v record.Fault) bool { return v.File == file && (line == 0 || v.Line == line) }) {
						t.Errorf("%s in %s is not found on line %d: %+v", harm, file, line, found)
					}
				}
			}
		})
	}
}

// shaped reports whether an outline has more than four corners.
func shaped(e entity) bool {
	corners := 0
	e.points(func(x, y float64) (float64, float64) { corners++; return x, y })
	return corners > 4 && strings.HasPrefix(e.layer, "PROFILE")
}
