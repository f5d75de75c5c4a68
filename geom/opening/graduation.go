package opening

import (
	"cmp"
	"math"

	"drawerwright/geom"
)

// Graduate divides a height among n rows from the top down, each higher than the one
// above it by a step, or by a ratio:
//
//	arithmetic   a, a + d, a + 2 d, ...   with n a + d n (n - 1) / 2 = height
//	geometric    a, a r, a r^2, ...       with a (r^n - 1) / (r - 1) = height
//
// ok is false where a row would not be higher than 0.
func Graduate(height float64, n int, g Graduation, step, ratio float64) (rows []float64, ok bool) {
	m := float64(n)
	first := height / m
	switch g {
	case Arithmetic:
		first = (height - step*m*(m-1)/2) / m
	case Geometric:
		if !(ratio > 0) {
			return nil, false
		}
		if math.Abs(ratio-1) > 1e-9 { // below, the quotient has no digits left
			first = height * (ratio - 1) / (math.Pow(ratio, m) - 1)
		}
	}
	left := height
	for i := range n {
		h := first
		switch g {
		case Arithmetic:
			h += float64(step * float64(i))
		case Geometric:
			h *= math.Pow(ratio, float64(i))
		}
		if i == n-1 { // what is left, so that nothing is lost to rounding
			h = left
		}
		if !(h > 0) {
			return nil, false
		}
		rows = append(rows, h)
		left -= h
	}
	return rows, true
}

// span is where the fronts begin and end over the datum, and how far within the
// opening they begin at the left; below 0 before the cabinet.
func (p *planner) span() (bottom, top, left float64) {
	h := p.plan.Opening.Height
	switch p.Opening.Fronts {
	case Inset:
		return p.Edge.Bottom, h - p.Edge.Top, p.Edge.Left
	case Overlay:
		return -p.Edge.Bottom, h + p.Edge.Top, -p.Edge.Left
	}
	return 0, h, 0
}

// atEdges says what fronts take of the opening's height at its edges, or cover beyond them.
func (p *planner) atEdges() geom.Sentence {
	switch edges := geom.Millimeters(p.Edge.Top + p.Edge.Bottom); p.Opening.Fronts {
	case Inset:
		return geom.Sentencef(" less %s for the gaps at top and bottom", edges)
	case Overlay:
		return geom.Sentencef(" and %s of overlay at top and bottom", edges)
	}
	return geom.Sentence{}
}

// heights are those of the fronts from the top down.
func (p *planner) heights() ([]float64, bool) {
	bottom, top, _ := p.span()
	n := len(p.Rows)
	rest := top - bottom - float64(p.FrontGap*float64(n-1))
	free := 0
	for _, r := range p.Rows {
		rest -= r.Front
		if r.Front == 0 {
			free++
		}
	}
	switch {
	case free == 0 && math.Abs(rest) > maxSpread:
		taken, there := geom.Millimeters(top-bottom-rest), geom.Millimeters(top-bottom)
		d := p.found.Fail("rows", SettingRows, "with the gaps between them the rows are %s high, and have %s: "+
			"the opening's %s%s",
			taken, there, geom.Millimeters(p.plan.Opening.Height), p.atEdges())
		d.Measured, d.Limit = taken, there
		d.Ask = geom.Sentencef("leave one of them free, or change one by %s", geom.Millimeters(math.Abs(rest)))
		return nil, false
	case rest <= 0 && free > 0:
		taken, there := geom.Millimeters(top-bottom-rest), geom.Millimeters(top-bottom)
		gaps := p.FrontGap * float64(n-1)
		d := p.found.Fail("rows", SettingRows, "the rows with a height of their own are %s high, "+
			"with %s for the gaps between all rows %s, and have %s: the opening's %s%s; "+
			"nothing is left for the free ones",
			geom.Millimeters(top-bottom-rest-gaps), geom.Millimeters(gaps), taken, there,
			geom.Millimeters(p.plan.Opening.Height), p.atEdges())
		d.Measured, d.Limit = taken, there
		d.Ask = geom.Sentencef("lower or fewer rows")
		return nil, false
	}
	heights := make([]float64, 0, n)
	var shared []float64
	if free > 0 {
		var ok bool
		if shared, ok = Graduate(rest, free, p.Graduation, p.Step, p.Ratio); !ok {
			d := p.found.Fail("graduation", SettingGraduation,
				"%s for %d free rows is not enough for the steps between them",
				geom.Millimeters(rest), free)
			d.Ask = geom.Sentencef("a smaller step, or fewer rows")
			return nil, false
		}
	}
	for i, r := range p.Rows {
		h := r.Front
		switch {
		case h == 0:
			h, shared = shared[0], shared[1:]
		case free == 0 && i == n-1:
			h += rest // the little that the rows differ by
		}
		heights = append(heights, h)
	}
	p.checkSwelling(heights)
	return heights, true
}

// checkSwelling judges solid fronts, which grow higher in a damp season, against
// the gaps between them.
func (p *planner) checkSwelling(heights []float64) {
	front := cmp.Or(p.Front, p.Lipped)
	if front == nil || front.Swelling == 0 {
		return
	}
	highest, row := 0.0, 0
	for i, h := range heights {
		if h > highest {
			highest, row = h, i
		}
	}
	gap, setting := p.FrontGap, SettingFrontGap
	if p.Opening.Fronts == Inset {
		if edge := math.Min(p.Edge.Top, p.Edge.Bottom); edge < gap || len(heights) == 1 {
			gap, setting = edge, SettingReveal
		}
	} else if len(heights) == 1 {
		return // nothing above or below it
	}
	if grows := highest * front.Swelling; grows > gap-minGap+settle {
		d := p.found.Fail("front-movement", setting, "the drawer front of row %d, %s high, swells by %s in a damp season; the %s is %s, "+
			"of which %s has to stay open", row+1, geom.Millimeters(highest), geom.Millimeters(grows), setting,
			geom.Millimeters(gap), geom.Millimeters(minGap))
		d.Subject.Item, d.Remedies = row, p.least(setting, "", grows+minGap)
		d.Measured, d.Limit = geom.Millimeters(gap), geom.AtLeast(grows+minGap)
		d.Ask = geom.Sentencef("take a drawer front of quartersawn boards or of sheet stock, which moves less")
	}
}

// minGap is what has to be left of a gap, in mm; common practice, no source.
const minGap = 0.5
