package fit

import (
	"math"
	"runtime"
	"slices"
	"testing"

	"drawerwright/geom"
)

// cutSigma is the standard deviation of a normal spread cut off at +-3 standard
// deviations, as a part of them: with the density p and the part q within,
//
//	sqrt(1 - 2 x 3 p(3) / q),  p(3) = exp(-9/2) / sqrt(2 pi) = 0.0044318, q = erf(3 / sqrt(2)) = 0.9973002
//
// which is 0.986578. (The mean of a spread cut off on both sides alike stays.)
var cutSigma = math.Sqrt(1 - 6*math.Exp(-4.5)/math.Sqrt(2*math.Pi)/math.Erf(3/math.Sqrt2))

// errors is how many standard errors a drawn value may be off: one in 16000 is more.
const errors = 4

// all are limits that nothing leaves.
var all = geom.Interval{Min: math.Inf(-1), Max: math.Inf(1)}

// TestDrawnMoments: for sums the mean is the sum of the means and the variance that
// of the variances. The standard error of a mean of n is s / sqrt(n); that of s,
// from the fourth moment m4, sqrt((m4 - s4) / n) / (2 s), which is s / sqrt(2 n) for
// a normal spread and less for all here, whose tails are shorter.
func TestDrawnMoments(t *testing.T) {
	const n = 96*chunk + 1001 // the last chunk is not full
	for name, c := range map[string]struct {
		s           Stack
		mean, sigma float64
	}{
		"one uniform":         {linear(5, []float64{1}, Source{Minus: 0.1, Plus: 0.3}), 5.1, 0.2 / math.Sqrt(3)},
		"one normal":          {linear(5, []float64{2}, either(0.3)), 5, 2 * 0.1 * cutSigma},
		"one-sided normal":    {linear(5, []float64{-1}, Source{Plus: 0.6, Shape: Normal}), 4.7, 0.1 * cutSigma},
		"uniform and normals": {linear(-2, []float64{1, -1, 3}, Source{Minus: 0.2, Plus: 0.2}, either(0.3), either(0.06)), -2, math.Sqrt(0.04/3 + (0.01+0.0036)*cutSigma*cutSigma)},
		"nothing is off":      {linear(5, []float64{1, 1}, Source{}, either(0)), 5, 0},
	} {
		d := drawn([]Stack{c.s}, []geom.Interval{all}, n, 7)[0]
		near(t, name+": mean", d.Mean, c.mean, errors*c.sigma/math.Sqrt(n)+exact)
		near(t, name+": sigma", d.Sigma, c.sigma, errors*c.sigma/math.Sqrt(2*n)+exact)
		if d.Within != 1 {
			t.Errorf("%s: %g within no limits", name, d.Within)
		}
	}
	// The cut-off is seen: sigma of a whole normal spread would be 1.3 % more, over
	// eight times its standard error of 0.16 %.
	if gap := 1 - cutSigma; gap < 2*errors/math.Sqrt(2*n) {
		t.Errorf("%d draws cannot tell a spread that is cut off, %g", n, gap)
	}
}

// TestDrawnShares: of a uniform spread from 4.9 to 5.3, the limits 5 and 5.2 keep
// half, and all but 0.27 % are 0.00135 x 0.4 inside its ends; of a normal one with
// s = 0.1, cut off at 3 s, limits of 1 s keep erf(1 / sqrt(2)) / erf(3 / sqrt(2)).
func TestDrawnShares(t *testing.T) {
	const n = 32*chunk - 5
	s := []Stack{linear(5, []float64{1, 0}, Source{Minus: 0.1, Plus: 0.3}, either(0.3)), linear(5, []float64{0, 1}, Source{Minus: 0.1, Plus: 0.3}, either(0.3))}
	list := drawn(s, []geom.Interval{{Min: 5, Max: 5.2}, {Min: 4.9, Max: 5.1}}, n, 11)
	for i, want := range []float64{0.5, math.Erf(1/math.Sqrt2) / math.Erf(3/math.Sqrt2)} {
		near(t, "within", list[i].Within, want, errors*math.Sqrt(want*(1-want)/n))
	}
	// The standard error of a quantile p is sqrt(p (1 - p) / n) over the density, here
	// 1 / 0.4; Common is known to a bin, a thousandth of the width.
	by := 0.4 * (errors*math.Sqrt(beyond*(1-beyond)/n) + 1.0/bins)
	near(t, "common from", list[0].Common.Min, 4.9+beyond*0.4, by)
	near(t, "common to", list[0].Common.Max, 5.3-beyond*0.4, by)
	if one := drawn(s[:1], []geom.Interval{{Min: 4.9, Max: 5.3}}, n, 11)[0]; one.Within != 1 {
		t.Errorf("%g within the worst case", one.Within)
	}
}

