package fit

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/shoplog"

	"golang.org/x/sync/errgroup"
)

// Standard deviations of measuring, in mm; common practice, no source: a caliper on a clean edge, a rule along a part.
const (
	CaliperSigma = 0.03
	RuleSigma    = 0.1
)

// Logged is what a log of test cuts tells of a shop's machine and cutter.
type Logged struct {
	// Stated is the accuracy by the job, or what is usual.
	Stated Accuracy
	// Laws are those of the quantities of which the log has enough cuts.
	Laws map[Cause]shoplog.Law
}

// EnoughCuts is how many cuts of a quantity tell more than what a job states; common practice, no source.
const EnoughCuts = 5

// leastSigma is the least standard deviation that a job can state for what is to be learned, in mm.
const leastSigma = 0.001

// LoggedCauses are what a log tells of, the single cut first: the others have it in them.
var LoggedCauses = []Cause{OfCut, OfCutter, OfFence, OfHeight, OfLength}

// of is the length of a cause.
func (a *Accuracy) of(c Cause) *float64 {
	return map[Cause]*float64{OfCutter: &a.Cutter, OfCut: &a.Cut, OfFence: &a.Fence, OfHeight: &a.Height, OfLength: &a.Length}[c]
}

// Of is the length of a cause, in mm.
func (a Accuracy) Of(c Cause) float64 { return *a.of(c) }

// From is the accuracy that follows from a log, with what was known before it.
func (a Accuracy) From(log []shoplog.Cut, t shoplog.Tool, k shoplog.Keep) Accuracy {
	l := Logged{Stated: a, Laws: make(map[Cause]shoplog.Law)}
	one := a.Cut / normalLimit // of a single cut
	for _, c := range LoggedCauses {
		var off []float64
		for _, cut := range k.Of(log, t, shoplog.What(c)) {
			off = append(off, cut.Off())
		}
		if len(off) < EnoughCuts {
			continue
		}
		p := shoplog.Prior{Sigma: math.Max(a.Of(c)/normalLimit, leastSigma)}
		switch c {
		case OfCut:
			p.Centered, p.Known = true, CaliperSigma
			for i := range off { // of two cuts, both measured
				off[i] /= math.Sqrt2
			}
		case OfLength:
			p.Known = RuleSigma
		default:
			p.Known = math.Hypot(CaliperSigma, one)
		}
		law := shoplog.Learn(p, off)
		l.Laws[c] = law
		*a.of(c) = math.Max(-law.Low, law.High)
		if c == OfCut {
			_, one, _ = law.Spread(0.5)
		}
	}
	if len(l.Laws) > 0 {
		a.Log = &l
	}
	return a
}

// Learned reports whether a length follows from a log.
func (a Accuracy) Learned(c Cause) bool {
	if a.Log == nil {
		return false
	}
	_, tells := a.Log.Laws[c]
	return tells
}

// source is one of the sources of a box, by the log where that tells of it.
func (a Accuracy) source(s Source) Source {
	if !a.Learned(s.Cause) {
		return s
	}
	law := a.Log.Laws[s.Cause]
	s.Minus, s.Plus, s.Shape, s.law = math.Max(0, -law.Low), math.Max(0, law.High), Learned, &law
	return s
}

// ofMachine sets the seeds of machines apart from those of sources.
const ofMachine = 1 << 20

// learned are deviates of a source between its limits, from -1 to 1. In one box all sources of a cause are of one
// machine: what is not known of it is not known of all of them alike.
func (s Source) learned(n int, seed, source, part uint64) []float64 {
	cause := uint64(slices.Index(LoggedCauses, s.Cause))
	machines := rand.New(rand.NewPCG(seed^(ofMachine+cause)*streamStep, part))
	own := Normal.deviates(n, rand.New(rand.NewPCG(seed^(source+1)*streamStep, part)))
	low, high := math.Min(0, s.law.Low), math.Max(0, s.law.High)
	middle, half := (low+high)/2, (high-low)/2
	for i, z := range own {
		m := s.law.Machine(machines.Float64(), machines.NormFloat64())
		own[i] = math.Max(-1, math.Min(1, (m.Mean+float64(m.Sigma*z)-middle)/half))
	}
	return own
}

// How the share of right boxes is told that a log leaves open: by so many machines that it may be, each with so many
// boxes, and between the limits that leave out a part of the machines at either end.
const (
	machinesTried = 100
	boxesOfEach   = 1000
	LeftOut       = 0.05
)

// Between is between what shares of right boxes the shop's own is, but for one shop in ten: the log does not tell it
// better. Without a log both are that of the outcome.
func Between(d joinery.Drawer, boards Boards, a Accuracy, slide *SlideFit) (low, high Odds) {
	if a.Log == nil {
		right := Simulate(d, boards, a, slide).Right
		return right, right
	}
	shares := make([]float64, machinesTried)
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range shares {
		g.Go(func() error {
			shares[i] = ShareOf(d, boards, a.Log.machine(uint64(i)), slide)
			return nil
		})
	}
	_ = g.Wait() // no call gives an error
	slices.Sort(shares)
	at := int(LeftOut * machinesTried)
	return Odds{Fraction: shares[at]}, Odds{Fraction: shares[machinesTried-1-at]}
}

// ShareOf is the share of right boxes of a drawer, by fewer of them than a verdict rests on.
func ShareOf(d joinery.Drawer, boards Boards, a Accuracy, slide *SlideFit) float64 {
	measures := Measures(d, boards, a, slide)
	stacks, limits := make([]Stack, len(measures)), make([]geom.Interval, len(measures))
	for i, m := range measures {
		stacks[i], limits[i] = m.Stack, m.limits()
	}
	_, right := SampleBoxes(stacks, limits, boxesOfEach, Seed)
	return right
}

// machine is one that the shop's may be, by its number: all of it is known.
func (l *Logged) machine(number uint64) Accuracy {
	a := l.Stated
	one := &Logged{Stated: l.Stated, Laws: make(map[Cause]shoplog.Law)}
	random := rand.New(rand.NewPCG(ofMachine, number))
	for _, c := range LoggedCauses {
		u, z := random.Float64(), random.NormFloat64()
		if law, tells := l.Laws[c]; tells {
			one.Laws[c] = law.Machine(u, z).One()
		}
	}
	a.Log = one
	return a
}
