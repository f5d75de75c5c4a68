package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// chooseBottom decides how the bottom sits, and how wide its groove is.
func (l *layout) chooseBottom() {
	if l.BottomFit == BottomApplied {
		l.checkApplied()
		return
	}
	l.checkRise()
	l.flush = l.BottomFit == BottomFlush
	if l.groovesFit() {
		l.groove = max(l.leastGroove(), l.inGroove()+l.GroovePlay)
		l.planGroove()
	} else {
		l.groove = l.Cutter.Width
		if l.BottomFit == BottomAuto && l.Tb >= l.groove-settle {
			l.flush = true
		}
	}
	stands := l.inGroove()
	switch {
	case stands >= l.groove-settle && l.groovesFit(): // the play is not more than 0
		l.fail("bottom", FieldGroovePlay, Bottom, fmt.Sprintf("the groove is made as wide as what stands in it, %s: it does not go in", l.text(stands)),
			fmt.Sprintf("a groove-play of %s to %s is usual", l.atLeast(l.Limits.BottomPlay.Least), l.atMost(l.Limits.BottomPlay.Most)))
	case l.flush && stands < leastRabbet-settle, stands >= l.groove-settle:
		l.failBottom(stands)
	case l.BottomSlack >= l.h-settle:
		l.fail("bottom-slack", FieldBottomSlack, Bottom, fmt.Sprintf("with %s of slack the bottom, pushed to one side, leaves the groove at the other, which is %s deep",
			l.text(l.BottomSlack), l.text(l.h)), l.slackAdvice())
	default:
		if c := l.bottomPlay(); c.Verdict != Goes {
			hint, field := l.bottomAdvice(c)
			l.warn("bottom-play", field, Bottom, fmt.Sprintf("the bottom has %s of play in its groove: %s; %s to %s is usual",
				l.ranged(c), c.Verdict, l.text(c.Least), l.text(c.Most)), hint)
		}
		l.checkSlack()
		l.checkMovement()
		if l.flush {
			l.checkFlush(stands)
		}
	}
}

// checkRise judges how high the groove is.
func (l *layout) checkRise() {
	if l.rise < leastRabbet-settle {
		l.fail("bottom-height", FieldBottomHeight, Bottom, fmt.Sprintf("a groove %s over the bottom edges leaves as much wood under it, at least %s is needed", l.text(l.rise), l.text(leastRabbet)),
			fmt.Sprintf("write a bottom-height of %s or more", l.atLeast(leastRabbet)))
	}
	if fence := l.drawer.Setup.GrooveFence; fence > 0 && l.Cutter.Kind.Fenced() && !l.ownGrooves() {
		hint := fmt.Sprintf("a bottom-height of %s, the fence distance, needs none", l.text(l.f))
		if l.Undermount != nil && l.Undermount.Recess > l.f {
			hint = fmt.Sprintf("the slides want %s under the bottom: cut the grooves of all drawers in one go", l.text(l.Undermount.Recess))
		}
		l.warn("bottom-setup", FieldBottomHeight, Bottom, fmt.Sprintf("the grooves are %s over the bottom edges and take a fence distance of their own", l.text(fence)), hint)
	}
}

// checkFlush judges what a flush bottom needs beside its play.
func (l *layout) checkFlush(tongue float64) {
	if c := l.flushness(); c.Verdict != IsFlush {
		l.warn("bottom-flush", FieldBottom, Bottom, fmt.Sprintf("the bottom's underside stands %s to %s above the edges over the readings (below 0: hangs down)",
			l.text(c.Min), l.text(c.Max)), "sort the boards, or plane the bottom edge after gluing up")
	}
	if !l.Cutter.Kind.Fenced() {
		return
	}
	l.drawer.Setup.BottomFence = l.f
	if math.Abs(tongue-l.f) > sameFence {
		l.drawer.Setup.BottomFence = tongue
		l.warn("bottom-setup", FieldBottom, Bottom, fmt.Sprintf("the flush bottom's rabbets need a setting of their own: stood on end with its top against the fence, at %s", l.text(tongue)),
			fmt.Sprintf("a bottom of %s needs none", l.text(l.rise+l.f)))
	}
	if rest := l.Bottom.Thickness.Max - tongue - l.Cutter.Width; rest > settle {
		l.warn("rabbet-passes", FieldBottom, Bottom, fmt.Sprintf("one pass leaves %s on the thickest bottom's rabbets", l.text(rest)),
			fmt.Sprintf("take a second pass with the fence at %s", l.text(l.Bottom.Thickness.Max-l.Cutter.Width)))
	}
}

