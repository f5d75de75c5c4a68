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
		if l.f > stock.Thickness.Min-minRabbet+settle || l.f < minRabbet-settle {
			if l.FenceDistance != 0 {
				field = SettingFenceDistance
			}
			l.refuse(geom.Diagnosis{
				Code: "fence-distance", Subject: about(field, r),
				Measured: geom.Millimeters(l.f), Limit: geom.Millimeters(nearer(l.f, minRabbet, stock.Thickness.Min-minRabbet)),
				Fact: geom.Sentencef("a fence distance of %s leaves no tongue with a shoulder on a %s of %s",
					geom.Millimeters(l.f), r, geom.Millimeters(stock.Thickness.Mean)),
				Ask:      geom.Sentencef("box front and back need boards of much the same thickness"),
				Remedies: l.fenceWays(r, stock),
			}, l.f > settle && l.f < stock.Thickness.Mean-settle)
		}
	}
}

// checkSideDepth judges h against the sides.
func (l *layout) checkSideDepth() {
	if thin := l.Sides.Thickness.Min; l.h+l.GlueSpace > thin-minRabbet+settle || l.h < minRabbet-settle {
		deep, limit := l.h+l.GlueSpace, thin-minRabbet
		if l.h < minRabbet {
			deep, limit = l.h, minRabbet
		}
		l.refuse(geom.Diagnosis{
			Code: "cutter-height", Subject: about(SettingCutterHeight, Side),
			Measured: geom.Millimeters(deep), Limit: geom.Millimeters(limit),
			Fact:     geom.Sentencef("cuts %s deep in sides of %s, %s at the thinnest", geom.Millimeters(l.h+l.GlueSpace), geom.Millimeters(l.Ts), geom.Millimeters(thin)),
			Ask:      geom.Sentencef("take thicker sides"),
			Remedies: l.heightWays(thin),
		}, l.h > settle && l.h+l.GlueSpace < l.Ts-settle)
	}
}

// checkEndDepth judges h against the front or the back.
func (l *layout) checkEndDepth(r Role) {
	stock, field := l.stockOf(r)
	thin := stock.Thickness.Min
	if l.h <= thin-minRabbet+settle {
		return
	}
	l.refuse(geom.Diagnosis{
		Code: "cutter-height", Subject: about(field, r),
		Measured: geom.Millimeters(l.h), Limit: geom.Millimeters(thin - minRabbet),
		Fact: geom.Sentencef("the groove is %s deep in a %s of %s, %s at the thinnest", geom.Millimeters(l.h), r, geom.Millimeters(stock.Thickness.Mean), geom.Millimeters(thin)),
		Ask:  geom.Sentencef("take a thicker %s", r),
		Remedies: []geom.Remedy{
			l.most(SettingCutterHeight, thin-geom.MinWeb),
			l.least(field, l.h+geom.MinWeb+stock.Thickness.Mean-thin),
		},
	}, l.h < stock.Thickness.Mean-settle)
}

// fenceWays are fence distances that suit an end, and boards that suit the fence. The
// front's is the one that serves both.
func (l *layout) fenceWays(r Role, stock Stock) []geom.Remedy {
	half := stock.Thickness.Mean / 2
	_, field := l.stockOf(r)
	fence := l.exactly(SettingFenceDistance, half)
	least, most := half+l.Limits.TongueClearance.Min, half+l.Limits.TongueClearance.Max
	with := fence.With(l.between(SettingCutter, least, most))
	return []geom.Remedy{fence, with, l.exactly(field, 2*l.f), with.With(l.standingIn(least, most))}
}

// heightWays are cuts that the sides take.
func (l *layout) heightWays(thin float64) []geom.Remedy {
	half := l.exactly(SettingCutterHeight, l.Ts/2)
	if room := thin - minRabbet - l.printed(l.Ts/2); l.GlueSpace > room {
		return []geom.Remedy{half.With(l.most(SettingGlueSpace, room)), l.most(SettingGlueSpace, thin-geom.MinWeb-l.h)}
	}
	return []geom.Remedy{half}
}

