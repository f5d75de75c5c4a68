package fit

import (
	"drawerwright/geom"
	"math"
	"slices"
	"testing"

	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// likelyRange is the range of all but 0.27 % of the boxes.
func likelyRange(f SimulatedMeasure) geom.Interval { return geom.Interval{Min: f.Min, Max: f.Max} }

// TestOutcomeKeepsOrder: of any drawer what is likely lies within the worst case, so
// that no verdict on it is worse than that on the worst case; all boxes are right where
// the worst case is, and the whole box is right no more often than any of its measures
// and no less often than if no box had two of them wrong.
func TestOutcomeKeepsOrder(t *testing.T) {
	outs := 0
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawer(t) {
			o := Simulate(d, MeasuredBoards(d.Spec), anyAccuracy(t), anySlide(t))
			least, wrong := 1.0, 0.0
			for _, m := range o.Measures {
				worst := m.Result.Worst
				if m.Min < worst.Min-settled || m.Max > worst.Max+settled || m.Min > m.Max+settled {
					t.Fatalf("%s: likely %v, worst %v", m.Name, likelyRange(m), worst)
				}
				if within := m.VerdictOn(worst.Min, worst.Max) == m.Verdicts.Within; within && (m.OutOfLimits() || m.Right.Fraction != 1) || within != m.Right.Certain {
					t.Fatalf("%s: %s, %v, worst %v in %g to %g", m.Name, m.Verdict, m.Right, worst,
						m.LowerLimit, m.UpperLimit)
				}
				// All but 0.27 % are within, or it is reported; the range is as wide as a bin, a thousandth
				// of the worst case, which the draws near a limit may fall into.
				if !m.OutOfLimits() && m.Right.Fraction < 1-2*beyond-1.0/Samples {
					t.Fatalf("%s: %s with %v", m.Name, m.Verdict, m.Right)
				}
				least, wrong = min(least, m.Right.Fraction), wrong+1-m.Right.Fraction
			}
			if p := o.Right.Fraction; p > least || p < 1-wrong-exact {
				t.Fatalf("%g of the boxes, %g of the weakest measure, %g wrong in all", p, least, wrong)
			}
			if (o.Weakest < 0) != (o.Verdict == joinery.GoesTogether) {
				t.Fatalf("%s, the weakest is %d", o.Verdict, o.Weakest)
			}
			if o.Weakest >= 0 {
				outs++
			}
		}
	})
	if outs == 0 {
		t.Error("no drawer has a measure out of its limits")
	}
}

// TestProudFronts: the depth of a box on which front and back are as often proud as
// not is never less than the sides are cut: 500 - 0.3. The root of squares is 0.32
// about 500, and goes below.
func TestProudFronts(t *testing.T) {
	d := sixMillimeters(t, func(s *joinery.Spec) { s.FenceDistance = 11.98 / 2 })
	o := Simulate(d, MeasuredBoards(d.Spec), SawAccuracy, nil)
	for _, m := range o.Measures {
		if m.Code != "outside-depth" {
			continue
		}
		near(t, "worst least", m.Result.Worst.Min, 499.7, settled)
		if m.Result.RootSumSquare < 0.3 || m.Min < 499.7 || m.Max > m.Result.Worst.Max || m.Max < 500.3 {
			t.Errorf("likely %v, worst %v, root %g", likelyRange(m), m.Result.Worst, m.Result.RootSumSquare)
		}
		return
	}
	t.Error("no depth")
}

// TestOutcomeOdds: with nothing off but the length of front and back, +-0.3 at three
// sigma, the slide of a window from -s to 2 s keeps Phi(2) - Phi(-1) of the boxes, less
// what is cut off at three: (0.97725 - 0.15866) / 0.9973 = 0.8208.
func TestOutcomeOdds(t *testing.T) {
	d := sixMillimeters(t, nil)
	o := Simulate(d, MeasuredBoards(d.Spec), Accuracy{Length: 0.3}, &SlideFit{Min: 459.9, Max: 460.2})
	want := (0.977250 - 0.158655) / math.Erf(3/math.Sqrt2)
	near(t, "right", o.Right.Fraction, want, errors*math.Sqrt(want*(1-want)/Samples))
	if o.Verdict != "narrow or wide" || o.Measures[o.Weakest].Code != SlideClearance {
		t.Errorf("%s: %+v", o.Verdict, o.Measures[o.Weakest].Check)
	}
	// 0.2 of 0.3 would bring -0.13 to 0.13 into it, but not into -0.1: a third does.
	if h := o.MostUseful(o.Weakest); h.Cause != OfLength || h.Current != 0.3 || h.Need < 0.08 || h.Need > 0.12 || math.Abs(h.Part-1) > exact {
		t.Errorf("%+v", h)
	}
}

