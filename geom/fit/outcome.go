package fit

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Draws boxes of a drawer are drawn with Seed for every verdict on it: enough to tell
// one in a hundred from two. They are the same everywhere, so that every output has the
// same figures.
const (
	Samples        = 10_000
	Seed    uint64 = 1
)

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle

// Outcome is what the boxes of a drawer come out as, with boards and machine off as
// they usually are: the one basis of every verdict.
type Outcome struct {
	Measures []SimulatedMeasure
	// Verdict is [joinery.GoesTogether] where every measure is likely within its limits, else
	// that of the weakest measure.
	Verdict joinery.Verdict
	// Right is the part of the boxes that keep all limits at once.
	Right Odds
	// Weakest is the index of the measure that is most often out of its limits, of those
	// whose verdict says so; -1 where all are likely within.
	Weakest int
}

// SimulatedMeasure is a measure with what its boxes do; outcomes may share it.
type SimulatedMeasure struct{ *Simulated }

// Simulated is what a SimulatedMeasure shares.
type Simulated struct {
	// Measure has in Min and Max the likely range, between which all but 0.27 % of the
	// boxes are, and in Verdict the verdict on it.
	Measure
	Result Result
	Right  Odds // of this measure by itself
}

// Concluded are measures of outcomes that were concluded, each once: most of a box are of its boards and settings
// alone, and the same in all drawers that these make. It may be used by several goroutines at once.
type Concluded struct {
	mu    sync.Mutex // guards what follows
	known map[concluded]SimulatedMeasure
}

// concluded is all that is kept of a measure.
type concluded struct {
	check   joinery.Check
	nominal float64
	worst   geom.Interval
	rss     float64
	largest Share
	shared  bool // there is a largest share
	right   Odds
}

// NewConcluded are none.
func NewConcluded() *Concluded { return &Concluded{known: make(map[concluded]SimulatedMeasure)} }

// Conclude is an outcome without what only advice asks for, which of many drawers would be the most in memory: the
// sources of each measure, and their shares but for the largest. What was concluded before is shared.
func (c *Concluded) Conclude(o Outcome) Outcome {
	if len(o.Measures) == 0 { // it cannot be built
		return o
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	measures := o.Measures
	o.Measures = make([]SimulatedMeasure, len(measures))
	for i, m := range measures {
		r := m.Result
		key := concluded{check: m.Check, nominal: r.Nominal, worst: r.Worst, rss: r.RootSumSquare, right: m.Right}
		if len(r.Shares) > 0 {
			r.Shares = slices.Clone(r.Shares[:1])
			key.largest, key.shared = r.Shares[0], true
		}
		one, known := c.known[key]
		if !known {
			one = SimulatedMeasure{&Simulated{Measure: Measure{Check: m.Check}, Result: r, Right: m.Right}}
			c.known[key] = one
		}
		o.Measures[i] = one
	}
	return o
}

// OutOfLimits reports whether the likely range leaves the limits.
func (f SimulatedMeasure) OutOfLimits() bool { return f.Verdict != f.Verdicts.Within }

// Unknown is the outcome of a drawer that cannot be built: nothing is known of its boxes.
var Unknown = Outcome{Weakest: -1}

// Simulate works out what the boxes of a drawer come out as. The drawer must be one that
// can be built.
func Simulate(d joinery.Drawer, boards Boards, a Accuracy, slide *SlideFit) Outcome {
	return judged(Measures(d, boards, a, slide))
}

// judged draws boxes, and judges the measures. A measure by itself gets the boxes that
// it gets among others, since each source draws its own numbers.
func judged(measures []Measure) Outcome {
	stacks, limits := make([]Stack, len(measures)), make([]geom.Interval, len(measures))
	for i, m := range measures {
		stacks[i], limits[i] = m.Stack, m.limits()
	}
	drawn, right := SampleBoxes(stacks, limits, Samples, Seed)
	o := Outcome{Measures: make([]SimulatedMeasure, 0, len(measures)), Verdict: joinery.GoesTogether, Weakest: -1, Right: Odds{Fraction: right, Certain: true}}
	for i, m := range measures {
		r := m.Stack.Result()
		f := SimulatedMeasure{&Simulated{Measure: m, Result: r, Right: Odds{Fraction: drawn[i].Within, Certain: r.Worst.Min >= limits[i].Min && r.Worst.Max <= limits[i].Max}}}
		f.Min, f.Max = drawn[i].Common.Min, drawn[i].Common.Max
		f.Verdict = f.VerdictOn(f.Min, f.Max)
		o.Measures, o.Right.Certain = append(o.Measures, f), o.Right.Certain && f.Right.Certain
		if f.OutOfLimits() && (o.Weakest < 0 || f.weaker(o.Measures[o.Weakest])) {
			o.Weakest, o.Verdict = i, f.Verdict
		}
	}
	return o
}

// weaker reports whether fewer boxes keep a measure than an earlier one; of a width that both box and slide limit, the
// slide is named.
func (f SimulatedMeasure) weaker(o SimulatedMeasure) bool {
	return f.Right.Fraction < o.Right.Fraction ||
		f.Right.Fraction == o.Right.Fraction && f.Code == SlideClearance && o.Code == joinery.CheckOutsideWidth
}

// Spreads are by how much the measures come out beside what the cuts are set for.
func (o Outcome) Spreads() joinery.Spreads {
	list := make(joinery.Spreads, len(o.Measures))
	for _, m := range o.Measures {
		list[m.CheckID] = geom.Interval{Min: math.Min(0, m.Min-m.Nominal), Max: math.Max(0, m.Max-m.Nominal)}
	}
	return list
}

// String is the verdict with its odds, as every output says it.
func (o Outcome) String() string {
	said := string(o.Verdict) + ": " + o.Right.String()
	if o.Weakest >= 0 {
		w := o.Measures[o.Weakest]
		said = fmt.Sprintf("%s (%s): %s", w.Words(), w.Short(), o.Right)
	}
	return said
}

// Of is the same of drawers by their name, as a sentence without its end: that they are so, or may come
// out so; count is of how many the name is.
func (o Outcome) Of(name string, count int) string {
	verb := " is "
	switch {
	case o.Weakest < 0, o.Measures[o.Weakest].State() != joinery.StateWrong, o.Verdict == joinery.WillNot:
		verb = " "
	case count != 1:
		verb = " are "
	}
	return name + verb + o.String()
}

// limits are what a box has to keep; what rounding leaves open is right.
func (m Measure) limits() geom.Interval {
	return m.Limits().Grow(settle)
}

// Short is the name of the measure without what explains its sign.
func (m Measure) Short() string { return ShortName(m.Name) }

// ShortName is the name of a measure without what explains its sign.
func ShortName(name string) string {
	short, _, _ := strings.Cut(name, " (")
	return short
}
