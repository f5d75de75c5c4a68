package prove_test

import (
	"strings"

	"drawerwright/cmd/internal/record"
)

// splitJob has a sheet on which a bit comes up again: rabbets and dados with the big one,
// grooves and the outlines of a box joint with the small one, other outlines with the big
// one again. No order of one file a bit would cut all pockets before any part is loose.
func splitJob(version string) string {
	return strings.Replace(`units: mm
stock: {b: {thickness: 12, sheet: 2440 x 1220}, c: {thickness: 6, sheet: 1525 x 1525}}
cutter: {kind: router, bits: {big: {diameter: 8, reach: 25, tool: 1}, small: {diameter: 4, reach: 25, tool: 2}}}
joinery: {faces: one}
dxf: {split: cutter, files: "{part}", version: VERSION}
drawers:
 - {name: u, outside: 500 x 200 x 450, sides: b, bottom: c, joint: box-joint, dividers: [{direction: across, at: 1, stock: b}]}
 - {name: t, outside: 400 x 150 x 400, sides: b, bottom: c, joint: double-rabbet}
`, "VERSION", version, 1)
}

const (
	splitSheet = "router/sheets/b-1.inside.dxf"
	bigFirst   = "router/sheets/b-1.inside.1.t1-big.dxf"
	smallNext  = "router/sheets/b-1.inside.2.t2-small.dxf"
	bigLast    = "router/sheets/b-1.inside.3.t1-big.dxf"
	splitPart  = "router/parts/t-side.inside.dxf"
)

// runOf gives other files to the layers of the sheet that a file has.
func runOf(of map[string]string) func(*record.Report) {
	return onSheet(func(s *record.LaidSheet) {
		for i := range s.Layers {
			if to, other := of[s.Layers[i].BitFile]; other {
				s.Layers[i].BitFile = to
			}
		}
	})
}

var plantedSplit = map[string]planted{
	"a file of a bit lost":                     {file: smallNext, code: "missing-file", gone: true},
	"a file of a bit cut short":                {file: smallNext, code: "unreadable", bytes: func(b []byte) ([]byte, int) { return b[:len(b)/2], 0 }},
	"a file of a bit with a line moved":        {file: smallNext, code: "moved", harm: shift("GROOVE", 1, 0.01, 0)},
	"a file of a bit with a line lost":         {file: bigFirst, code: "count", harm: lost("RABBET", 2)},
	"a file of a bit with a line twice":        {file: bigLast, code: "count", harm: func(d *drawing) int { twice("PROFILE", 1)(d); return 0 }},
	"a file of a bit with its lines exchanged": {file: bigFirst, code: "moved", harm: exchanged("RABBET", 0, 1)},
	"a file of a bit with another's layer":     {file: bigLast, code: "unlisted-layer", harm: renamed("PROFILE_INSIDE_THROUGH_BIG", "PROFILE_INSIDE_THROUGH_SMALL")},
	"a file of a bit without the corner marks": {file: smallNext, code: "count", harm: lost("BLANK", 0)},
	"a file of a bit with the sheet moved":     {file: bigFirst, code: "moved", harm: shift("SHEET", 0, 5, 0)},
	"a sheet whose bits come in another order": {file: splitSheet, code: "order", harm: func(d *drawing) int {
		late := d.on("RABBET")[0]
		tags := d.tagsOf(late)
		d.remove(late)
		return d.insert(d.first("PROFILE"), tags)
	}},
	"a part whose bits come in another order": {file: splitPart, code: "order", harm: func(d *drawing) int {
		groove := d.on("GROOVE")[0]
		tags := d.tagsOf(groove)
		outline := d.first("PROFILE").to
		d.tags = append(d.tags[:outline:outline], append(tags, d.tags[outline:]...)...)
		d.remove(groove)
		return 2*(outline-len(tags)) + 1
	}},
	"one file for what a bit cuts early and late": {code: "order", at: splitSheet, edit: runOf(map[string]string{bigLast: bigFirst})},
	"files of bits exchanged":                     {code: "order", at: splitSheet, edit: runOf(map[string]string{bigLast: bigFirst, bigFirst: bigLast})},
	"a file of a bit with another number":         {code: "order", at: splitSheet, edit: runOf(map[string]string{bigLast: "router/sheets/b-1.inside.4.t1-big.dxf"})},
	"one file for two bits":                       {code: "bit", at: splitSheet, edit: runOf(map[string]string{bigLast: smallNext})},
	"two files for a bit that is not changed":     {code: "split", at: splitSheet, edit: onSheet(func(s *record.LaidSheet) { s.Layers[1].BitFile = smallNext })},
	"no file of a bit in the legend":              {code: "split", at: splitSheet, edit: runOf(map[string]string{smallNext: ""})},
}

// exchanged puts a line of a layer in the place of a later one.
func exchanged(layer string, n, with int) func(*drawing) int {
	return func(d *drawing) int {
		a, b := d.on(layer)[n], d.on(layer)[with]
		first, second := d.tagsOf(a), d.tagsOf(b)
		d.remove(b)
		d.remove(a)
		d.tags = append(d.tags[:a.from:a.from], append(append(second, first...), d.tags[a.from:]...)...)
		return 0
	}
}

// renamed gives a layer another name.
func renamed(from, to string) func(*drawing) int {
	return func(d *drawing) int {
		line := d.first(from).line()
		d.rename(from, to)
		return line
	}
}
