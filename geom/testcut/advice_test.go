package testcut_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"

	"pgregory.net/rapid"
)

// readings of a saw whose fence is off by df, its height by dh and its cutter by dw,
// with a front and sides of 12.2: f = h = 6.1, w = 6.35, box 400 wide, front
// 400 - 24.4 + 12.2 = 387.8 long.
func readings(dw, df, dh float64) []testcut.Reading {
	return []testcut.Reading{
		reading(testcut.Slot, 6.35+dw), reading(testcut.Edge, 6.1+df), reading(testcut.Tongue, 6.1+df), reading(testcut.Depth, 6.1+dh), reading(testcut.TongueLength, 6.1+dh),
		reading(testcut.Clearance, 0.25+dw-df), reading(testcut.Recess, 2*df), reading(testcut.FrontLength, 387.8), reading(testcut.Width, 400-2*dh),
		reading(testcut.Front, 12.2), reading(testcut.Sides, 12.2),
	}
}

// settled reports whether a setting can be left, or moved, and be right beyond doubt.
func settled(m testcut.Move) bool {
	return m.Sure && (m.Action == testcut.Make || m.Action == testcut.Leave)
}

// slack is what a prior pulls an estimate by: (sigma of the readings / sigma of the
// prior) squared is 0.03^2/0.5^2, of half a millimeter 2 micrometers; of the cutter
// (0.04/0.2)^2, of a tenth 4.
const slack = 0.008

func TestMovesOfASaw(t *testing.T) {
	for _, c := range []struct{ dw, df, dh float64 }{{0, 0, 0}, {0, 0.4, 0}, {0, 0, -0.5}, {0.03, -0.3, 0.6}, {-0.03, 0.2, 0.2}} {
		a := cut(t, spec()).Advise(readings(c.dw, c.df, c.dh))
		if len(a.Conflicts) > 0 {
			t.Errorf("%+v: %v contradict each other", c, a.Conflicts)
		}
		fence, height := move(t, a, testcut.Fence), move(t, a, testcut.Height)
		// From where it really is back to half the front, or to where play and recess are
		// both as far from their limits as they can be: within what is left beside either.
		if math.Abs(fence.From-6.1-c.df) > slack || math.Abs(fence.To-6.1) > math.Abs(c.dw)+slack || math.Abs(fence.From+fence.By-fence.To) > 1e-9 {
			t.Errorf("%+v: the fence is moved %+v", c, fence)
		}
		if math.Abs(height.By+c.dh) > slack || height.To != 6.1 {
			t.Errorf("%+v: the height is moved %+v", c, height)
		}
		if !settled(fence) || !settled(height) {
			t.Errorf("%+v: not settled: %+v %+v", c, fence, height)
		}
		if math.Abs(a.Cutter.Value-6.35-c.dw) > slack {
			t.Errorf("%+v: the cutter is %+v", c, a.Cutter)
		}
		for _, q := range a.AsItIs {
			want := map[string]float64{"recess": 2 * c.df, "tongue-clearance": 0.25 + c.dw - c.df, "outside-width": 400 - 2*c.dh, "shoulder-gap": 0}[string(q.Code)]
			if math.Abs(q.Nominal-want) > 2*slack {
				t.Errorf("%+v: %s is %g, not %g", c, q.Code, q.Nominal, want)
			}
		}
		for _, q := range a.After {
			if q.Verdict != q.Verdicts.Within {
				t.Errorf("%+v: after the moves %s is %s", c, q.Code, q.Verdict)
			}
		}
	}
}

// On a router, with its bit 0.1 over its label: walls move by half of it, depths are
// measured from the top.
func TestMovesOfARouter(t *testing.T) {
	s := spec()
	s.Cutter = joinery.Cutter{Kind: joinery.Router, Width: 6}
	s.DadoClearance, s.GrooveClearance, s.DepthFrom, s.GrooveEnds = 0.2, 0.2, joinery.FromTop, joinery.GrooveStopped
	// A bit 0.1 too wide, a side laid 0.2 too far in, a zero 0.3 too low.
	a := cut(t, s).Advise([]testcut.Reading{
		reading(testcut.Slot, 6.3+0.1), reading(testcut.Edge, 6.1+0.2-0.05), reading(testcut.Depth, 6.1+0.3), reading(testcut.Tongue, 6.1-0.3),
		reading(testcut.TongueLength, 6.1+0.05), reading(testcut.Front, 12.2), reading(testcut.Sides, 12.2),
	})
	for what, want := range map[testcut.Setting]float64{testcut.Fence: -0.2, testcut.Height: -0.3, testcut.EndPlace: 0} {
		if m := move(t, a, what); math.Abs(m.By-want) > slack {
			t.Errorf("%s is moved by %g, not %g", what, m.By, want)
		}
	}
	if math.Abs(a.Cutter.Value-6.1) > slack {
		t.Errorf("the bit is %+v", a.Cutter)
	}
}

