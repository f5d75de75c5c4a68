package shoplog

import "math"

// Chart is a control chart for individual measurements: each cut in the order in which it was made, about their mean,
// between limits that follow from how much one differs from the next (NIST/SEMATECH e-Handbook of Statistical Methods,
// section 6.3.2.2; from memory).
type Chart struct {
	What    What
	Values  []float64 // the width measured of a cutter, else by how much each cut is off
	Mean    float64
	Sigma   float64 // of one cut: the mean range from one to the next, over d2; minSigma at least
	Signals []Signal
}

// d2 is the mean range of two draws of a normal quantity, in its standard deviations (same source, table of factors).
const d2 = 1.128

// minSigma is the least standard deviation of a chart, in mm: a reading is a whole step of its caliper, up to a
// thousandth of an inch, and cuts that all read the same say nothing of what is less. With half a step one step
// more or less is no signal (common practice, no source).
const minSigma = 0.0254 / 2

// Rule is a rule by which a chart tells that a machine is not what it was.
type Rule int

// The four rules of Western Electric's Statistical Quality Control Handbook (1956), and a trend of six (e-Handbook,
// section 6.3.2; both from memory).
const (
	Beyond    Rule = iota // one beyond three standard deviations
	TwoOf3                // two of three beyond two, on one side
	FourOf5               // four of five beyond one, on one side
	EightSide             // eight on one side
	SixTrend              // six, each further the same way
)

// Rules are all of them, the most telling first.
var Rules = []Rule{Beyond, SixTrend, EightSide, TwoOf3, FourOf5}

// Signal is a rule that a cut meets with those before it, up or down.
type Signal struct {
	At   int // index of the cut
	Rule Rule
	Up   bool
}

// sameCutter is by how much what is aimed at may differ and be the width of one cutter, in mm: a job that is written
// anew after each test cut aims at what the one before had.
const sameCutter = 0.5

// ChartOf is the chart of the cuts of one quantity, the oldest first.
func ChartOf(w What, cuts []Cut) Chart {
	c := Chart{What: w}
	for _, cut := range cuts {
		v := cut.Off()
		if w == Cutter && math.Abs(cut.Aimed-cuts[0].Aimed) <= sameCutter {
			v += cut.Aimed
		}
		c.Values = append(c.Values, v)
	}
	if len(c.Values) < 2 {
		return c
	}
	ranges := 0.0
	for i, v := range c.Values {
		c.Mean += v / float64(len(c.Values))
		if i > 0 {
			ranges += math.Abs(v-c.Values[i-1]) / float64(len(c.Values)-1)
		}
	}
	c.Sigma = max(ranges/d2, minSigma)
	for i := range c.Values {
		for _, r := range Rules {
			for _, up := range []bool{true, false} {
				if c.meets(r, i, up) {
					c.Signals = append(c.Signals, Signal{i, r, up})
				}
			}
		}
	}
	return c
}

// rounding is by how much equal values and their mean differ at most, in mm.
const rounding = 1e-9

// meets reports whether a cut meets a rule with those before it.
func (c Chart) meets(r Rule, at int, up bool) bool {
	side := 1.0
	if !up {
		side = -1
	}
	// least of the last cuts, the newest of them too, lie further out than so many standard deviations.
	out := func(least, of int, sigmas float64) bool {
		n := 0
		for i := max(0, at-of+1); i <= at; i++ {
			if side*(c.Values[i]-c.Mean) > max(sigmas*c.Sigma, rounding) {
				n++
			}
		}
		return n >= least && side*(c.Values[at]-c.Mean) > max(sigmas*c.Sigma, rounding)
	}
	switch r {
	case Beyond:
		return out(1, 1, 3)
	case TwoOf3:
		return out(2, 3, 2)
	case FourOf5:
		return out(4, 5, 1)
	case EightSide:
		return out(8, 8, 0)
	}
	const trend = 6
	for i := at - trend + 2; i <= at; i++ {
		if i < 1 || side*(c.Values[i]-c.Values[i-1]) <= 0 {
			return false
		}
	}
	return true
}

// Now is the most telling signal of the newest cut; false where the machine is what it was.
func (c Chart) Now() (s Signal, drifts bool) {
	for _, s := range c.Signals {
		if s.At == len(c.Values)-1 {
			return s, true
		}
	}
	return s, false
}
