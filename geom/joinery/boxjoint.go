package joinery

import (
	"math"

	"drawerwright/geom"
)

// sawnFingers is the play of fingers that a jig makes, in millimeters in all: the middle of
// its limits, so that what the cuts differ by has room either way.
func (l *layout) sawnFingers() float64 {
	return l.printed((minFingerClearance + l.Limits.TongueClearance.Max) / 2)
}

// finger is a stretch of a panel's end, from low to high over its lower edge, that
// stands in by so much; 0 where the panel runs on to its end. What stands in beside tails gets
// narrower toward the end, at either side by so much.
type finger struct{ low, high, in, lowRun, highRun float64 }

// boxJoint lays out fingers on all four walls, as long as the other wall is thick.
// The walls' height is divided into rows of a pitch p; front and back have their
// fingers in the first, third and so on from below, the sides in the others. With
// a play e, fingers are p - e/2 wide, notches p + e/2, with half of that at each of
// their edges.
//
//	side          D x H
//	front, back   W x H
//
// A router's pitch divides the height into an odd number of rows; a saw's is what
// its cutter and jig make, one row is what suits the bottom's groove
// ([layout.planFingers]) and the topmost what is left.
func (l *layout) boxJoint() {
	l.interlocked(l.checkPitch, func() {
		l.planFingers()
		l.checkFingers()
	})
}

// interlocked lays out a corner with fingers, or tails and pins: can is whether the machine cuts
// them, plan sees to them when the bottom is known.
func (l *layout) interlocked(can, plan func()) {
	l.toFront, l.toBack = l.Tf, l.Tk
	l.maxSlot = math.Inf(1) // no tongue to suit
	l.lay(func() {
		l.dropGlueSpace()
		if l.BottomFit.Grooved() {
			l.checkSideDepth()
		}
		l.checkGrooveDepth()
		l.checkHoused()
		can()
		if l.BottomFit.SlidesIn() && l.BackJoint != Housed {
			l.fail(geom.Diagnosis{
				Code: "bottom-fit", Subject: about(SettingBottomFit, Back),
				Fact: geom.Sentencef("the back's " + l.Joint.teeth() +
					" would show below its shortened edge, where the bottom is slid in"),
				Ask: geom.Sentencef("take another bottom"),
				Remedies: []geom.Remedy{
					write(SettingBackJoint, Housed).With(l.exactly(SettingBackSetback, usualBackSetback)),
					write(SettingBottomFit, BottomGroovedIn),
					write(SettingBottomFit, BottomApplied),
				},
			})
		}
	}, func() {
		l.level()
		l.lapsOfFingers()
		l.chooseBottom()
		plan()
		l.fingeredWidth()
		l.checkProportions()
	}, l.fingeredEnd)
}

// checkPitch judges whether the slots of a saw leave fingers between them.
func (l *layout) checkPitch() {
	pitch, play := l.fingerPitch()
	if !l.Cutter.Kind.Fenced() || pitch >= minRabbet-settle {
		return
	}
	l.fail(geom.Diagnosis{
		Code: "finger-width", Subject: about(SettingCutter, Side),
		Measured: geom.Millimeters(pitch), Limit: geom.Millimeters(minRabbet),
		Fact: geom.Sentencef("slots of %s with %s of clearance leave fingers of less than %s",
			geom.Millimeters(l.Cutter.Width), geom.Millimeters(play), geom.Millimeters(minRabbet)),
		Ask:      geom.Sentencef("take a wider cutter, or a smaller max-tongue-clearance among the limits"),
		Remedies: []geom.Remedy{l.least(SettingCutter, minRabbet+play/2)},
	})
}

