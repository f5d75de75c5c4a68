package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// chooseBottom decides how the bottom sits, and how wide its groove is.
func (l *layout) chooseBottom() {
	switch l.BottomFit {
	case BottomApplied:
		l.checkApplied()
		return
	case BottomCleats:
		l.checkCleats()
		return
	}
	l.checkRise()
	l.flush = l.BottomFit == BottomFlush
	l.groove = l.grooveWidth()
	if l.groovesFit() {
		l.planGroove()
	} else if l.BottomFit == BottomAuto && l.Tb >= l.groove-settle {
		l.flush = true
	}
	if length, width := l.bottomSize(); l.below() > 0 && l.Cutter.Kind.Fenced() &&
		!(l.standsOnEnd(length, width) && l.standsOnEnd(width, length)) {
		l.drawer.Setup.BottomHeight = l.below()
	}
	stands := l.inGroove()
	switch {
	case noClearance(l.groove-stands) && (l.groovesFit() || l.BottomFit == BottomFielded):
		l.refuse(geom.Diagnosis{
			Code: "bottom", Subject: about(SettingGrooveClearance, Bottom),
			Measured: geom.Millimeters(stands), Limit: geom.Millimeters(l.groove),
			Fact: geom.Sentencef("the groove has no clearance over what stands in it, %s: it %s", geom.Millimeters(stands), WillNot),
			Ask:  unlikeBoards,
			Remedies: []geom.Remedy{
				l.between(SettingGrooveClearance, l.Limits.GrooveClearance.Min, l.Limits.GrooveClearance.Max),
				l.roomyGroove(),
			},
		}, true)
	case l.fieldedFails():
	case !l.bottomGoesIn():
		l.failBottom(stands)
	case l.clearanceFails():
	default:
		if c := l.grooveClearance(); l.setWrong(c) {
			field, ways := l.bottomWays(c)
			l.warn(c.Misfit(geom.Diagnosis{
				Code: "groove-clearance", Subject: about(field, Bottom),
				Fact:     l.clearanceFact("the bottom", "its groove", c),
				Ask:      unlikeBoards,
				Remedies: ways,
			}))
		}
		l.checkClearance()
		l.checkMovement()
		if l.flush {
			l.flushness()
		}
		l.setRabbets(stands)
	}
}

// bottomGoesIn reports whether what stands in the groove goes in, and is thick enough to.
func (l *layout) bottomGoesIn() bool {
	stands := l.inGroove()
	return !noClearance(l.groove-stands) && !(l.below() > 0 && stands < minRabbet-settle)
}

// seatAsRefused seats a bottom to be looked at that was refused before its clearance was judged.
// One that goes in neither way stands in its groove as it is.
func (l *layout) seatAsRefused() {
	judged := func(c Check) bool { return c.Code == CheckGrooveClearance }
	if !l.BottomFit.Grooved() || slices.ContainsFunc(l.drawer.Fit, judged) {
		return
	}
	if l.BottomFit == BottomAuto && !l.bottomGoesIn() {
		l.flush, l.drawer.Setup.BottomHeight = false, 0
	}
	l.grooveClearance()
}

// checkRise judges how high the groove is.
func (l *layout) checkRise() {
	if l.rise < minRabbet-settle {
		l.refuse(geom.Diagnosis{
			Code: "bottom-height", Subject: about(SettingBottomHeight, Bottom),
			Measured: geom.Millimeters(l.rise), Limit: geom.Millimeters(minRabbet),
			Fact:     geom.Sentencef("a groove %s over the bottom edges leaves as much wood under it, at least %s is needed", geom.Millimeters(l.rise), geom.Millimeters(minRabbet)),
			Ask:      geom.Sentencef("take a thicker box front, whose fence distance it is"),
			Remedies: []geom.Remedy{l.least(SettingBottomHeight, minRabbet)},
		}, l.rise > settle)
	}
	if fence := l.drawer.Setup.GrooveFence; fence > 0 && l.Cutter.Kind.Fenced() && !l.ownGrooves() {
		l.note(geom.Diagnosis{ // the fence is set once more
			Code: "bottom-setup", Subject: about(SettingBottomHeight, Bottom),
			Measured: geom.Millimeters(fence), Limit: geom.Millimeters(l.f),
			Fact:     geom.Sentencef("the grooves are %s over the bottom edges and take a fence distance of their own", geom.Millimeters(fence)),
			Ask:      geom.Sentencef("cut the grooves of all drawers in one go"),
			Remedies: []geom.Remedy{l.exactly(SettingBottomHeight, l.f)},
		})
	}
}

