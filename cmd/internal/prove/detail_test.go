package prove_test

import (
	"math"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestDetail: every cut with its areas in closed form, and where every piece stands.
func TestDetail(t *testing.T) {
	p := build(t, harmed("R2000", "")).proof(t, prove.Options{Detail: true})
	// A pocket of a x b leaves four corners of r^2 (1 - pi / 4); all of a dado's or a
	// rabbet's lie past the edge. Grooves of the sides stop in the dados: from 9.25 on.
	corners := 4 * 1.5 * 1.5 * (1 - math.Pi/4)
	round := func(v float64) float64 { return math.Round(v*1e6) / 1e6 }
	dado := record.Cut{File: sideIn, Layer: "DADO_INSIDE_6-10MM", Bit: 3, Drawn: 6.3 * 140, Reached: 6.3 * 140, Swept: round(6.3*145 - corners), Beyond: 2.5}
	groove := record.Cut{File: sideIn, Layer: "GROOVE_INSIDE_6-10MM", Bit: 3, Drawn: 481.5 * 6.1, Reached: round(481.5*6.1 - corners), Swept: round(481.5*6.1 - corners)}
	through := record.Cut{Layer: "GROOVE_INSIDE_6-10MM", Bit: 3, Drawn: 447.8 * 6.1, Reached: 447.8 * 6.1, Swept: round(452.8*6.1 - corners), Beyond: 2.5}
	rabbet := record.Cut{Layer: "RABBET_OUTSIDE_6-10MM", Bit: 3, Drawn: 6.1 * 140, Reached: 6.1 * 140, Swept: round(8.6*145 - corners), Beyond: 2.5}
	in := func(c record.Cut, file string) record.Cut { c.File = file; return c }
	want := []record.Cut{dado, dado, groove, in(through, frontIn), in(rabbet, frontOut), in(rabbet, frontOut), in(through, backIn), in(rabbet, backOut), in(rabbet, backOut)}
	if len(p.Cuts) != len(want) {
		t.Fatalf("%d cuts: %+v", len(p.Cuts), p.Cuts)
	}
	line := 0
	for i, c := range p.Cuts {
		if c.File == want[max(0, i-1)].File && c.Line <= line && i > 0 {
			t.Errorf("cut %d is on line %d, after line %d", i, c.Line, line)
		}
		line, c.Line = c.Line, 0
		w := want[i]
		for what, v := range map[string][2]float64{"drawn": {c.Drawn, w.Drawn}, "reached": {c.Reached, w.Reached},
			"swept": {c.Swept, w.Swept}, "beyond": {c.Beyond.MM(), w.Beyond.MM()}} {
			if math.Abs(v[0]-v[1]) > 1e-4 { // of a thousand: six decimals in the drawing
				t.Errorf("cut %d, %s: %s %.6f, want %.6f", i, w.Layer, what, v[0], v[1])
			}
		}
		if c.File != w.File || c.Layer != w.Layer || c.Bit != w.Bit {
			t.Errorf("cut %d: %+v, want %+v", i, c, w)
		}
	}
	pieces := []record.Piece{
		{Name: "left side", Part: "one-side", Placement: record.Placement{X: [3]float64{0, 1, 0}, Y: [3]float64{0, 0, 1}}},
		{Name: "right side", Part: "one-side", Placement: record.Placement{Origin: [3]record.Length{460, 500, 0},
			X: [3]float64{0, -1, 0}, Y: [3]float64{0, 0, 1}}},
		{Name: "box front", Part: "one-box-front", Placement: record.Placement{Origin: [3]record.Length{453.9, 0, 0},
			X: [3]float64{-1, 0, 0}, Y: [3]float64{0, 0, 1}}},
		{Name: "back", Part: "one-back", Placement: record.Placement{Origin: [3]record.Length{6.1, 500, 0}, X: [3]float64{1,
			0, 0}, Y: [3]float64{0, 0, 1}}},
		{Name: "bottom", Part: "one-bottom", Placement: record.Placement{Origin: [3]record.Length{7.1, 7.1, 6.1},
			X: [3]float64{1, 0, 0}, Y: [3]float64{0, 1, 0}}},
	}
	if len(p.Assembled) != len(pieces) {
		t.Fatalf("%+v", p.Assembled)
	}
	for i, got := range p.Assembled {
		if got != pieces[i] {
			t.Errorf("%+v, want %+v", got, pieces[i])
		}
	}
}

// TestInchesAndMillimeters: one box told in inches is the same box.
func TestInchesAndMillimeters(t *testing.T) {
	mm := build(t, harmed("R2000", "")).proof(t, prove.Options{})
	f := build(t, harmed("R2000", ""))
	f.edit(t, func(r *record.Report) { r.Units = "in" })
	in := f.proof(t, prove.Options{})
	if in.Verdict != record.Goes {
		t.Fatalf("%s, %+v, %q", in.Verdict, in.Faults, in.Remarks)
	}
	for what, v := range map[string][2]record.Range{"width": {in.Width, mm.Width}, "depth": {in.Depth, mm.Depth}, "diagonal": {in.Diagonal, mm.Diagonal}, "rack": {in.Rack, mm.Rack},
		"play": {in.Corners[0].Clearance, mm.Corners[0].Clearance}, "slack": {in.Bottom.BottomClearance[0],
			mm.Bottom.BottomClearance[0]}} {
		if math.Abs((v[0].Mean - v[1].Mean).MM()) > 25.4*resolution {
			t.Errorf("%s: %g mm, in a report in inches %g mm", what, v[1].Mean, v[0].Mean)
		}
	}
}
