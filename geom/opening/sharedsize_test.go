package opening

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// planAll plans banks one by one.
func planAll(t interface{ Fatalf(string, ...any) }, banks []Bank) []Plan {
	var plans []Plan
	for _, b := range banks {
		p, problems := Solve(b)
		for _, q := range problems {
			if q.IsError() {
				t.Fatalf("%v", q)
			}
		}
		plans = append(plans, p)
	}
	return plans
}

// TestSharedSize: 562, 563.5 and 564 share a box with shims of 0, 0.75 and 1; 565 does not, and
// one of another make does not either. The two of 800 are the same anyway.
func TestSharedSize(t *testing.T) {
	of := func(w float64, made string) Bank {
		return base(func(b *Bank) { b.Opening.Width, b.Make = []float64{w}, made })
	}
	banks := []Bank{of(564, "a"), of(562, "a"), of(565, "a"), of(563.5, "a"), of(800, "a"), of(800, "a"), of(562.5, "b")}
	got := Standardize(banks, planAll(t, banks), DefaultGroupOpenings)
	if len(got) != 1 || fmt.Sprint(got[0].Banks) != "[0 1 3]" || got[0].Width != 562 || got[0].Depth != 540 {
		t.Fatalf("%+v", got)
	}
	for i, shim := range []float64{1, 0, 0.75} {
		if got[0].Common[i].Shim != shim {
			t.Errorf("a shim of %g, not %g", got[0].Common[i].Shim, shim)
		}
	}
}

// TestSharedSizeRows: openings as wide and deep whose boxes differ in height by 0.5 share a
// box; rows that differ by more keep their heights.
func TestSharedSizeRows(t *testing.T) {
	of := func(height float64, rows ...Row) Bank {
		return base(func(b *Bank) { b.Opening.Height, b.Rows = []float64{height}, rows })
	}
	banks := []Bank{of(400, Row{}, Row{}), of(401, Row{}, Row{})}
	got := Standardize(banks, planAll(t, banks), DefaultGroupOpenings)
	if len(got) != 1 || got[0].Rows != 2 {
		t.Fatalf("%+v", got)
	}
	banks = []Bank{of(400, Row{}, Row{Front: 200}), of(406, Row{}, Row{Front: 200})}
	if got = Standardize(banks, planAll(t, banks), DefaultGroupOpenings); len(got) != 0 { // 6 are too much, 200 is 200
		t.Errorf("%+v", got)
	}
}

// TestAnySharedSize: whatever near-equal openings, boxes made in one size are of one size, as
// wide and deep as the narrowest and the shallowest opening lets them be by itself; each
// runs between its shims as a box made for its own opening would, and fronts are as large
// as they would be without.
func TestAnySharedSize(t *testing.T) {
	shared := 0
	rapid.Check(t, func(t *rapid.T) {
		slide, _ := BuiltIn(rapid.SampledFrom(Kinds).Draw(t, "slide"), 0)
		fronts := rapid.SampledFrom([]Fronts{Inset, Overlay, NoFront}).Draw(t, "fronts")
		rows := rapid.IntRange(1, 4).Draw(t, "rows")
		width, height, depth := rapid.Float64Range(300, 900).Draw(t, "width"), rapid.Float64Range(150, 200).Draw(t, "height")*float64(rows), rapid.Float64Range(320, 600).Draw(t, "depth")
		var banks []Bank
		for range rapid.IntRange(2, 4).Draw(t, "openings") {
			off := func(name string) float64 { return rapid.Float64Range(0, 1.9).Draw(t, name) }
			banks = append(banks, base(func(b *Bank) {
				b.Opening.Width, b.Opening.Height, b.Opening.Depth = []float64{width + off("width")}, []float64{height + off("height")}, []float64{depth + off("depth")}
				b.Opening.Fronts, b.Slide, b.Rows = fronts, slide, make([]Row, rows)
				if fronts == NoFront {
					b.Front = nil
				}
			}))
		}
		alone := planAll(t, banks)
		groups := Standardize(banks, alone, DefaultGroupOpenings)
		if len(groups) == 0 { // they are the same as it is
			for _, p := range alone {
				if a, b := p.Rows[0].Box, alone[0].Rows[0].Box; math.Abs(a.Width-b.Width) > 1e-4 || math.Abs(a.Depth-b.Depth) > 1e-4 || math.Abs(a.Height-b.Height) > 1e-4 {
					t.Fatalf("%+v and %+v share nothing", a, b)
				}
			}
			return
		}
		if len(groups) != 1 || len(groups[0].Banks) != len(banks) {
			t.Fatalf("%+v", groups)
		}
		shared++
		g := groups[0]
		narrow, shallow := math.Inf(1), math.Inf(1)
		for _, p := range alone {
			narrow, shallow = math.Min(narrow, p.Rows[0].Box.Width), math.Min(shallow, p.Rows[0].Box.Depth)
		}
		var changed []Bank
		for k, i := range g.Banks {
			b := banks[i]
			b.Common = g.Common[k]
			changed = append(changed, b)
		}
		plans := planAll(t, changed)
		for k, p := range plans {
			for row, r := range p.Rows {
				first, own := plans[0].Rows[row], alone[g.Banks[k]].Rows[row]
				if math.Abs(r.Box.Width-narrow) > 1e-6 || math.Abs(r.Box.Depth-shallow) > 1e-6 || math.Abs(r.Box.Height-first.Box.Height) > 1e-6 {
					t.Fatalf("box %+v beside %+v, narrowest %g, shallowest %g", r.Box, first.Box, narrow, shallow)
				}
				if r.FrontWidth != own.FrontWidth || r.FrontHeight != own.FrontHeight || r.Line != own.Line {
					t.Fatalf("front and line %+v, alone %+v", r, own)
				}
				if r.Front != nil && math.Abs(r.Front.OverhangLeft+r.Box.Width/2-own.Front.OverhangLeft-own.Box.Width/2) > 1e-6 {
					t.Fatalf("the front is no longer before the middle of the box")
				}
			}
			least, most, _, known := p.Running()
			ownLeast, ownMost, _, _ := alone[g.Banks[k]].Running()
			if known && (math.Abs(ownLeast-least-2*p.Shim) > 1e-6 || math.Abs(ownMost-most-2*p.Shim) > 1e-6) {
				t.Fatalf("it runs from %g to %g between shims of %g, alone from %g to %g", least, most,
					p.Shim, ownLeast, ownMost)
			}
		}
	})
	if shared == 0 {
		t.Error("nothing was shared")
	}
}
