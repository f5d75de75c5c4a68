package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// SlackDeep is the slack of the bottom from front to back.
func (s Spec) SlackDeep() float64 {
	if s.DeepSlack != nil {
		return *s.DeepSlack
	}
	return s.BottomSlack
}

// slackWay is a direction in which the bottom is smaller than its grooves.
type slackWay struct {
	field Field   // the entry that gives the slack
	own   Field   // the entry that gives this slack alone
	slack float64 // in all
	size  float64 // of the bottom
	moves bool    // it swells and shrinks in this direction
	open  bool    // at one end: the bottom ends under the back, and is screwed to it
	along string  // the direction in words
	check CheckID // of the slack, which the package fit makes
}

// slackWays are both directions; a slack that one entry gives for both of them is
// judged where it says more: from front to back, or from side to side where that is open.
func (l *layout) slackWays() []slackWay {
	length, width := l.bottomSize()
	deep := slackWay{field: FieldBottomSlack, own: FieldDeepSlack, slack: l.SlackDeep(), size: width, moves: true, open: l.BottomFit == BottomSlidIn, along: deepWay, check: CheckID{Code: CheckBottomSlackDeep, Part: Bottom}}
	if l.DeepSlack != nil {
		deep.field = FieldDeepSlack
	}
	across := slackWay{field: FieldBottomSlack, own: FieldBottomSlack, slack: l.BottomSlack, size: length, moves: !l.Bottom.Solid, along: acrossWay, check: CheckID{Code: CheckBottomSlack, Part: Bottom}}
	return []slackWay{across, deep}
}

// about names the slack in a message: one entry for both directions is told of once.
func (l *layout) about(w slackWay) string {
	if l.DeepSlack == nil {
		return fmt.Sprintf("%s of slack", l.text(w.slack))
	}
	return fmt.Sprintf("%s of slack %s", l.text(w.slack), w.along)
}

// Ways of a slack, in words.
const (
	acrossWay = "from side to side"
	deepWay   = "from front to back"
)

// SlackName names the check of a slack for people.
func SlackName(c CheckCode) string {
	if c == CheckBottomSlackDeep {
		return "bottom slack " + deepWay
	}
	return "bottom slack " + acrossWay
}

// usualSlack is the least slack that keeps its limit with what lengths are off.
func (l *layout) usualSlack(w slackWay) float64 {
	return max(leastSlack, l.Limits.BottomSlack.Min-l.Spreads[w.check].Min)
}

// told are the directions of which something has to be said: each that has an entry of
// its own, or the first where one entry gives both.
func (l *layout) told(list []slackWay, is func(slackWay) bool) (said []slackWay) {
	for _, w := range list {
		if is(w) && (len(said) == 0 || l.DeepSlack != nil) {
			said = append(said, w)
		}
	}
	return said
}

// held is how far the bottom without slack reaches into its grooves, or over its cleats.
func (l *layout) held() float64 {
	if l.BottomFit == BottomCleats {
		return l.Ts
	}
	return l.h
}

// holder is what holds the bottom, and holds how far.
func (l *layout) holder() string {
	if l.BottomFit == BottomCleats {
		return "cleat"
	}
	return "groove"
}

func (l *layout) holds() string {
	if l.BottomFit == BottomCleats {
		return l.text(l.held()) + " thick"
	}
	return l.text(l.held()) + " deep"
}

// slackFails reports whether the bottom can leave a groove, and says so.
func (l *layout) slackFails() bool {
	said := l.told(l.slackWays(), func(w slackWay) bool { return w.slack >= l.held()-settle })
	for _, w := range said {
		l.fail("bottom-slack", w.field, Bottom, fmt.Sprintf("with %s the bottom, pushed to one end, leaves the %s at the other, which is %s",
			l.about(w), l.holder(), l.holds()), shallowGrooves, l.rightSlack(w))
	}
	return len(said) > 0
}

// checkSlack judges how much smaller than its grooves the bottom is. Nothing keeps the
// corners from closing where the bottom comes after them.
func (l *layout) checkSlack() {
	for _, w := range l.told(l.slackWays(), func(w slackWay) bool { return w.slack > l.held()/2+settle }) {
		l.warn("bottom-slack", w.field, Bottom, fmt.Sprintf("with %s the bottom, pushed to one end, holds by %s at the other",
			l.about(w), l.text(l.held()-w.slack)), shallowGrooves, l.rightSlack(w))
	}
	for _, w := range l.told(l.slackWays(), func(w slackWay) bool { return !w.open && w.slack < l.usualSlack(w)-settle }) {
		l.warn("bottom-slack", w.field, Bottom, fmt.Sprintf("with %s the bottom may keep the corners from closing", l.about(w)),
			shallowGrooves, l.rightSlack(w))
	}
}

// shallowGrooves is the advice where no slack suits the grooves.
const shallowGrooves = "cut deeper grooves, in thicker boards"

// rightSlack is a slack that is right for grooves of this depth, and keeps its limits with
// what lengths are off.
func (l *layout) rightSlack(w slackWay) Remedy {
	return l.between(w.field, l.usualSlack(w), min(l.held()/2, l.Limits.BottomSlack.Max-l.Spreads[w.check].Max))
}

// checkMovement judges whether a bottom has room to swell, and does not drop out when it
// shrinks. One of solid wood has its grain from side to side and moves between front and
// back; a sheet moves a little both ways. A bottom that is slid in swells out behind: it is
// fixed in the middle of its front edge, and slots let it pass the screws in the back.
func (l *layout) checkMovement() {
	if l.Bottom.Swelling == 0 && l.Bottom.Shrinkage == 0 {
		return
	}
	for _, w := range l.slackWays() {
		swells, shrinks := float64(w.size*l.Bottom.Swelling), float64(w.size*l.Bottom.Shrinkage)
		switch {
		case !w.moves:
		case w.open:
			l.drawer.BottomOut = swells
			l.checkSlots(shrinks)
		default:
			l.checkSwelling(w, swells, shrinks)
		}
	}
}

// checkSwelling judges the movement between two grooves.
func (l *layout) checkSwelling(w slackWay, swells, shrinks float64) {
	most := l.Sides.Thickness.Min - geom.MinWeb // of the cutter's height
	if swells > w.slack+settle {
		needs := swells + leastSlack
		l.fail("bottom-movement", w.field, Bottom, fmt.Sprintf("%s the bottom, %s, swells by %s and has %s of slack: it would push the box apart", w.along, l.text(w.size), l.text(swells), l.text(w.slack)),
			"take a bottom of sheet stock, or of a wood that moves less",
			l.between(w.own, needs, l.held()/2),
			l.openBehind(),
			l.exactly(w.own, needs).with(l.between(FieldCutterHeight, 2*(needs+settle), most)))
	}
	if hold := l.held() - w.slack - shrinks; hold < leastHold-settle {
		l.warn("bottom-movement", w.field, Bottom, fmt.Sprintf("when it has shrunk by %s %s the bottom, pushed to one end, holds by %s at the other", l.text(shrinks), w.along, l.text(hold)),
			"take a bottom of quartersawn boards or of sheet stock",
			l.between(w.own, max(swells, leastSlack), l.held()-shrinks-leastHold),
			l.openBehind(),
			l.least(FieldCutterHeight, leastHold+w.slack+shrinks))
	}
}

// openBehind is a bottom of solid wood that is slid in.
func (l *layout) openBehind() Remedy {
	if !l.Bottom.Solid || l.BottomFit == BottomSlidIn {
		return Remedy{}
	}
	return write(FieldBottomFit, BottomSlidIn)
}
