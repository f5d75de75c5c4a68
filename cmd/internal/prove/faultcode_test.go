package prove_test

import (
	"strings"

	"drawerwright/cmd/internal/record"
)

// harmedCode are drawings that say the code of another job, or none.
var harmedCode = map[string]seeded{
	"the drawing of an old job": {file: sideIn, code: "code", folder: func(f *folder) { // of one box more, and the same parts
		version := "R2000"
		if strings.Contains(string(f.files[sideIn]), "AC1009") {
			version = "R12"
		}
		old := build(f.t, strings.Replace(harmed(version, ""), "name: one,", "name: one, count: 2,", 1))
		f.files[sideIn] = old.files[sideIn]
	}},
	"a letter of the code lost": {file: frontIn, code: "code", harm: func(d *drawing) int {
		label := d.on("LABEL")
		line := label[0].line()
		lowest := label[0]
		x := func(e entity) float64 { x0, _, _, _ := e.box(); return x0 }
		high := func(e entity) float64 { _, y0, _, _ := e.box(); return y0 }
		for _, e := range label { // the last letter of the second line from above, which has the code
			if high(e) > 226 && high(e) < 240 && x(e) > x(lowest) {
				lowest = e
			}
		}
		d.remove(lowest)
		return line
	}},
	"a report of an old job": {at: sideIn, code: "code", edit: func(r *record.Report) { r.Code = "222222" }},
}