// failBottom refuses a bottom that goes in neither way, or not in the way that
// the job asks for, and says which would.
func (l *layout) failBottom(stands float64) {
	fact := fmt.Sprintf("the bottom is %s thick, its groove %s wide: it does not go in", l.text(l.Tb), l.text(l.groove))
	if l.flush {
		fact = fmt.Sprintf("a flush bottom of %s stands on a tongue of %s, what a rabbet as deep as its groove is high, %s, leaves", l.text(l.Tb), l.text(stands), l.text(l.rise))
		if stands <= settle {
			fact = fmt.Sprintf("a flush bottom of %s is no thicker than its groove is high, %s: its rabbet leaves no tongue", l.text(l.Tb), l.text(l.rise))
		}
		if stands >= l.groove-settle {
			fact += fmt.Sprintf("; its groove is %s wide: it does not go in", l.text(l.groove))
		}
	}
	least, most := l.rise+leastRabbet, l.rise+l.groove-l.Limits.BottomPlay.Least
	hint := fmt.Sprintf("a bottom up to %s goes in captured", l.atMost(l.groove-l.Limits.BottomPlay.Least))
	if l.advisable(least, most) {
		hint += fmt.Sprintf(", one of %s to %s flush", l.atLeast(least), l.atMost(most))
	}
	hint += "; or take a cutter of another width"
	if groove := l.grooveAdvice(); groove != "" {
		hint = groove + "; " + hint
	}
	switch {
	case l.groovesFit(): // whose groove fits any captured bottom
		hint = fmt.Sprintf("write bottom-fit: captured, or take a bottom of %s or more", l.atLeast(least))
	case l.flush && l.Tb < l.groove-settle:
		hint = "write bottom-fit: captured; " + hint
	case !l.flush && l.Tb >= least && l.Tb <= most:
		hint = "write bottom-fit: flush; " + hint
	}
	l.fail("bottom", FieldBottom, Bottom, fact, hint)
}

// checkSlack judges how much smaller than its grooves the bottom is.
func (l *layout) checkSlack() {
	switch {
	case l.BottomSlack > l.h/2+settle:
		l.warn("bottom-slack", FieldBottomSlack, Bottom, fmt.Sprintf("with %s of slack the bottom, pushed to one side, holds by %s at the other",
			l.text(l.BottomSlack), l.text(l.h-l.BottomSlack)), l.slackAdvice())
	case l.BottomSlack < leastSlack-settle:
		l.warn("bottom-slack", FieldBottomSlack, Bottom, fmt.Sprintf("with %s of slack the bottom may keep the corners from closing", l.text(l.BottomSlack)),
			l.slackAdvice())
	}
}

func (l *layout) slackAdvice() string {
	return fmt.Sprintf("%s to %s is right for grooves of this depth; 1 to 2 mm is usual for sheet bottoms", l.atLeast(leastSlack), l.atMost(l.h/2))
}

// bottomAdvice says what would give the usual play, and which entry that is.
func (l *layout) bottomAdvice(c Check) (string, Field) {
	least, most := c.usual()
	if !l.advisable(least, most) {
		return unlikeBoards, FieldBottom
	}
	if l.groovesFit() && l.leastGroove() < l.groove-settle { // the groove follows the board
		return fmt.Sprintf("a groove-play of %s to %s gives the usual play", l.atLeast(least), l.atMost(most)), FieldGroovePlay
	}
	rest := l.Tb - l.inGroove() // of a flush bottom, below its tongue
	advice := fmt.Sprintf("a bottom of %s to %s gives the usual play", l.atLeast(l.groove+rest-most), l.atMost(l.groove+rest-least))
	if l.ownGrooves() {
		return fmt.Sprintf("a groove-cutter up to %s wide gives the usual play; or ", l.atMost(l.inGroove()+most)) + advice, FieldBottom
	}
	if l.Cutter.Kind.MadeToFit() {
		return advice + fmt.Sprintf(", or a %s up to %s wide", map[bool]string{true: "plough iron", false: "bit"}[l.Cutter.Kind == Hand], l.atMost(l.inGroove()+most-l.SlotRoom)), FieldBottom
	}
	// One cutter makes every slot: it must suit the corner's tongues too.
	low, high := max(l.inGroove()+least, l.leastSlot), min(l.inGroove()+most, l.mostSlot)
	if l.advisable(low, high) {
		advice += fmt.Sprintf(", or a cutter %s to %s wide", l.atLeast(low), l.atMost(high))
	}
	if groove := l.grooveAdvice(); groove != "" {
		return groove + "; or " + advice, FieldBottom
	}
	return advice, FieldBottom
}

