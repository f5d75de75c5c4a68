package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// checkSetting judges f and h against the boards, for a corner with tongues.
func (l *layout) checkSetting() {
	l.checkSideDepth()
	for _, r := range l.ends() {
		l.checkEndDepth(r)
		stock, field := l.stockOf(r)
		if l.f > stock.Thickness.Min-leastRabbet+settle || l.f < leastRabbet-settle {
			if l.FenceDistance != 0 {
				field = FieldFenceDistance
			}
			l.fail("fence-distance", field, r, fmt.Sprintf("a fence distance of %s leaves no tongue with a shoulder on a %s of %s",
				l.text(l.f), r, l.text(stock.Thickness.Mean)), l.fenceAdvice(r, stock))
		}
	}
}

// checkSideDepth judges h against the sides.
func (l *layout) checkSideDepth() {
	if thin := l.Sides.Thickness.Min; l.h+l.GlueRoom > thin-leastRabbet+settle || l.h < leastRabbet-settle {
		l.fail("cutter-height", FieldCutterHeight, Side, fmt.Sprintf("cuts %s deep in sides of %s, %s at the thinnest", l.text(l.h+l.GlueRoom), l.text(l.Ts), l.text(thin)), l.heightAdvice())
	}
}

// checkEndDepth judges h against the front or the back.
func (l *layout) checkEndDepth(r Role) {
	stock, field := l.stockOf(r)
	thin := stock.Thickness.Min
	if l.h <= thin-leastRabbet+settle {
		return
	}
	hint := fmt.Sprintf("take a thicker %s", r)
	if thin-geom.MinWeb >= leastRabbet {
		hint += fmt.Sprintf(", or write a cutter-height of %s or less for this drawer", l.atMost(thin-geom.MinWeb))
	}
	l.fail("cutter-height", field, r, fmt.Sprintf("the groove is %s deep in a %s of %s, %s at the thinnest", l.text(l.h), r, l.text(stock.Thickness.Mean), l.text(thin)), hint)
}

// fenceAdvice says what fence distance suits an end. The front's is the one that
// serves both; a back that does not suit it is the wrong board.
func (l *layout) fenceAdvice(r Role, stock Stock) string {
	if r == Back {
		return fmt.Sprintf("one fence distance serves front and back: take a back of about %s, or a thinner front", l.text(2*l.f))
	}
	half := stock.Thickness.Mean / 2
	return fmt.Sprintf("write a fence-distance of about %s, half its thickness", l.text(half)) + l.butThen(func(s *Spec) { s.FenceDistance = l.printed(half) })
}

// heightAdvice says what cut the sides take.
func (l *layout) heightAdvice() string {
	hint := fmt.Sprintf("write a cutter-height of about %s, half their thickness", l.text(l.Ts/2))
	if l.GlueRoom > 0 {
		hint += fmt.Sprintf(", with less glue-room than %s on top of it", l.text(l.GlueRoom))
	}
	return hint
}

// checkTongues judges the cutter against the tongues, and where the ends stand.
func (l *layout) checkTongues() {
	for _, r := range l.ends() {
		stock, field := l.stockOf(r)
		play := l.tonguePlay(r)
		recess := l.recess(r)
		hint, entry := l.playAdvice(play)
		switch {
		case play.Verdict == WillNot:
			l.fail("cutter-narrow", entry, r, fmt.Sprintf("the %s's tongue is %s thick, the dado %s wide: it does not go in",
				r, l.text(l.f), l.text(l.dado)), l.orFence(hint))
		case play.Nominal > HopelessGap+settle:
			l.fail("cutter-wide", entry, r, fmt.Sprintf("the %s's tongue is %s thick, the dado %s wide: %s of play is more than glue fills",
				r, l.text(l.f), l.text(l.dado), l.text(play.Nominal)), hint)
		case play.Min <= settle:
			l.warn("tongue-play", entry, r, fmt.Sprintf("where %s is thickest, %s, the %s's tongue does not go into its dado",
				stock.Name, l.text(stock.Thickness.Max), r), hint)
		case play.Verdict != Goes:
			l.warn("tongue-play", entry, r, fmt.Sprintf("the %s's tongue has %s of play in its dado: %s; %s to %s is usual",
				r, l.ranged(play), play.Verdict, l.text(play.Least), l.text(play.Most)), hint)
		}
		if recess.Verdict != IsFlush {
			l.warn("recess", field, r, fmt.Sprintf("the %s comes out %s at the ends of the sides, by %s%s",
				r, recess.Verdict, l.standing(recess), l.deeper(recess)), l.flushAdvice(r, recess))
		}
		if stock.Thickness.Max-l.f-l.Cutter.Width > settle && l.Cutter.Kind.Fenced() {
			l.passes(r, stock.Thickness.Max, field)
		}
	}
}