// setRabbets works out the setting of a saw or a router table for the rabbets of a bottom on a tongue.
func (l *layout) setRabbets(tongue float64) {
	if l.below() == 0 || !l.Cutter.Kind.Fenced() {
		return
	}
	if l.drawer.Setup.BottomHeight > 0 {
		if rest := l.h - l.Cutter.Width; rest > settle {
			l.note(geom.Diagnosis{ // a pass more takes it
				Code: "rabbet-passes", Subject: about(SettingBottom, Bottom),
				Measured: geom.Millimeters(l.h), Limit: geom.Millimeters(l.Cutter.Width),
				Fact: geom.Sentencef("one pass leaves %s of the %s bottom's rabbets, which are %s long", geom.Millimeters(rest), l.seat(), geom.Millimeters(l.h)),
				Ask:  geom.Sentencef("take the first pass along the edge, the last with the fence at %s", geom.Millimeters(rest)),
			})
		}
		return
	}
	l.drawer.Setup.BottomFence = l.f
	if math.Abs(tongue-l.f) > sameFence {
		l.drawer.Setup.BottomFence = tongue
		l.note(geom.Diagnosis{ // the fence is set once more
			Code: "bottom-setup", Subject: about(SettingBottom, Bottom),
			Measured: geom.Millimeters(tongue), Limit: geom.Millimeters(l.f),
			Fact:     geom.Sentencef("the %s bottom's rabbets need a setting of their own: stood on end with its top against the fence, at %s", l.seat(), geom.Millimeters(tongue)),
			Ask:      geom.Sentencef("cut those of all drawers in one go"),
			Remedies: []geom.Remedy{l.exactly(SettingBottom, l.rise+l.f)},
		})
	}
	if rest := l.Bottom.Thickness.Max - tongue - l.Cutter.Width; rest > settle {
		l.note(geom.Diagnosis{ // a pass more takes it
			Code: "rabbet-passes", Subject: about(SettingBottom, Bottom),
			Measured: geom.Millimeters(l.Bottom.Thickness.Max - tongue), Limit: geom.Millimeters(l.Cutter.Width),
			Fact: geom.Sentencef("one pass leaves %s on the thickest bottom's rabbets", geom.Millimeters(rest)),
			Ask:  geom.Sentencef("take a second pass with the fence at %s", geom.Millimeters(l.Bottom.Thickness.Max-l.Cutter.Width)),
		})
	}
}

