package batch

import (
	"fmt"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/strength"
)

// sag works out how far the bottom sags under an even load, and judges it.
func (d *Drawer) sag(j *job.Job, drawer int, load float64) []proposal {
	s := &d.Strength
	if s.Bottom = strength.BottomOf(d.Drawer, load); !s.SagsTooMuch() {
		return nil
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(d.Spec.Units) + " " + d.Spec.Units.String() }
	p := proposal{Problem: joinery.Problem{Code: "sag", Field: joinery.FieldBottom, Part: string(joinery.Bottom),
		Message: fmt.Sprintf("under %s, spread evenly, the bottom sags by %s (%s if its edges were clamped; the truth is between), and if the load stays for years by up to %s; %s is a two-hundredth of its span", words.Weight(load, d.Spec.Units), text(s.Sag.Simple), text(s.Sag.Clamped), text(s.Lasting), text(s.SagLimit)),
		Hint:    "less load, or a strip that is glued under the middle of the bottom"}}
	if s.Enough > 0 {
		p.ways = d.thicker(s.Enough)
	}
	p.ways = append(p.ways, lessLoad(j, drawer, s.MostLoad(load)))
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