// unlikeBoards is the advice where no cutter suits all boards. A range may be assumed
// from a standard; measured boards are often nearer to one another.
const unlikeBoards = "sort the boards, or write what more of them measure: from the thinnest to the thickest is more than the usual range"

// playAdvice says what would give a tongue the usual play, and which entry that is.
func (l *layout) playAdvice(c Check) (string, Field) {
	least, most := c.usual()
	if !l.advisable(least, most) {
		return unlikeBoards, FieldFront
	}
	if l.Cutter.Kind.Fenced() {
		return l.cutterAdvice(l.f+least, l.f+most), FieldCutter
	}
	play := fmt.Sprintf("a dado-play of %s to %s is usual", l.atLeast(least), l.atMost(most))
	if l.DadoWidth(0, 0) < l.dado-settle { // the bit is not what sets the slot
		return play, FieldDadoPlay
	}
	hint := fmt.Sprintf("the slot is as wide as the bit: take one up to %s wide", l.atMost(l.f+most-l.SlotRoom))
	if l.DadoPlay > most {
		hint += "; " + play
	}
	return hint, FieldCutter
}

// cutterAdvice names the cutters that give a saw's tongues the usual play, and
// among them those that take the bottom too, where there are any.
func (l *layout) cutterAdvice(least, most float64) string {
	hint := func(least float64) string {
		return fmt.Sprintf("a cutter %s to %s wide gives the usual play", l.atLeast(least), l.atMost(most))
	}
	// What stands in the groove of the bottom, captured or flush, must go in as well.
	var stands []float64
	if l.BottomFit != BottomFlush {
		stands = append(stands, l.Bottom.Thickness.Max)
	}
	if tongue := l.Tb - l.f; l.BottomFit != BottomCaptured && tongue >= leastRabbet {
		stands = append(stands, tongue)
	}
	for _, thick := range stands {
		if l.advisable(thick+l.Limits.BottomPlay.Least, most) {
			return hint(max(least, thick+l.Limits.BottomPlay.Least))
		}
	}
	return hint(least) + fmt.Sprintf(", with a bottom up to %s", l.atMost(most-l.Limits.BottomPlay.Least))
}

// standing is how far a panel is proud or recessed, as a number above 0.
func (l *layout) standing(c Check) string {
	if c.Verdict == Proud {
		c.Nominal, c.Min, c.Max = -c.Nominal, -c.Max, -c.Min
	}
	return l.ranged(c)
}

// deeper says, of a proud panel, how deep the box really is.
func (l *layout) deeper(recess Check) string {
	if recess.Verdict != Proud || l.drawer.Outside.Depth-l.Depth <= l.Limits.Recess {
		return ""
	}
	return fmt.Sprintf("; the box is then %s deep, not %s", l.text(l.drawer.Outside.Depth), l.text(l.Depth))
}

// flushAdvice says what would make an end flush, and what that needs.
func (l *layout) flushAdvice(r Role, recess Check) string {
	stock, _ := l.stockOf(r)
	half := stock.Thickness.Mean / 2
	switch {
	case recess.Nominal > -l.Limits.Recess-settle && recess.Nominal < l.Limits.Recess+settle:
		return "sort the boards: only some of them come out flush"
	case r == Back: // not the front's twin
		return fmt.Sprintf("one fence distance serves front and back: a back of %s would be flush", l.text(2*l.f))
	}
	least, most := half+l.Limits.TonguePlay.Least, half+l.Limits.TonguePlay.Most
	if slot := l.slotFor(half); slot < least-settle || slot > most+settle {
		return fmt.Sprintf("a fence-distance of %s makes it flush and needs a cutter of %s to %s; or take a %s of %s",
			l.text(half), l.atLeast(least), l.atMost(most), r, l.text(2*l.f))
	}
	return fmt.Sprintf("a fence-distance of %s for this drawer would make it flush", l.text(half)) + l.butThen(func(s *Spec) { s.FenceDistance = l.printed(half) })
}

