package joinery

import "drawerwright/geom"

// ClearanceDepth is the clearance of the bottom from front to back.
func (s Spec) ClearanceDepth() float64 {
	if s.BottomClearanceDepth != nil {
		return *s.BottomClearanceDepth
	}
	return s.BottomClearance
}

// clearanceWay is a direction in which the bottom is smaller than its grooves.
type clearanceWay struct {
	field     geom.Setting // the entry that gives the clearance
	own       geom.Setting // the entry that gives this clearance alone
	clearance float64      // in all
	size      float64      // of the bottom
	moves     bool         // it swells and shrinks in this direction
	open      bool         // at one end: the bottom ends under the back, and is screwed to it
	along     string       // the direction in words
	check     CheckID      // of the clearance, which the package fit makes
}

// bottomClearanceWays are both directions; a clearance that one entry gives for both of them is
// judged where it says more: from front to back, or from side to side where that is open.
func (l *layout) bottomClearanceWays() []clearanceWay {
	length, width := l.bottomSize()
	deep := clearanceWay{field: SettingBottomClearance, own: SettingBottomClearanceDepth, clearance: l.ClearanceDepth(), size: width, moves: true, open: l.BottomFit.SlidesIn(), along: deepWay, check: CheckID{Code: CheckBottomClearanceDepth, Part: Bottom}}
	if l.BottomClearanceDepth != nil {
		deep.field = SettingBottomClearanceDepth
	}
	across := clearanceWay{field: SettingBottomClearance, own: SettingBottomClearance, clearance: l.BottomClearance, size: length, moves: !l.Bottom.Solid, along: acrossWay, check: CheckID{Code: CheckBottomClearance, Part: Bottom}}
	return []clearanceWay{across, deep}
}

// said names the clearance in a message: one entry for both directions is reported once.
func (l *layout) said(w clearanceWay) geom.Sentence {
	if l.BottomClearanceDepth == nil {
		return geom.Sentencef("%s of clearance", geom.Millimeters(w.clearance))
	}
	return geom.Sentencef("%s of clearance %s", geom.Millimeters(w.clearance), w.along)
}

// Ways of a clearance, in words.
const (
	acrossWay = "from side to side"
	deepWay   = "from front to back"
)

// BottomClearanceName names the check of a clearance for people.
func BottomClearanceName(c CheckCode) string {
	if c == CheckBottomClearanceDepth {
		return "bottom clearance " + deepWay
	}
	return "bottom clearance " + acrossWay
}

// usualClearance is the least clearance that keeps its limit with what lengths are off.
func (l *layout) usualClearance(w clearanceWay) float64 {
	return max(minBottomClearance, l.Limits.BottomClearance.Min-l.Spreads[w.check].Min)
}

// told are the directions of which something has to be said: each that has an entry of
// its own, or the first where one entry gives both.
func (l *layout) told(list []clearanceWay, is func(clearanceWay) bool) (said []clearanceWay) {
	for _, w := range list {
		if is(w) && (len(said) == 0 || l.BottomClearanceDepth != nil) {
			said = append(said, w)
		}
	}
	return said
}

// held is how far the bottom without clearance reaches into its grooves, or over its cleats.
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

func (l *layout) holds() geom.Sentence {
	if l.BottomFit == BottomCleats {
		return geom.Sentencef("%s thick", geom.Millimeters(l.held()))
	}
	return geom.Sentencef("%s deep", geom.Millimeters(l.held()))
}

// slackFails reports whether the bottom can leave a groove, and says so.
func (l *layout) clearanceFails() bool {
	said := l.told(l.bottomClearanceWays(), func(w clearanceWay) bool { return w.clearance >= l.held()-settle })
	for _, w := range said {
		l.refuse(geom.Diagnosis{
			Code: "bottom-clearance", Subject: about(w.field, Bottom),
			Measured: geom.Millimeters(w.clearance), Limit: geom.Millimeters(l.held()),
			Fact: geom.Sentencef("with %s the bottom, pushed to one end, leaves the %s at the other, which is %s",
				l.said(w), l.holder(), l.holds()),
			Ask:      shallowGrooves,
			Remedies: []geom.Remedy{l.rightClearance(w)},
		}, w.size > settle)
	}
	return len(said) > 0
}

