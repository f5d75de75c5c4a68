package joinery

import (
	"math"

	"drawerwright/geom"
)

// Verdict says in a word what a joint will do.
type Verdict string

const (
	GoesTogether Verdict = "goes together"
	Tight        Verdict = "tight"
	Loose        Verdict = "loose"
	WillNot      Verdict = "does not go in"
	IsFlush      Verdict = "flush"
	Recessed     Verdict = "recessed"
	Proud        Verdict = "proud"
	AsAsked      Verdict = "as asked"
	Narrow       Verdict = "narrow"
	Wide         Verdict = "wide"
	Deep         Verdict = "deep"
	Shallow      Verdict = "shallow"
	Open         Verdict = "open"
	Low          Verdict = "low"
	High         Verdict = "high"
	Short        Verdict = "short"
	Long         Verdict = "long"
)

// Right reports whether a measure with the verdict is as it is meant.
func (v Verdict) Right() bool { return v == GoesTogether || v == IsFlush || v == AsAsked }

// Check is one measure of the finished joint, in millimeters: for the mean of
// the caliper readings, and the least and the greatest that the readings allow
// with the cuts as set or, where the Spec has its spread, the likely ones. Verdict
// judges the whole range against the limits.
type Check struct {
	CheckID
	Name                   string // for people
	Nominal, Min, Max      float64
	LowerLimit, UpperLimit float64 // limits
	Verdicts               Verdicts
	Verdict                Verdict
}

// Verdicts are the verdicts on a range within its limits, beyond the lower and
// beyond the upper one.
type Verdicts struct{ Within, Below, Above Verdict }

// The words for a thing inside another, for faces that should be level, and for
// sizes.
var (
	ClearanceVerdicts = Verdicts{GoesTogether, Tight, Loose}
	DiagonalVerdicts  = Verdicts{AsAsked, Short, Long}
	RecessVerdicts    = Verdicts{IsFlush, Proud, Recessed}
	WidthVerdicts     = Verdicts{AsAsked, Narrow, Wide}
	HeightVerdicts    = Verdicts{AsAsked, Low, High}
	DepthVerdicts     = Verdicts{AsAsked, Shallow, Deep}
)

// check adds a measure that changes with a thickness, by factor times its deviation
// from the mean: -1 is a play that a thicker board takes up.
func (l *layout) check(c Check, t Thickness, factor float64) Check {
	a, b := c.Nominal+factor*(t.Max-t.Mean), c.Nominal+factor*(t.Min-t.Mean)
	c.Min, c.Max = math.Min(a, b), math.Max(a, b)
	return l.judge(c)
}

// judge gives a check its verdict and keeps it.
func (l *layout) judge(c Check) Check {
	if s, known := l.Spreads[c.CheckID]; known {
		c.Min, c.Max = c.Nominal+s.Min, c.Nominal+s.Max
	}
	c.Verdict = c.VerdictOn(c.Min, c.Max)
	l.drawer.Fit = append(l.drawer.Fit, c)
	return c
}

// noClearance reports whether nothing is left of a clearance as it is meant: then nothing goes in.
func noClearance(clearance float64) bool { return clearance <= settle }

// VerdictOn is the verdict on a range of the measure.
func (c Check) VerdictOn(least, most float64) Verdict {
	below, above := c.LowerLimit-least, most-c.UpperLimit
	switch {
	case c.Verdicts == ClearanceVerdicts && noClearance(c.Nominal):
		return WillNot
	case below > settle && above > settle:
		return c.Verdicts.Below + " or " + c.Verdicts.Above
	case below > settle:
		return c.Verdicts.Below
	case above > settle:
		return c.Verdicts.Above
	}
	return c.Verdicts.Within
}

// usual gives those of a check as advice prints them: where the range spreads too far,
// the limits themselves.
func (l *layout) usual(c Check) (least, most float64) {
	if least, most = c.usual(); l.advisable(least, most) {
		return least, most
	}
	return c.LowerLimit, c.UpperLimit
}

