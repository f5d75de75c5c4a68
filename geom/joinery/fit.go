package joinery

import "math"

// Verdict says in a word what a joint will do.
type Verdict string

const (
	Goes     Verdict = "goes together"
	Tight    Verdict = "tight"
	Loose    Verdict = "loose"
	WillNot  Verdict = "will not"
	IsFlush  Verdict = "flush"
	Recessed Verdict = "recessed"
	Proud    Verdict = "proud"
)

// Check is one measure of the finished joint, in millimetres: for the mean of
// the caliper readings, and the least and the greatest that the readings allow
// with the cuts as set. Verdict judges the nominal one against the limits.
type Check struct {
	Name              string
	Nominal, Min, Max float64
	Least, Most       float64 // limits
	Verdict           Verdict
}

func (l *layout) check(name string, nominal, atMost, atLeast, least, most float64, judge func(c Check) Verdict) Check {
	c := Check{Name: name, Nominal: nominal, Min: math.Min(atMost, atLeast), Max: math.Max(atMost, atLeast), Least: least, Most: most}
	c.Verdict = judge(c)
	l.drawer.Fit = append(l.drawer.Fit, c)
	return c
}

func judgePlay(c Check) Verdict {
	switch {
	case c.Nominal <= settle:
		return WillNot
	case c.Nominal < c.Least-settle:
		return Tight
	case c.Nominal > c.Most+settle:
		return Loose
	}
	return Goes
}

func judgeRecess(c Check) Verdict {
	switch {
	case c.Nominal < c.Least-settle:
		return Proud
	case c.Nominal > c.Most+settle:
		return Recessed
	}
	return IsFlush
}

// tonguePlay is w - f. A saw leaves the tongue f thick whatever the board, as
// the inside face runs against the fence; a router cuts down from the outside
// face, so that the tongue takes up all of the board's variation.
func (l *layout) tonguePlay(r Role) Check {
	stock, _ := l.stockOf(r)
	t, vary := stock.Thickness, 0.0
	if l.Cutter.Kind == Router {
		vary = 1
	}
	nominal := l.dado - l.f
	return l.check(string(r)+" tongue play in its dado", nominal, nominal-vary*(t.Max-t.Mean), nominal+vary*(t.Mean-t.Min),
		leastTonguePlay, mostTonguePlay, judgePlay)
}

// recess is 2 f - T, with the tongue against its dado's outer wall: how far the
// panel stands back from the ends of the sides, negative when it is proud. From
// the router, the outside face is where the rabbet's depth puts it.
func (l *layout) recess(r Role) Check {
	stock, _ := l.stockOf(r)
	t, vary := stock.Thickness, 1.0
	if l.Cutter.Kind == Router {
		vary = 0
	}
	nominal := 2*l.f - t.Mean
	return l.check(string(r)+" set back from the side ends", nominal, nominal-vary*(t.Max-t.Mean), nominal+vary*(t.Mean-t.Min),
		-mostRecess, mostRecess, judgeRecess)
}

// bottomPlay is the groove's width less what stands in it.
func (l *layout) bottomPlay() Check {
	t := l.Bottom.Thickness
	nominal := l.groove - l.inGroove()
	return l.check("bottom play in its groove", nominal, nominal-(t.Max-t.Mean), nominal+(t.Mean-t.Min),
		leastBottomPlay, mostBottomPlay, judgePlay)
}
