package record

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Verdict is the answer on a job, which terminal, packet and page begin with.
type Verdict struct {
	Fits bool
	// Word is that of the worst that is true of the job; Text begins with it and has all of them, a sentence each:
	// which cuts no machine makes, where nothing is to be cut yet, by what odds boxes come out right, and what else
	// is against them.
	Word, Text string
	// Watch is a sentence: which measure is nearest to its limits, and what moves it most; empty
	// where nothing moves any. Watched is that measure, of the drawer that is the least sure.
	Watch   string
	Watched Watched
}

// Words of verdicts.
const (
	Fits        = "Fits"
	MayNotFit   = "May not fit"
	DoesNotFit  = "Does not fit"
	Overloaded  = "Overloaded"
	CannotBeCut = "Cannot be cut" // on the machine that is given
)

// Watched is a measure of a drawer by its names, and in words with what moves it most.
type Watched struct {
	Drawer, Measure, Text string
	Check                 joinery.CheckCode
	Off                   bool // it leaves its limits
}

// mayFit is the part of the boxes from which drawers that are not sure to fit may do so: of one
// with less nothing is to be cut, though its files are written to be looked at. Common practice,
// no source.
const mayFit = 0.5

// notYet is what is said first of such a job.
const notYet = "do not cut from this yet; "

// Answer is a verdict in report.json.
type Answer struct {
	Word string `json:"word"`
	Text string `json:"text"`
	Cut  bool   `json:"cut"` // false where nothing is to be cut from the files yet
}

// Answer is the verdict for a report.
func (v Verdict) Answer() Answer { return Answer{v.Word, v.Text, v.Cut()} }

// Cut reports whether a shop may cut from the files.
func (v Verdict) Cut() bool { return v.Word != DoesNotFit && v.Word != CannotBeCut }

// VerdictOn judges the drawers of a batch; of none it is empty. Odds are of 1,000 boxes: how many the job has
// is said elsewhere, so that nobody takes one number for the other.
func VerdictOn(b batch.Batch) Verdict {
	if len(b.Drawers) == 0 {
		return Verdict{}
	}
	least, out, even := b.Drawers[0], 0, true
	all := b.Kinds()
	for _, kind := range all {
		d := kind[0]
		even = even && d.Outcome.String() == b.Drawers[0].Outcome.String()
		if d.Outcome.Weakest >= 0 {
			out++
		}
		if weaker(d.Outcome, least.Outcome) {
			least = d
		}
	}
	v := Verdict{Fits: true, Word: Fits, Watched: watched(least, b.Units)}
	if v.Watched.Text != "" {
		v.Watch = "Watch: " + v.Watched.Text + "."
	}
	kinds := b.KindsSaid()
	switch o := least.Outcome; {
	case out > 0:
		v.Fits, v.Word = false, MayNotFit
		first := ""
		if o.Right.Fraction < mayFit {
			v.Word, first = DoesNotFit, notYet
		}
		switch {
		case len(all) == 1 && len(b.Drawers) == 1:
			v.Text = fmt.Sprintf("%s: %s%s.", v.Word, first, o.Of(least.Spec.Name, 1))
		case even && out == len(all):
			v.Text = fmt.Sprintf("%s: %s%s.", v.Word, first, o.Of(kinds, len(all)))
		default:
			v.Text = fmt.Sprintf("%s: %s%d of %s; %s.", v.Word, first, out, kinds, o.Of(least.Spec.Name, 1))
		}
	case even:
		v.Text = fmt.Sprintf("%s: %s; %s.", v.Word, kinds, o.Right)
	default:
		v.Text = fmt.Sprintf("%s: %s; of %s, the least sure, %s.", v.Word, kinds, least.Spec.Name, o.Right)
	}
	v.saysFirst(CannotCut(b.Drawers, b.Units), against(b))
	return v
}

// saysFirst puts what is worse than the odds before them, and what is against the boxes after: of these none fits.
func (v *Verdict) saysFirst(worse string, against []string) {
	var all []string
	if worse != "" {
		all = append(all, worse)
	}
	if !v.Fits {
		all = append(all, v.Text)
	}
	if all = append(all, against...); len(all) == 0 {
		return
	}
	v.Fits, v.Text = false, strings.Join(all, " ")
	v.Word, _, _ = strings.Cut(v.Text, ":")
}

// weaker reports whether fewer boxes come out right, those that are likely to last.
func weaker(a, b fit.Outcome) bool {
	if (a.Weakest >= 0) != (b.Weakest >= 0) {
		return a.Weakest >= 0
	}
	return a.Right.Fraction < b.Right.Fraction
}

// watched is the measure that is nearest to its limits, or furthest beyond them; none where nothing
// moves any.
func watched(d batch.Drawer, u geom.Unit) Watched {
	o, at := d.Outcome, -1
	for i, m := range o.Measures {
		if len(m.Result.Shares) > 0 && (at < 0 || spare(m) < spare(o.Measures[at])) {
			at = i
		}
	}
	if o.Weakest >= 0 {
		at = o.Weakest
	}
	if at < 0 || len(o.Measures[at].Result.Shares) == 0 {
		return Watched{}
	}
	m := o.Measures[at]
	most := m.Result.Shares[0]
	return Watched{Drawer: d.Spec.Name, Measure: m.Name, Check: m.Code, Off: o.Weakest >= 0,
		Text: fmt.Sprintf("%s (%s, +-%s %s)", m.Short(), most.Name, geom.LengthOf(most.Half).Fixed(u), u)}
}

// spare is how much room the likely range leaves within the limits, as a part of half of it.
func spare(m fit.SimulatedMeasure) float64 {
	half := (m.UpperLimit - m.LowerLimit) / 2
	return min(m.Min-m.LowerLimit, m.UpperLimit-m.Max) / max(half, geom.Settle)
}