// checkMovement judges whether a bottom of solid wood, whose grain runs from side
// to side, has room to swell between front and back, and does not drop out when it
// shrinks.
func (l *layout) checkMovement() {
	if !l.Bottom.Solid {
		return
	}
	_, width := l.bottomSize()
	swells, shrinks := float64(width*l.Bottom.Swelling), float64(width*l.Bottom.Shrinkage)
	if swells > l.BottomSlack+settle {
		l.fail("bottom-movement", FieldBottomSlack, Bottom, fmt.Sprintf("across its grain the bottom, %s wide, swells by %s and has %s of slack: it would push the box apart", l.text(width), l.text(swells), l.text(l.BottomSlack)),
			fmt.Sprintf("write a bottom-slack of %s or more", l.atLeast(swells+leastSlack)))
	}
	if hold := l.h - l.BottomSlack - shrinks; hold < leastHold-settle {
		l.warn("bottom-movement", FieldBottomSlack, Bottom, fmt.Sprintf("when it has shrunk by %s the bottom, pushed to one side, holds by %s at the other", l.text(shrinks), l.text(hold)),
			"less bottom-slack, deeper grooves, or a bottom of quartersawn boards; one that is slid in from behind can be moved up later")
	}
}

// inGroove is the thickness of what stands in the groove.
func (l *layout) inGroove() float64 {
	if l.flush {
		return l.Tb - l.rise
	}
	return l.Tb
}

// bottomStand is how high the bottom's underside stands over the bottom edges.
func (l *layout) bottomStand() float64 {
	if l.flush || l.BottomFit == BottomApplied {
		return 0
	}
	return l.rise
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
	return geom.Pocket{Kind: geom.Groove, Face: geom.Inside, Depth: l.h, Outline: geom.Rectangle(x0, l.rise, x1, l.rise+l.groove)}
}

// bottomSize is the bottom's length, from side to side, and its width.
func (l *layout) bottomSize() (length, width float64) {
	clear := l.Depth - (l.toFront + l.toBack)
	switch l.BottomFit {
	case BottomApplied:
		return l.Width, l.Depth
	case BottomSlidIn: // to the back's outside face; all slack is at the front
		return l.Width - 2*l.Ts + 2*l.h - l.BottomSlack, clear + l.h - l.BottomSlack + l.Tk
	}
	return l.Width - 2*l.Ts + 2*l.h - l.BottomSlack, clear + 2*l.h - l.BottomSlack
}

// addBottom makes the bottom: as large as the grooves let it be, less the slack.
func (l *layout) addBottom() {
	if l.BottomFit == BottomApplied {
		l.addApplied()
		return
	}
	length, width := l.bottomSize()
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, width), Thickness: l.Tb, Mating: []int{0, 1, 2, 3}}
	before := l.BottomSlack / 2 // of the bottom, in the front's groove
	if l.BottomFit == BottomSlidIn {
		p.Mating, before = []int{0, 1, 3}, l.BottomSlack
	}
	if l.flush {
		// The rabbets are as wide as the groove is deep, so that half the slack
		// is left at each shoulder too.
		for _, r := range []geom.Loop{
			geom.Rectangle(0, 0, l.h, width), geom.Rectangle(length-l.h, 0, length, width),
			geom.Rectangle(0, 0, length, l.h), geom.Rectangle(0, width-l.h, length, width),
		} {
			p.Pockets = append(p.Pockets, geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: l.rise, Outline: r})
		}
	}
	if l.BottomFit == BottomSlidIn { // into the lower edge of the back
		p.Pockets = l.rearHoles(length, width)
		l.takes(l.long("screw", appliedHole-screwRoom, l.Tb+appliedLength), len(p.Pockets))
	}
	l.add(Bottom, p, geom.Placement{
		Origin: geom.Vec3{X: l.Ts - l.h + l.BottomSlack/2, Y: l.toFront - l.h + before, Z: l.bottomStand()},
		X:      geom.Right, Y: geom.Back,
	})
}

// leastSlotEdge is the least wood behind such a slot, in millimetres; common
// practice, no source.
const leastSlotEdge = 2.0

// rearHoles are for the screws that hold a bottom which was slid in to the lower
// edge of the back: holes, or for solid wood slots along which it can shrink and
// swell.
func (l *layout) rearHoles(length, width float64) []geom.Pocket {
	y, r := width-l.Tk/2, appliedHole/2
	var list []geom.Pocket
	for _, x := range evenly(2*appliedEnd, length-2*appliedEnd, 2*appliedApart) {
		hole := geom.Pocket{Kind: geom.Drill, Depth: l.Tb, Outline: geom.Circle(geom.Point{X: x, Y: y}, r)}
		if moves := float64(width * math.Max(l.Bottom.Swelling, l.Bottom.Shrinkage)); moves > settle {
			// As far to the edge as leaves it whole; the rest of the way inwards.
			high := math.Min(y+r+moves, width-leastSlotEdge)
			hole.Kind, hole.Outline = geom.Cutout, geom.RoundedRectangle(x-r, high-2*(r+moves), x+r, high, r)
		}
		list = append(list, hole)
	}
	return list
}