// setWrong reports whether a measure leaves its limits as it is set, and another
// setting would bring its whole range within them. Where none would, its boards and
// the machine are to blame, and what moves it most is for those to say who know both:
// the package fit.
func (l *layout) setWrong(c Check) bool {
	least, most := c.usual()
	return c.Verdict != c.Verdicts.Within && l.advisable(least, most)
}

// Misfit is a diagnosis of a check, with the end of its range that leaves its limits, or leaves
// them by more, and that limit.
func (c Check) Misfit(d geom.Diagnosis) geom.Diagnosis {
	d.Subject.Check = c.CheckID
	d.Measured, d.Limit = geom.Millimeters(c.Max), geom.Millimeters(c.UpperLimit)
	if c.LowerLimit-c.Min > c.Max-c.UpperLimit {
		d.Measured, d.Limit = geom.Millimeters(c.Min), geom.Millimeters(c.LowerLimit)
	}
	return d
}

// ranged is a check's nominal value, and its range where there is one to see.
func (l *layout) ranged(c Check) geom.Sentence {
	least, most := c.judged(c.Min), c.judged(c.Max)
	if least.In(l.Units) == most.In(l.Units) {
		return geom.Sentencef("%s", most)
	}
	by := "over the readings"
	if _, known := l.Spreads[c.CheckID]; known {
		by = "likely"
	}
	return geom.Sentencef("%s (%s to %s %s)", c.judged(c.Nominal), least, most, by)
}

// Limits are between what the measure is right, in mm.
func (c Check) Limits() geom.Interval { return geom.Interval{Min: c.LowerLimit, Max: c.UpperLimit} }

// judged is a length of the check beside its limits.
func (c Check) judged(mm float64) geom.Judged { return geom.Judged{MM: mm, Right: c.Limits()} }

// clearanceFact says what clearance a part has where it goes in, and what is right; of one that
// does not go in, by how much it is too thick.
func (l *layout) clearanceFact(part, place string, c Check) geom.Sentence {
	right := geom.RightIs{Interval: c.Limits()}
	if c.Max < 0 {
		return geom.Sentencef("%s is %s too thick for %s: it %s; %s of clearance is right", part,
			geom.Millimeters(-c.Nominal), place, c.Verdict, right)
	}
	return geom.Sentencef("%s has %s of clearance in %s: %s; %s is right", part,
		l.ranged(c), place, c.Words(), right)
}

// usual gives the nominal values with which the whole range of a check keeps
// within its limits; least is above most where the readings spread too far.
func (c Check) usual() (least, most float64) {
	return c.LowerLimit + (c.Nominal - c.Min), c.UpperLimit - (c.Max - c.Nominal)
}

// TongueClearanceAt is what a fence distance leaves of a dado's width beside the tongue that it
// makes, RecessAt how far a board then stands behind the ends of the sides, below 0 before
// them, and FenceForRecess the distance for that. In mm.
func TongueClearanceAt(fence, dado float64) float64 { return dado - fence }
func RecessAt(fence, board float64) float64         { return 2*fence - board }
func FenceForRecess(recess, board float64) float64  { return (board + recess) / 2 }

// tonguePlay is w - f. Where a rabbet leaves the same wood in every board, the
// tongue is f thick; a router that cuts down from the outside face leaves all of
// the board's variation to the tongue.
func (l *layout) tongueClearance(r Role) Check {
	stock, _ := l.stockOf(r)
	factor := 0.0
	if !l.sameLeft(r) {
		factor = -1
	}
	return l.check(Check{CheckID: CheckID{Code: CheckTongueClearance, Part: r}, Name: r.String() + " tongue clearance in its dado", Nominal: TongueClearanceAt(l.f, l.dado),
		LowerLimit: l.Limits.TongueClearance.Min, UpperLimit: l.Limits.TongueClearance.Max, Verdicts: ClearanceVerdicts}, stock.Thickness, factor)
}

