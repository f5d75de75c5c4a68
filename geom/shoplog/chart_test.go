package shoplog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// chartOf is the chart of cuts of the fence that are off by some lengths.
func chartOf(off ...float64) Chart {
	var cuts []Cut
	for _, v := range off {
		cuts = append(cuts, Cut{What: Fence, Aimed: 6, Measured: 6 + v})
	}
	return ChartOf(Fence, cuts)
}

// TestChart: mean and limits are those of the arithmetic: a mean of 0.3/6 = 0.05, ranges 0.10, 0.05, 0.05, 0.10, 0.05,
// of which the mean is 0.35/5 = 0.07, over 1.128.
func TestChart(t *testing.T) {
	c := chartOf(0, 0.1, 0.05, 0.1, 0, 0.05)
	if math.Abs(c.Mean-0.05) > 1e-9 || math.Abs(c.Sigma-0.07/1.128) > 1e-9 || len(c.Signals) != 0 {
		t.Errorf("%+v", c)
	}
	for _, cuts := range [][]float64{nil, {0.1}, {0.1, 0.1}} {
		if c := chartOf(cuts...); len(c.Signals) != 0 {
			t.Errorf("%v: %+v", cuts, c)
		}
	}
}

// TestRules: each rule is met by the cut that completes it, up and down, and by none before. All begin with cuts that
// leap by 0.2 about 0, so that a standard deviation is about 0.15.
func TestRules(t *testing.T) {
	calm := []float64{0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1}
	for rule, then := range map[Rule][]float64{
		Beyond: {0.75}, TwoOf3: {0.45, 0, 0.45}, FourOf5: {0.25, 0.25, 0, 0.25, 0.25},
		EightSide: {0.1, 0.14, 0.09, 0.13, 0.08, 0.12, 0.09, 0.13}, SixTrend: {-0.1, -0.06, -0.02, 0.02, 0.06, 0.1},
	} {
		for _, up := range []bool{true, false} {
			values := slices.Clone(calm)
			for _, v := range then {
				if !up {
					v = -v
				}
				values = append(values, v)
			}
			if !up && (rule == EightSide || rule == SixTrend) { // the last calm one would be the first of them
				values[len(calm)-1] = 0.1
			}
			if s, drifts := chartOf(values...).Now(); !drifts || s.Rule != rule || s.Up != up {
				t.Errorf("rule %d, up %t: %+v %t", rule, up, s, drifts)
			}
			if s, drifts := chartOf(values[:len(values)-1]...).Now(); drifts {
				t.Errorf("rule %d, up %t, before the last cut: %+v", rule, up, s)
			}
		}
	}
}

// TestSharpened: a cutter that is sharpened gets narrower, also where each job aims at what the last test cut had.
func TestSharpened(t *testing.T) {
	var cuts []Cut
	random := rand.New(rand.NewPCG(1, 1))
	wide := 6.4
	for i := range 14 {
		now := 6.4 - 0.02*float64(max(0, i-6)) + 0.005*random.NormFloat64()
		cuts = append(cuts, Cut{What: Cutter, Aimed: wide, Measured: now})
		wide = now
	}
	c := ChartOf(Cutter, cuts)
	if s, drifts := c.Now(); !drifts || s.Up {
		t.Errorf("%+v %t", s, drifts)
	}
	for i, cut := range cuts {
		if math.Abs(c.Values[i]-cut.Measured) > 1e-9 {
			t.Errorf("the chart has %g for a width of %g", c.Values[i], cut.Measured)
		}
	}
	cuts[3].Aimed, cuts[3].Measured = 12, 12.1 // the slot of another cutter, or of two passes
	if c := ChartOf(Cutter, cuts); math.Abs(c.Values[3]-0.1) > 1e-9 {
		t.Errorf("a slot of 12 mm is %g beside widths of 6", c.Values[3])
	}
}

// TestFalseAlarms: a machine that stays what it is is told to drift at about one cut in 50: the four rules alone do so
// at one in 92, with known limits (Champ and Woodall, Technometrics 29, 1987, from memory).
func TestFalseAlarms(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	alarms, cuts := 0, 0
	for range 200 {
		values := make([]float64, 100)
		for i := range values {
			values[i] = random.NormFloat64()
		}
		c := chartOf(values...)
		at := -1
		for _, s := range c.Signals {
			if s.At != at {
				alarms, at = alarms+1, s.At
			}
		}
		cuts += len(values)
	}
	if share := float64(alarms) / float64(cuts); share < 0.005 || share > 0.04 {
		t.Errorf("%d alarms of %d cuts", alarms, cuts)
	}
	t.Logf("%d alarms of %d cuts", alarms, cuts)
}

// TestEqualReadings: cuts that read the same, and one that reads a step of the caliper more or less, are no drift; one
// that reads four steps less is.
func TestEqualReadings(t *testing.T) {
	const inch = 25.4
	for off, want := range map[float64]bool{0: false, 0.001: false, -0.001: false, -0.004: true} {
		cuts := make([]Cut, 9)
		for i := range cuts {
			cuts[i].Aimed, cuts[i].Measured = 0.246*inch, 0.247*inch
		}
		cuts[8].Measured += off * inch
		if s, drifts := ChartOf(Cutter, cuts).Now(); drifts != want {
			t.Errorf("%g: %+v, %v", off, s, drifts)
		}
	}
}