func TestMissingReadings(t *testing.T) {
	c := cut(t, spec())
	given := []testcut.Reading{reading(testcut.Slot, 6.35)}
	a := c.Advise(given)
	fence, height := move(t, a, testcut.Fence), move(t, a, testcut.Height)
	if settled(fence) || settled(height) || !slices.ContainsFunc(fence.Missing, func(k testcut.Kind) bool { return k == testcut.Tongue || k == testcut.Edge || k == testcut.Recess }) ||
		!slices.ContainsFunc(height.Missing, func(k testcut.Kind) bool {
			return k == testcut.Depth || k == testcut.TongueLength || k == testcut.Width
		}) {
		t.Fatalf("missing %v and %v", fence.Missing, height.Missing)
	}
	all := readings(0, 0, 0)
	for _, k := range append(fence.Missing, height.Missing...) {
		i := slices.IndexFunc(all, func(r testcut.Reading) bool { return r.Kind == k })
		given = append(given, all[i])
	}
	a = c.Advise(given)
	if fence, height = move(t, a, testcut.Fence), move(t, a, testcut.Height); !settled(fence) || !settled(height) {
		t.Errorf("with %v, not settled: %+v %+v", given, fence, height)
	}
}

func TestContradictions(t *testing.T) {
	c := cut(t, spec())
	two := c.Advise([]testcut.Reading{reading(testcut.Edge, 6.1), reading(testcut.Tongue, 6.4)})
	if !slices.Equal(two.Conflicts, []string{"edge", "tongue"}) || len(two.Moves) > 0 {
		t.Errorf("of two readings %v contradict each other, with the moves %v", two.Conflicts, two.Moves)
	}
	all := readings(0, 0, 0)
	all[3].Value += 0.6 // the depth, against the tongue's length and the width
	a := c.Advise(all)
	for i, r := range a.Residuals {
		if r.Rejected != (i == 3) {
			t.Errorf("%s: left out is %t", r.Name, r.Rejected)
		}
	}
	if len(a.Conflicts) > 0 || math.Abs(a.Residuals[3].Expected-6.1) > 0.02 || math.Abs(a.Residuals[3].Residual-0.6) > 0.02 {
		t.Errorf("clash %v, depth %+v", a.Conflicts, a.Residuals[3])
	}
}

// Recursive least squares are those of all readings at once: their order does not
// matter, and a reading given again pulls toward itself.
func TestOrderOfReadings(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		dw, df, dh := rapid.Float64Range(-0.1, 0.1).Draw(rt, "dw"), rapid.Float64Range(-0.4,
			0.4).Draw(rt, "df"), rapid.Float64Range(-0.4, 0.4).Draw(rt, "dh")
		list := readings(dw, df, dh)
		for i := range list {
			list[i].Value += rapid.Float64Range(-0.04, 0.04).Draw(rt, string(list[i].Kind))
		}
		c := cut(t, spec())
		forward := c.Solve(list)
		backward := slices.Clone(list)
		slices.Reverse(backward)
		again := c.Solve(backward)
		for i, r := range forward.Residuals {
			if o := again.Residuals[len(list)-1-i]; math.Abs(r.Expected-o.Expected) > 1e-9 {
				rt.Fatalf("%s is expected to be %g or %g", r.Name, r.Expected, o.Expected)
			}
		}
		i := rapid.IntRange(0, len(list)-1).Draw(rt, "again")
		more := c.Solve(append(slices.Clone(list), list[i]))
		before, after := math.Abs(forward.Residuals[i].Residual), math.Abs(more.Residuals[i].Residual)
		if after > before+1e-12 && !more.Residuals[i].Rejected && !forward.Residuals[i].Rejected {
			rt.Fatalf("%s given again is off by %g, was by %g", list[i].Name, after, before)
		}
	})
}

