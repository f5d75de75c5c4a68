package prove_test

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
)

// engravedJob is plantJob with numbers: on the inside faces of sides and fronts below their
// raised grooves, and on the undersides of bottoms, which are cut out from there.
func engravedJob(version string) string {
	return strings.NewReplacer("VERSION", version, "diameter: 3",
		"bits: {three: {diameter: 3}, point: {diameter: 1}}", "tabs: {}", "engrave: {bit: point}, tabs: {}",
		"dado-clearance: 0.2", "dado-clearance: 0.2, bottom-height: 15").Replace(plantJob)
}

const (
	engravedSide   = "router/parts/base-1-side.inside.dxf"
	engravedBottom = "router/parts/base-1-bottom.outside.dxf"
)

// numberOf changes what the report says of a part's number.
func numberOf(part string, f func(*record.Engraved)) func(*record.Report) {
	return func(r *record.Report) {
		i := slices.IndexFunc(r.Parts, func(p record.Part) bool { return p.Name == part })
		f(r.Parts[i].Engraved)
	}
}

// plantedEngraved are of numbers.
var plantedEngraved = map[string]planted{
	"a stroke moved":                 {file: engravedSide, code: "engrave", harm: shift("ENGRAVE", 0, 0.5, 0)},
	"a stroke into the groove":       {file: engravedSide, code: "engrave", harm: shift("ENGRAVE", 0, 0, 8)},
	"a stroke past the edge":         {file: engravedSide, code: "engrave", harm: shift("ENGRAVE", 0, 0, -9)},
	"a stroke lost":                  {file: engravedSide, code: "missing", harm: lost("ENGRAVE", 0)},
	"a stroke twice":                 {file: engravedSide, code: "doubled", harm: twice("ENGRAVE", 0)},
	"a stroke as deep as a dado":     {file: engravedSide, code: "closed", harm: func(d *drawing) int { d.first("DADO").put("8", d.first("ENGRAVE").layer); return 0 }},
	"a stroke of an underside moved": {file: engravedBottom, code: "engrave", harm: shift("ENGRAVE", 0, -1, 0)},
	"a number mirrored":              {file: engravedBottom, code: "engrave", harm: mirroredNumber},
	"a number deeper than said":      {code: "depth", at: engravedSide, edit: numberOf("base-1-side", func(e *record.Engraved) { e.Depth = 0.1 })},
	"another number":                 {code: "engrave", at: engravedSide, edit: numberOf("base-1-side", func(e *record.Engraved) { e.Number = "77" })},
	"a number that was left out": {code: "extra", at: engravedSide, edit: numberOf("base-1-side",
		func(e *record.Engraved) { e.Reason = "no room" })},
	"a number on the other face":      {code: "extra", at: engravedSide, edit: numberOf("base-1-side", func(e *record.Engraved) { e.Face = "outside" })},
	"a stroke of a sheet in the side": {file: sheetIn, code: "cuts-part", harm: shift("ENGRAVE", 0, 20, 0)},
	"a stroke of a sheet lost":        {file: sheetIn, code: "not-cut", harm: lost("ENGRAVE", 1)},
	"a number after the outline":      {file: sheetIn, code: "order", harm: first("PROFILE")},
}

// mirroredNumber turns the strokes of a drawing over end for end, in their place.
func mirroredNumber(d *drawing) int {
	low, high := 1e9, -1e9
	for _, e := range d.on("ENGRAVE") {
		x0, _, x1, _ := e.box()
		low, high = min(low, x0), max(high, x1)
	}
	for _, e := range d.on("ENGRAVE") {
		e.points(func(x, y float64) (float64, float64) { return low + high - x, y })
	}
	return 0
}
