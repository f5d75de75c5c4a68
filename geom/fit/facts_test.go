package fit

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// sixMillimeters is a saw set with spacers: common practice, no source. Stock of
// 11.98 mm, a slot of 6.35 mm, fence and cutter height at 6 mm by a spacer of 6 mm,
// and a bottom of 6.3 mm.
func sixMillimeters(t testing.TB, change func(s *joinery.Spec)) joinery.Drawer {
	t.Helper()
	one := func(name string, thick float64) joinery.Stock {
		return joinery.Stock{Name: name, Thickness: joinery.Measure(thick), Grain: joinery.GrainNone}
	}
	s := joinery.Spec{Name: "spacers", Count: 1, Width: 460, Height: 140, Depth: 500, Sides: one("ply", 11.98), Front: one("ply", 11.98), Back: one("ply", 11.98), Bottom: one("bottom", 6.3),
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, FenceDistance: 6, CutterHeight: 6,
		GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomAuto, BottomClearance: 2}
	if change != nil {
		change(&s)
	}
	d, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatalf("%s: %s (%s)", p.Code, p.Fact.In(geom.Millimeter), p.Ask.In(geom.Millimeter))
		}
	}
	return d
}

// find gives a measure of a list by its code; of front and back the front's.
func find(t *testing.T, list []Measure, code joinery.CheckCode) Measure {
	t.Helper()
	for _, m := range list {
		if m.Code == code {
			return m
		}
	}
	t.Fatalf("no %s", code)
	return Measure{}
}

// is reports a measure that is not as set, or has another verdict.
func is(t *testing.T, list []Measure, code joinery.CheckCode, want float64, say joinery.Verdict) Measure {
	t.Helper()
	m := find(t, list, code)
	near(t, string(code), m.Stack.Result().Nominal, want, settled)
	if m.Verdict != say {
		t.Errorf("%s, %.3f, is %s, want %s", code, want, m.Verdict, say)
	}
	return m
}

// TestSixMillimeterSpacer: common practice, no source: the front comes out flush, its
// tongue with play for glue, and the bottom goes into the same slot; with what a saw
// is usually off by too.
func TestSixMillimeterSpacer(t *testing.T) {
	d := sixMillimeters(t, nil)
	list := Measures(d, MeasuredBoards(d.Spec), SawAccuracy, nil)
	recess := is(t, list, "recess", 0.02, joinery.IsFlush)              // 2 x 6 - 11.98
	play := is(t, list, "tongue-clearance", 0.35, joinery.GoesTogether) // 6.35 - 6
	// 6 + 6.35 - 11.98: the play on top of what is flush
	is(t, list, "recess-inner", 0.37, joinery.GoesTogether)
	bottom := is(t, list, "groove-clearance", 0.05, joinery.GoesTogether) // 6.35 - 6.3
	is(t, list, "outside-width", 460, joinery.AsAsked)                    // f and h do not move it
	is(t, list, "bottom-clearance", 2, joinery.GoesTogether)              // as written
	is(t, list, "shoulder-gap", 0, joinery.GoesTogether)                  // one height cuts dados and rabbets
	is(t, list, "outside-height", 140, joinery.AsAsked)                   // as asked
	step := is(t, list, "groove-step", 0, joinery.GoesTogether)           // one setting cuts all grooves
	diagonal := math.Sqrt(460*460 + 500*500)                              // 679.4 over the sides' corners
	is(t, list, "diagonal", diagonal, joinery.AsAsked)
	likely := Simulate(d, MeasuredBoards(d.Spec), SawAccuracy, nil)
	for _, c := range []struct {
		m           Measure
		half        float64
		all, likely bool // within its limits in the worst case, in the likely one
	}{
		{recess, 2*0.05 + 2*0.03, true, true},    // the fence counts twice, each cut once
		{play, 0.03 + 0.05 + 0.03, false, false}, // 0.35 + 0.11 is beyond 0.4; likely sqrt(0.0043) = 0.066
		{bottom, 0.03, false, false},             // 0.02 of play is under 0.03
		{step, 2 * 0.03, true, true},             // the fence is off for all of them, each cut by itself
	} {
		r := c.m.Stack.Result()
		near(t, string(c.m.Code)+", worst", halfOf(r.Worst), c.half, settled)
		within := func(r geom.Interval) bool { return c.m.VerdictOn(r.Min, r.Max) == c.m.Verdicts.Within }
		i := slices.IndexFunc(likely.Measures, func(f SimulatedMeasure) bool { return f.Code == c.m.Code })
		if f := likely.Measures[i]; within(r.Worst) != c.all || f.OutOfLimits() == c.likely {
			t.Errorf("%s: worst %v within its limits: %t, likely %v: %t", c.m.Code, r.Worst,
				within(r.Worst), likelyRange(f), !f.OutOfLimits())
		}
	}
}