// failBottom refuses a bottom that goes in neither way, or not in the way that
// the job asks for, and says which would.
func (l *layout) failBottom(stands float64) {
	mm := func(v float64) geom.Millimeters { return geom.Millimeters(v) }
	fact := geom.Sentencef("the bottom is %s thick, its groove %s wide: it %s", mm(l.Tb), mm(l.groove), WillNot)
	if l.flush {
		captured := fact
		fact = geom.Sentencef("a rabbet of %s in a flush bottom of %s leaves a tongue of %s", mm(l.rise), mm(l.Tb),
			mm(stands))
		switch {
		case stands <= settle:
			fact = geom.Sentencef("a flush bottom of %s is no thicker than its groove is high, %s: its rabbet leaves no tongue", mm(l.Tb), mm(l.rise))
		case noClearance(l.groove - stands):
			fact = geom.Sentencef("%s, too thick for a groove of %s", fact, mm(l.groove))
		default:
			fact = geom.Sentencef("%s, at least %s is needed", fact, mm(minRabbet))
		}
		if l.BottomFit == BottomAuto { // it is flush because it does not go in as it is
			fact = geom.Sentencef("%s, and %s", captured, fact)
		}
	}
	right := l.Limits.GrooveClearance
	captured := l.most(SettingBottom, l.groove-right.Min)
	if !l.groovesFit() {
		captured = l.between(SettingBottom, l.groove-right.Max, l.groove-right.Min)
	}
	ways := []geom.Remedy{
		write(SettingBottomFit, BottomGroovedIn), write(SettingBottomFit, BottomFlush), l.grooveWay(), captured,
		l.between(SettingBottom, l.rise+minRabbet, l.rise+l.groove-right.Min),
		l.between(SettingCutter, max(l.Bottom.Thickness.Max+right.Min, l.minSlot), min(l.Tb+right.Max, l.maxSlot)),
		write(SettingBottomFit, BottomApplied), write(SettingBottomFit, BottomCleats),
	}
	if l.BottomFit == BottomSlideIn {
		ways = append(ways, write(SettingBottomFit, BottomFielded))
	}
	l.refuse(geom.Diagnosis{
		Code: "bottom", Subject: about(SettingBottom, Bottom),
		Measured: geom.Millimeters(stands), Limit: geom.Millimeters(nearer(stands, minRabbet, l.groove)),
		Fact:     fact,
		Ask:      geom.Sentencef("take a bottom of another thickness, or a cutter of another width"),
		Remedies: ways,
	}, stands > settle || l.BottomFit == BottomAuto)
}

// roomyGroove is a bit with which the groove is wide enough.
func (l *layout) roomyGroove() geom.Remedy {
	return l.between(SettingCutter, l.inGroove()+l.Limits.GrooveClearance.Min-l.SlotRoom,
		l.inGroove()+l.Limits.GrooveClearance.Max-l.SlotRoom)
}

// bottomWays are what would give the usual play, and which entry that is.
func (l *layout) bottomWays(c Check) (geom.Setting, []geom.Remedy) {
	least, most := l.usual(c)
	if l.BottomFit == BottomFielded || l.groovesFit() && l.minGroove() < l.groove-settle { // one follows the other
		return SettingGrooveClearance, []geom.Remedy{l.between(SettingGrooveClearance, least, most)}
	}
	rest := l.Tb - l.inGroove() // of a flush bottom, below its tongue
	ways := []geom.Remedy{l.grooveWay(), l.between(SettingBottom, l.groove+rest-most, l.groove+rest-least)}
	if l.ownGrooves() {
		return SettingBottom, append(ways, l.most(SettingGrooveCutter, l.inGroove()+most))
	}
	if l.Cutter.Kind.MadeToFit() {
		return SettingBottom, append(ways, l.most(SettingCutter, l.inGroove()+most-l.SlotRoom))
	}
	// One cutter makes every slot: it must suit the corner's tongues too.
	return SettingBottom, append(ways,
		l.between(SettingCutter, max(l.inGroove()+least, l.minSlot), min(l.inGroove()+most, l.maxSlot)))
}

// inGroove is the thickness of what stands in the groove.
func (l *layout) inGroove() float64 { return l.Tb - l.below() }

// below is how much of the bottom's thickness is under its tongue, which is how deep its rabbets are;
// 0 of one that stands in its groove as it is.
func (l *layout) below() float64 {
	switch {
	case l.flush:
		return l.rise
	case l.BottomFit == BottomFielded:
		return max(0, l.Tb-l.fieldedTongue())
	}
	return 0
}

// seat is how a bottom in grooves sits in them.
func (l *layout) seat() BottomFit {
	switch {
	case l.flush:
		return BottomFlush
	case l.BottomFit == BottomFielded:
		return BottomFielded
	}
	return BottomGroovedIn
}

// bottomStand is the height of the bottom's underside over the bottom edges.
func (l *layout) bottomStand() float64 {
	if l.BottomFit == BottomApplied {
		return 0
	}
	return l.rise - l.below()
}

