package prove_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestNotAReport: what cannot have been written by build is an error, whatever
// stands in it.
func TestNotAReport(t *testing.T) {
	for name, change := range map[string]func(*record.Report){
		"empty":                   func(r *record.Report) { *r = record.Report{} },
		"another tool":            func(r *record.Report) { r.Tool = "some other" },
		"an older format":         func(r *record.Report) { r.Format = 1 },
		"a newer format":          func(r *record.Report) { r.Format++ },
		"no unit":                 func(r *record.Report) { r.Units = "" },
		"furlongs":                func(r *record.Report) { r.Units = "furlong" },
		"an unknown word":         func(r *record.Report) { r.DXF.Layers = "{operation}_{color}" },
		"an endless pattern":      func(r *record.Report) { r.DXF.Layers = strings.Repeat("{depth}", 100_000) },
		"a pattern of bytes":      func(r *record.Report) { r.DXF.Layers = "{operation}\xff" },
		"no drawers":              func(r *record.Report) { r.Drawers = nil },
		"no thickness":            func(r *record.Report) { r.Parts[0].Thickness = 0 },
		"a negative length":       func(r *record.Report) { r.Parts[0].Length = -500 },
		"a length beyond all":     func(r *record.Report) { r.Parts[0].Length = 1e308 },
		"a width that is none":    func(r *record.Report) { r.Parts[0].Width = record.Length(math.NaN()) },
		"a thickness beyond all":  func(r *record.Report) { r.Parts[0].Thickness = record.Length(math.Inf(1)) },
		"a thick stock":           func(r *record.Report) { r.Stocks[0].Max = 1e9 },
		"a stock of nothing":      func(r *record.Report) { r.Stocks[0].Min = -1 },
		"a part askew":            func(r *record.Report) { r.Parts[0].Placements[0].X = [3]float64{0.6, 0.8, 0} },
		"a part on one axis":      func(r *record.Report) { r.Parts[0].Placements[0].X = r.Parts[0].Placements[0].Y },
		"a part that is a point":  func(r *record.Report) { r.Parts[0].Placements[0].X = [3]float64{} },
		"a part far away":         func(r *record.Report) { r.Parts[0].Placements[0].Origin[1] = 1e300 },
		"a part nowhere":          func(r *record.Report) { r.Parts[0].Placements[0].Origin[2] = record.Length(math.NaN()) },
		"a thousand places":       func(r *record.Report) { r.Parts[0].Placements = repeat(r.Parts[0].Placements[0], 1000) },
		"a part that is not here": func(r *record.Report) { r.Drawers[0].Parts[1] = "one-door" },
		"one part over and over":  func(r *record.Report) { r.Drawers[0].Parts = repeat("one-box-front", 1000) },
		"a million operations":    func(r *record.Report) { r.Parts[0].Operations = repeat(r.Parts[0].Operations[0], 1_000_000) },
		"an endless depth":        func(r *record.Report) { r.Parts[0].Operations[0].Depth = 1e200 },
		"an outline far away":     func(r *record.Report) { r.Parts[0].Operations[0].Outline[2] = record.Vertex{Y: 1e200} },
		"an endless bit":          func(r *record.Report) { r.Layers[0].Diameter = 1e300 },
		"a bit below nothing":     func(r *record.Report) { r.Layers[0].Diameter = -3 },
		"a legend without end":    func(r *record.Report) { r.Layers = append(r.Layers, repeat(r.Layers[0], 10_000)...) },
		"a group of no part":      func(r *record.Report) { r.CutList[0].Parts = nil },
		"a size that is not here": func(r *record.Report) {
			r.Sheets = []record.SheetStock{{Sheets: []record.LaidSheet{{Size: 1}}, Sizes: make([]record.SheetSize, 1)}}
		},
		"an endless gap": func(r *record.Report) { r.Router.PartSpacing = 1e300 },
	} {
		t.Run(name, func(t *testing.T) {
			r := build(t, harmed("R2000", "")).report(t)
			change(&r)
			if p, err := prove.New(record.Keep(r)); !errors.Is(err, prove.ErrReport) || p != nil {
				t.Errorf("%v", err)
			}
		})
	}
}

