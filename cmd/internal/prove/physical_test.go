package prove_test

import (
	"math"
	"slices"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// resolution is that of the numbers in a report, in millimeters.
const resolution = 1e-6

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 2*resolution {
		t.Errorf("%s is %.6f, want %.6f", what, got, want)
	}
}

// steady is a range of one value.
func steady(t *testing.T, what string, got record.Range, want float64) {
	t.Helper()
	for _, v := range []record.Length{got.Mean, got.Min, got.Max} {
		same(t, what, v.MM(), want)
	}
}

// thicker makes all boards of a stock so thick, in readings and parts alike.
func thicker(stock string, mm record.Length) func(*record.Report) {
	return func(r *record.Report) {
		for i := range r.Stocks {
			if r.Stocks[i].Name == stock {
				r.Stocks[i].Thickness, r.Stocks[i].Min, r.Stocks[i].Max = mm, mm, mm
			}
		}
		for i := range r.Parts {
			if r.Parts[i].Stock == stock {
				r.Parts[i].Thickness = mm
			}
		}
	}
}

// corner reports whether a corner is among those that do not go, and its play.
type corner struct {
	end, side string
	play      float64
}

// The corners of the box that is harmed; its play is 0.2.
var (
	frontLeft  = corner{"box front", "left side", 0.2}
	frontRight = corner{"box front", "right side", 0.2}
	backLeft   = corner{"back", "left side", 0.2}
	backRight  = corner{"back", "right side", 0.2}
)

func (c corner) tight(play float64) corner { return corner{c.end, c.side, play} }

// TestDoesNotGo: drawings with which nothing is wrong but that the box does not go
// together; which joint it is, and by how much.
func TestDoesNotGo(t *testing.T) {
	for name, c := range map[string]struct {
		more    string
		harm    func(*drawing)
		edit    func(*record.Report)
		try     prove.Options
		stuck   []corner
		verdict string
		bottom  float64 // its play, where it is the bottom that does not go in
		code    string  // of faults, if there are any
	}{
		"boards thicker than the label": { // tongues of 12.6 - 6.1 in dados of 6.3
			edit:  thicker("birch", 12.6),
			stuck: []corner{frontLeft.tight(-0.2), frontRight.tight(-0.2), backLeft.tight(-0.2), backRight.tight(-0.2)},
			// Registration holes go 17.2 - 12.6 = 4.6 into the spoilboard.
			verdict: record.FilesFail, code: "pin-depth",
		},
		"thicker boards tried": {
			try:   prove.Options{Thickness: map[string]float64{"birch": 12.6}},
			stuck: []corner{frontLeft.tight(-0.2), frontRight.tight(-0.2), backLeft.tight(-0.2), backRight.tight(-0.2)},
		},
		"a back of another stock": { // 18 - 6.1 - 6.3
			edit: func(r *record.Report) {
				r.Stocks = append(r.Stocks, record.Readings{Name: "oak", Thickness: 18, Min: 18, Max: 18})
				for i := range r.Parts {
					if r.Parts[i].Role == "back" {
						r.Parts[i].Stock = "oak"
					}
				}
			},
			stuck:   []corner{backLeft.tight(-5.6), backRight.tight(-5.6)},
			bottom:  math.NaN(), // what is thicker is all inside
			verdict: record.FilesFail, code: "pin-depth",
		},
		"pockets too shallow": { // tongues 0.25 thicker
			try:   prove.Options{Depth: -0.25},
			stuck: []corner{frontLeft.tight(-0.05), frontRight.tight(-0.05), backLeft.tight(-0.05), backRight.tight(-0.05)},
		},
		"a bottom thicker than its groove": { // 5.9 + 0.2 - 6.3
			edit:   thicker("ply", 6.3),
			bottom: -0.2,
		},
		"a tooth left in a dado": { // 1 into it: 6.3 - 1 - 6.1
			harm: func(d *drawing) {
				d.reshape(d.first("DADO"), [][2]float64{{6.1, -2.5}, {12.4, -2.5}, {12.4, 142.5}, {6.1, 142.5}, {6.1, 90}, {7.1, 90}, {7.1, 60}, {6.1, 60}})
			},
			stuck: []corner{frontLeft.tight(-0.8), backRight.tight(-0.8)},
		},
		"a dado moved": { // by 0.4: the sides do not agree, 0.2 - 0.4
			harm:    func(d *drawing) { d.first("DADO").points(moved(0.4, 0)) },
			stuck:   []corner{frontLeft.tight(-0.2), frontRight.tight(-0.2), backLeft.tight(-0.2), backRight.tight(-0.2)},
			verdict: record.FilesFail, code: "moved",
		},
		"relief forgotten": { // the bottom's corners stand in the lips, where the groove's corners are round
			more: "joinery: {cutter-height: 8, groove-clearance: 0.1}",
			harm: func(d *drawing) {
				d.reshape(d.first("GROOVE"), [][2]float64{{4.2, 6.1}, {495.8, 6.1}, {495.8, 12.1}, {4.2, 12.1}})
			},
			bottom: math.NaN(),
			code:   "corner-radius",
		},
	} {
		t.Run(name, func(t *testing.T) {
			f := build(t, harmed("R2000", c.more))
			if c.harm != nil {
				d := drawn(t, f.files[sideIn])
				c.harm(d)
				f.files[sideIn] = d.data()
			}
			if c.edit != nil {
				f.edit(t, c.edit)
			}
			p := f.proof(t, c.try)
			if c.verdict == "" {
				c.verdict = record.GoesNot
			}
			if p.Verdict != c.verdict || slices.ContainsFunc(p.Faults, func(v record.Fault) bool { return v.Code != c.code }) || (len(p.Faults) > 0) != (c.code != "") {
				t.Errorf("%s, %+v", p.Verdict, p.Faults)
			}
			for _, got := range p.Corners {
				i := slices.IndexFunc(c.stuck,
					func(want corner) bool { return want.end == got.End && want.side == got.Side })
				if got.Fits == (i >= 0) {
					t.Errorf("the %s in the %s: goes %t", got.End, got.Side, got.Fits)
				} else if i >= 0 {
					steady(t, "clearance of the "+got.End+" in the "+got.Side, got.Clearance, c.stuck[i].play)
				}
			}
			if p.Bottom.Fits == (c.bottom != 0) {
				t.Errorf("bottom %+v", p.Bottom)
			}
			if c.bottom < 0 {
				steady(t, "bottom clearance", p.Bottom.Clearance, c.bottom)
			}
		})
	}
}