// grooveWidth is that of the bottom's grooves.
func (l *layout) grooveWidth() float64 {
	if l.groovesFit() {
		return max(l.minGroove(), l.inGroove()+l.GrooveClearance)
	}
	return l.Cutter.Width
}

// wallStand is how high the walls' bottom edges are over the lowest of the box.
func (l *layout) wallStand() float64 {
	if l.BottomFit == BottomApplied {
		return l.Tb
	}
	return 0
}

// wallHeight is that of the sides and the front.
func (l *layout) wallHeight() float64 { return l.Height - l.wallStand() }

// bottomTop is how high the bottom's top face is over the lowest of the box.
func (l *layout) bottomTop() float64 { return l.bottomStand() + l.Tb }

// grooved is a slot for the bottom along a panel, from x0 to x1.
func (l *layout) grooved(x0, x1 float64) geom.Pocket {
	return geom.Pocket{Kind: geom.Groove, Face: geom.Inside, Depth: l.h, Outline: geom.Rectangle(x0, l.rise, x1, l.rise+l.groove), Bit: l.cutWith(l.grooveBit)}
}

// bottomSize is the bottom's length, from side to side, and its width.
func (l *layout) bottomSize() (length, width float64) {
	clear := l.Depth - (l.toFront + l.toBack)
	switch l.BottomFit {
	case BottomApplied:
		return l.Width, l.Depth
	case BottomCleats:
		return l.Width - 2*l.Ts - l.BottomClearance, clear - l.ClearanceDepth()
	case BottomSlideIn, BottomFielded: // to the back's outside face; all slack is at the front
		return l.Width - 2*l.Ts + 2*l.h - l.BottomClearance, clear + l.h - l.ClearanceDepth() + l.Tk
	}
	return l.Width - 2*l.Ts + 2*l.h - l.BottomClearance, clear + 2*l.h - l.ClearanceDepth()
}

// addBottom makes the bottom: as large as the grooves let it be, less the clearance.
func (l *layout) addBottom() {
	switch l.BottomFit {
	case BottomApplied:
		l.addApplied()
		return
	case BottomCleats:
		l.addCleats()
		return
	}
	length, width := l.bottomSize()
	mating := []int{0, 1, 2, 3}
	if l.BottomFit.SlidesIn() {
		mating = []int{0, 1, 3}
	}
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, width).With(geom.Mating, mating...), Thickness: l.Tb}
	if deep := l.below(); deep > 0 {
		// The rabbets are as wide as the groove is deep, so that half the clearance
		// is left at each shoulder too.
		rabbets := []geom.Loop{
			geom.Rectangle(0, 0, l.h, width), geom.Rectangle(length-l.h, 0, length, width),
			geom.Rectangle(0, 0, length, l.h), geom.Rectangle(0, width-l.h, length, width),
		}
		for _, r := range rabbets[:len(mating)] {
			p.Pockets = append(p.Pockets, geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: deep, Outline: r})
		}
	}
	if l.BottomFit.SlidesIn() { // into the lower edge of the back
		holes := l.rearHoles(length, width)
		p.Pockets = append(p.Pockets, holes...)
		name := "screw"
		if l.Bottom.Solid {
			name = "pan-head screw"
		}
		l.takes(l.long(name, l.screw(bottomScrew).name, l.Tb+appliedLength), len(holes))
		if l.Bottom.Solid {
			l.takes("washer for pan-head screw "+l.screw(bottomScrew).called(), len(holes))
		}
	}
	l.add(Bottom, p, geom.Placement{Origin: l.bottomOrigin(), X: geom.Right, Y: geom.Back})
}

// bottomOrigin is where the front left corner of a bottom in grooves is: in the middle of its clearance, or if
// it is slid in level behind with the back.
func (l *layout) bottomOrigin() geom.Vec3 {
	before := l.ClearanceDepth() / 2
	if l.BottomFit.SlidesIn() {
		before = l.ClearanceDepth()
	}
	return geom.Vec3{X: l.Ts - l.h + l.BottomClearance/2, Y: l.toFront - l.h + before, Z: l.bottomStand()}
}