// checkTongues judges the cutter against the tongues, and where the ends stand.
func (l *layout) checkTongues() {
	for _, r := range l.ends() {
		stock, field := l.stockOf(r)
		play := l.tongueClearance(r)
		recess := l.recess(r)
		entry, ways := l.clearanceWays(play)
		ways = append(ways, l.frontWay())
		switch {
		case play.Verdict == WillNot:
			l.refuse(geom.Diagnosis{
				Code: "cutter-narrow", Subject: about(entry, r),
				Measured: geom.Millimeters(play.Nominal), Limit: geom.Millimeters(play.LowerLimit),
				Fact: geom.Sentencef("the %s's tongue is %s thick, the dado %s wide: it %s",
					r, geom.Millimeters(l.f), geom.Millimeters(l.dado), play.Verdict),
				Ask:      unlikeBoards,
				Remedies: append(ways, write(SettingJoint, Rabbet)),
			}, true)
		case play.Nominal > HopelessGap+settle:
			l.refuse(geom.Diagnosis{
				Code: "cutter-wide", Subject: about(entry, r),
				Measured: geom.Millimeters(play.Nominal), Limit: geom.Millimeters(HopelessGap),
				Fact: geom.Sentencef("the %s's tongue is %s thick, the dado %s wide: %s of clearance is more than glue fills",
					r, geom.Millimeters(l.f), geom.Millimeters(l.dado), geom.Millimeters(play.Nominal)),
				Ask:      unlikeBoards,
				Remedies: append(ways, write(SettingJoint, Rabbet)),
			}, true)
		case l.setWrong(play):
			l.warn(play.Misfit(geom.Diagnosis{
				Code: "tongue-clearance", Subject: about(entry, r),
				Fact:     l.clearanceFact(fmt.Sprintf("the %s's tongue", r), "its dado", play),
				Ask:      unlikeBoards,
				Remedies: ways,
			}))
		}
		if l.setWrong(recess) {
			l.warn(recess.Misfit(geom.Diagnosis{
				Code: "recess", Subject: about(field, r),
				Fact: geom.Sentencef("the %s %s at the ends of the sides, by %s%s",
					r, recess.comesOut(string(recess.Verdict)), l.standing(recess), l.deeper(recess)),
				Ask:      geom.Sentencef("plane or sand it flush after gluing up, or leave it so"),
				Remedies: append(l.fenceWays(r, stock), l.frontWay()),
			}))
		}
		if stock.Thickness.Max-l.f-l.Cutter.Width > settle && l.Cutter.Kind.Fenced() && !l.drawer.Setup.FlatTongues {
			l.passes(r, stock.Thickness.Max, field)
		}
	}
	if l.drawer.Setup.FlatTongues {
		l.checkPasses([]float64{l.h})
	}
}

// unlikeBoards is the advice where no cutter suits all boards. A range may be assumed
// from a standard; measured boards are often nearer to one another.
var unlikeBoards = geom.Sentencef("sort the boards, or write what more of them measure: from the thinnest " +
	"to the thickest is more than the usual range")

// frontWay is a front that is that of the drawer too, as one may be that is thicker than the sides.
func (l *layout) frontWay() geom.Remedy {
	if l.Tf <= l.Ts+HopelessGap {
		return geom.Remedy{}
	}
	return write(SettingJoint, RabbetedFront)
}

// playWays are what would give a tongue the usual play, and which entry that is.
func (l *layout) clearanceWays(c Check) (geom.Setting, []geom.Remedy) {
	least, most := l.usual(c)
	if l.Cutter.Kind.Fenced() {
		ways := append([]geom.Remedy{l.between(SettingFenceDistance, l.dado-most, l.dado-least)}, l.cutterWays(l.f+least, l.f+most)...)
		return SettingCutter, append(ways, l.bitAndFence(c)...)
	}
	play := l.between(SettingDadoClearance, least, most)
	if l.DadoWidth(0, 0) < l.dado-settle { // the bit is not what sets the slot
		return SettingDadoClearance, []geom.Remedy{play}
	}
	bit := l.most(SettingCutter, l.f+most-l.SlotRoom)
	return SettingCutter, []geom.Remedy{bit, bit.With(play)}
}