// TestGoesAllTheSame: what may look wrong and is not.
func TestGoesAllTheSame(t *testing.T) {
	for name, c := range map[string]struct {
		more string
		harm func(*drawing)
		edit func(*record.Report)
	}{
		"layers in small letters": {harm: func(d *drawing) {
			d.rename("DADO_INSIDE_6-10MM", "dado_inside_6-10mm")
			d.rename("PROFILE_INSIDE_THROUGH", "Profile_Inside_Through")
			d.rename("SCALE", "scale")
			d.rename("BLANK", "Blank")
		}},
		"an opening that the job has": {
			harm: func(d *drawing) {
				tags := d.tagsOf(d.first("DADO"))
				d.insert(d.first("PROFILE"), tags)
				d.reshape(d.on("DADO")[2], [][2]float64{{200, 60}, {260, 60}, {260, 90}, {200, 90}})
				d.on("DADO")[2].put("8", "CUTOUT_INSIDE_THROUGH")
			},
			edit: func(r *record.Report) {
				p := &r.Parts[0]
				p.Operations = append(p.Operations, record.Operation{Kind: "cutout", Face: "inside", Depth: p.Thickness,
					Outline: []record.Vertex{{X: 200, Y: 60}, {X: 260, Y: 60}, {X: 260, Y: 90}, {X: 200, Y: 90}}})
				r.Layers = append(r.Layers, record.Layer{File: sideIn, Layer: "CUTOUT_INSIDE_THROUGH",
					Operation: "cutout", Face: "inside", Depth: p.Thickness, Stated: "through", ToSet: record.ToSet{Set: p.Thickness, From: "top"}, Bit: "bit", Diameter: 3, Cuts: 1})
			},
		},
		"labels gone": {harm: func(d *drawing) {
			d.tags = slices.Delete(d.tags, d.first("LABEL").from, d.on("LABEL")[len(d.on("LABEL"))-1].to)
		}},
		"a note on layer 0": {harm: func(d *drawing) {
			d.insert(d.first("DADO"), []tag{{"0", "TEXT"}, {"8", "0"}, {"10", "6"}, {"20", "0"}, {"1", "mine"}})
		}},
		"a line runs the other way": {harm: func(d *drawing) {
			d.reshape(d.first("DADO"), [][2]float64{{6.1, -2.5}, {6.1, 142.5}, {12.4, 142.5}, {12.4, -2.5}})
		}},
		"a line begins elsewhere": {harm: func(d *drawing) {
			d.reshape(d.first("DADO"), [][2]float64{{12.4, 142.5}, {6.1, 142.5}, {6.1, -2.5}, {12.4, -2.5}})
		}},
		"a corner more on a side": {harm: func(d *drawing) {
			d.reshape(d.first("DADO"), [][2]float64{{6.1, -2.5}, {12.4, -2.5}, {12.4, 70}, {12.4, 142.5}, {6.1, 142.5}})
		}},
		"a hair wider for the bit": {harm: func(d *drawing) {
			d.reshape(d.first("DADO"), [][2]float64{{6.08, -2.5}, {12.42, -2.5}, {12.42, 142.5}, {6.08, 142.5}})
		}},
		"longer overcut": {harm: func(d *drawing) {
			d.reshape(d.first("DADO"), [][2]float64{{6.1, -9}, {12.4, -9}, {12.4, 150}, {6.1, 150}})
		}},
		"the exporter's own order": {harm: func(d *drawing) {
			e := d.first("PROFILE")
			tags := d.tagsOf(e)
			d.remove(e)
			d.insert(d.first("DADO"), tags)
		}},
		"a smaller bit":                     {edit: bit(sideIn, "dado", 2)},
		"a bit a little bigger":             {edit: bit(sideIn, "dado", 6)}, // it rounds off 0.5 of its 3 within the panel: 4 x 0.5^3 / 18 mm2
		"parts just far enough":             {edit: func(r *record.Report) { r.Router.PartSpacing = 2.5 }},
		"a stop that the box does not need": {more: "joinery: {groove-ends: through}"},
	} {
		t.Run(name, func(t *testing.T) {
			f := build(t, harmed("R2000", c.more))
			if c.harm != nil {
				d := drawn(t, f.files[sideIn])
				c.harm(d)
				f.files[sideIn] = d.data()
			}
			if c.edit != nil {
				f.edit(t, c.edit)
			}
			if p := f.proof(t, prove.Options{}); p.Verdict != record.Goes || len(p.Faults) != 0 {
				t.Errorf("%s, %+v", p.Verdict, p.Faults)
			}
		})
	}
}
