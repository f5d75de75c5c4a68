package testcut

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Move is by how much a setting has to be changed, in mm: above 0 the fence goes
// away from the cutter, the cutter up; of a router, the part is laid further in, the
// bit goes deeper.
type Move struct {
	Setting Setting
	By      float64
	From    float64 // where it really is
	To      float64 // where it should be
	Action  Action
	// Sure reports whether parts come out right then beyond doubt; else a limit is near.
	Sure bool
	// Better reports whether a setting that can be left is better moved: near a limit now,
	// parts would come out right beyond doubt.
	Better bool
	// Worse reports that the move would leave more measures out of their limits than there
	// are: the setting is left, since it is not what is wrong.
	Worse bool
	// Missing are the readings that settle it, the most useful first.
	Missing []Kind
	// Unsure are the measures that those settle; none where a second reading is asked for only
	// because one alone can be a slip.
	Unsure []string
}

// Action is what to do about a setting.
type Action string

const (
	// Leave it: the parts that it cuts come out right as it is, or as right as the shop
	// can tell.
	Leave Action = "leave"
	// Make the move: once made, parts come out right.
	Make Action = "move"
	// Measure more before it is moved: it may have to be left, or moved the other way.
	Measure Action = "measure"
	// Try the move and cut another test piece: what is cut is wrong, and the limits leave
	// less room than the shop's tools tell.
	Try Action = "try"
)

// Setting is what is moved.
type Setting string

// Settings of a machine.
const (
	Fence      Setting = "fence"
	Height     Setting = "height"
	DadoHeight Setting = "dado-height"
	// EndPlace is where the rabbets of fronts end, and so how long tongues are: of a
	// router the stop for the fronts, of fronts that lie flat the fence for their rabbets.
	EndPlace Setting = "end-place"
	// RabbetHeight is the cutter's for the rabbets of fronts that lie flat.
	RabbetHeight Setting = "rabbet-height"
)

// The measures of a test cut without tongues; those of one with tongues are the box's.
const (
	GrooveHeight joinery.CheckCode = "groove-height" // of the groove's lower wall over the lower edge
	CutDepth     joinery.CheckCode = "depth"         // of the cuts
)

// Predicted is a measure of the box with its limits: as it is likely, and how exactly
// that is known.
type Predicted struct {
	joinery.Check
	Sigma float64
	// Unsettled is set where the readings are all within the limits of the setup sheet and
	// what was estimated from them is not: then it is no verdict on them.
	Unsettled bool
}

// Advice is what follows from a test cut.
type Advice struct {
	Estimate
	Stated      float64   // width of the cut by the job
	Cutter      Estimated // as it really is
	Front, Side Estimated // thicknesses
	Moves       []Move
	// AsItIs are the measures if nothing is moved, After those if the advice is followed.
	AsItIs, After []Predicted
	// NoSetting says that no fence distance brings everything within the limits, with the
	// widths of a cutter with which one would; nil where one does.
	NoSetting *geom.Diagnosis
	Salvages  []Salvage
	// WithinLimits reports that the setup sheet lists every reading and calls it right: then
	// nothing is to be moved for any of them.
	WithinLimits bool
	// SlotLimits are what the setup sheet calls right of a slot that was read and is not right: the bottom's groove is
	// as wide. They are nil where it is right, or was not read.
	SlotLimits *geom.Interval
	// AllRight reports that the test cut is right and that nothing is to be moved.
	AllRight bool
}

// Estimated is a length as estimated, with its standard deviation.
type Estimated struct{ Value, Sigma float64 }

// A cutter with which no fence distance is right.
const (
	CodeWide   geom.Code = "cutter-wide"
	CodeNarrow geom.Code = "cutter-narrow"
)

// sure is how many standard deviations a measure has to be within its limits for a
// reading to be enough: beyond are 0.27 %.
const sure = 3

