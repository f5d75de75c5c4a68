package testcut

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// measure is a measure of the box, its limits, and what can be moved about it.
type measure struct {
	form
	check joinery.Check
	noise float64 // standard deviation of what the next cuts and the move add
	moved []Setting
}

func (q measure) judge(v float64) joinery.Check {
	k := q.check
	k.Nominal, k.Min, k.Max = v, v, v
	k.Verdict = k.VerdictOn(v, v)
	return k
}

func (q measure) total(e Estimate) float64 {
	s := e.sigma(q.by)
	return math.Sqrt(float64(s*s) + float64(q.noise*q.noise))
}

// enough reports whether the measure is surely within its limits.
func (q measure) enough(e Estimate) bool {
	return min(q.at0-q.check.LowerLimit, q.check.UpperLimit-q.at0) >= sure*q.total(e)
}

// within reports whether the measure is likely to be within its limits.
func (q measure) within() bool { return q.at0 >= q.check.LowerLimit && q.at0 <= q.check.UpperLimit }

// The measures of a test cut with tongues, by their places.
const (
	inRecess = iota
	inPlay
	inWidth
	inGap
	inInside // where the slide goes by it
)

// measures are those of the test cut as it is.
func (c Model) measures(u vector) []measure {
	if !c.joined {
		place := c.is.edge.at0
		height := geom.Interval{Min: place - c.spec.Limits.Height, Max: place + c.spec.Limits.Height}
		within := func(r geom.Interval, code joinery.CheckCode, name string, words joinery.Verdicts) joinery.Check {
			return joinery.Check{CheckID: joinery.CheckID{Code: code}, Name: name, LowerLimit: r.Min, UpperLimit: r.Max, Verdicts: words}
		}
		return []measure{
			{form: c.is.edge, check: within(height, GrooveHeight, "groove over the lower edge", joinery.HeightVerdicts), moved: []Setting{Fence}},
			{form: c.is.depth, check: within(c.depths, CutDepth, "depth of the cuts", joinery.DepthVerdicts), moved: []Setting{Height}},
		}
	}
	list := []measure{
		{form: c.is.recess, check: c.limits[joinery.CheckRecess]},
		{form: c.is.play, check: c.limits[joinery.CheckTongueClearance]},
		{form: c.is.width.near(u), check: c.limits[joinery.CheckOutsideWidth]},
		{form: c.is.gap, check: c.limits[fit.ShoulderGap]},
	}
	if c.inside {
		list = append(list, measure{form: c.is.inside.near(u), check: c.limits[fit.SlideClearance]})
	}
	return list
}

// plan is what the settings should be, and what the next parts will then measure.
type plan struct {
	moves    []Move
	measures []measure
	trouble  *geom.Diagnosis
}

// of are the measures that a setting moves.
func (p plan) of(s Setting) (list []measure) {
	for _, q := range p.measures {
		if slices.Contains(q.moved, s) {
			list = append(list, q)
		}
	}
	return list
}

// together are the settings that are left or moved as one with a setting: those that
// move a measure with it, and so on.
func (p plan) together(s Setting) []Setting {
	list := []Setting{s}
	for i := 0; i < len(list); i++ {
		for _, q := range p.of(list[i]) {
			for _, other := range q.moved {
				if !slices.Contains(list, other) {
					list = append(list, other)
				}
			}
		}
	}
	return list
}

// withIts are the measures that a setting moves, and those that are moved together with it.
func (p plan) withIts(s Setting) (list []measure) {
	group := p.together(s)
	for _, q := range p.measures {
		if slices.ContainsFunc(q.moved, func(s Setting) bool { return slices.Contains(group, s) }) {
			list = append(list, q)
		}
	}
	return list
}

// asItIs are the measures of the next parts that a setting moves, and those that are
// moved together with it, if nothing is moved: with what the next cuts differ by from
// these.
func (p plan) asItIs(c Model, e Estimate, s Setting) (list []measure) {
	group := p.together(s)
	for i, q := range c.measures(e.u) {
		after := p.measures[i]
		if slices.ContainsFunc(after.moved, func(s Setting) bool { return slices.Contains(group, s) }) {
			q.by[ofLength] = 0 // the next front has a length of its own
			q.at0, q.noise = q.at(e.u), after.noise
			list = append(list, q)
		}
	}
	return list
}

// moveSigma is how exactly a setting is moved by a given amount: with a shim,
// a feeler gauge or a dial indicator; common practice, no source.
const moveSigma = 0.02

