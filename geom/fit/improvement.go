package fit

import (
	"math"
	"slices"
)

// Improvement is what would help a measure that leaves its limits most.
type Improvement struct {
	Cause Cause
	// Current is by how much a source of the cause is off either way; Part the share of the
	// cause in the sum of squares.
	Current, Part float64
	// Need is what Current has to become for the measure to be likely within its limits; 0
	// where nothing that the cause can become is enough. Halved are the odds of the
	// measure with half of Current.
	Need   float64
	Halved Odds
}

// helpStep is what a need is rounded down to, in mm: nobody measures finer.
const helpStep = 0.01

// MostUseful finds the improvement that helps a measure most; index is its place in Measures.
func (o Outcome) MostUseful(index int) Improvement {
	m := o.Measures[index]
	h := largestCause(m.Measure, m.Result.Shares)
	if h.Part == 0 {
		return h // as set it is out
	}
	half := o.with(index, 0.5, h.Cause)
	h.Halved = half.Right
	// What is left for the cause by the root of squares, tried out and lessened.
	room := math.Min(m.Nominal-m.LowerLimit, m.UpperLimit-m.Nominal)
	rest := m.Result.RootSumSquare * m.Result.RootSumSquare * (1 - h.Part)
	k := math.Sqrt(math.Max(0, math.Copysign(room*room, room)-rest)) / (m.Result.RootSumSquare * math.Sqrt(h.Part))
	enough := func(need float64) bool { return !o.with(index, need/h.Current, h.Cause).OutOfLimits() }
	need := math.Floor(h.Current*math.Min(k, 0.95)/helpStep+settle) * helpStep
	if need < helpStep || !enough(helpStep) { // often nothing is, and that is found at once
		return h
	}
	for need > helpStep && !enough(need) {
		need = math.Max(helpStep, math.Floor(0.85*need/helpStep+settle)*helpStep)
	}
	h.Need = need
	return h
}

// largestCause is the cause with the largest share, and of equal ones that which is off by
// more by itself: it is the easier to lessen.
func largestCause(m Measure, shares []Share) (h Improvement) {
	squares, off := make(map[Cause]float64), make(map[Cause]float64)
	var causes []Cause // in the order of the shares, so that ties are the same
	for _, s := range shares {
		from := m.Stack.Sources[s.Source]
		if squares[from.Cause] == 0 {
			causes = append(causes, from.Cause)
		}
		squares[from.Cause] += s.Part
		off[from.Cause] = max(off[from.Cause], from.half())
	}
	for _, c := range causes {
		more := squares[c] - h.Part
		if more > exactPart || more > -exactPart && off[c] > h.Current+settle {
			h.Cause, h.Part, h.Current = c, squares[c], off[c]
		}
	}
	return h
}

// exactPart is what sums of shares may differ by without one being the larger.
const exactPart = 1e-9

// Even is a measure with nothing off that is of some causes, in the same boxes; index is its place in
// Measures.
func (o Outcome) Even(index int, of ...Cause) SimulatedMeasure { return o.with(index, 0, of...) }

// with is a measure with all sources of some causes k times as large, in the same boxes.
func (o Outcome) with(index int, k float64, of ...Cause) SimulatedMeasure {
	m := o.Measures[index].Measure
	m.Stack.Sources = slices.Clone(m.Stack.Sources)
	for i := range m.Stack.Sources {
		if s := &m.Stack.Sources[i]; slices.Contains(of, s.Cause) {
			if s.Cause.Board() { // a lot has a mean of its own, and its readings on both sides of it
				s.Minus, s.Plus = s.half(), s.half()
			}
			s.Minus, s.Plus = k*s.Minus, k*s.Plus
		}
	}
	return judged([]Measure{m}).Measures[0]
}
