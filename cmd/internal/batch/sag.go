package batch

import (
	"fmt"
	"math"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
	"drawerwright/geom/wood"
)

// mostSag is the part of its shorter span by which a bottom may sag before it shows and
// rubs; common practice, no source.
const mostSag = 1.0 / 200

// sag works out how far the bottom sags under an even load, and judges it. Its edges, in
// grooves or on screws, are held better than simply supported and worse than clamped.
func (d *Drawer) sag(j *job.Job, drawer int, load float64) []proposal {
	stock := d.Spec.Bottom
	if stock.Stiffness == 0 {
		return nil
	}
	limit := mostSag * math.Min(d.Inside.Width, d.Inside.Depth)
	s := &d.Strength
	for _, b := range d.laid() {
		sag, err := plate.Of(b, load)
		if err != nil {
			return nil // beyond any drawer: sizes and stocks were judged before
		}
		if sag.Simple > s.Sag.Simple {
			s.Sag = sag
		}
		s.Enough = math.Max(s.Enough, enough(stock, b, load, limit))
	}
	creep := stock.Creep
	if creep == 0 {
		creep = wood.UsualCreep
	}
	s.SagLimit, s.Lasting = limit, s.Sag.Simple*creep
	if s.Sag.Simple <= limit {
		return nil
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(d.Spec.Units) + " " + d.Spec.Units.String() }
	p := proposal{Problem: joinery.Problem{Code: "sag", Field: joinery.FieldBottom, Part: string(joinery.Bottom),
		Message: fmt.Sprintf("under %s, spread evenly, the bottom sags by %s (%s if its edges were clamped; the truth is between), and if the load stays for years by up to %s; %s is a two-hundredth of its span", words.Weight(load, d.Spec.Units), text(s.Sag.Simple), text(s.Sag.Clamped), text(s.Lasting), text(limit)),
		Hint:    "less load, or a strip that is glued under the middle of the bottom"}}
	if s.Enough > 0 {
		p.ways = d.thicker(s.Enough)
	}
	p.ways = append(p.ways, lessLoad(j, drawer, load*limit/s.Sag.Simple))
	return []proposal{p}
}

// thicker are bottoms of the same stock from a thickness on: in grooves made for them, in
// one of a saw's own cutter for grooves, which may be the same cutter in more passes, or
// without grooves.
func (d *Drawer) thicker(least float64) [][]Way {
	s := d.Spec
	c := joinery.Change{Field: joinery.FieldBottom, Min: geom.LengthOf(least).RoundUp(s.Units).MM()}
	ways := [][]Way{upTo(s, c)}
	if s.Cutter.Kind.Fenced() && s.Cutter.Groove == 0 && s.BottomFit.Grooved() {
		ways[0] = append(ways[0], upTo(s, c, joinery.Change{Field: joinery.FieldGrooveCutter, Min: s.Cutter.Width, Max: s.Cutter.Width})...)
	}
	for _, fit := range []joinery.BottomFit{joinery.BottomApplied, joinery.BottomCleats} {
		if s.BottomFit.Grooved() {
			ways[0] = append(ways[0], upTo(s, c, joinery.Change{Field: joinery.FieldBottomFit, Word: string(fit)})...)
		}
	}
	return ways
}

// laid are the ways in which the bottom may lie: its grain, or that of its face, from
// side to side; or, cut from a stock whose grain is of no matter, either way.
func (d *Drawer) laid() []plate.Bottom {
	stock := d.Spec.Bottom
	across := stock.StiffnessAcross
	if across == 0 {
		across = stock.Stiffness
	}
	b := plate.Bottom{Length: d.Inside.Width, Width: d.Inside.Depth, Thickness: stock.Thickness.Min,
		Along: stock.Stiffness, Across: across, Poisson: stock.Poisson, Shear: stock.Shear}
	if stock.Grain != joinery.GrainNone || b.Along == b.Across {
		return []plate.Bottom{b}
	}
	turned := b
	turned.Length, turned.Width = b.Width, b.Length
	return []plate.Bottom{b, turned}
}

// Thicknesses are found to settledThickness, in mm, in at most thicknessSteps steps: the
// thickness depends on the stiffness by its cube root, so that each step leaves less
// than a third of the error.
const (
	settledThickness = 1e-6
	thicknessSteps   = 40
)

// enough is the mean thickness of a bottom of the same stock, as even as this one, whose
// thinnest board keeps the limit; 0 where none does.
func enough(stock joinery.Stock, b plate.Bottom, load, limit float64) float64 {
	uneven := stock.Thickness.Mean - stock.Thickness.Min
	kind, follows := wood.FindSheet(stock.StiffAs)
	mean := stock.Thickness.Mean
	for range thicknessSteps {
		if follows {
			along, across, err := kind.Stiffness(mean)
			if err != nil {
				return 0
			}
			b.Along, b.Across = along, across
		}
		thin, err := plate.ThicknessFor(b, load, limit)
		if err != nil {
			return 0
		}
		last := mean
		if mean = thin + uneven; math.Abs(mean-last) < settledThickness {
			return mean
		}
	}
	return 0
}