// TestOddsInWords: what is not sure to be all is not called all.
func TestOddsInWords(t *testing.T) {
	for _, c := range []struct {
		o    Odds
		want string
	}{
		{Odds{1, true}, "all boxes come out right"},
		{Odds{1, false}, "more than 999 of 1,000 boxes come out right"},
		{Odds{0.99951, false}, "more than 999 of 1,000 boxes come out right"},
		{Odds{0.9994, false}, "999 of 1,000 boxes come out right"},
		{Odds{0.4661, false}, "466 of 1,000 boxes come out right"},
		{Odds{0.0011, false}, "1 of 1,000 boxes comes out right"},
		{Odds{0.0016, false}, "2 of 1,000 boxes come out right"},
		{Odds{0.0004, false}, "fewer than 1 of 1,000 boxes come out right"},
		{Odds{}, "fewer than 1 of 1,000 boxes come out right"},
	} {
		if got := c.o.String(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.o, got, c.want)
		}
	}
}

// TestLargestOfEqualCauses: of causes that move a measure alike the one that is off by more
// by itself is named, wherever it stands: a height that counts twice is half as far off as
// a length that counts once, and no shop sets it much finer.
func TestLargestOfEqualCauses(t *testing.T) {
	height, length := Source{Cause: OfHeight, Minus: 0.15, Plus: 0.15}, Source{Cause: OfLength, Minus: 0.3, Plus: 0.3}
	m := Measure{Stack: Stack{Sources: []Source{height, length}}}
	shares := []Share{{Source: 0, Part: 0.5}, {Source: 1, Part: 0.5}}
	for range 2 {
		if h := largestCause(m, shares); h.Cause != OfLength || h.Current != 0.3 || h.Part != 0.5 {
			t.Errorf("of equal ones: %+v", h)
		}
		slices.Reverse(shares)
	}
	shares = []Share{{Source: 0, Part: 0.51}, {Source: 1, Part: 0.49}}
	if h := largestCause(m, shares); h.Cause != OfHeight || h.Current != 0.15 {
		t.Errorf("the larger share: %+v", h)
	}
}

// TestOutcomeInWords: what is set right and comes out wrong in some boxes may do so, what is set wrong is;
// the verdict on a drawer has the words of its weakest measure.
func TestOutcomeInWords(t *testing.T) {
	for _, c := range []struct {
		nominal float64
		verdict joinery.Verdict
		count   int
		want    string
	}{
		{0.2, joinery.Tight, 1, "tray may come out tight (clearance): 500 of 1,000 boxes come out right"},
		{0.2, joinery.WillNot, 1, "tray may not go in (clearance): 500 of 1,000 boxes come out right"},
		{0.05, joinery.Tight, 1, "tray is tight (clearance): 500 of 1,000 boxes come out right"},
		{0.05, joinery.Tight, 2, "tray are tight (clearance): 500 of 1,000 boxes come out right"},
	} {
		check := joinery.Check{Name: "clearance (proud below 0)", Nominal: c.nominal, LowerLimit: 0.1, UpperLimit: 0.4,
			Verdict: c.verdict}
		m := SimulatedMeasure{&Simulated{Measure: Measure{Check: check}, Right: Odds{Fraction: 0.5}}}
		o := Outcome{Measures: []SimulatedMeasure{m}, Verdict: c.verdict, Right: m.Right}
		if got := o.Of("tray", c.count); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestWidthSuitsBoxAndSlide: of a box of 460 by 0.8 either way, 459.2 to 460.8, right is what its slide takes too:
// 459.9 to 460.2 of those, or the lower part of it where the slide takes 459 to 460.5. A slide that goes by the width inside
// says nothing of it, nor does one that no such box suits.
func TestWidthSuitsBoxAndSlide(t *testing.T) {
	d := sixMillimeters(t, nil)
	for _, c := range []struct {
		slide       *SlideFit
		least, most float64
	}{
		{nil, 459.2, 460.8},
		{&SlideFit{Min: 459.9, Max: 460.2}, 459.9, 460.2},
		{&SlideFit{Min: 459, Max: 460.5}, 459.2, 460.5},
		{&SlideFit{Min: 459.9, Max: 460.2, InsideCounts: true}, 459.2, 460.8},
		{&SlideFit{Min: 480, Max: 481}, 459.2, 460.8},
	} {
		for _, m := range Measures(d, MeasuredBoards(d.Spec), Accuracy{}, c.slide) {
			if m.Code == joinery.CheckOutsideWidth {
				near(t, "least", m.LowerLimit, c.least, settled)
				near(t, "most", m.UpperLimit, c.most, settled)
			}
		}
	}
}