func TestSaves(t *testing.T) {
	c := cut(t, spec())
	for name, x := range map[string]struct {
		dw, df, dh float64
		want       map[testcut.Remedy]float64
	}{
		"as it should be": {0, 0, 0, map[testcut.Remedy]float64{testcut.Keep: 0}},
		// f is 0.2 less: proud by 0.4; play 0.45, shimmed by 0.2 to the middle, 0.25.
		"proud and loose": {0, -0.2, 0, map[testcut.Remedy]float64{testcut.PlaneFront: 0.4, testcut.ShimDado: 0.2}},
		// f is 0.18 more: recessed by 0.36, play 0.07: the rabbet is deepened by 0.18 to a
		// play of 0.25, which leaves a recess of 0.18: flush.
		"recessed and tight": {0, 0.18, 0, map[testcut.Remedy]float64{testcut.DeepenRabbet: 0.18}},
		// 0.5 too shallow: 1.0 too wide; half of it off either end, or dados deeper by that.
		"wide": {0, 0, -0.5, map[testcut.Remedy]float64{testcut.ShortenFront: 0.5, testcut.DeepenDado: 0.5}},
		// 0.5 too deep: 1.0 too narrow; fronts of 388.8, or shims of 0.5.
		"narrow": {0, 0, 0.5, map[testcut.Remedy]float64{testcut.NewFront: 388.8, testcut.ShimSlides: 0.5}},
	} {
		a := c.Advise(readings(x.dw, x.df, x.dh))
		got := map[testcut.Remedy]float64{}
		for _, s := range a.Salvages {
			got[s.Remedy] = s.By
		}
		if len(got) != len(x.want) {
			t.Errorf("%s: %+v", name, a.Salvages)
		}
		for k, v := range x.want {
			if g, ok := got[k]; !ok || math.Abs(g-v) > 0.02 {
				t.Errorf("%s: %s by %g, not %g", name, k, g, v)
			}
		}
	}
	if got := c.FrontLengthFor(c.Solve(readings(0, 0, 0.5))); math.Abs(got-388.8) > 0.02 {
		t.Errorf("fronts have to be %g long", got)
	}
}

func TestOtherCorners(t *testing.T) {
	s := spec()
	s.Joint = joinery.Rabbet
	c := cut(t, s)
	if slices.Contains(c.ReadingKinds(), testcut.Tongue) || !slices.Contains(c.ReadingKinds(), testcut.Depth) {
		t.Errorf("it takes %v", c.ReadingKinds())
	}
	if _, ok := c.Plausible(reading(testcut.Recess, 0)); ok {
		t.Error("a rabbet has no recess of a tongue")
	}
	a := c.Advise([]testcut.Reading{reading(testcut.Depth, 6.3), reading(testcut.Edge, 6.0)})
	if f, h := move(t, a, testcut.Fence), move(t, a, testcut.Height); math.Abs(f.By-0.1) > slack || math.Abs(h.By+0.2) > slack || !settled(f) || !settled(h) {
		t.Errorf("moves are %+v %+v", f, h)
	}
}

// TestLeaveWhatIsRight: a test cut that is right is left, and fronts get their length.
func TestLeaveWhatIsRight(t *testing.T) {
	c := cut(t, spec())
	a := c.Advise(readings(0, 0.02, -0.02))
	if !a.AllRight || move(t, a, testcut.Fence).Action != testcut.Leave || move(t, a, testcut.Height).Action != testcut.Leave {
		t.Errorf("%+v", a)
	}
	// Dados 0.02 shallower leave the box 0.04 wider: fronts 0.04 shorter than 387.8.
	if got := c.FrontLengthFor(a.Estimate); math.Abs(got-387.76) > 0.02 {
		t.Errorf("fronts have to be %g long", got)
	}
	if a := c.Advise(readings(0, 0.4, 0)); a.AllRight || move(t, a, testcut.Fence).Action != testcut.Make || move(t, a, testcut.Height).Action != testcut.Leave {
		t.Errorf("a fence that is off: %+v", a.Moves)
	}
}