// checkSlack judges how much smaller than its grooves the bottom is. Nothing keeps the
// corners from closing where the bottom comes after them.
func (l *layout) checkClearance() {
	for _, w := range l.told(l.bottomClearanceWays(), func(w clearanceWay) bool { return w.clearance > l.held()/2+settle }) {
		l.warn(geom.Diagnosis{
			Code: "bottom-clearance", Subject: about(w.field, Bottom),
			Measured: geom.Millimeters(w.clearance), Limit: geom.Millimeters(l.held() / 2),
			Fact: geom.Sentencef("with %s the bottom, pushed to one end, holds by %s at the other",
				l.said(w), geom.Millimeters(l.held()-w.clearance)),
			Ask:      shallowGrooves,
			Remedies: []geom.Remedy{l.rightClearance(w)},
		})
	}
	for _, w := range l.told(l.bottomClearanceWays(), func(w clearanceWay) bool { return !w.open && w.clearance < l.usualClearance(w)-settle }) {
		l.warn(geom.Diagnosis{
			Code: "bottom-clearance", Subject: about(w.field, Bottom),
			Measured: geom.Millimeters(w.clearance), Limit: geom.Millimeters(l.usualClearance(w)),
			Fact:     geom.Sentencef("with %s the bottom may keep the corners from closing", l.said(w)),
			Ask:      shallowGrooves,
			Remedies: []geom.Remedy{l.rightClearance(w)},
		})
	}
}

// shallowGrooves is the advice where no clearance suits the grooves.
var shallowGrooves = geom.Sentencef("cut deeper grooves, in thicker boards")

// rightClearance is a clearance that is right for grooves of this depth, and keeps its limits with
// what lengths are off.
func (l *layout) rightClearance(w clearanceWay) geom.Remedy {
	return l.between(w.field, l.usualClearance(w), min(l.held()/2, l.Limits.BottomClearance.Max-l.Spreads[w.check].Max))
}

// checkMovement judges whether a bottom has room to swell, and does not drop out when it
// shrinks. One of solid wood has its grain from side to side and moves between front and
// back; a sheet moves a little both ways. A bottom that is slid in swells out behind: it is
// fixed in the middle of its front edge, and slots let it pass the screws in the back.
func (l *layout) checkMovement() {
	if l.Bottom.Swelling == 0 && l.Bottom.Shrinkage == 0 {
		return
	}
	for _, w := range l.bottomClearanceWays() {
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
func (l *layout) checkSwelling(w clearanceWay, swells, shrinks float64) {
	most := l.Sides.Thickness.Min - geom.MinWeb // of the cutter's height
	if swells > w.clearance+settle {
		needs := swells + minBottomClearance
		l.refuse(geom.Diagnosis{
			Code: "bottom-movement", Subject: about(w.field, Bottom),
			Measured: geom.Millimeters(swells), Limit: geom.Millimeters(w.clearance),
			Fact: geom.Sentencef("%s the bottom, %s, swells by %s and has %s of clearance: it would push the box apart", w.along, geom.Millimeters(w.size), geom.Millimeters(swells), geom.Millimeters(w.clearance)),
			Ask:  geom.Sentencef("take a bottom of sheet stock, or of a wood that moves less"),
			Remedies: []geom.Remedy{
				l.between(w.own, needs, l.held()/2),
				l.openBehind(),
				l.exactly(w.own, needs).With(l.between(SettingCutterHeight, 2*(needs+settle), most)),
			},
		}, true)
	}
	if hold := l.held() - w.clearance - shrinks; hold < minHold-settle {
		l.warn(geom.Diagnosis{
			Code: "bottom-movement", Subject: about(w.field, Bottom),
			Measured: geom.Millimeters(hold), Limit: geom.Millimeters(minHold),
			Fact: geom.Sentencef("when it has shrunk by %s %s the bottom, pushed to one end, holds by %s at the other", geom.Millimeters(shrinks), w.along, geom.Millimeters(hold)),
			Ask:  geom.Sentencef("take a bottom of quartersawn boards or of sheet stock"),
			Remedies: []geom.Remedy{
				l.between(w.own, max(swells, minBottomClearance), l.held()-shrinks-minHold),
				l.openBehind(),
				l.least(SettingCutterHeight, minHold+w.clearance+shrinks),
			},
		})
	}
}

// openBehind is a bottom of solid wood that is slid in: as it is, or on a tongue if it stands on one.
func (l *layout) openBehind() geom.Remedy {
	if !l.Bottom.Solid || l.BottomFit.SlidesIn() {
		return geom.Remedy{}
	}
	if l.flush {
		return write(SettingBottomFit, BottomFielded)
	}
	return write(SettingBottomFit, BottomSlideIn)
}
