package shoplog

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// TestConjugate: with readings that have nothing beside, the grid gives what the conjugate model has in closed form:
// the mean of the bias, that of the variance, and the limits of the next cut, a Student's t. Percentage points of t are
// those of published tables.
func TestConjugate(t *testing.T) {
	off := []float64{0.04, -0.01, 0.06, 0.03, 0.02, 0.05, 0.00, 0.03, 0.07, 0.01}
	const sigma0, k0, nu0 = 0.02, priorBias, priorSpread
	n := float64(len(off))
	mean, squares := 0.03, 0.0 // 0.30 / 10
	for _, x := range off {
		squares += (x - mean) * (x - mean)
	}
	kn, nun := k0+n, nu0+n
	biased := n * mean / kn
	variance := (nu0*sigma0*sigma0 + squares + k0*n/kn*mean*mean) / nun
	scale := math.Sqrt(variance * (1 + 1/kn))
	l := Learn(Prior{Sigma: sigma0}, off)
	if _, got, _ := l.Bias(0.05); math.Abs(got-biased) > 1e-6 {
		t.Errorf("the bias is %g, not %g", got, biased)
	}
	sum := 0.0
	for _, n := range l.Nodes {
		sum += n.Weight * n.Sigma * n.Sigma
	}
	if want := variance * nun / (nun - 2); math.Abs(sum/want-1) > 1e-3 {
		t.Errorf("the variance is %g, not %g", sum, want)
	}
	for p, points := range map[float64]float64{0.95: 1.7459, 0.975: 2.1199, 0.995: 2.9208, 0.05: -1.7459} { // of t with 16
		if got, want := l.NextAt(p), biased+points*scale; math.Abs(got-want) > 2e-5 {
			t.Errorf("the next cut is below %g with %g, not below %g", got, p, want)
		}
	}
	// A quantity without bias: the scaled inverse chi-square alone, t with 16 about 0.
	squares = 0
	for _, x := range off {
		squares += x * x
	}
	scale = math.Sqrt((nu0*sigma0*sigma0 + squares) / nun)
	if got, want := Learn(Prior{Sigma: sigma0, Centered: true}, off).NextAt(0.975), 2.1199*scale; math.Abs(got-want) > 2e-5 {
		t.Errorf("centered, the next cut is below %g, not below %g", got, want)
	}
}

// TestMeasuringIsNoSpread: what a caliper is off by itself is not taken for what the machine is off by.
func TestMeasuringIsNoSpread(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	off := make([]float64, 2000)
	for i := range off {
		off[i] = 0.05 + 0.02*random.NormFloat64() + 0.03*random.NormFloat64()
	}
	l := Learn(Prior{Sigma: 0.01, Known: 0.03}, off)
	low, sigma, high := l.Spread(0.001)
	if low > 0.02 || high < 0.02 || high-low > 0.01 || sigma < low || sigma > high {
		t.Errorf("the spread is %g, %g to %g, not 0.02", sigma, low, high)
	}
	low, bias, high := l.Bias(0.001)
	if low > 0.05 || high < 0.05 || high-low > 0.01 || bias < low || bias > high {
		t.Errorf("the bias is %g, %g to %g, not 0.05", bias, low, high)
	}
}

// TestCoverage: of machines as the prior has them, the next cut is between the limits as often as it is said, and so
// are bias and spread. By chance a share of 1,500 is off by more than 4 of its standard deviations once in 16,000.
func TestCoverage(t *testing.T) {
	const machines, cuts, sigma0 = 1500, 10, 0.02
	random := rand.New(rand.NewPCG(3, 4))
	in := map[string]int{}
	for range machines {
		chi := 0.0
		for range priorSpread {
			z := random.NormFloat64()
			chi += z * z
		}
		sigma := sigma0 * math.Sqrt(priorSpread/chi)
		bias := sigma / math.Sqrt(priorBias) * random.NormFloat64()
		off := make([]float64, cuts)
		for i := range off {
			off[i] = bias + sigma*random.NormFloat64() + 0.03*random.NormFloat64()
		}
		l := Learn(Prior{Sigma: sigma0, Known: 0.03}, off)
		next := bias + sigma*random.NormFloat64()
		if next > l.NextAt(0.05) && next < l.NextAt(0.95) {
			in["next"]++
		}
		if low, _, high := l.Bias(0.05); bias > low && bias < high {
			in["bias"]++
		}
		if low, _, high := l.Spread(0.05); sigma > low && sigma < high {
			in["spread"]++
		}
	}
	for what, n := range in {
		room := 4*math.Sqrt(0.9*0.1/machines) + 0.005 // the grid's step
		if off := float64(n)/machines - 0.9; math.Abs(off) > room {
			t.Errorf("%s is between its limits %d times of %d, not nine of ten", what, n, machines)
		}
	}
}

// TestKeep: what a log is asked for is of that machine and quantity, of a cutter where it is the cutter's, as it was
// left, the newest by days or by number.
func TestKeep(t *testing.T) {
	day := func(n int) time.Time { return time.Date(2026, 1, n, 0, 0, 0, 0, time.UTC) }
	a, b, other := Tool{"saw", "a"}, Tool{"saw", "b"}, Tool{"old saw", "a"}
	log := []Cut{{day(9), a, Fence, 6, 6.9, false}, {day(1), a, Fence, 6, 6.1, false}, {day(1), b, Fence, 6, 6.2, false},
		{day(5), other, Fence, 6, 6.3, false}, {day(6), a, Fence, 6, 6.4, true}, {day(7), a, Cutter, 6, 6.5, false}, {day(8), b, Cutter, 6, 6.6, false}}
	for _, c := range []struct {
		keep Keep
		what What
		want []float64
	}{{Keep{}, Fence, []float64{6.1, 6.2, 6.9}}, {Keep{}, Cutter, []float64{6.5}}, {Keep{Cuts: 2}, Fence, []float64{6.2, 6.9}},
		{Keep{Days: 7}, Fence, []float64{6.9}}, {Keep{Days: 8}, Fence, []float64{6.1, 6.2, 6.9}}} {
		var got []float64
		for _, c := range c.keep.Of(log, a, c.what) {
			got = append(got, c.Measured)
		}
		if len(got) != len(c.want) {
			t.Fatalf("%+v: %v, not %v", c, got, c.want)
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%+v: %v, not %v", c, got, c.want)
			}
		}
	}
}