// butThen says what a change that is advised would break.
func (l *layout) butThen(change func(*Spec)) string {
	if l.trial {
		return ""
	}
	s := l.Spec
	change(&s)
	t := newLayout(s)
	t.trial = true
	t.work()
	for _, p := range t.problems {
		if p.Error {
			return "; but then " + p.Message
		}
	}
	return ""
}

// orFence adds the other way out for a saw whose slot is too narrow.
func (l *layout) orFence(hint string) string {
	if !l.Cutter.Kind.Fenced() {
		return hint
	}
	return hint + fmt.Sprintf("; or give this drawer a fence-distance of %s or less", l.atMost(l.dado-l.Limits.TonguePlay.Least))
}

// passes plans the passes over a rabbet that is wider than the cutter: from the
// fence distance to where the cutter reaches the outside face, evenly.
func (l *layout) passes(r Role, thickness float64, field Field) {
	rest := thickness - l.f - l.Cutter.Width
	n := 1 + int(math.Ceil((rest-settle)/l.Cutter.Width))
	if last := thickness - l.Cutter.Width; n > l.drawer.Setup.RabbetPasses || last > l.drawer.Setup.LastFence {
		l.drawer.Setup.RabbetPasses, l.drawer.Setup.LastFence = n, last
	}
	l.warn("rabbet-passes", field, r, fmt.Sprintf("one pass leaves %s at the outside of the %s's rabbet", l.text(rest), r),
		fmt.Sprintf("take %d passes, the fence moved out by at most %s each time, the last at %s; or a wider cutter", n, l.atMost(l.Cutter.Width), l.text(thickness-l.Cutter.Width)))
}

// checkWidth judges how far the sides' readings move the width.
func (l *layout) checkWidth(c Check) {
	if c.Verdict != AsAsked {
		l.warn("width", FieldSides, Side, fmt.Sprintf("the box comes out %s to %s wide over the readings of %s",
			l.text(c.Min), l.text(c.Max), l.Sides.Name), "sort the boards: sides of one box from boards that measure alike")
	}
}

// checkProportions judges whether the sizes are in their order.
func (l *layout) checkProportions() {
	if l.Height > l.Depth {
		l.warn("proportions", FieldOutside, "", fmt.Sprintf("the box is %s high and only %s deep", l.text(l.Height), l.text(l.Depth)),
			"the order is width x height x depth")
	}
}

// checkRoom judges the outside size against the joint.
func (l *layout) checkRoom() {
	low := l.rise + max(l.groove, l.inGroove())
	if l.BottomFit == BottomApplied {
		low = l.Tb
	}
	for _, c := range []struct {
		what              string
		size, used, least float64
	}{
		{"width", l.Width, 2 * l.Ts, leastClear},
		{"height", l.Height, low, leastAbove},
		{"depth", l.Depth, l.toFront + l.toBack, leastClear},
	} {
		if left := c.size - c.used; left < c.least-settle {
			l.fail("room", FieldOutside, "", fmt.Sprintf("the %s is %s and the joint takes %s of it: that leaves %s, at least %s is needed",
				c.what, l.text(c.size), l.text(c.used), l.text(left), l.text(c.least)), fmt.Sprintf("make the %s %s or more", c.what, l.atLeast(c.used+c.least)))
		}
	}
}

// ends lists front and back, or the front alone where what holds for it holds
// for the back.
func (l *layout) ends() []Role {
	if l.Front.Same(l.Back) || l.BackJoint == Housed {
		return []Role{Front}
	}
	return []Role{Front, Back}
}