// TestDepthOfLevelFronts: a front or back 0.3 thicker than its mean, with its inside face where it should be, stands
// 0.3 before the ends of the sides; a thinner one behind them, which leaves the depth to the sides. Between the sides
// a back adds nothing.
func TestDepthOfLevelFronts(t *testing.T) {
	for _, joint := range []joinery.Joint{joinery.Rabbet, joinery.Butt, joinery.BoxJoint} {
		d := sixMillimeters(t, func(s *joinery.Spec) { s.Joint = joint })
		depth := find(t, Measures(d, MeasuredBoards(d.Spec), SawAccuracy, nil), "outside-depth").Stack
		off := make([]float64, len(depth.Sources))
		off[front], off[back] = 0.3, -0.3
		near(t, string(joint), depth.Value(off), 500.3, settled)
		off[back], off[sideLength] = 0.1, -0.2
		near(t, string(joint), depth.Value(off), 500.2, settled)
		d = sixMillimeters(t, func(s *joinery.Spec) { s.Joint, s.BackJoint, s.BackSetback = joint, joinery.Housed, 12 })
		depth = find(t, Measures(d, MeasuredBoards(d.Spec), SawAccuracy, nil), "outside-depth").Stack
		near(t, string(joint)+", back housed", depth.Value(off), 500.1, settled)
	}
}

// TestHalfInchRule: common practice, no source: fence and height of 6.35 mm are half
// of 12.7 mm stock. In stock of 11.98 mm the front is recessed by 2 x 6.35 - 11.98 =
// 0.72 mm. Front and bottom are cut for the real thickness, W - 2 x 11.98 + 2 x 6.35,
// so that the width stays; cut by the rule's W - 2 x 12.7 + 2 x 6.35 the box comes out
// 2 x 0.72 = 1.44 mm narrow. The tongue fills a slot of 6.35: it will not go in.
func TestHalfInchRule(t *testing.T) {
	d := sixMillimeters(t, func(s *joinery.Spec) { s.FenceDistance, s.CutterHeight, s.Cutter.Width = 6.35, 6.35, 6.45 })
	list := Measures(d, MeasuredBoards(d.Spec), SawAccuracy, nil)
	is(t, list, "recess", 0.72, joinery.Recessed)
	is(t, list, "outside-depth", 500, joinery.AsAsked)
	width := is(t, list, "outside-width", 460, joinery.AsAsked)
	// Both sides are 0.72 thinner than the stock that the rule is for.
	d = sixMillimeters(t, func(s *joinery.Spec) {
		half := joinery.Stock{Name: "half inch", Thickness: joinery.Thickness{Mean: 12.7, Min: 11.98, Max: 12.7}, Grain: joinery.GrainNone}
		s.FenceDistance, s.CutterHeight, s.Cutter.Width = 0, 0, 6.45
		s.Sides, s.Front, s.Back = half, half, half
	})
	off := make([]float64, len(width.Stack.Sources))
	for _, i := range []int{leftSide, rightSide, front, back} {
		off[i] = 11.98 - 12.7
	}
	list = Measures(d, MeasuredBoards(d.Spec), Accuracy{}, nil)
	near(t, "width by the rule", find(t, list, "outside-width").Stack.Value(off), 460-1.44, settled)
	near(t, "recess by the rule", find(t, list, "recess").Stack.Value(off), 0.72, settled)
	if m := find(t, list, "outside-width"); m.Verdict != joinery.Narrow || math.Abs(m.Min-458.56) > settled {
		t.Errorf("the width is %s, %.3f", m.Verdict, m.Min)
	}

	s := d.Spec
	s.Cutter.Width = 6.35
	d, problems, _ := joinery.LayOut(s)
	if len(problems) == 0 || problems[0].Code != "cutter-narrow" || !problems[0].IsError() || d.Fit[0].Code != "tongue-clearance" || d.Fit[0].Verdict != joinery.WillNot {
		t.Errorf("a tongue without clearance is let through: %+v, %+v", problems, d.Fit)
	}
}