// plan makes the moves. What is known for certain cancels out: after a move by what
// was estimated, a setting is off by no more than the estimate was.
func (c Model) plan(e Estimate) plan {
	list := c.measures(e.u)
	if !c.joined {
		return c.planSlots(e, list)
	}
	var p plan
	j := jointPlan{list[inRecess], list[inPlay], list[inWidth], list[inGap]}
	j.recess.moved, j.play.moved = []Setting{Fence}, []Setting{Fence}
	j.width.moved, j.gap.moved = []Setting{Height}, []Setting{Height}
	j.recess.noise, j.play.noise = c.next(4, 2), c.next(1, 2)
	j.width.noise, j.gap.noise = math.Hypot(c.next(4, 4), c.noise.Length/3), c.next(0, 2)
	if c.router {
		p.moves = c.planRouter(e, &j)
	} else {
		p.moves, p.trouble = c.planFenced(e, &j)
	}
	// Fronts not yet cut get their length from the thickness of the sides as known now,
	// so that the width is off by what is not known of it.
	w := c.is.tongueLength
	if s := c.is.depth; e.variance(s.by) > e.variance(w.by) {
		w = s // the less known of the two
	}
	meant := c.spec.Width
	if c.inside { // then what the sides measure comes out outside
		meant = c.drawer.Inside.Width + 2*c.is.side.at(e.u)
	}
	j.width.form = c.is.side.less(w).scaled(2).left(meant)
	j.gap.form = j.gap.left(c.is.gap.at0)
	p.measures = []measure{j.recess, j.play, j.width, j.gap}
	if c.inside {
		inside := list[inInside]
		inside.moved, inside.noise = j.width.moved, j.width.noise
		inside.form = w.scaled(-2).left(c.drawer.Inside.Width)
		p.measures = append(p.measures, inside)
	}
	return p
}

// jointPlan are the measures of a corner with tongues as the next parts will have them.
type jointPlan struct{ recess, play, width, gap measure }

// next is the standard deviation of what so many moves and so many next cuts add.
func (c Model) next(moves, cuts float64) float64 {
	cut := c.noise.Cut / 3
	return math.Sqrt(float64(moves*moveSigma*moveSigma) + float64(cuts*cut*cut))
}

// left is a form after a move: where it should be, with what is not known yet.
func (f form) left(at float64) form { return form{at, f.by} }

// planSlots is the plan of a test cut without tongues.
func (c Model) planSlots(e Estimate, list []measure) plan {
	p := plan{moves: []Move{
		moved(Fence, c.is.edge.at(e.u), c.is.edge.at0),
		setBack(Height, c.is.depth.at0, e.u[ofHeight]),
	}}
	for _, q := range list {
		q.noise = c.next(1, 1) // the form is that of the part as meant
		p.measures = append(p.measures, q)
	}
	return p
}

// planRouter makes the moves of a router. Slots follow the bit and the tongue; recess and
// play are as asked once the bit's diameter, the boards and the place are right.
func (c Model) planRouter(e Estimate, j *jointPlan) []Move {
	narrowest := c.spec.Cutter.Width + e.u[ofCutter] + c.spec.SlotRoom
	play := joinery.TongueClearanceAt(joinery.FenceForRecess(0, c.is.front.at(e.u)), narrowest)
	j.recess.form, j.play.form = j.recess.left(0), j.play.left(max(play, c.spec.DadoClearance))
	j.recess.noise, j.gap.noise = c.next(2, 2), c.next(2, 2)
	j.recess.moved, j.play.moved = []Setting{Fence, Height}, []Setting{Height}
	j.width.moved, j.gap.moved = []Setting{Height, EndPlace}, []Setting{Height, EndPlace}
	// Half of what the bit is off goes away with its diameter in the job.
	return []Move{
		setBack(Fence, c.is.edge.at0, e.u[ofFence]),
		setBack(Height, c.drawer.Setup.CutterHeight, e.u[ofHeight]),
		setBack(EndPlace, c.is.tongueLength.at0, e.u[ofEnd]),
	}
}

