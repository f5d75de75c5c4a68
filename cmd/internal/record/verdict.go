package record

import (
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// Verdict is the answer on a job, which terminal, packet and page begin with.
type Verdict struct {
	Fits bool
	// Text is a sentence: whether the boxes fit, and by what odds.
	Text string
	// Watch is a sentence: which measure is nearest to its limits, and what moves it most; empty
	// where nothing moves any.
	Watch string
}

// mayFit is the part of the boxes from which drawers that are not sure to fit may do so.
const mayFit = 0.5

// VerdictOn judges the drawers of a batch; of none it is empty.
func VerdictOn(b batch.Batch) Verdict {
	if len(b.Drawers) == 0 {
		return Verdict{}
	}
	least, out, even := b.Drawers[0], 0, true
	for _, d := range b.Drawers {
		even = even && d.Outcome.String() == b.Drawers[0].Outcome.String()
		if d.Outcome.Weakest >= 0 {
			out++
		}
		if weaker(d.Outcome, least.Outcome) {
			least = d
		}
	}
	v := Verdict{Fits: true, Watch: watch(least.Outcome, b.Units)}
	kinds := words.Count(len(b.Drawers), "kind of drawer", "kinds of drawer")
	switch o := least.Outcome; {
	case out > 0:
		v.Fits = false
		said := "May not fit"
		if o.Right.Fraction < mayFit {
			said = "Does not fit"
		}
		switch {
		case len(b.Drawers) == 1:
			v.Text = fmt.Sprintf("%s: %s is %s.", said, least.Spec.Name, o)
		case even && out == len(b.Drawers):
			v.Text = fmt.Sprintf("%s: %s are %s.", said, kinds, o)
		default:
			v.Text = fmt.Sprintf("%s: %d of %s; %s is %s.", said, out, kinds, least.Spec.Name, o)
		}
	case even:
		v.Text = fmt.Sprintf("Fits: %s, %s; %s.", kinds, words.Count(b.Boxes(), "box", "boxes"), o.Right)
	default:
		v.Text = fmt.Sprintf("Fits: %s, %s; of %s, the least sure, %s.", kinds,
			words.Count(b.Boxes(), "box", "boxes"), least.Spec.Name, o.Right)
	}
	return v
}

// weaker reports whether fewer boxes come out right, those that are likely to last.
func weaker(a, b fit.Outcome) bool {
	if (a.Weakest >= 0) != (b.Weakest >= 0) {
		return a.Weakest >= 0
	}
	return a.Right.Fraction < b.Right.Fraction
}

// watch names the measure that is nearest to its limits, or furthest beyond them.
func watch(o fit.Outcome, u geom.Unit) string {
	at := -1
	for i, m := range o.Measures {
		if len(m.Result.Shares) > 0 && (at < 0 || spare(m) < spare(o.Measures[at])) {
			at = i
		}
	}
	if o.Weakest >= 0 {
		at = o.Weakest
	}
	if at < 0 || len(o.Measures[at].Result.Shares) == 0 {
		return ""
	}
	m := o.Measures[at]
	most := m.Result.Shares[0]
	return fmt.Sprintf("Watch: %s (%s, +-%s %s).", m.Short(), m.Stack.Sources[most.Source].Name,
		geom.LengthOf(most.Half).Fixed(u), u)
}

// spare is how much room the likely range leaves within the limits, as a part of half of it.
func spare(m fit.SimulatedMeasure) float64 {
	half := (m.UpperLimit - m.LowerLimit) / 2
	return min(m.Min-m.LowerLimit, m.UpperLimit-m.Max) / max(half, geom.Settle)
}