// Advise works out what to do. With readings that contradict each other there are no
// moves: they have to be taken again.
func (c Model) Advise(readings []Reading) Advice {
	a := Advice{Estimate: c.Solve(readings), Stated: c.blade, WithinLimits: c.withinLimits(readings)}
	if a.WithinLimits {
		a.agree()
	}
	e := a.Estimate
	known := func(f form) Estimated { return Estimated{f.at(e.u), e.sigma(f.by)} }
	a.Cutter, a.Front, a.Side = Estimated{c.blade + e.u[ofCutter], e.sigma(unit(ofCutter))}, known(c.is.front), known(c.is.side)
	for _, q := range c.measures(e.u) {
		one := Predicted{q.judge(q.at(e.u)), e.sigma(q.by), false}
		one.Unsettled = a.WithinLimits && one.Verdict != one.Verdicts.Within
		a.AsItIs = append(a.AsItIs, one)
	}
	if len(e.Conflicts) > 0 {
		return a
	}
	plan := c.plan(e)
	if !a.WithinLimits {
		a.NoSetting = plan.trouble
	}
	a.AllRight = !slices.ContainsFunc(a.AsItIs,
		func(j Predicted) bool { return !j.Unsettled && j.Verdict != j.Verdicts.Within })
	for _, m := range plan.moves {
		if c.decide(&m, e, plan); a.WithinLimits && m.Action != Measure {
			m.Action, m.Better, m.Worse = Leave, false, false
		}
		a.AllRight = a.AllRight && m.Action == Leave
		a.Moves = append(a.Moves, m)
	}
	a.SlotLimits = c.slotOut(a)
	a.AllRight = a.AllRight && a.SlotLimits == nil && !a.doubted()
	for i, q := range plan.measures {
		if slices.ContainsFunc(a.Moves, func(m Move) bool { return slices.Contains(q.moved, m.Setting) && (m.Action != Leave || m.Better) }) {
			a.After = append(a.After, Predicted{q.judge(q.at0), q.total(e), false})
		} else { // all that moves it is left
			a.After = append(a.After, a.AsItIs[i])
		}
	}
	if a.Salvages = c.saves(e); a.WithinLimits {
		a.Salvages = []Salvage{{Remedy: Keep}}
	}
	return a
}

// doubted reports whether a reading was left out, which is to be taken again before anything is called right.
func (a Advice) doubted() bool {
	return slices.ContainsFunc(a.Residuals, func(r Residual) bool { return r.Rejected })
}

// slotOut are the limits of a slot that was read where it is out of them; of one that was tried with a coupon, where
// what all readings say of it is.
func (c Model) slotOut(a Advice) *geom.Interval {
	limits, listed := c.sheet[Slot]
	out := func(wide float64) bool { return wide < limits.Min-geom.Settle || wide > limits.Max+geom.Settle }
	if a.WithinLimits || !listed || !slices.ContainsFunc(a.Residuals, func(r Residual) bool {
		return !r.Rejected && (r.Kind == Slot && out(r.Value) || r.Kind == Coupon && out(c.is.slot.at(a.u)))
	}) {
		return nil
	}
	return &limits
}

// agree takes readings as they are that the setup sheet calls right: however far they are
// apart, a box of such parts comes out right.
func (a *Advice) agree() {
	a.Conflicts = nil
	for i := range a.Residuals {
		a.Residuals[i].Rejected = false
	}
}

// minReadings is how many readings have to speak of a setting before it is moved: one
// alone can be a slip of the eye, and nothing would show it.
const minReadings = 2

