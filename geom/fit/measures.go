package fit

import (
	"math"
	"slices"

	"drawerwright/geom/joinery"
)

// model gathers the measures of a drawer.
type model struct {
	d       joinery.Drawer
	cuts    *Cuts
	sources []Source
	slide   *SlideFit // nil without
	list    []Measure
}

// known adds a check of the package joinery.
func (m *model) known(c joinery.Check) {
	e := 0
	if c.Part == joinery.Back {
		e = 1
	}
	switch cuts := m.cuts; c.Code {
	case joinery.CheckTongueClearance:
		m.add(c, straight(cuts.Clearance(e)))
	case joinery.CheckRecess:
		m.add(c, straight(cuts.Recess(e)))
		m.foremost(fence)
	case joinery.CheckLap:
		m.add(c, straight(cuts.lap(0)))
	case joinery.CheckBackClearance:
		m.add(c, straight(cuts.backClearance()))
	case joinery.CheckFingerClearance:
		m.add(c, straight(cuts.FingerClearance))
	case joinery.CheckDividerClearance:
		at := len(m.sources)
		t := Measured(m.d.Spec.Dividers[c.Item-1].Stock.Thickness)
		m.sources = append(m.sources[:at:at], Source{Name: "thickness of the divider", Minus: t.Minus, Plus: t.Plus, Cause: OfDividers})
		m.add(c, straight(cuts.dividerClearance(c.Item, at)))
	case joinery.CheckGrooveClearance:
		m.add(c, straight(cuts.grooveClearance()))
	case joinery.CheckBottomFlush:
		m.add(c, straight(cuts.flushness()))
	case joinery.CheckOutsideWidth:
		m.add(m.runningToo(c), cuts.Width())
	case joinery.CheckOutsideDepth:
		m.add(c, cuts.depth())
		m.foremost(sideLength)
	}
}

// forecast is a measure by the sources of a forecast: a router's boards lie against stops
// of which one is off as the other, for all that it knows.
func (m *model) forecast(r Response) Response {
	if m.cuts.router() {
		return r.merged(endFence, fence)
	}
	return r
}

// add adds a measure with its stack.
func (m *model) add(c joinery.Check, r Response) {
	r = m.forecast(r)
	m.put(c, Stack{Value: r.Value, together: r, Terms: r.Terms()})
}

func (m *model) put(c joinery.Check, s Stack) {
	s.Sources = m.sources
	m.list = append(m.list, Measure{Check: c, Stack: s})
}

// foremost puts a term of the last measure before the others: of several that move it as
// much, that one is named as the largest.
func (m *model) foremost(source int) {
	terms := m.list[len(m.list)-1].Stack.Terms
	i := slices.IndexFunc(terms, func(t Term) bool { return t.Source == source })
	if i > 0 {
		term := terms[i]
		copy(terms[1:i+1], terms[:i])
		terms[0] = term
	}
}

// extra adds a measure that the package joinery does not have.
func (m *model) extra(c joinery.Check, r Response) {
	m.add(c, r)
	m.settle()
}

// settle gives the last measure its value and its range over the readings, as the others
// have it, and the verdict on that.
func (m *model) settle() {
	last := &m.list[len(m.list)-1]
	s := last.Stack
	s.Sources = slices.Clone(m.sources)
	for i := cutter; i < sources; i++ {
		s.Sources[i].Minus, s.Sources[i].Plus = 0, 0
	}
	r := s.Result()
	last.Nominal, last.Min, last.Max = r.Nominal, r.Worst.Min, r.Worst.Max
	last.Verdict = last.VerdictOn(last.Min, last.Max)
}

// ends are front and back, or the front alone where they are twins or the back is
// not on tongues.
func (m *model) ends() []joinery.Role {
	if s := m.d.Spec; s.Front.Same(s.Back) || s.BackJoint == joinery.Housed {
		return []joinery.Role{joinery.Front}
	}
	return []joinery.Role{joinery.Front, joinery.Back}
}