// bitAndFence is a bit that is to be had, with a fence distance for it at which the boards on tongues still come out
// flush: no bit is as wide as the tongues of every board. Its grooves may need a cutter of their own.
func (l *layout) bitAndFence(c Check) (ways []geom.Remedy) {
	if l.Cutter.Kind != RouterTable {
		return nil
	}
	stock, _ := l.stockOf(c.Part)
	flush := geom.Interval{
		Min: FenceForRecess(-l.Limits.Flush, stock.Thickness.Max),
		Max: FenceForRecess(l.Limits.Flush, stock.Thickness.Min),
	}
	for _, bit := range soldBits {
		fence := flush.Intersect(geom.Interval{Min: bit - c.UpperLimit, Max: bit - c.LowerLimit})
		if fence.Len() >= 0 {
			both := l.exactly(SettingCutter, bit).With(l.exactly(SettingFenceDistance, fence.Mid()))
			ways = append(ways, both, both.With(l.grooveWay()))
		}
	}
	return ways
}

// cutterWays are the cutters that give a saw's tongues the usual play: those that take
// the bottom too, where there are any, else with a bottom that they take.
func (l *layout) cutterWays(least, most float64) []geom.Remedy {
	// What stands in the groove of the bottom, captured or flush, must go in as well.
	var ways []geom.Remedy
	right := l.Limits.GrooveClearance
	stands := func(thick float64) {
		ways = append(ways, l.between(SettingCutter, max(least, thick+right.Min), min(most, thick+right.Max)))
	}
	if l.BottomFit == BottomFielded { // its tongue goes by the cutter
		return []geom.Remedy{l.between(SettingCutter, least, most)}
	}
	if l.BottomFit != BottomFlush {
		stands(l.Tb + l.under(BottomGroovedIn, l.Bottom.Thickness.Max-l.Tb))
	}
	if tongue := l.Tb - l.f; l.BottomFit != BottomGroovedIn && tongue >= minRabbet {
		stands(tongue + l.under(BottomFlush, 0))
	}
	any := l.between(SettingCutter, least, most)
	return append(ways, any, any.With(l.standingIn(least, most)))
}

// standingIn is a bottom that goes into any groove between two widths.
func (l *layout) standingIn(least, most float64) geom.Remedy {
	return l.between(SettingBottom, most-l.Limits.GrooveClearance.Max, least-l.Limits.GrooveClearance.Min)
}

// standing is how far a panel is proud or recessed, as a number above 0.
func (l *layout) standing(c Check) geom.Sentence {
	if c.Verdict == Proud {
		c.Nominal, c.Min, c.Max = -c.Nominal, -c.Max, -c.Min
		c.LowerLimit, c.UpperLimit = -c.UpperLimit, -c.LowerLimit
	}
	return l.ranged(c)
}

// deeper says, of a proud panel, how deep the box really is.
func (l *layout) deeper(recess Check) geom.Sentence {
	if recess.Verdict != Proud || l.drawer.Outside.Depth-l.Depth <= l.Limits.Flush {
		return geom.Sentence{}
	}
	return geom.Sentencef("; the box is then %s deep, not %s", geom.Millimeters(l.drawer.Outside.Depth),
		geom.Millimeters(l.Depth))
}

// passes plans the passes over a rabbet that is wider than the cutter: from the
// fence distance to where the cutter reaches the outside face, evenly.
func (l *layout) passes(r Role, thickness float64, field geom.Setting) {
	rest := thickness - l.f - l.Cutter.Width
	n := 1 + int(math.Ceil((rest-settle)/l.Cutter.Width))
	if last := thickness - l.Cutter.Width; n > l.drawer.Setup.RabbetPasses || last > l.drawer.Setup.LastFence {
		l.drawer.Setup.RabbetPasses, l.drawer.Setup.LastFence = n, last
	}
	l.note(geom.Diagnosis{ // a pass more takes it
		Code: "rabbet-passes", Subject: about(field, r),
		Measured: geom.Millimeters(thickness - l.f), Limit: geom.Millimeters(l.Cutter.Width),
		Fact: geom.Sentencef("one pass leaves %s at the outside of the %s's rabbet", geom.Millimeters(rest), r),
		Ask:  geom.Sentencef("take %d passes, the fence moved out by at most %s each time, the last at %s", n, geom.AtMost(l.Cutter.Width), geom.Millimeters(thickness-l.Cutter.Width)),
	})
}