// decide says what to do about a setting.
func (c Model) decide(m *Move, e Estimate, p plan) {
	after, asItIs := p.of(m.Setting), p.asItIs(c, e, m.Setting)
	right := !slices.ContainsFunc(asItIs, func(q measure) bool { return !q.within() })
	sure := !slices.ContainsFunc(asItIs, func(q measure) bool { return !q.enough(e) })
	if sure {
		m.Action, m.Sure = Leave, true
		return
	}
	if m.Missing = c.missing(e, after); len(m.Missing) > 0 {
		m.Unsure = unsure(e, after)
	} else if c.speaking(e, m.Setting) < minReadings {
		m.Missing = c.second(e, m.Setting)
	}
	settled := !slices.ContainsFunc(after, func(q measure) bool { return !q.enough(e) })
	switch {
	case len(m.Missing) > 0:
		m.Action = Measure
	case right: // and moving it by less than a shop can would change nothing
		m.Action, m.Better = Leave, settled
		m.Sure = settled && math.Abs(m.By) < moveSigma
	case settled:
		m.Action, m.Sure = Make, true
	case outOf(p.withIts(m.Setting)) > outOf(asItIs):
		m.Action, m.Worse = Leave, true
	default:
		m.Action = Try
	}
}

// unsure are the names of the measures that are not surely within their limits.
func unsure(e Estimate, list []measure) (names []string) {
	for _, q := range list {
		if !q.enough(e) {
			names = append(names, q.check.Name)
		}
	}
	return names
}

// outOf counts the measures that are likely to be out of their limits.
func outOf(list []measure) (n int) {
	for _, q := range list {
		if !q.within() {
			n++
		}
	}
	return n
}

// unknownOf is what a move makes up for.
func unknownOf(s Setting) int {
	return map[Setting]int{Fence: ofFence, Height: ofHeight, DadoHeight: ofDado, EndPlace: ofEnd, RabbetHeight: ofRabbet}[s]
}

// speaking counts the readings that say something of a setting.
func (c Model) speaking(e Estimate, s Setting) (n int) {
	for _, r := range e.Residuals {
		if f, ok := c.form(r.Reading, e.u); ok && !r.Rejected && f.by[unknownOf(s)] != 0 {
			n++
		}
	}
	return n
}

// second is the first reading not yet taken that says something of a setting; where
// there is no other one, a lonely reading is taken again, at another place.
func (c Model) second(e Estimate, s Setting) []Kind {
	var again []Kind
	for _, k := range c.ReadingKinds() {
		if f, _ := c.form(Reading{Kind: k}, e.u); f.by[unknownOf(s)] == 0 {
			continue
		}
		if !slices.ContainsFunc(e.Residuals, func(r Residual) bool { return r.Kind == k }) {
			return []Kind{k}
		}
		again = []Kind{k}
	}
	if len(e.Residuals) < minReadings {
		return again
	}
	return nil
}

// missing are the readings that would settle some measures, chosen one by one: each
// time the one after which all together are the surest; one that was given can be
// asked for again. None when they are settled, or when nothing would do.
func (c Model) missing(e Estimate, measures []measure) []Kind {
	var list []Kind
	for len(list) < maxMissing {
		var open []measure
		for _, q := range measures {
			if !q.enough(e) {
				open = append(open, q)
			}
		}
		if len(open) == 0 {
			return list
		}
		var best Kind
		least := math.Inf(1)
		var after Estimate
		for _, k := range c.ReadingKinds() {
			if slices.Contains(list, k) || k == Coupon || k == Tooth {
				continue
			}
			f, _ := c.form(Reading{Kind: k}, e.u)
			t := e
			t.take(f, f.at(e.u), c.sigma(k))
			sum := 0.0
			for _, q := range open {
				s := q.total(t) / (q.check.UpperLimit - q.check.LowerLimit)
				sum += float64(s * s)
			}
			if sum < least-tinyGain {
				best, least, after = k, sum, t
			}
		}
		if best == "" {
			break
		}
		list, e = append(list, best), after
	}
	for _, q := range measures {
		if !q.enough(e) {
			return nil
		}
	}
	return list
}

const (
	maxMissing = 4    // readings asked for at once
	tinyGain   = 1e-9 // between two readings that are as good, the first of their order is asked for
)
