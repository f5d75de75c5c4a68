package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// checkSetting judges f and h against the boards.
func (l *layout) checkSetting() {
	if thin := l.Sides.Thickness.Min; l.h+l.GlueRoom > thin-leastRabbet+settle || l.h < leastRabbet-settle {
		l.fail("cutter-height", FieldCutterHeight, Side, fmt.Sprintf("cuts %s deep in sides of %s, %s at the thinnest", l.text(l.h+l.GlueRoom), l.text(l.Ts), l.text(thin)),
			fmt.Sprintf("write a cutter-height of about %s, half their thickness", l.text(l.Ts/2)))
	}
	for _, r := range l.ends() {
		stock, field := l.stockOf(r)
		thin := stock.Thickness.Min
		if l.h > thin-leastRabbet+settle {
			hint := fmt.Sprintf("take a thicker %s", r)
			if thin-geom.MinWeb >= leastRabbet {
				hint += fmt.Sprintf(", or write a cutter-height of %s or less for this drawer", l.atMost(thin-geom.MinWeb))
			}
			l.fail("cutter-height", field, r, fmt.Sprintf("the groove is %s deep in a %s of %s, %s at the thinnest", l.text(l.h), r, l.text(stock.Thickness.Mean), l.text(thin)), hint)
		}
		if l.f > thin-leastRabbet+settle || l.f < leastRabbet-settle {
			if l.FenceDistance != 0 {
				field = FieldFenceDistance
			}
			l.fail("fence-distance", field, r, fmt.Sprintf("a fence distance of %s leaves no tongue with a shoulder on a %s of %s",
				l.text(l.f), r, l.text(stock.Thickness.Mean)), fmt.Sprintf("write a fence-distance of about %s, half its thickness, or take a thicker %s", l.text(stock.Thickness.Mean/2), r))
		}
	}
}

// checkTongues judges the cutter against the tongues, and where the ends stand.
func (l *layout) checkTongues() {
	for _, r := range l.ends() {
		stock, field := l.stockOf(r)
		play := l.tonguePlay(r)
		recess := l.recess(r)
		usual := fmt.Sprintf("a cutter %s to %s wide gives the usual play", l.atLeast(l.f+leastTonguePlay), l.atMost(l.f+mostTonguePlay))
		cutter := FieldCutter
		if l.Cutter.Kind == Router && l.Cutter.Width < l.dado-settle { // the bit is not what sets the slot
			usual, cutter = fmt.Sprintf("a dado-play of %s to %s is usual", l.atLeast(leastTonguePlay), l.atMost(mostTonguePlay)), FieldDadoPlay
		}
		switch {
		case play.Verdict == WillNot:
			l.fail("cutter-narrow", cutter, r, fmt.Sprintf("the %s's tongue is %s thick, the dado %s wide: it does not go in",
				r, l.text(l.f), l.text(l.dado)), l.orFence(usual))
		case play.Nominal > hopelessPlay:
			l.fail("cutter-wide", cutter, r, fmt.Sprintf("the %s's tongue is %s thick, the dado %s wide: %s of play is more than glue fills",
				r, l.text(l.f), l.text(l.dado), l.text(play.Nominal)), usual)
		case play.Min <= settle:
			l.warn("tongue-play", field, r, fmt.Sprintf("where %s is thickest, %s, the %s's tongue does not go into its dado",
				stock.Name, l.text(stock.Thickness.Max), r), "sort the boards, or give more dado-play")
		case play.Verdict != Goes:
			l.warn("tongue-play", cutter, r, fmt.Sprintf("the %s's tongue has %s of play in its dado: %s; %s to %s is usual",
				r, l.ranged(play), play.Verdict, l.text(play.Least), l.text(play.Most)), usual)
		}
		if recess.Verdict != IsFlush {
			l.warn("recess", field, r, fmt.Sprintf("the %s comes out %s at the ends of the sides, by %s%s",
				r, recess.Verdict, l.standing(recess), l.deeper(recess)), l.flushAdvice(r, recess))
		}
		if stock.Thickness.Max-l.f-l.Cutter.Width > settle && l.Cutter.Kind == Saw {
			l.passes(r, stock.Thickness.Max, field)
		}
	}
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
	if recess.Verdict != Proud || l.drawer.Outside.Depth-l.Depth <= mostRecess {
		return ""
	}
	return fmt.Sprintf("; the box is then %s deep, not %s", l.text(l.drawer.Outside.Depth), l.text(l.Depth))
}

// flushAdvice says what would make an end flush, and what that needs.
func (l *layout) flushAdvice(r Role, recess Check) string {
	stock, _ := l.stockOf(r)
	half := stock.Thickness.Mean / 2
	switch {
	case recess.Nominal > -mostRecess-settle && recess.Nominal < mostRecess+settle:
		return "sort the boards: only some of them come out flush"
	case r == Back: // not the front's twin
		return fmt.Sprintf("one fence distance serves front and back: a back of %s would be flush", l.text(2*l.f))
	case l.Cutter.Kind == Saw && l.Cutter.Width-half < leastTonguePlay:
		return fmt.Sprintf("a fence-distance of %s makes it flush and needs a cutter %s to %s wide; or take a %s of %s",
			l.text(half), l.atLeast(half+leastTonguePlay), l.atMost(half+mostTonguePlay), r, l.text(2*l.f))
	}
	return fmt.Sprintf("a fence-distance of %s for this drawer would make it flush", l.text(half))
}

// orFence adds the other way out for a saw whose slot is too narrow.
func (l *layout) orFence(hint string) string {
	if l.Cutter.Kind != Saw {
		return hint
	}
	return hint + fmt.Sprintf("; or give this drawer a fence-distance of %s or less", l.atMost(l.dado-leastTonguePlay))
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

// checkOutside judges how far the sides' readings move the width, and whether
// the sizes are in their order.
func (l *layout) checkOutside() {
	if c := l.outsideWidth(); c.Verdict != AsAsked {
		l.warn("width", FieldSides, Side, fmt.Sprintf("the box comes out %s to %s wide over the readings of %s",
			l.text(c.Min), l.text(c.Max), l.Sides.Name), "sort the boards: sides of one box from boards that measure alike")
	}
	if l.Height > l.Depth {
		l.warn("proportions", FieldOutside, "", fmt.Sprintf("the box is %s high and only %s deep", l.text(l.Height), l.text(l.Depth)),
			"the order is width x height x depth")
	}
}

// checkRoom judges the outside size against the joint.
func (l *layout) checkRoom() {
	for _, c := range []struct {
		what              string
		size, used, least float64
	}{
		{"width", l.Width, 2 * l.Ts, leastClear},
		{"height", l.Height, l.f + max(l.groove, l.inGroove()), leastAbove},
		{"depth", l.Depth, 4 * l.f, leastClear},
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
	if l.Front == l.Back {
		return []Role{Front}
	}
	return []Role{Front, Back}
}