// seats adds the second seat of front and back: the tongue against the inner wall of
// its dado. What it has in play comes on top.
func (m *model) seats() {
	if m.d.Spec.Joint != joinery.DadoRabbet {
		return
	}
	limits := m.d.Spec.Limits
	for e, r := range m.ends() {
		m.extra(joinery.Check{CheckID: joinery.CheckID{Code: RecessInner, Part: r}, Name: r.String() + " recess, pushed inward (the tongue against the inner wall of its dado)",
			LowerLimit: -limits.Flush, UpperLimit: limits.Flush + limits.TongueClearance.Max,
			Verdicts: joinery.Verdicts{Within: joinery.GoesTogether, Below: joinery.Proud, Above: joinery.Recessed}}, straight(m.cuts.recessInner(e)))
		m.foremost(fence)
	}
}

// shoulder adds the gap at the front's shoulder when its tongue is home.
func (m *model) shoulder() {
	if m.d.Spec.Joint != joinery.DadoRabbet {
		return
	}
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: ShoulderGap, Part: joinery.Front},
		Name:       "open at the shoulders (where the faces beside the tongue meet; below 0: room at the tongue's end)",
		LowerLimit: -m.d.Spec.Limits.EndClearance, UpperLimit: m.d.Spec.Limits.ShoulderGap,
		Verdicts: joinery.Verdicts{Within: joinery.GoesTogether, Below: joinery.Loose, Above: joinery.Open}}, straight(m.cuts.ShoulderGap()))
	m.foremost(leftRabbet)
}

// slack adds what the bottom is smaller than its grooves, both ways. Front and back are
// pushed outward, where the box is as large as asked.
func (m *model) clearance() {
	s := m.d.Spec
	if s.BottomFit == joinery.BottomApplied {
		return
	}
	check := func(code joinery.CheckCode, least float64) joinery.Check {
		return joinery.Check{CheckID: joinery.CheckID{Code: code, Part: joinery.Bottom}, Name: joinery.BottomClearanceName(code),
			LowerLimit: least, UpperLimit: s.Limits.BottomClearance.Max, Verdicts: joinery.ClearanceVerdicts}
	}
	least := s.Limits.BottomClearance.Min
	m.extra(check(joinery.CheckBottomClearance, least), m.cuts.bottomClearance())
	if s.BottomFit.SlidesIn() { // it is open behind: nothing keeps the corners from closing
		least = 0
	}
	m.extra(check(joinery.CheckBottomClearanceDepth, least), straight(m.cuts.bottomClearanceDepth()))
}

// insert adds what a loose insert is shorter than the inside of the box, both ways.
func (m *model) insert() {
	if m.d.Spec.Insert == nil {
		return
	}
	limits := joinery.InsertLimits
	check := func(code joinery.CheckCode, room Response, strips float64) {
		at, length := len(m.sources), m.sources[frontLength]
		length.Name = "length of the insert's strips"
		m.sources = append(m.sources[:at:at], length)
		m.extra(joinery.Check{CheckID: joinery.CheckID{Code: code, Part: joinery.InsertRole}, Name: joinery.InsertClearanceName(code),
			LowerLimit: limits.Min, UpperLimit: limits.Max, Verdicts: joinery.ClearanceVerdicts}, room.plus(off(at), -1).plus(fixed(strips), -1))
	}
	check(joinery.CheckInsertClearance, m.cuts.Inside(), m.cuts.dims.InsertAcross)
	check(joinery.CheckInsertClearanceDepth, straight(m.cuts.insideDepth()), m.cuts.dims.InsertAlong)
}

// step adds how the bottom's groove lines up round the box: as a bottom that stands in it
// lifts the walls, their lower edges do.
func (m *model) step() {
	s := m.d.Spec
	if !s.BottomFit.Grooved() {
		return
	}
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: GrooveStep, Part: joinery.Bottom},
		Name:       "step of the bottom's groove (below 0: lower in the sides)",
		LowerLimit: -s.Limits.Flush, UpperLimit: s.Limits.Flush,
		Verdicts: joinery.Verdicts{Within: joinery.GoesTogether, Below: joinery.Low, Above: joinery.High}}, straight(m.cuts.grooveStep()))
}