// TestFlatTongues: a front e = 0.3 thicker than its mean, T = 12, f = 6, w = 6.2. On end
// the fence leaves a tongue f, so the rest, T + e - f, stands before the dado's outer wall:
// recess f - (T + e - f) = 2 f - T - e, 0 - 0.3; play w - f = 0.2. Flat, the cutter takes
// T - f = 6 from the outside face: recess f - (T - f) = 0 whatever e is, the tongue is
// T + e - 6 = 6.3, play 6.2 - 6.3 = -0.1. A cutter that is 0.1 high for the rabbets takes
// 6.1: recess -0.1, tongue 6.2, play 0.
func TestFlatTongues(t *testing.T) {
	for _, c := range []struct {
		onEnd               geom.Interval
		high, recess, play  float64
		kind, other, length ReadingKind
		flat                bool
	}{
		{geom.Interval{Min: 150, Max: 600}, 0, -0.3, 0.2, TongueThick, RabbetDeep, TongueLong, false},
		{geom.Interval{Min: 150, Max: 300}, 0, 0, -0.1, RabbetDeep, TongueThick, TongueLong, true},
		{geom.Interval{Min: 400, Max: 600}, 0.1, -0.1, 0, RabbetDeep, TongueThick, TongueLong, true},
	} {
		board := joinery.Stock{Name: "board", Thickness: joinery.Thickness{Mean: 12, Min: 11.9, Max: 12.3}}
		bottom := joinery.Stock{Name: "bottom", Thickness: joinery.Measure(6)}
		d, problems, _ := joinery.LayOut(joinery.Spec{Name: "a", Count: 1, Width: 400, Height: 100, Depth: 400, Sides: board, Front: board, Back: board, Bottom: bottom, Joint: joinery.DadoRabbet,
			Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.2}, BottomFit: joinery.BottomGroovedIn, GrooveEnds: joinery.GrooveThrough, BottomClearance: 2, OnEnd: joinery.OnEnd{Length: c.onEnd}})
		if d.Setup.FlatTongues != c.flat {
			t.Fatalf("front of 388, on end from %g to %g: flat is %v (%v)", c.onEnd.Min, c.onEnd.Max,
				d.Setup.FlatTongues, problems)
		}
		off := make([]float64, sources)
		off[front], off[endHeight] = 0.3, c.high
		want := map[string]float64{"recess": c.recess, "tongue-clearance": c.play}
		for _, m := range Measures(d, MeasuredBoards(d.Spec), SawAccuracy, nil) {
			if v, asked := want[string(m.Code)]; asked && m.Part == joinery.Front {
				if got := m.Stack.Value(off); math.Abs(got-v) > 1e-9 {
					t.Errorf("%v: %s %g, want %g", c.onEnd, m.Code, got, v)
				}
				delete(want, string(m.Code))
			}
		}
		if len(want) > 0 {
			t.Errorf("no %v", want)
		}
		read := map[ReadingKind]float64{}
		for _, r := range Readings(d, SawAccuracy) {
			read[r.Kind] = r.Target
		}
		if _, both := read[c.other]; both || read[c.kind] != 6 || read[c.length] != 6 {
			t.Errorf("%v: read %v", c.onEnd, read)
		}
	}
}