func (l *layout) fingeredEnd(r Role) ending {
	stock, _ := l.stockOf(r)
	t := stock.Thickness.Mean
	ends := l.rows(0, l.Ts)
	p := geom.Panel{Outline: fingered(l.Width, l.wallHeight(), ends, ends), Thickness: t,
		EdgeCuts: fingerCuts(geom.FingerCut, l.Width, ends, ends)}
	if l.Joint == Dovetail {
		p.EdgeCuts, p.Pockets = fingerCuts(geom.PinCut, l.Width, ends, ends), l.flanks(ends, t)
	}
	l.outlineBit(&p, l.sameFingers)
	e := ending{fingers: l.rows(1, t), reach: t - l.h, stand: l.placed(r, 0)}
	if l.BottomFit.Grooved() {
		row := l.rowOf(l.rise)
		inFinger := row%2 == 0 // of front and back
		a, b := 0.0, 0.0
		switch stopped := l.GrooveEnds == GrooveStopped; {
		case inFinger:
			b, e.reach = t, t // the sides begin there
			if stopped {
				a = l.stopBefore(l.Ts - l.h)
			}
		default:
			a = l.Ts
			if stopped {
				b = l.stopBefore(t - l.h)
			}
		}
		groove := l.grooved(a, l.Width-a)
		if l.Joint == Dovetail { // it runs out into the sockets, which are waste when it is cut
			groove.Whole = geom.Rectangle(0, l.rise, l.Width, l.rise+l.groove)
		}
		l.runThrough(&groove, l.Width)
		if inFinger && a > 0 {
			at := l.Ts - l.h + l.BottomClearance/2
			groove.Takes = geom.Rectangle(at, l.rise, l.Width-at, l.rise+l.groove)
		}
		p.Pockets = append(p.Pockets, groove)
		e.groove = b
	}
	e.panel = p
	return e
}

// fingerPitch is the pitch of the rows of fingers, and their play.
func (l *layout) fingerPitch() (pitch, play float64) {
	if l.Joint == Dovetail {
		return l.tail(), l.DadoClearance
	}
	if l.Cutter.Kind.Fenced() {
		play = l.sawnFingers()
		return l.Cutter.Width - play/2, play
	}
	return l.pitchWith(l.minFinger()), l.DadoClearance
}

// pitchWith is the pitch of a router's fingers between which a notch of a width is the
// least.
func (l *layout) pitchWith(least float64) float64 {
	wish := l.FingerWidth
	if wish == 0 {
		wish = math.Max(l.Ts, math.Max(l.rise+l.groove+minRabbet, least))
	}
	n := math.Max(1, math.Round((l.wallHeight()/wish-1)/2))
	for n > 1 && l.wallHeight()/(2*n+1)+l.DadoClearance/2 < least {
		n--
	}
	return l.wallHeight() / (2*n + 1)
}

// sameFingers reports whether fingers would be the same with a bit alone.
func (l *layout) sameFingers(d float64) bool {
	least := 2*d + fingerFloor
	return nearly(l.pitchWith(least), l.pitchWith(l.minFinger())) && l.pitchWith(least)+l.DadoClearance/2 >= least-settle
}

// rows are the stretches of an end whose fingers are in the odd or the even rows;
// in the others it stands in.
func (l *layout) rows(odd int, in float64) []finger {
	_, play := l.fingerPitch()
	at := l.edges()
	var list []finger
	for i := range len(at) - 1 {
		f := finger{low: at[i], high: at[i+1]}
		grow := -play / 4
		if i%2 != odd {
			f.in, grow = in, play/4
		}
		if i > 0 {
			f.low -= grow
		}
		if i < len(at)-2 {
			f.high += grow
		}
		if odd == 1 && l.Joint == Dovetail {
			f = f.splayed(in/l.slope(), i > 0, i < len(at)-2)
		}
		list = append(list, f)
	}
	return list
}

// minFinger is the width of notches between whose relieved corners, twice a bit and
// a little, a floor is left to seat on.
func (l *layout) minFinger() float64 {
	if !l.Cutter.Kind.FollowsDrawing() {
		return 0
	}
	return 2*l.Cutter.Width + fingerFloor
}

// fingerFloor is that floor with what a relief is larger than its bit, in millimeters.
const fingerFloor = 1.5