// over adds how the back comes to stand on a bottom that is slid in under it: as high as the
// bottom is, so that its upper edge is planed level with those of the sides, or stays under them.
func (m *model) over() {
	s := m.d.Spec
	if !s.BottomFit.SlidesIn() {
		return
	}
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: BackOverBottom, Part: joinery.Back},
		Name:       "back over the bottom (below 0: lifted by it)",
		LowerLimit: -s.Limits.Height, UpperLimit: s.Limits.Height,
		Verdicts: joinery.Verdicts{Within: joinery.GoesTogether, Below: joinery.High, Above: joinery.Low}}, straight(m.cuts.backOverBottom()))
}

// size adds the height and the diagonals.
func (m *model) size() {
	l, d := m.d.Spec.Limits, m.d
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: OutsideHeight}, Name: "outside height",
		LowerLimit: d.Outside.Height - l.Height, UpperLimit: d.Outside.Height + l.Height, Verdicts: joinery.HeightVerdicts}, straight(m.cuts.height(d.Outside.Height)))
	deep := d.DiagonalDepth()
	across := diagonal{m.forecast(m.cuts.Width()), length(deep, sideLength)}
	meant := hypot(d.Outside.Width, deep)
	m.put(joinery.Check{CheckID: joinery.CheckID{Code: Diagonal}, Name: "diagonals over the sides' outside corners",
		LowerLimit: meant - l.Diagonal, UpperLimit: meant + l.Diagonal, Verdicts: joinery.DiagonalVerdicts},
		Stack{Value: across.Value, together: across,
			Terms: append(across.wide.Terms(), straight(across.deep).Terms()...)}) // it rises with both
	m.settle()
}

// runningToo is the check of the outside width with the limits of a slide that goes by it: one width has to suit both,
// and every list of what is right gives the narrower limits.
func (m *model) runningToo(c joinery.Check) joinery.Check {
	if m.slide == nil || m.slide.InsideCounts {
		return c
	}
	least, most := max(c.LowerLimit, m.slide.Min), min(c.UpperLimit, m.slide.Max)
	if least > most { // no width suits both, which the slide's measure says
		return c
	}
	c.LowerLimit, c.UpperLimit = least, most
	c.Verdict = c.VerdictOn(c.Min, c.Max)
	return c
}

// runs adds what the slide wants.
func (m *model) runs() {
	if m.slide == nil {
		return
	}
	c := joinery.Check{CheckID: joinery.CheckID{Code: SlideClearance}, Name: "outside width for the slides",
		LowerLimit: m.slide.Min, UpperLimit: m.slide.Max, Verdicts: joinery.WidthVerdicts}
	wide := m.cuts.Width()
	if m.slide.InsideCounts {
		c.Name, wide = "inside width for the slides", m.cuts.Inside()
	}
	m.extra(c, wide)
}

// diagonal is that of a rectangle.
type diagonal struct {
	wide Response
	deep Linear
}

// Value is the diagonal with what is off, by source.
func (d diagonal) Value(off []float64) float64 { return hypot(d.wide.Value(off), d.deep.Value(off)) }

func (d diagonal) lanes(off []lanes, v *lanes) {
	var w lanes
	d.wide.lanes(off, &w)
	d.deep.lanes(off, v)
	for j := range v {
		v[j] = hypot(w[j], v[j])
	}
}

func (d diagonal) appendTo(key []byte) []byte {
	return d.deep.appendTo(d.wide.appendTo(append(key, "diagonal"...)))
}

func (d diagonal) movers() []int { return append(d.wide.movers(), straight(d.deep).movers()...) }

// hypot keeps products out of sums, so that every processor rounds alike.
func hypot(a, b float64) float64 { return math.Sqrt(float64(a*a) + float64(b*b)) }
