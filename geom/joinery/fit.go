package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// Verdict says in a word what a joint will do.
type Verdict string

const (
	Goes     Verdict = "goes together"
	Tight    Verdict = "tight"
	Loose    Verdict = "loose"
	WillNot  Verdict = "will not"
	IsFlush  Verdict = "flush"
	Recessed Verdict = "recessed"
	Proud    Verdict = "proud"
	AsAsked  Verdict = "as asked"
	Narrow   Verdict = "narrow"
	Wide     Verdict = "wide"
	Deep     Verdict = "deep"
	Shallow  Verdict = "shallow"
	Open     Verdict = "open"
	Low      Verdict = "low"
	High     Verdict = "high"
	Short    Verdict = "short"
	Long     Verdict = "long"
)

// Check is one measure of the finished joint, in millimetres: for the mean of
// the caliper readings, and the least and the greatest that the readings allow
// with the cuts as set or, where the Spec has its spread, the likely ones. Verdict
// judges the whole range against the limits.
type Check struct {
	CheckID
	Name              string // for people
	Nominal, Min, Max float64
	Least, Most       float64 // limits
	Words             Words
	Verdict           Verdict
}

// Words are the verdicts on a range within its limits, beyond the lower and
// beyond the upper one.
type Words struct{ Within, Below, Above Verdict }

// The words for a thing inside another, for faces that should be level, and for
// sizes.
var (
	PlayWords     = Words{Goes, Tight, Loose}
	DiagonalWords = Words{AsAsked, Short, Long}
	RecessWords   = Words{IsFlush, Proud, Recessed}
	WidthWords    = Words{AsAsked, Narrow, Wide}
	HeightWords   = Words{AsAsked, Low, High}
	DepthWords    = Words{AsAsked, Shallow, Deep}
)

// check adds a measure that changes with a thickness, by factor times its
// deviation from the mean: -1 is a play that a thicker board takes up.
func (l *layout) check(id CheckID, name string, nominal, factor float64, t Thickness, least, most float64, say Words) Check {
	a, b := nominal+factor*(t.Max-t.Mean), nominal+factor*(t.Min-t.Mean)
	return l.judge(Check{CheckID: id, Name: name, Nominal: nominal, Min: math.Min(a, b), Max: math.Max(a, b), Least: least, Most: most}, say)
}

// judge gives a check its verdict and keeps it.
func (l *layout) judge(c Check, say Words) Check {
	c.Words = say
	if s, known := l.Spreads[c.CheckID]; known {
		c.Min, c.Max = c.Nominal+s.Min, c.Nominal+s.Max
	}
	c.Verdict = c.Over(c.Min, c.Max)
	l.drawer.Fit = append(l.drawer.Fit, c)
	return c
}

// Over is the verdict on a range of the measure. Nothing goes into a gap of which
// nothing is left as it is meant.
func (c Check) Over(least, most float64) Verdict {
	below, above := c.Least-least, most-c.Most
	switch {
	case c.Words == PlayWords && c.Nominal <= settle:
		return WillNot
	case below > settle && above > settle:
		return c.Words.Below + " or " + c.Words.Above
	case below > settle:
		return c.Words.Below
	case above > settle:
		return c.Words.Above
	}
	return c.Words.Within
}

// play is a check of one thing inside another, which has to be more than 0.
func (l *layout) play(id CheckID, name string, nominal, factor float64, t Thickness, least, most float64) Check {
	return l.check(id, name, nominal, factor, t, least, most, PlayWords)
}

// usual gives those of a check as advice prints them: where the range spreads too far,
// the limits themselves.
func (l *layout) usual(c Check) (least, most float64) {
	if least, most = c.usual(); l.advisable(least, most) {
		return least, most
	}
	return c.Least, c.Most
}

// setWrong reports whether a measure leaves its limits as it is set, and another
// setting would bring its whole range within them. Where none would, its boards and
// the machine are to blame, and what moves it most is for those to say who know both:
// the package fit.
func (l *layout) setWrong(c Check) bool {
	least, most := c.usual()
	return c.Verdict != c.Words.Within && l.advisable(least, most)
}

// checks says which check the last problem is about.
func (l *layout) checks(c Check) { l.problems[len(l.problems)-1].Check = c.CheckID }

