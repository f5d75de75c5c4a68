package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// layout gathers a drawer and its problems while it is worked out. Short names
// are those of the trade's arithmetic: T for thickness, f the fence distance, h
// the cutter height.
type layout struct {
	Spec
	asked            Spec    // before anything was filled in or left out
	Ts, Tf, Tk, Tb   float64 // of sides, front, back, bottom
	f, h             float64
	rise             float64   // of the bottom's groove, or of the cleats' top, over the bottom edges
	dado, groove     float64   // widths of the slots
	toFront, toBack  float64   // from the ends of the depth as asked to the inside faces of front and back
	minSlot, maxSlot float64   // between which the corner wants a saw's slot
	flush            bool      // the bottom stands on a tongue, level with the bottom edge
	dividerSlots     []float64 // widths of their dados
	fasteners        []fastener
	grooveBit        float64 // diameter of the bit that makes the bottom's grooves
	unsuited         bool    // with that bit a groove cannot stop where it has to
	shapeless        bool    // an error leaves nothing that could be drawn
	trial            bool    // only what is said of it is wanted
	drawer           Drawer
	problems         []geom.Diagnosis
	checked          []checkedPanel // by the rules of package geom
	fellows          []*layout      // the others of the opening
	changes          []changedBox   // that were tried
}

func newLayout(s Spec) *layout {
	if s.Limits == (Limits{}) {
		s.Limits = UsualLimits(s.Units)
	}
	l := &layout{
		Spec: s, asked: s,
		Ts: s.Sides.Thickness.Mean, Tf: s.Front.Thickness.Mean, Tk: s.Back.Thickness.Mean, Tb: s.Bottom.Thickness.Mean,
		f: s.FenceDistance, h: s.cutterHeight(),
		drawer: Drawer{Spec: s, Outside: Size{s.Width, s.Height, s.Depth}},
	}
	if l.f == 0 {
		l.f = l.Tf / 2
	}
	if l.rise = s.BottomHeight; l.rise == 0 {
		switch l.rise = l.f; {
		case s.BottomFit == BottomCleats:
			l.rise = cleatHeight
		case s.Joint == Dovetail:
			l.rise = l.riseInTail()
		}
	}
	dadoHeight := 0.0
	if s.GlueSpace > 0 {
		dadoHeight = l.h + s.GlueSpace
	}
	l.grooveBit = s.Cutter.Width
	l.drawer.Setup = Setup{DadoHeight: dadoHeight, Cutter: s.Cutter, FenceDistance: l.f, CutterHeight: l.h, RabbetPasses: 1, LastFence: l.f}
	if (math.Abs(l.rise-l.f) > sameFence || l.ownGrooves() && l.rise != l.f) && s.BottomFit.Grooved() {
		l.drawer.Setup.GrooveFence = l.rise
	}
	return l
}

// cutterHeight is that asked for, or half the thickness of the sides.
func (s Spec) cutterHeight() float64 {
	if s.CutterHeight == 0 {
		return s.Sides.Thickness.Mean / 2
	}
	return s.CutterHeight
}

// sameLeft reports whether every board keeps the same thickness under the cuts from
// its outside face: a saw's rabbets are cut with the inside face against the
// fence, a router's when its depths are measured from the spoilboard. Else, and of
// parts that lie flat, every board loses the same.
func (l *layout) sameLeft(r Role) bool {
	if s := l.drawer.Setup; s.FlatTongues && (r == Front || r == Back) || s.BottomHeight > 0 && r == Bottom {
		return false
	}
	return !l.Cutter.Kind.FollowsDrawing() || l.fromSpoilboard()
}

// OnEnd is which parts a machine stands on their ends: how long they are, and how wide at
// least, in mm. The zero value is any part.
type OnEnd struct {
	Length   geom.Interval
	MinWidth float64
}

// standsOnEnd reports whether the machine stands a part of this size on its end, the
// cutter on the other side than the fence. A router table never does: its bit would draw
// the part in.
func (s Spec) standsOnEnd(length, width float64) bool {
	return s.Cutter.Kind != RouterTable && width > s.OnEnd.MinWidth-settle &&
		(s.OnEnd.Length == geom.Interval{} || s.OnEnd.Length.Grow(settle).Contains(length))
}

