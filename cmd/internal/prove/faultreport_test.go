package prove_test

import (
	"drawerwright/cmd/internal/record"
)

// harmedReport are of the report, or of what stands in the collet.
var harmedReport = map[string]seeded{
	"a bit too big for the slot":  {file: sideIn, code: "bit-too-big", also: "missing", edit: bit(sideIn, "dado", 6.4)},
	"a bit bigger than drawn for": {file: sideIn, more: "router: {overcut: 0}", code: "overcut", also: "corner-radius", edit: bit(sideIn, "dado", 6)}, // 3 > 1.5 past the edge
	"parts too near": {file: sideIn, code: "neighbor",
		edit: func(r *record.Report) { r.Router.PartSpacing = 2 }},
	"a stock that is not listed": {file: reported, code: "stock", edit: func(r *record.Report) {
		for i := range r.Parts {
			if r.Parts[i].Name == "one-bottom" {
				r.Parts[i].Stock = "oak"
			}
		}
	}},
	"a part without drawings": {file: sideIn, at: "one-side", code: "no-outline", edit: func(r *record.Report) {
		for i := range r.Parts {
			if r.Parts[i].Name == "one-side" {
				r.Parts[i].Files = record.Files{}
			}
		}
	}},
}