// fingered is a panel with fingers at its left and right ends, and the inside
// corners that take the other part's fingers. The last side is the lower edge, side
// 2 n - 1 of n stretches at the right the upper one; all others bear on fingers.
func fingered(length, height float64, left, right []finger) (outline geom.Loop) {
	add := func(x, y float64, inner bool) {
		v := geom.Vertex{Point: geom.Point{X: x, Y: y}}
		if inner {
			v.Marks = geom.Relief
		}
		outline = append(outline, v)
	}
	if len(right) == 0 {
		right = []finger{{high: height}}
	}
	if len(left) == 0 {
		left = []finger{{high: height}}
	}
	for i, f := range right {
		low, high := f.low, f.high
		add(length-f.in, low, f.in > 0 && i > 0)
		add(length-f.in, high, f.in > 0 && i < len(right)-1)
	}
	for i := len(left) - 1; i >= 0; i-- {
		f := left[i]
		add(f.in, f.high, f.in > 0 && i < len(left)-1)
		add(f.in, f.low, f.in > 0 && i > 0)
	}
	for side := range len(outline) - 1 {
		if side != 2*len(right)-1 {
			outline[side].Marks |= geom.Mating
		}
	}
	return outline
}

// fingerCuts are what is cut away between the fingers of a panel's ends.
func fingerCuts(kind geom.EdgeKind, length float64, left, right []finger) (cuts []geom.EdgeCut) {
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	for _, f := range left {
		if f.in > 0 {
			cuts = append(cuts, geom.EdgeCut{Kind: kind, Area: geom.Polygon(
				at(0, f.low+f.lowRun), at(f.in, f.low), at(f.in, f.high), at(0, f.high-f.highRun))})
		}
	}
	for _, f := range right {
		if f.in > 0 {
			cuts = append(cuts, geom.EdgeCut{Kind: kind, Area: geom.Polygon(
				at(length-f.in, f.low), at(length, f.low+f.lowRun), at(length, f.high-f.highRun),
				at(length-f.in, f.high))})
		}
	}
	return cuts
}

// runThrough lets a groove that does not stop run from end to end of the blank, whose
// fingers are cut later.
func (l *layout) runThrough(k *geom.Pocket, length float64) {
	whole := geom.Rectangle(0, l.rise, length, l.rise+l.groove)
	if l.GrooveEnds != GrooveStopped && k.Outline.Bounds() != whole.Bounds() {
		k.Whole = whole
	}
}

// checkFingers judges the fingers against bit, height and groove.
func (l *layout) checkFingers() {
	pitch, play := l.fingerPitch()
	at := l.edges()
	l.checkInterlocked(play)
	if len(at) < 4 {
		l.noRoomForFingers(pitch, play)
		return
	}
	if notch := pitch + play/2; notch < l.minFinger()-settle {
		l.refuse(geom.Diagnosis{
			Code: "finger-width", Subject: about(SettingFingerWidth, Side),
			Measured: geom.Millimeters(notch), Limit: geom.Millimeters(l.minFinger()),
			Fact:     geom.Sentencef("notches of %s are too narrow: the reliefs that the smallest bit, %s, makes in their corners leave no floor", geom.Millimeters(notch), geom.Millimeters(l.Cutter.Width)),
			Ask:      geom.Sentencef("take a smaller bit, or another corner"),
			Remedies: l.fingerWays(notch),
		}, true)
	}
	switch notch := l.FingerWidth + play/2; {
	case l.FingerWidth == 0:
	case l.Cutter.Kind.Fenced() && math.Abs(l.FingerWidth-pitch) > sameFence:
		l.warn(geom.Diagnosis{
			Code: "finger-width", Subject: about(SettingFingerWidth, Side),
			Measured: geom.Millimeters(l.FingerWidth), Limit: geom.Millimeters(pitch),
			Fact:     geom.Sentencef("a saw cuts fingers as wide as its slots less half of the clearance: %s, not %s", geom.Millimeters(pitch), geom.Millimeters(l.FingerWidth)),
			Ask:      geom.Sentencef("leave finger-width out"),
			Remedies: []geom.Remedy{l.exactly(SettingFingerWidth, pitch), l.exactly(SettingCutter, l.FingerWidth+play/2)},
		})
	case notch < l.minFinger()-settle:
		l.warn(geom.Diagnosis{
			Code: "finger-width", Subject: about(SettingFingerWidth, Side),
			Measured: geom.Millimeters(notch), Limit: geom.Millimeters(l.minFinger()),
			Fact:     geom.Sentencef("fingers of %s are too narrow for the smallest bit, %s, and its reliefs: they are made %s wide", geom.Millimeters(l.FingerWidth), geom.Millimeters(l.Cutter.Width), geom.Millimeters(pitch)),
			Ask:      geom.Sentencef("take a smaller bit"),
			Remedies: l.fingerWays(notch),
		})
	}
	l.checkRows(pitch, play)
}