// TestDrawnQuantiles: of a normal spread cut off at 3 s, a part q is within, and
// 0.00135 is below where the whole one has 0.00135 q + (1 - q) / 2 below: at -2.782 s
// (from its inverse: Phi(-2.7824) = 0.0026963). The density there is
// exp(-2.7824^2 / 2) / sqrt(2 pi) / s = 0.00831 / s.
func TestDrawnQuantiles(t *testing.T) {
	const n = 32 * chunk
	q := math.Erf(3 / math.Sqrt2)
	at := math.Sqrt2 * math.Erfinv(2*(beyond*q+(1-q)/2)-1)
	near(t, "place of 0.00135", at, -2.7824, 2e-3)
	d := drawn([]Stack{linear(0, []float64{1}, either(3))}, []geom.Interval{all}, n, 3)[0]
	by := errors*math.Sqrt(beyond*(1-beyond)/n)/(math.Exp(-at*at/2)/math.Sqrt(2*math.Pi)) + 6.0/bins
	near(t, "common from", d.Common.Min, at, by)
	near(t, "common to", d.Common.Max, -at, by)
}

// TestSameDraws: the same seed gives the same bits on any number of processors and
// whatever else is drawn with the same sources; another seed gives others; and the
// draws of a last chunk that is not full count.
func TestSameDraws(t *testing.T) {
	from := []Source{{Minus: 0.2, Plus: 0.1}, either(0.3), either(0.05)}
	s := []Stack{linear(1, []float64{1, -1, 2}, from...), linear(3, []float64{1, 1, 1}, from...)}
	limits := []geom.Interval{{Min: 0.8, Max: 1.2}, {Min: 2.9, Max: 3.1}}
	const n = 40*chunk + 77
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	one := drawn(s, limits, n, 42)
	for _, procs := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(procs)
		if many := drawn(s, limits, n, 42); !slices.Equal(one, many) {
			t.Errorf("on %d processors %+v, on one %+v", procs, many, one)
		}
	}
	if alone := drawn(s[:1], limits[:1], n, 42); alone[0] != one[0] {
		t.Errorf("alone %+v, among others %+v", alone[0], one[0])
	}
	if other := drawn(s, limits, n, 43); other[0].Mean == one[0].Mean || other[1].Sigma == one[1].Sigma {
		t.Errorf("another seed gives the same: %+v", other)
	}
	if fewer := drawn(s, limits, n-77, 42); fewer[0].Mean == one[0].Mean {
		t.Error("77 draws more change nothing")
	}
}

// TestNothingToDraw: nothing of no stacks or no draws, and one draw is in its range.
func TestNothingToDraw(t *testing.T) {
	s := linear(1, []float64{1}, either(0.3))
	if drawn(nil, nil, 5, 1) != nil || drawn([]Stack{s}, []geom.Interval{all}, 0, 1) != nil || drawn([]Stack{s}, []geom.Interval{all}, -3, 1) != nil {
		t.Error("drawn of nothing")
	}
	d := drawn([]Stack{s}, []geom.Interval{all}, 1, 1)[0]
	if d.Sigma != 0 || d.Mean < d.Common.Min || d.Mean > d.Common.Max || d.Mean < 0.7 || d.Mean > 1.3 {
		t.Errorf("one draw: %+v", d)
	}
}

// drawn are the measures of Draw.
func drawn(stacks []Stack, limits []geom.Interval, n int, seed uint64) []Distribution {
	list, _ := SampleBoxes(stacks, limits, n, seed)
	return list
}