// checkProportions judges whether the sizes are in their order.
func (l *layout) checkProportions() {
	if l.Height > l.Depth {
		l.warn(geom.Diagnosis{
			Code: "proportions", Subject: about(SettingOutside, ""),
			Measured: geom.Millimeters(l.Height), Limit: geom.Millimeters(l.Depth),
			Fact: geom.Sentencef("the box is %s high and only %s deep", geom.Millimeters(l.Height), geom.Millimeters(l.Depth)),
			Ask:  geom.Sentencef("the order is width x height x depth"),
		})
	}
}

// lowUsed is what the bottom takes of the height.
func (l *layout) lowUsed() float64 {
	if !l.BottomFit.Grooved() {
		return l.bottomTop()
	}
	return l.rise + max(l.groove, l.inGroove())
}

// roomOf is an outside size with what the joint takes of it, and the least that has to be left.
type roomOf struct {
	what              string
	size, used, least float64
}

func (r roomOf) left() float64 { return r.size - r.used }

// checkRoom judges the outside size against the joint.
func (l *layout) checkRoom() {
	all := []roomOf{
		{"width", l.Width, 2 * l.Ts, minClear},
		{"height", l.Height, l.lowUsed(), minAbove},
		{"depth", l.Depth, l.toFront + l.toBack, minClear},
	}
	var short []roomOf
	for _, c := range all {
		if c.left() < c.least-settle {
			short = append(short, c)
		}
	}
	if len(short) == len(all) && !l.Planned {
		l.noRoom(all)
		return
	}
	for _, c := range short {
		l.refuse(geom.Diagnosis{
			Code: "room", Subject: about(SettingOutside, ""),
			Measured: geom.Millimeters(c.left()), Limit: geom.Millimeters(c.least),
			Fact: geom.Sentencef("the %s is %s and the joint takes %s of it: that leaves %s, at least %s is needed",
				c.what, geom.Millimeters(c.size), geom.Millimeters(c.used), geom.Millimeters(c.left()), geom.Millimeters(c.least)),
			Ask:      geom.Sentencef("make the box larger: where it stands in an opening, that, or with fewer rows"),
			Remedies: []geom.Remedy{l.least(SettingOutside, c.used+c.least).Of(c.what, 0)},
		}, c.left() > settle)
	}
}

// noRoom refuses a size that is too small every way: often one of inches in a job of millimeters.
func (l *layout) noRoom(all []roomOf) {
	w, h, d := all[0], all[1], all[2]
	larger := geom.Remedy{Changes: []geom.Change{}}
	for i, c := range all {
		one := l.least(SettingOutside, c.used+c.least).Of(c.what, 0)
		if larger = larger.With(one); i == 0 {
			larger = one
		}
	}
	first := geom.Sentence{}
	if l.Units == geom.Millimeter {
		number := func(c roomOf) string { return geom.LengthOf(c.size).Number(l.Units) }
		first = geom.Sentencef("write %s x %s x %s in, if it is inches", number(w), number(h), number(d))
	}
	l.refuse(geom.Diagnosis{
		Code: "room", Subject: about(SettingOutside, ""),
		Measured: geom.Millimeters(w.left()), Limit: geom.Millimeters(w.least),
		Fact: geom.Sentencef("the box is %s x %s x %s, and the joint takes %s of the width, %s of the height and %s of the depth: nothing is left inside",
			geom.Millimeters(w.size), geom.Millimeters(h.size), geom.Millimeters(d.size), geom.Millimeters(w.used), geom.Millimeters(h.used), geom.Millimeters(d.used)),
		Ask:      geom.Sentencef("make the box larger"),
		First:    first,
		Remedies: []geom.Remedy{larger},
	}, false)
}

// ends lists front and back, or the front alone where what holds for it holds
// for the back.
func (l *layout) ends() []Role {
	if l.CornerAt(Back) != l.CornerAt(Front) || l.Front.Same(l.Back) {
		return []Role{Front}
	}
	return []Role{Front, Back}
}