// checkInterlocked judges the clearance of fingers or tails.
func (l *layout) checkInterlocked(play float64) {
	c := l.check(Check{CheckID: CheckID{Code: CheckFingerClearance, Part: Side},
		Name: "clearance of the " + l.Joint.teeth() + " in their notches", Nominal: play,
		LowerLimit: minFingerClearance, UpperLimit: l.Limits.TongueClearance.Max, Verdicts: ClearanceVerdicts}, l.Sides.Thickness, 0)
	if c.Verdict == WillNot || l.setWrong(c) {
		least, most := l.usual(c)
		l.say(c.Misfit(geom.Diagnosis{
			Code: "finger-clearance", Level: refused(c.Verdict == WillNot), Subject: about(SettingDadoClearance, Side),
			Fact: geom.Sentencef("the "+l.Joint.teeth()+" have %s of clearance in their notches: %s", l.ranged(c),
				c.Words()),
			Ask:      unlikeBoards,
			Remedies: []geom.Remedy{l.between(SettingDadoClearance, least, most)},
		}))
	}
}

// noRoomForFingers refuses walls that are too low for three rows.
func (l *layout) noRoomForFingers(pitch, play float64) {
	need := 3*pitch + l.wallStand()
	if l.Cutter.Kind.Fenced() {
		need = l.fingersNeed()
	}
	l.refuse(geom.Diagnosis{
		Code: "finger-width", Subject: about(SettingFingerWidth, Side),
		Fact: geom.Sentencef("sides of %s have no room for the three fingers of %s that a box joint needs",
			geom.Millimeters(l.wallHeight()), geom.Millimeters(pitch)),
		Ask:      geom.Sentencef("make the box higher, or take another corner"),
		Remedies: append(l.fingerWays(l.wallHeight()/3-play/2), l.least(SettingOutside, need).Of("height", 0)),
	}, true)
}

// fingerWays are fingers and bits that go with each other, for notches as wide as they
// can be.
func (l *layout) fingerWays(notch float64) []geom.Remedy {
	if l.Cutter.Kind.Fenced() {
		return []geom.Remedy{l.most(SettingCutter, notch)}
	}
	return []geom.Remedy{l.between(SettingFingerWidth, l.minFinger(), l.wallHeight()/3), l.most(SettingCutter, (notch-fingerFloor)/2)}
}

// minFingerClearance is the play of fingers below which glue is scraped off, in
// millimeters: they have as much of it on every second face.
const minFingerClearance = 0.05

// lapsOfFingers are how the sides' faces stand to the ends of front and back.
func (l *layout) lapsOfFingers() {
	for _, r := range l.ends() {
		l.lap(r, -1)
	}
}

// fingeredWidth is the front's length, and what thick sides stand proud of it.
func (l *layout) fingeredWidth() Check {
	t := l.Sides.Thickness
	width := func(thickness float64) float64 { return l.Width + float64(2*math.Max(0, thickness-t.Mean)) }
	return l.judge(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width, Min: width(t.Min), Max: width(t.Max),
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts})
}