// recess is 2 f - T, with the tongue against its dado's outer wall: how far the
// panel stands back from the ends of the sides, negative when it is proud. Cut
// down from the outside face, that face is where the rabbet's depth puts it.
func (l *layout) recess(r Role) Check {
	stock, _ := l.stockOf(r)
	factor := -1.0
	if !l.sameLeft(r) {
		factor = 0
	}
	return l.check(Check{CheckID: CheckID{Code: CheckRecess, Part: r}, Name: r.String() + " recess at the side ends (proud below 0)", Nominal: RecessAt(l.f, stock.Thickness.Mean),
		LowerLimit: -l.Limits.Flush, UpperLimit: l.Limits.Flush, Verdicts: RecessVerdicts}, stock.Thickness, factor)
}

// grooveClearanceID is that of the check of a bottom that sits so.
func grooveClearanceID(seat BottomFit) CheckID {
	return CheckID{Code: CheckGrooveClearance, Part: Bottom, Seat: seat}
}

// under is how much less than as set the play of such a bottom comes out; by what its
// readings say where the Spec has no spread of it.
func (l *layout) under(seat BottomFit, readings float64) float64 {
	if s, known := l.Spreads[grooveClearanceID(seat)]; known {
		return -s.Min
	}
	return readings
}

// bottomPlay is the groove's width less what stands in it.
func (l *layout) grooveClearance() Check {
	seat, factor := l.seat(), -1.0
	if l.below() > 0 && l.sameLeft(Bottom) { // every board gets the same tongue
		factor = 0
	}
	return l.check(Check{CheckID: grooveClearanceID(seat), Name: string(seat) + " bottom clearance in its groove", Nominal: l.groove - l.inGroove(),
		LowerLimit: l.Limits.GrooveClearance.Min, UpperLimit: l.Limits.GrooveClearance.Max, Verdicts: ClearanceVerdicts}, l.Bottom.Thickness, factor)
}

// flushness is how far a flush bottom's underside stands above the bottom edges,
// below 0 when it hangs down: what a board is thicker than the mean, unless its
// rabbets are cut down from that face.
func (l *layout) flushness() Check {
	factor := -1.0
	if !l.sameLeft(Bottom) {
		factor = 0
	}
	return l.check(Check{CheckID: CheckID{Code: CheckBottomFlush, Part: Bottom}, Name: "flush bottom above the edges (below 0: hangs down)", Nominal: 0,
		LowerLimit: -l.Limits.Flush, UpperLimit: l.Limits.Flush, Verdicts: RecessVerdicts}, l.Bottom.Thickness, factor)
}

// outsideDepth is that of the sides, and of what stands proud of their ends.
func (l *layout) outsideDepth() Check {
	d := l.drawer.Outside.Depth
	return l.judge(l.depthOf(d, d, d))
}

// depthOf is the depth of the box as it is set, with its range over the readings.
func (l *layout) depthOf(nominal, least, most float64) Check {
	return Check{CheckID: CheckID{Code: CheckOutsideDepth}, Name: "outside depth", Nominal: nominal, Min: least, Max: most,
		LowerLimit: l.Depth - l.Limits.Depth, UpperLimit: l.Depth + l.Limits.Depth, Verdicts: DepthVerdicts}
}

// outsideWidth changes with both sides where the dados' floors are h below the
// inside faces: what a board is thicker comes out outside. With the same wood left
// under every dado, the tongues' ends keep the width, unless the shoulders meet
// the inside faces first.
func (l *layout) outsideWidth() Check {
	t := l.Sides.Thickness
	width := func(thickness float64) float64 {
		more := thickness - t.Mean
		if l.fromSpoilboard() {
			more = max(more-l.shoulderRoom(), -l.GlueSpace)
		}
		return l.Width + float64(2*more)
	}
	return l.judge(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width, Min: width(t.Min), Max: width(t.Max),
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts})
}

// shoulderRoom is how much longer the rabbets are than the tongues need: with the
// same wood left under every dado, room for the thickest side between the
// shoulders, so that it cannot keep the tongues from their dados' floors. Glue
// room leaves the seat to the shoulders.
func (l *layout) shoulderRoom() float64 {
	if l.fromSpoilboard() && l.GlueSpace == 0 {
		return l.Sides.Thickness.Max - l.Sides.Thickness.Mean
	}
	return 0
}