// planFenced makes the moves of a machine with a fence, and of a hand's gauge.
func (c Model) planFenced(e Estimate, j *jointPlan) (moves []Move, trouble *geom.Diagnosis) {
	target := c.target(e, &j.recess, &j.play)
	deep, long, settings := Height, Height, []Setting{Fence, Height}
	if c.own {
		deep, settings = DadoHeight, append(settings, DadoHeight)
	}
	if c.flat {
		// The dados and the rabbets have settings of their own. What is cut at the
		// height besides the dados are grooves, which nobody reads here.
		long, settings = EndPlace, []Setting{Fence, deep, RabbetHeight, EndPlace}
		j.recess.moved, j.play.moved = []Setting{Fence, RabbetHeight}, []Setting{RabbetHeight}
		j.recess.noise = c.next(2, 2)
	}
	if deep != long { // else one height makes both
		j.gap.moved, j.gap.noise = []Setting{long, deep}, c.next(2, 2)
	}
	if j.width.moved = j.gap.moved; c.own { // the tongues end before the dados' floors
		j.width.moved = []Setting{long}
	}
	for _, s := range settings {
		moves = append(moves, c.move(s, target, e))
	}
	return moves, c.troubleAt(target, e, c.is.front.at(e.u))
}

// move is that of a saw's setting to where it should be, with the fence's target.
func (c Model) move(s Setting, target float64, e Estimate) Move {
	from, to := c.is.edge.at(e.u), target
	switch s {
	case Fence:
		if !c.flat { // the tongue is what the fence sets twice
			from = c.is.tongue.at(e.u)
		}
	case Height:
		if from, to = c.is.tongueLength.at(e.u), c.is.tongueLength.at0; c.flat {
			from, to = c.is.depth.at(e.u), c.is.depth.at0
		}
	case DadoHeight:
		from, to = c.is.depth.at(e.u), c.is.depth.at0
	case RabbetHeight:
		from, to = c.is.rabbet.at(e.u), c.is.front.at(e.u)-target
	case EndPlace:
		from, to = c.is.tongueLength.at(e.u), c.is.tongueLength.at0
	}
	return moved(s, from, to)
}

func moved(s Setting, from, to float64) Move {
	return Move{Setting: s, From: from, To: to, By: to - from}
}

// setBack is the move of a setting that is off.
func setBack(s Setting, to, off float64) Move {
	return Move{Setting: s, From: to + off, To: to, By: -off}
}

// target is where the fence should be: where the measure that is nearer to its limit,
// in standard deviations, is the furthest from it. Recess and play are left as they
// will be there.
func (c Model) target(e Estimate, recess, play *measure) float64 {
	front, slot := c.is.front.at(e.u), c.is.slot.at(e.u)
	at := func(t float64) (r, p measure) {
		r, p = *recess, *play
		r.at0, p.at0 = joinery.RecessAt(t, front), joinery.TongueClearanceAt(t, slot)
		return r, p
	}
	rs, ps := recess.total(e), play.total(e)
	worst := func(t float64) float64 {
		r, p := at(t)
		margin := func(q measure, s float64) float64 { return min(q.at0-q.check.LowerLimit, q.check.UpperLimit-q.at0) / s }
		return min(margin(r, rs), margin(p, ps))
	}
	// The lesser of the two rises and then falls: the search closes in on its top.
	low, high := min(front/2, slot)-1, max(front/2, slot)+1
	for range 80 {
		a, b := low+(high-low)/3, high-(high-low)/3
		if worst(a) < worst(b) {
			low = a
		} else {
			high = b
		}
	}
	t := (low + high) / 2
	r, p := at(t)
	recess.form, play.form = form{r.at0, r.by}, form{p.at0, p.by}
	return t
}

// troubleAt says why even the best fence distance is not right; nil where it is.
func (c Model) troubleAt(t float64, e Estimate, front float64) *geom.Diagnosis {
	l := c.spec.Limits
	r, p := joinery.RecessAt(t, front), joinery.TongueClearanceAt(t, c.is.slot.at(e.u))
	if math.Abs(r) <= l.Flush && p >= l.TongueClearance.Min && p <= l.TongueClearance.Max {
		return nil
	}
	code, why, as := CodeWide, "wide", ""
	if p < (l.TongueClearance.Min+l.TongueClearance.Max)/2 {
		code, why = CodeNarrow, "narrow"
	}
	if c.flat {
		as = " with tongues as thick as that"
	}
	d := &geom.Diagnosis{Code: code, Level: geom.LevelWarning, Subject: geom.Subject{Setting: joinery.SettingCutter}}
	d.Fact = geom.Sentencef("the cutter is too %s for a box front of %s: no fence distance%s makes it flush with the right clearance",
		why, geom.Millimeters(front), as)
	d.Remedies = []geom.Remedy{{Changes: []geom.Change{{Setting: joinery.SettingCutter,
		Min: front/2 + l.TongueClearance.Min, Max: front/2 + l.TongueClearance.Max}}}}
	return d
}
