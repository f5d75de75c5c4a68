package prove_test

import (
	"drawerwright/cmd/internal/record"
)

// harmedLayers are names of layers, and what the legend says of them.
var harmedLayers = map[string]seeded{
	"a layer of nonsense": {file: sideIn, code: "unknown-layer", also: "missing", harm: func(d *drawing) int {
		d.rename("GROOVE_INSIDE_6-10MM", "Layer 1")
		return d.first("Layer 1").line()
	}},
	"a layer of another depth": {file: sideIn, code: "depth", also: "missing unlisted-layer", harm: func(d *drawing) int {
		d.rename("DADO_INSIDE_6-10MM", "DADO_INSIDE_6-40MM")
		return d.first("DADO").line()
	}},
	"a layer right through": {file: sideIn, code: "unlisted-layer", also: "depth missing", harm: func(d *drawing) int {
		d.rename("DADO_INSIDE_6-10MM", "DADO_INSIDE_THROUGH")
		return d.first("DADO").line()
	}},
	"a layer for the other face": {file: frontOut, code: "unlisted-layer", also: "missing", harm: func(d *drawing) int {
		d.rename("RABBET_OUTSIDE_6-10MM", "RABBET_INSIDE_6-10MM")
		return d.first("RABBET").line()
	}},
	"a rabbet on the wrong face": {file: frontIn, code: "wrong-face", also: "count unlisted-layer", folder: func(f *folder) {
		out, in := drawn(f.t, f.files[frontOut]), drawn(f.t, f.files[frontIn])
		e := out.first("RABBET")
		in.insert(in.first("GROOVE"), out.tagsOf(e))
		out.remove(e)
		f.files[frontOut], f.files[frontIn] = out.data(), in.data()
	}},
	"a depth off in legend and name alike": {file: sideIn, code: "depth", folder: func(f *folder) {
		d := drawn(f.t, f.files[sideIn])
		d.rename("DADO_INSIDE_6-10MM", "DADO_INSIDE_5-80MM")
		f.files[sideIn] = d.data()
		f.edit(f.t, func(r *record.Report) {
			for i := range r.Layers {
				if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
					l.Layer, l.Depth, l.Remaining, l.Set = "DADO_INSIDE_5-80MM", 5.8, 6.4, 5.8
				}
			}
		})
	}},
	"right through in legend and name alike": {file: sideIn, code: "depth", folder: func(f *folder) {
		d := drawn(f.t, f.files[sideIn])
		d.rename("DADO_INSIDE_6-10MM", "DADO_INSIDE_THROUGH")
		f.files[sideIn] = d.data()
		f.edit(f.t, func(r *record.Report) {
			for i := range r.Layers {
				if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
					l.Layer, l.Depth, l.Remaining, l.Stated, l.Set = "DADO_INSIDE_THROUGH", 12.2, 0, "through", 12.2
				}
			}
		})
	}},
	"another operation in the legend": {file: sideIn, code: "layer-name", edit: func(r *record.Report) {
		for i := range r.Layers {
			if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
				l.Operation = "groove"
			}
		}
	}},
	"another kind of depth in the legend": {file: sideIn, code: "layer-name", edit: func(r *record.Report) {
		for i := range r.Layers {
			if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
				l.Stated = "remaining"
			}
		}
	}},
	"another pattern of names": {file: sideIn, code: "layer-name", edit: func(r *record.Report) { r.DXF.Layers = "{operation}-{depth}" }},
	"a depth off in the legend alone": {file: sideIn, code: "depth", edit: func(r *record.Report) {
		for i := range r.Layers {
			if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
				l.Depth = 5.8
			}
		}
	}},
	"another face in the legend": {file: sideIn, code: "wrong-face", edit: func(r *record.Report) {
		for i := range r.Layers {
			if l := &r.Layers[i]; l.File == sideIn && l.Operation == "dado" {
				l.Face = "outside"
			}
		}
	}},
}