// endWidth is [Drawer.EndWidth] before there are parts.
func (l *layout) endWidth() float64 {
	if !l.BottomFit.SlidesIn() || l.BackJoint == Housed {
		return l.wallHeight()
	}
	l.groove = l.grooveWidth()
	return l.wallHeight() - l.backUnder()
}

// fromSpoilboard is sameLeft for the cuts from the inside face, which a saw makes
// at one cutter height.
func (l *layout) fromSpoilboard() bool {
	return l.Cutter.Kind.FollowsDrawing() && l.DepthFrom == FromSpoilboard
}

// fail, warn and note keep a diagnosis at their level, and say at its own. What is more work
// and nothing else is a note. Its remedies are candidates of what would end it, the best first.
func (l *layout) fail(d geom.Diagnosis) {
	l.refuse(d, false)
}

// refuse is fail for a box that may have a shape all the same, as one whose parts do not go in:
// it can be looked at, not made.
func (l *layout) refuse(d geom.Diagnosis, shape bool) {
	l.shapeless = l.shapeless || !shape
	d.Level = geom.LevelError
	l.say(d)
}

// then goes on with a box. Of one that is refused nothing more is said, which would repeat it in
// other words: it goes on to be looked at, as long as it has a shape.
func (l *layout) then(step func()) {
	refused, said := l.failed(), len(l.problems)
	if refused && (l.shapeless || l.trial) {
		return
	}
	if step(); refused {
		l.problems = l.problems[:said]
	}
}

func (l *layout) warn(d geom.Diagnosis) {
	d.Level = geom.LevelWarning
	l.say(d)
}

func (l *layout) note(d geom.Diagnosis) {
	d.Level = geom.LevelNote
	l.say(d)
}

func (l *layout) say(d geom.Diagnosis) { l.problems = append(l.problems, d) }

// warnOnce is warn for what holds for front and back alike.
func (l *layout) warnOnce(d geom.Diagnosis) {
	fact := d.Fact.In(l.Units)
	if !slices.ContainsFunc(l.problems, func(p geom.Diagnosis) bool { return p.Code == d.Code && p.Fact.In(l.Units) == fact }) {
		l.warn(d)
	}
}

// refused is the level of what stops a box, or else is to be warned of.
func refused(stops bool) geom.Level {
	if stops {
		return geom.LevelError
	}
	return geom.LevelWarning
}

// about is a part, of which there may be none, and the setting to change.
func about(s geom.Setting, part Role) geom.Subject {
	return geom.Subject{Part: string(part), Setting: s}
}

// nearer is the limit that a measure outside of two is nearer to.
func nearer(v, least, most float64) float64 {
	if v < least {
		return least
	}
	return most
}

func (l *layout) failed() bool { return geom.AnyError(l.problems) }

// text prints a computed length in the unit that the job is written in, for names of pieces.
func (l *layout) text(mm float64) string { return geom.LengthOf(mm).Text(l.Units) }

// printed is a length as whoever follows a piece of advice writes it.
func (l *layout) printed(mm float64) float64 {
	if p, err := geom.ParseLength(l.text(mm), l.Units); err == nil {
		return p.MM()
	}
	return mm
}

// advisable reports whether a range is still one when its bounds are printed.
func (l *layout) advisable(least, most float64) bool {
	return geom.LengthOf(least).RoundUp(l.Units) <= geom.LengthOf(most).RoundDown(l.Units)
}

// stockOf gives the stock of a role and the entry of the job file it comes from.
func (l *layout) stockOf(r Role) (Stock, geom.Setting) {
	switch r {
	case Front:
		return l.Front, SettingBoxFront
	case Back:
		return l.Back, SettingBack
	case Bottom:
		return l.Bottom, SettingBottom
	}
	return l.Sides, SettingSides
}

func (l *layout) add(r Role, p geom.Panel, stands ...geom.Placement) {
	stock, _ := l.stockOf(r)
	l.drawer.Parts = append(l.drawer.Parts, Part{Role: r, Stock: stock, Panel: p, Placements: stands})
}