func repeat[T any](v T, n int) []T {
	list := make([]T, n)
	for i := range list {
		list[i] = v
	}
	return list
}

// TestOddReports: what may stand in a report and makes no sense is a fault, or a
// box that does not go together; never a panic, and never a box that does.
func TestOddReports(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*record.Report)
		code   string // of a fault; empty where it is the box that does not go together
	}{
		"no places": {func(r *record.Report) {
			for i := range r.Parts {
				r.Parts[i].Placements = nil
			}
		}, "incomplete"},
		"no parts":        {func(r *record.Report) { r.Drawers[0].Parts = nil }, "incomplete"},
		"no sides":        {func(r *record.Report) { r.Drawers[0].Parts = r.Drawers[0].Parts[1:] }, "incomplete"},
		"a side only":     {func(r *record.Report) { r.Parts[0].Placements = r.Parts[0].Placements[:1] }, "incomplete"},
		"two left sides":  {func(r *record.Report) { r.Parts[0].Placements[1] = r.Parts[0].Placements[0] }, "incomplete"},
		"no files":        {func(r *record.Report) { r.Parts[1].Files = record.Files{} }, "no-outline"},
		"an inside alone": {func(r *record.Report) { r.Parts[1].Files.Outside = "" }, "missing"},
		"no legend":       {func(r *record.Report) { r.Layers = nil }, "no-outline"},
		"no stocks":       {func(r *record.Report) { r.Stocks = nil }, "stock"},
		"no operations":   {func(r *record.Report) { r.Parts[0].Operations = nil }, "extra"},
		"a face that is none": {func(r *record.Report) {
			for i := range r.Parts[0].Operations {
				r.Parts[0].Operations[i].Face = "top"
			}
		}, "missing"},
		"corners in one place": {func(r *record.Report) { r.Parts[0].Operations[0].Outline = make([]record.Vertex, 3) },
			"moved"},
		"no pattern":        {func(r *record.Report) { r.DXF.Layers = "" }, "layer-name"},
		"no drawing's unit": {func(r *record.Report) { r.DXF.Units = "" }, "units"},
		"a side far off":    {func(r *record.Report) { r.Parts[0].Placements[0].Origin[0] = -4000 }, ""},
		"a front upside down": {func(r *record.Report) {
			r.Parts[1].Placements[0].Y = [3]float64{0, 0, -1}
			r.Parts[1].Placements[0].X = [3]float64{1, 0, 0}
		}, ""},
		"a bottom that is a lid":   {func(r *record.Report) { r.Parts[3].Placements[0].Origin[2] = 120 }, ""},
		"sides of the wrong stock": {func(r *record.Report) { r.Parts[0].Stock = "ply" }, ""},
		"stocks by another name":   {func(r *record.Report) { r.Stocks[0].Name = "beech" }, "stock"},
		"a bit of nothing": {func(r *record.Report) {
			for i := range r.Layers {
				r.Layers[i].Diameter = 0
			}
		}, "bit"},
		"a fence around": {func(r *record.Report) { r.Router.PartSpacing = 0.001 }, "neighbor"},
	} {
		t.Run(name, func(t *testing.T) {
			f := build(t, harmed("R2000", ""))
			f.edit(t, c.change)
			p := f.proof(t, prove.Options{Detail: true})
			told := false
			for _, v := range p.Faults {
				told = told || v.Code == c.code
			}
			if c.code != "" && (!told || p.Verdict != record.FilesFail) || c.code == "" && p.Verdict != record.GoesNot {
				t.Errorf("%s, %+v", p.Verdict, p.Faults)
			}
			if _, err := record.JSON(record.Report{Proof: []record.Proof{p}}); err != nil {
				t.Error(err)
			}
		})
	}
}
