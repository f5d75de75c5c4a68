package testcut

import (
	"math"
	"slices"

	"drawerwright/geom/joinery"
)

// Move is by how much a setting has to be changed, in mm: above 0 the fence goes
// away from the cutter, the cutter up; of a router, the part is laid further in, the
// bit goes deeper.
type Move struct {
	What Setting
	By   float64
	From float64 // where it really is
	To   float64 // where it should be
	Do   Doing
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
}

// Doing is what to do about a setting.
type Doing string

const (
	// Leave it: the parts that it cuts come out right as it is, or as right as the shop
	// can tell.
	Leave Doing = "leave"
	// Make the move: once made, parts come out right.
	Make Doing = "move"
	// Measure more before it is moved: it may have to be left, or moved the other way.
	Measure Doing = "measure"
	// Try the move and cut another test piece: what is cut is wrong, and the limits leave
	// less room than the shop's tools tell.
	Try Doing = "try"
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

// Judged is a measure of the box with its limits: as it is likely, and how exactly
// that is known.
type Judged struct {
	joinery.Check
	Sigma float64
}

// Advice is what follows from a test cut.
type Advice struct {
	Estimate
	Stated      float64 // width of the cut by the job
	Cutter      Known   // as it really is
	Front, Side Known   // thicknesses
	Moves       []Move
	// AsIt is are the measures if nothing is moved, After those if the advice is followed.
	AsItIs, After []Judged
	// NoSetting says why no fence distance brings everything within the limits; empty
	// where one does.
	NoSetting Trouble
	Saves     []Save
	// AllRight reports that the test cut is right and that nothing is to be moved.
	AllRight bool
}

// Known is a length as estimated, with its standard deviation.
type Known struct{ Value, Sigma float64 }

// Trouble is why a cutter does not serve, with between which widths one would.
type Trouble struct {
	Why         string
	Least, Most float64
}

// sure is how many standard deviations a measure has to be within its limits for a
// reading to be enough: beyond are 0.27 %.
const sure = 3

// Advise works out what to do. With readings that contradict each other there are no
// moves: they have to be taken again.
func (c Cut) Advise(readings []Reading) Advice {
	a := Advice{Estimate: c.Solve(readings), Stated: c.blade}
	e := a.Estimate
	known := func(f form) Known { return Known{f.at(e.u), e.sigma(f.by)} }
	a.Cutter, a.Front, a.Side = Known{c.blade + e.u[ofCutter], e.sigma(unit(ofCutter))}, known(c.frontThickness()), known(c.sideThickness())
	for _, q := range c.measures(e.u) {
		a.AsItIs = append(a.AsItIs, Judged{q.judge(q.at(e.u)), e.sigma(q.by)})
	}
	if len(e.Clash) > 0 {
		return a
	}
	plan := c.plan(e)
	a.NoSetting = plan.trouble
	a.AllRight = !slices.ContainsFunc(a.AsItIs, func(j Judged) bool { return j.Verdict != j.Words.Within })
	for _, m := range plan.moves {
		c.decide(&m, e, plan)
		a.AllRight = a.AllRight && m.Do == Leave
		a.Moves = append(a.Moves, m)
	}
	for i, q := range plan.measures {
		if slices.ContainsFunc(a.Moves, func(m Move) bool { return slices.Contains(q.moved, m.What) && (m.Do != Leave || m.Better) }) {
			a.After = append(a.After, Judged{q.judge(q.at0), q.total(e)})
		} else { // all that moves it is left
			a.After = append(a.After, a.AsItIs[i])
		}
	}
	a.Saves = c.saves(e)
	return a
}

// leastReadings is how many readings have to speak of a setting before it is moved: one
// alone can be a slip of the eye, and nothing would show it.
const leastReadings = 2

// decide says what to do about a setting.
func (c Cut) decide(m *Move, e Estimate, p plan) {
	after, asItIs := p.of(m.What), p.asItIs(c, e, m.What)
	right := !slices.ContainsFunc(asItIs, func(q measure) bool { return !q.within() })
	sure := !slices.ContainsFunc(asItIs, func(q measure) bool { return !q.enough(e) })
	if sure {
		m.Do, m.Sure = Leave, true
		return
	}
	if m.Missing = c.missing(e, after); len(m.Missing) == 0 && c.speaking(e, m.What) < leastReadings {
		m.Missing = c.second(e, m.What)
	}
	settled := !slices.ContainsFunc(after, func(q measure) bool { return !q.enough(e) })
	switch {
	case len(m.Missing) > 0:
		m.Do = Measure
	case right: // and moving it by less than a shop can would change nothing
		m.Do, m.Better = Leave, settled
		m.Sure = settled && math.Abs(m.By) < moveSigma
	case settled:
		m.Do, m.Sure = Make, true
	case outOf(p.withIts(m.What)) > outOf(asItIs):
		m.Do, m.Worse = Leave, true
	default:
		m.Do = Try
	}
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
func (c Cut) speaking(e Estimate, s Setting) (n int) {
	for _, r := range e.Read {
		if f, ok := c.form(r.Reading, e.u); ok && !r.Left && f.by[unknownOf(s)] != 0 {
			n++
		}
	}
	return n
}

// second is the first reading not yet taken that says something of a setting; where
// there is no other one, a lonely reading is taken again, at another place.
func (c Cut) second(e Estimate, s Setting) []Kind {
	var again []Kind
	for _, k := range c.Takes() {
		if f, _ := c.form(Reading{Kind: k}, e.u); f.by[unknownOf(s)] == 0 {
			continue
		}
		if !slices.ContainsFunc(e.Read, func(r Residual) bool { return r.Kind == k }) {
			return []Kind{k}
		}
		again = []Kind{k}
	}
	if len(e.Read) < leastReadings {
		return again
	}
	return nil
}

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
	k.Verdict = k.Over(v, v)
	return k
}

func (q measure) total(e Estimate) float64 {
	s := e.sigma(q.by)
	return math.Sqrt(float64(s*s) + float64(q.noise*q.noise))
}

// enough tells whether the measure is surely within its limits.
func (q measure) enough(e Estimate) bool {
	return min(q.at0-q.check.Least, q.check.Most-q.at0) >= sure*q.total(e)
}

// within reports whether the measure is likely to be within its limits.
func (q measure) within() bool { return q.at0 >= q.check.Least && q.at0 <= q.check.Most }

// The measures of a test cut with tongues, by their places.
const (
	inRecess = iota
	inPlay
	inWidth
	inGap
	inInside // where the slide goes by it
)

// measures are those of the test cut as it is.
func (c Cut) measures(u vector) []measure {
	if !c.joined {
		height := joinery.Range{Least: c.f - c.spec.Limits.Height, Most: c.f + c.spec.Limits.Height}
		within := func(r joinery.Range, code, name string, words joinery.Words) joinery.Check {
			return joinery.Check{Code: code, Name: name, Least: r.Least, Most: r.Most, Words: words}
		}
		return []measure{
			{form: c.edge(), check: within(height, "groove-height", "groove over the lower edge", joinery.HeightWords), moved: []Setting{Fence}},
			{form: c.depth(), check: within(c.depths, "depth", "depth of the cuts", joinery.DepthWords), moved: []Setting{Height}},
		}
	}
	list := []measure{
		{form: c.recess(), check: c.limits["recess"]},
		{form: c.play(), check: c.limits["tongue-play"]},
		{form: c.width(u), check: c.limits["outside-width"]},
		{form: c.tongueLength().less(c.depth()), check: c.limits["shoulder-gap"]},
	}
	if c.inside {
		list = append(list, measure{form: c.insideWidth(u), check: c.limits["slide-clearance"]})
	}
	return list
}

// plan is what the settings should be, and what the next parts will then measure.
type plan struct {
	moves    []Move
	measures []measure
	trouble  Trouble
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
func (p plan) asItIs(c Cut, e Estimate, s Setting) (list []measure) {
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

// moveSigma is how exactly a setting is moved by an amount that is told: with a shim,
// a feeler gauge or a dial indicator; common practice, no source.
const moveSigma = 0.02

// plan makes the moves. What is known for certain cancels out: after a move by what
// was estimated, a setting is off by no more than the estimate was.
func (c Cut) plan(e Estimate) plan {
	var p plan
	cut := c.noise.Cut / 3
	noise := func(moves, cuts float64) float64 {
		return math.Sqrt(float64(moves*moveSigma*moveSigma) + float64(cuts*cut*cut))
	}
	left := func(f form, at float64) form { return form{at, f.by} } // after the move, of what is not known yet
	list := c.measures(e.u)
	if !c.joined {
		p.moves = []Move{
			{What: Fence, From: c.edge().at(e.u), To: c.f, By: c.f - c.edge().at(e.u)},
			{What: Height, From: c.h + e.u[ofHeight], To: c.h, By: -e.u[ofHeight]},
		}
		for i, at := range []float64{c.f, c.h} {
			q := list[i]
			q.form, q.noise = left(q.form, at), noise(1, 1)
			p.measures = append(p.measures, q)
		}
		return p
	}
	recess, play, width, gap := list[inRecess], list[inPlay], list[inWidth], list[inGap]
	front := c.frontThickness().at(e.u)
	recess.moved, play.moved = []Setting{Fence}, []Setting{Fence}
	width.moved, gap.moved = []Setting{Height}, []Setting{Height}
	recess.noise, play.noise = noise(4, 2), noise(1, 2)
	width.noise, gap.noise = math.Hypot(noise(4, 4), c.noise.Length/3), noise(0, 2)
	if c.router {
		// Slots follow the bit and the tongue; recess and play are as asked once the
		// bit's diameter, the boards and the place are right.
		half := front / 2
		recess.form, play.form = left(recess.form, 0), left(play.form, max(c.spec.Cutter.Width+e.u[ofCutter]+c.spec.SlotRoom-half, c.spec.DadoPlay))
		recess.noise, gap.noise = noise(2, 2), noise(2, 2)
		recess.moved, play.moved = []Setting{Fence, Height}, []Setting{Height}
		width.moved, gap.moved = []Setting{Height, EndPlace}, []Setting{Height, EndPlace}
		// Half of what the bit is off goes away with its diameter in the job.
		p.moves = []Move{
			{What: Fence, From: c.f + e.u[ofFence], To: c.f, By: -e.u[ofFence]},
			{What: Height, From: c.h + e.u[ofHeight], To: c.h, By: -e.u[ofHeight]},
			{What: EndPlace, From: c.h + e.u[ofEnd], To: c.h, By: -e.u[ofEnd]},
		}
	} else {
		target := c.target(e, &recess, &play)
		p.trouble = c.troubleAt(target, e, front)
		deep, moves := Height, []Setting{Fence, Height}
		if c.own {
			deep, moves = DadoHeight, append(moves, DadoHeight)
		}
		long := Height
		if c.flat {
			// The dados and the rabbets have settings of their own. What is cut at the
			// height besides the dados are grooves, which nobody reads here.
			long, moves = EndPlace, []Setting{Fence, deep, RabbetHeight, EndPlace}
			recess.moved, play.moved = []Setting{Fence, RabbetHeight}, []Setting{RabbetHeight}
			recess.noise = noise(2, 2)
		}
		if deep != long { // else one height makes both
			gap.moved, gap.noise = []Setting{long, deep}, noise(2, 2)
		}
		if width.moved = gap.moved; c.own { // the tongues end before the dados' floors
			width.moved = []Setting{long}
		}
		for _, s := range moves {
			p.moves = append(p.moves, c.move(s, target, e))
		}
	}
	// Fronts not yet cut get their length from the thickness of the sides as known now,
	// so that the width is off by what is not known of it.
	w := c.tongueLength()
	if s := c.depth(); e.variance(s.by) > e.variance(w.by) {
		w = s // the less known of the two
	}
	meant := c.spec.Width
	if c.inside { // then what the sides measure comes out outside
		meant = c.drawer.Inside.Width + 2*c.sideThickness().at(e.u)
	}
	width.form = left(c.sideThickness().less(w).scaled(2), meant)
	gap.form = left(gap.form, -c.spec.GlueRoom)
	p.measures = []measure{recess, play, width, gap}
	if c.inside {
		inside := list[inInside]
		inside.moved, inside.noise = width.moved, width.noise
		inside.form = left(w.scaled(-2), c.drawer.Inside.Width)
		p.measures = append(p.measures, inside)
	}
	return p
}

// move is that of a saw's setting to where it should be, with the fence's target.
func (c Cut) move(s Setting, target float64, e Estimate) Move {
	from, to := c.edge().at(e.u), target
	switch s {
	case Fence:
		if !c.flat { // the tongue is what the fence sets twice
			from = c.tongue().at(e.u)
		}
	case Height:
		if from, to = c.tongueLength().at(e.u), c.h; c.flat {
			from = c.depth().at(e.u)
		}
	case DadoHeight:
		from, to = c.depth().at(e.u), c.h+c.spec.GlueRoom
	case RabbetHeight:
		from, to = c.rabbet().at(e.u), c.frontThickness().at(e.u)-target
	case EndPlace:
		from, to = c.tongueLength().at(e.u), c.h
	}
	return Move{What: s, From: from, To: to, By: to - from}
}

// target is where the fence should be: where the measure that is nearer to its limit,
// in standard deviations, is the furthest from it. Recess and play are left as they
// will be there.
func (c Cut) target(e Estimate, recess, play *measure) float64 {
	front, slot := c.frontThickness().at(e.u), c.slot().at(e.u)
	at := func(t float64) (r, p measure) {
		r, p = *recess, *play
		r.at0, p.at0 = 2*t-front, slot-t
		return r, p
	}
	rs, ps := recess.total(e), play.total(e)
	worst := func(t float64) float64 {
		r, p := at(t)
		margin := func(q measure, s float64) float64 { return min(q.at0-q.check.Least, q.check.Most-q.at0) / s }
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

// troubleAt says why even the best fence distance is not right.
func (c Cut) troubleAt(t float64, e Estimate, front float64) Trouble {
	l := c.spec.Limits
	r, p := 2*t-front, c.slot().at(e.u)-t
	if math.Abs(r) <= l.Recess && p >= l.TonguePlay.Least && p <= l.TonguePlay.Most {
		return Trouble{}
	}
	why := "wide"
	if p < (l.TonguePlay.Least+l.TonguePlay.Most)/2 {
		why = "narrow"
	}
	return Trouble{Why: why, Least: front/2 + l.TonguePlay.Least, Most: front/2 + l.TonguePlay.Most}
}

// missing are the readings that would settle some measures, chosen one by one: each
// time the one after which all together are the surest; one that was given can be
// asked for again. None when they are settled, or when nothing would do.
func (c Cut) missing(e Estimate, measures []measure) []Kind {
	var list []Kind
	for len(list) < mostMissing {
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
		for _, k := range c.Takes() {
			if slices.Contains(list, k) || k == Coupon || k == Tooth {
				continue
			}
			f, _ := c.form(Reading{Kind: k}, e.u)
			t := e
			t.take(f, f.at(e.u), c.sigma(k))
			sum := 0.0
			for _, q := range open {
				s := q.total(t) / (q.check.Most - q.check.Least)
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
	mostMissing = 4    // readings asked for at once
	tinyGain    = 1e-9 // between two readings that are as good, the first of their order is asked for
)