// ranged prints a check's nominal value, and its range where there is one to see.
func (l *layout) ranged(c Check) string {
	least, most := l.text(c.Min), l.text(c.Max)
	if least == most {
		if c.Verdict != c.Words.Within && (most == l.text(c.Least) || most == l.text(c.Most)) {
			return l.finer(c.Max) // as printed it would be within
		}
		return most
	}
	by := "over the readings"
	if _, known := l.Spreads[c.CheckID]; known {
		by = "likely"
	}
	return fmt.Sprintf("%s (%s to %s %s)", l.text(c.Nominal), least, most, by)
}

// finer prints a length with two digits more than usual.
func (l *layout) finer(mm float64) string {
	if l.Units == geom.Inch {
		return fmt.Sprintf("%.5f in", mm/geom.InchMM)
	}
	return fmt.Sprintf("%.4f mm", mm)
}

// usual gives the nominal values with which the whole range of a check keeps
// within its limits; least is above most where the readings spread too far.
func (c Check) usual() (least, most float64) {
	return c.Least + (c.Nominal - c.Min), c.Most - (c.Max - c.Nominal)
}

// tonguePlay is w - f. Where a rabbet leaves the same wood in every board, the
// tongue is f thick; a router that cuts down from the outside face leaves all of
// the board's variation to the tongue.
func (l *layout) tonguePlay(r Role) Check {
	stock, _ := l.stockOf(r)
	factor := 0.0
	if !l.sameLeft(r) {
		factor = -1
	}
	return l.play(CheckID{Code: CheckTonguePlay, Part: r}, string(r)+" tongue play in its dado", l.dado-l.f, factor, stock.Thickness, l.Limits.TonguePlay.Min, l.Limits.TonguePlay.Max)
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
	return l.check(CheckID{Code: CheckRecess, Part: r}, string(r)+" recess at the side ends (proud below 0)", 2*l.f-stock.Thickness.Mean, factor, stock.Thickness,
		-l.Limits.Recess, l.Limits.Recess, RecessWords)
}

// bottomPlayID is that of the check of a bottom which is captured or flush.
func bottomPlayID(seat BottomFit) CheckID {
	return CheckID{Code: CheckBottomPlay, Part: Bottom, Seat: seat}
}

// under is how much less than as set the play of such a bottom comes out; by what its
// readings say where the Spec has no spread of it.
func (l *layout) under(seat BottomFit, readings float64) float64 {
	if s, known := l.Spreads[bottomPlayID(seat)]; known {
		return -s.Min
	}
	return readings
}

// bottomPlay is the groove's width less what stands in it.
func (l *layout) bottomPlay() Check {
	seat := BottomCaptured
	if l.flush {
		seat = BottomFlush
	}
	factor := -1.0
	if l.flush && l.sameLeft(Bottom) { // every board gets the same tongue
		factor = 0
	}
	return l.play(bottomPlayID(seat), string(seat)+" bottom play in its groove", l.groove-l.inGroove(), factor, l.Bottom.Thickness, l.Limits.BottomPlay.Min, l.Limits.BottomPlay.Max)
}

// flushness is how far a flush bottom's underside stands above the bottom edges,
// below 0 when it hangs down: what a board is thicker than the mean, unless its
// rabbets are cut down from that face.
func (l *layout) flushness() Check {
	factor := -1.0
	if !l.sameLeft(Bottom) {
		factor = 0
	}
	return l.check(CheckID{Code: CheckBottomFlush, Part: Bottom}, "flush bottom above the edges (below 0: hangs down)", 0, factor, l.Bottom.Thickness, -l.Limits.Recess, l.Limits.Recess,
		Words{IsFlush, Proud, Recessed})
}

// outsideDepth is that of the sides, and of what stands proud of their ends.
func (l *layout) outsideDepth() Check {
	return l.check(CheckID{Code: CheckOutsideDepth}, "outside depth", l.drawer.Outside.Depth, 0, l.Sides.Thickness, l.Depth-l.Limits.Depth, l.Depth+l.Limits.Depth, DepthWords)
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
			more = max(more-l.shoulderRoom(), -l.GlueRoom)
		}
		return l.Width + float64(2*more)
	}
	return l.judge(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width, Min: width(t.Min), Max: width(t.Max),
		Least: l.Width - l.Limits.Width, Most: l.Width + l.Limits.Width}, WidthWords)
}

// shoulderRoom is how much longer the rabbets are than the tongues need: with the
// same wood left under every dado, room for the thickest side between the
// shoulders, so that it cannot keep the tongues from their dados' floors. Glue
// room leaves the seat to the shoulders.
func (l *layout) shoulderRoom() float64 {
	if l.fromSpoilboard() && l.GlueRoom == 0 {
		return l.Sides.Thickness.Max - l.Sides.Thickness.Mean
	}
	return 0
}
