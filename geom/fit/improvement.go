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
	squares := make(map[Cause]float64)
	h := Improvement{}
	for _, s := range m.Result.Shares { // in their order, so that ties are the same
		from := m.Stack.Sources[s.Source]
		squares[from.Cause] += s.Part
		if squares[from.Cause] > h.Part+exactPart {
			h.Cause, h.Part = from.Cause, squares[from.Cause]
		}
	}
	if h.Part == 0 {
		return h // as set it is out
	}
	for _, s := range m.Stack.Terms {
		if from := m.Stack.Sources[s.Source]; from.Cause == h.Cause {
			h.Current = math.Max(h.Current, from.half())
		}
	}
	half := o.with(index, h.Cause, 0.5)
	h.Halved = half.Right
	// What is left for the cause by the root of squares, tried out and lessened.
	room := math.Min(m.Nominal-m.LowerLimit, m.UpperLimit-m.Nominal)
	rest := m.Result.RootSumSquare * m.Result.RootSumSquare * (1 - h.Part)
	k := math.Sqrt(math.Max(0, math.Copysign(room*room, room)-rest)) / (m.Result.RootSumSquare * math.Sqrt(h.Part))
	enough := func(need float64) bool { return !o.with(index, h.Cause, need/h.Current).OutOfLimits() }
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

// exactPart is what sums of shares may differ by without one being the larger.
const exactPart = 1e-9

// with is a measure with all sources of a cause k times as large, in the same boxes.
func (o Outcome) with(index int, of Cause, k float64) SimulatedMeasure {
	m := o.Measures[index].Measure
	m.Stack.Sources = slices.Clone(m.Stack.Sources)
	for i := range m.Stack.Sources {
		if s := &m.Stack.Sources[i]; s.Cause == of {
			if of.Board() { // a lot has a mean of its own, and its readings on both sides of it
				s.Minus, s.Plus = s.half(), s.half()
			}
			s.Minus, s.Plus = k*s.Minus, k*s.Plus
		}
	}
	return judged([]Measure{m}).Measures[0]
}
