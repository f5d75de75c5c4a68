package advice

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Readings are how many of a stock say how its boards differ, where a single one leaves that to a
// standard; common practice, no source.
const Readings = 3

// Reread is a stock that was read once, so that a standard says between what its boards are.
type Reread struct {
	Stock  string
	Differ float64 // by how much the standard lets its boards differ, in mm
	// Right is the measure where all readings are as the one.
	Right fit.Odds
}

// MeasureAgain finds the stock of which more readings do most for a measure, where they are as the
// one that there is; index is the measure's place in the outcome. It finds none where that gains too
// little to be seen.
func (d *Box) MeasureAgain(index int) (best Reread, helps bool) {
	m := d.Outcome.Measures[index]
	for name, causes := range d.readOnce() {
		even := d.Outcome.Even(index, causes...)
		gains := even.Right.Fraction >= m.Right.Fraction+Noticeable || m.OutOfLimits() && !even.OutOfLimits()
		better := even.Right.Fraction - best.Right.Fraction
		if gains && (!helps || better > 0 || better == 0 && name < best.Stock) {
			best, helps = Reread{name, d.assumed(causes[0]), even.Right}, true
		}
	}
	return best, helps
}

// readOnce are the causes of the boards of each stock that was read once.
func (d *Box) readOnce() map[string][]fit.Cause {
	list := make(map[string][]fit.Cause)
	for _, c := range []fit.Cause{fit.OfSides, fit.OfFront, fit.OfBack, fit.OfBottom} {
		if s := d.stockOf(c); d.assumed(c) > 0 && s.Thickness.Min == s.Thickness.Max {
			list[s.Name] = append(list[s.Name], c)
		}
	}
	return list
}

// stockOf is the stock that a cause is the boards of.
func (d *Box) stockOf(c fit.Cause) joinery.Stock {
	switch c {
	case fit.OfFront:
		return d.Spec.Front
	case fit.OfBack:
		return d.Spec.Back
	case fit.OfBottom:
		return d.Spec.Bottom
	}
	return d.Spec.Sides
}

// assumed is between what a standard says that the boards of a cause are, in mm; 0 where they were
// measured.
func (d *Box) assumed(c fit.Cause) float64 {
	b := d.Shop.Boards
	s := map[fit.Cause]fit.Spread{
		fit.OfSides: b.Sides, fit.OfFront: b.Front, fit.OfBack: b.Back, fit.OfBottom: b.Bottom}[c]
	if s.Assumed == "" {
		return 0
	}
	return s.Minus + s.Plus
}
