package prove_test

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
)

// raisedJob is plantJob with boards that differ, and cuts that tell their depths by their
// elevation alone: outlines over tabs and over skins share a layer.
func raisedJob(version string) string {
	return strings.NewReplacer("VERSION", version, "thickness: 12.2", "thickness: [12.2, 12.1, 12.3]",
		"diameter: 3", "bits: {fine: {diameter: 3, tool: 4}}",
		"tabs: {}", "into-spoilboard: 0.4, tabs: {}", "dxf: {", `dxf: {elevation: yes, layers: "{operation}_T{tool}", `).Replace(plantJob)
}

const raisedSide = "router/parts/base-1-side.inside.dxf"

// at puts the n-th line of a layer to a height.
func at(layer string, n int, z string) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		code := "30" // of circles and POLYLINEs, with those of their vertices
		if e.kind == "LWPOLYLINE" {
			code = "38"
		}
		e.put(code, z)
		return e.line()
	}
}

// thick gives the n-th line of a layer a thickness.
func thick(layer string, n int, by string) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		e.put("39", by)
		return e.line()
	}
}

// plantedHeights are of lines that lie at heights.
var plantedHeights = map[string]planted{
	"a groove 1 higher":              {file: sheetIn, code: "height", harm: at("GROOVE_T4", 0, "-5.1")},
	"a groove 1 higher leaves wood":  {file: sheetIn, code: "not-cut", harm: at("GROOVE_T4", 0, "-5.1")},
	"a groove 1 lower":               {file: sheetIn, code: "height", harm: at("GROOVE_T4", 1, "-7.1")},
	"a groove 1 lower cuts more":     {file: sheetIn, code: "cuts-part", harm: at("GROOVE_T4", 1, "-7.1")},
	"a groove 0.1 lower":             {file: sheetIn, code: "height", harm: at("GROOVE_T4", 2, "-6.2")},
	"a groove at the face":           {file: sheetIn, code: "height", harm: at("GROOVE_T4", 2, "0.0")},
	"a groove over the face":         {file: sheetIn, code: "height", harm: at("GROOVE_T4", 3, "6.1")},
	"a groove that ends too low":     {file: sheetIn, code: "height", harm: thick("GROOVE_T4", 1, "3.0")},
	"a groove over its own face":     {file: sheetIn, code: "height", harm: thick("GROOVE_T4", 1, "12.2")},
	"a groove that hangs down":       {file: sheetIn, code: "height", harm: thick("GROOVE_T4", 1, "-6.1")},
	"a hole that ends in the board":  {file: sheetIn, code: "height", harm: at("DRILL_T4", 0, "-6.1")},
	"a hole through a thinner board": {file: sheetIn, code: "height", harm: at("DRILL_T4", 1, "-12.2")},
	"a slot through a thinner board": {file: sheetIn, code: "height", harm: at("SLOT_T4", 0, "-12.2")},
	"a slot into the spoilboard":     {file: sheetIn, code: "height", harm: at("SLOT_T4", 0, "-20.0")},
	"an outline over no tab":         {file: sheetIn, code: "height", harm: at("PROFILE_T4", 0, "-11.2")},
	"a rabbet 1 higher":              {file: sheetOut, code: "height", harm: at("RABBET_T4", 0, "-5.1")},
	"a hole to register by too low":  {file: sheetOut, code: "height", harm: at("REGISTER_T4", 0, "-30.0")},
	"a line that is not level": {file: sheetIn, code: "height", harm: func(d *drawing) int {
		e := d.first("GROOVE_T4")
		if e.kind == "LWPOLYLINE" {
			d.tags = slices.Insert(d.tags, e.to, tag{"210", "1.0"}, tag{"220", "0.0"}, tag{"230", "0.0"})
			return e.line()
		}
		for i := e.to - 1; ; i-- { // of its last corner
			if d.tags[i].code == "30" {
				d.tags[i].value = "-1.0"
				return e.line()
			}
		}
	}},
	"a dado of a part 1 higher":    {file: raisedSide, code: "height", harm: at("DADO_T4", 0, "-5.1")},
	"a dado of a part too shallow": {file: raisedSide, code: "depth", harm: at("DADO_T4", 0, "-5.1")},
	"a part's outline too shallow": {file: raisedSide, code: "height", harm: at("PROFILE_T4", 0, "-10.0")},
	"a part's slots not through":   {file: raisedSide, code: "height", harm: at("SLOT_T4", 1, "-12.3")},
	"another elevation in the legend": {code: "height", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) {
		*layerOf(s, "groove").Elevation++
	})},
	"a slot through a thinner board in the legend": {code: "height", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { *layerOf(s, "slot").Elevation = -12.2 })},
	"another depth to set in the legend": {code: "set", at: sheetIn,
		edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Set++ })},
	"too little to set for what goes through": {code: "set", at: sheetIn,
		edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "slot").Set = 12.2 })},
	"a depth to set from the spoilboard": {code: "set", at: sheetIn,
		edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").From = "spoilboard" })},
	"no elevation in the legend": {code: "height", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Elevation = nil })},
}