// TestOneReadingMovesNothing: whatever one reading says, another one is asked for before
// anything is moved, and with it the move is settled.
func TestOneReadingMovesNothing(t *testing.T) {
	c := cut(t, spec())
	all := readings(0, 0.4, 0.5)
	for _, r := range all {
		a := c.Advise([]testcut.Reading{r})
		for _, m := range a.Moves {
			if m.Action == testcut.Make || m.Action == testcut.Try {
				t.Errorf("%s=%g alone: %+v", r.Name, r.Value, m)
			}
		}
	}
	given := []testcut.Reading{reading(testcut.Edge, 6.5)}
	for range 4 {
		m := move(t, c.Advise(given), testcut.Fence)
		if m.Action == testcut.Make {
			break
		}
		if m.Action != testcut.Measure || len(m.Missing) == 0 {
			t.Fatalf("with %v: %+v", given, m)
		}
		for _, k := range m.Missing {
			given = append(given, all[slices.IndexFunc(all, func(r testcut.Reading) bool { return r.Kind == k })])
		}
	}
	if m := move(t, c.Advise(given), testcut.Fence); m.Action != testcut.Make || len(given) < 2 || math.Abs(m.By+0.4) > 0.05 {
		t.Errorf("with %v: %+v", given, m)
	}
}

// TestLimitsOfTheJob: the shoulder's limit and the slide's window are the job's.
func TestLimitsOfTheJob(t *testing.T) {
	open := []testcut.Reading{reading(testcut.Depth, 6.1), reading(testcut.TongueLength, 6.1), reading(testcut.Slot, 6.35)}
	for limit, want := range map[float64]joinery.Verdict{0.25: joinery.Open, 0.9: joinery.GoesTogether} {
		s := spec()
		s.Limits = joinery.DefaultLimits
		s.Limits.ShoulderGap, s.GlueSpace = limit, 0.3
		list := slices.Clone(open)
		list[1].Value += 0.6 // 0.6 longer than the dado is deep
		a := cut(t, s).Advise(list)
		i := slices.IndexFunc(a.AsItIs, func(q testcut.Predicted) bool { return q.Code == "shoulder-gap" })
		if q := a.AsItIs[i]; math.Abs(q.Nominal-0.6) > 0.02 || q.Verdict != want {
			t.Errorf("a gap of 0.6 where %g is right: %+v", limit, q)
		}
	}
	// Slides that take no more than 0.1 over what is drawn, and a box that is 0.4 wider.
	d, _, _ := joinery.LayOut(spec())
	slide := &fit.SlideFit{Min: 399, Max: 400.1}
	c := testcut.New(d, fit.MeasuredBoards(d.Spec), fit.SawAccuracy, slide, sheet(d, slide))
	if a := c.Advise(readings(0, 0, -0.2)); a.AllRight || a.AsItIs[2].Verdict != joinery.Wide || move(t, a, testcut.Height).Action == testcut.Leave {
		t.Errorf("%+v", a)
	}
	// Slides under the box go by the inside: 400 - 24.4 = 375.6, and 375.2 if cuts are
	// 0.2 deeper; fronts have to be 0.4 longer.
	slide = &fit.SlideFit{Min: 375.4, Max: 376, InsideCounts: true}
	c = testcut.New(d, fit.MeasuredBoards(d.Spec), fit.SawAccuracy, slide, sheet(d, slide))
	a := c.Advise(readings(0, 0, 0.2))
	q := a.AsItIs[len(a.AsItIs)-1]
	if q.Code != "slide-clearance" || math.Abs(q.Nominal-375.2) > 0.05 || q.Verdict != joinery.Narrow {
		t.Errorf("%+v", q)
	}
	if got := c.FrontLengthFor(a.Estimate); math.Abs(got-388.2) > 0.03 {
		t.Errorf("fronts have to be %g long", got)
	}
}

// TestNoSetting: a cutter of half a millimeter more or less than the job's serves no front
// of 12.2; one serves whose slot leaves a tongue of half the front its play of 0.1 to 0.4.
func TestNoSetting(t *testing.T) {
	for dw, want := range map[float64]geom.Code{0: "", 0.5: testcut.CodeWide, -0.5: testcut.CodeNarrow} {
		none := cut(t, spec()).Advise(readings(dw, 0, 0)).NoSetting
		if none == nil || want == "" {
			if (none == nil) != (want == "") {
				t.Errorf("%+g: %v", dw, none)
			}
			continue
		}
		if none.Code != want || !strings.Contains(none.Error(),
			"for a box front of 12.2 mm: no fence distance makes it flush") {
			t.Errorf("%+g: %s: %v", dw, none.Code, none)
		}
		c := none.Remedies[0].Changes[0]
		if math.Abs(c.Min-6.2) > slack || math.Abs(c.Max-6.5) > slack ||
			c.Setting != joinery.SettingCutter {
			t.Errorf("%+g: %+v", dw, c)
		}
	}
}
