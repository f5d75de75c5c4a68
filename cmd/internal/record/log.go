package record

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom/fit"
	"drawerwright/geom/shoplog"
)

// Learned is what a job takes from the shop's log of test cuts.
type Learned struct {
	File  string `json:"file"`
	Asked bool   `json:"from_log"` // the job's accuracy follows from it
	// Quantities are those of the machines and cutters of the job, each with its cuts.
	Quantities []Quantity `json:"quantities"`
	// Drawers are how their odds change by the log; empty where the job does not learn from it.
	Drawers []LearnedOdds `json:"drawers"`
}

// Quantity is what the log has of one quantity of a machine. Ranges leave out one shop in ten.
type Quantity struct {
	Machine string `json:"machine"`
	Cutter  string `json:"cutter,omitempty"`
	What    string `json:"what"` // cutter, cut, fence, height, length
	Cuts    int    `json:"cuts"`
	// Stated is by how much it is off either way by the job, or usually; By is that by the log, and the same where the
	// log has too few cuts.
	Stated Length `json:"stated"`
	By     Length `json:"by_the_log"`
	// Bias is by how much it is off on average, Spread how much it differs either way from that, in three standard
	// deviations; absent while the log has too few cuts.
	Bias   *Between `json:"bias,omitempty"`
	Spread *Between `json:"spread,omitempty"`
	// Drift is what a control chart of the cuts tells of the newest one; empty where it tells nothing.
	Drift string `json:"drift,omitempty"`

	Chart shoplog.Chart `json:"-"`
}

// Between is a length and between what it is.
type Between struct {
	Value Length `json:"value"`
	Min   Length `json:"min"`
	Max   Length `json:"max"`
}

// LearnedOdds are the parts of the boxes of drawers that come out right: by what was stated, by the log, and between
// what the log leaves it open for nine shops of ten.
type LearnedOdds struct {
	Drawers []string `json:"drawers"`
	Before  float64  `json:"before"`
	After   float64  `json:"after"`
	Min     float64  `json:"min"`
	Max     float64  `json:"max"`

	Odds [4]fit.Odds `json:"-"` // the same
}

// LoggedOf is that of a batch but for the odds of its drawers, which take long; nil where its job names no log.
func LoggedOf(b batch.Batch) *Learned {
	if b.Log == nil {
		return nil
	}
	l := Learned{File: b.Log.File, Asked: b.Log.Asked, Quantities: []Quantity{}, Drawers: []LearnedOdds{}}
	type tooled struct {
		shoplog.Tool
		fit.Accuracy
	}
	var seen []tooled
	for _, d := range b.Drawers {
		if of := (tooled{d.Tool, d.Shop.Accuracy}); !slices.Contains(seen, of) {
			seen = append(seen, of)
			l.quantities(b, d)
		}
	}
	return &l
}

// LearnedOf is that of a batch; nil where its job names no log.
func LearnedOf(b batch.Batch) *Learned {
	l := LoggedOf(b)
	if l == nil {
		return nil
	}
	var like []batch.Drawer
	var at []int // of each in the list
	for _, d := range b.Drawers {
		if d.Shop.Accuracy.Log == nil {
			continue
		}
		i := slices.IndexFunc(like, func(o batch.Drawer) bool { return o.Like(d.Box) })
		if i < 0 {
			i = len(like)
			like, at = append(like, d), append(at, l.odds(d))
		}
		l.Drawers[at[i]].Drawers = append(l.Drawers[at[i]].Drawers, d.Spec.Name)
	}
	return l
}

// quantities adds those of the machine and cutter of a drawer of which the log has a cut.
func (l *Learned) quantities(b batch.Batch, d batch.Drawer) {
	a := d.Shop.Accuracy
	stated := a
	if a.Log != nil {
		stated = a.Log.Stated
	}
	for _, c := range fit.LoggedCauses {
		what := shoplog.What(c)
		cuts := b.Log.Keep.Of(b.Log.Cuts, d.Tool, what)
		if len(cuts) == 0 {
			continue
		}
		q := Quantity{Machine: d.Tool.Machine, Cutter: d.Tool.Cutter, What: string(c), Cuts: len(cuts),
			Stated: Length(stated.Of(c)), By: Length(a.Of(c)), Chart: shoplog.ChartOf(what, cuts)}
		if s, drifts := q.Chart.Now(); drifts && len(cuts) >= fit.EnoughCuts {
			q.Drift = s.Text(what)
		}
		if a.Learned(c) {
			law, between := a.Log.Laws[c], func(times float64, of func(float64) (low, mean, high float64)) *Between {
				low, mean, high := of(fit.LeftOut)
				return &Between{Length(times * mean), Length(times * low), Length(times * high)}
			}
			q.Bias, q.Spread = between(1, law.Bias), between(3, law.Spread)
		}
		l.Quantities = append(l.Quantities, q)
	}
}

// odds are those of a drawer: the index of what they are, also where another drawer has the same.
func (l *Learned) odds(d batch.Drawer) int {
	a := d.Shop.Accuracy
	before := fit.Simulate(d.Drawer, d.Shop.Boards, a.Log.Stated, d.Shop.Slide).Right
	low, high := fit.Between(d.Drawer, d.Shop.Boards, a, d.Shop.Slide)
	all := [4]fit.Odds{before, d.Outcome.Right, low, high}
	if i := slices.IndexFunc(l.Drawers, func(o LearnedOdds) bool { return o.Odds == all }); i >= 0 {
		return i
	}
	l.Drawers = append(l.Drawers, LearnedOdds{Before: Odds(before), After: Odds(d.Outcome.Right), Min: Odds(low),
		Max: Odds(high), Odds: all})
	return len(l.Drawers) - 1
}
