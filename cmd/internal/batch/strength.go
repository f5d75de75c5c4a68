package batch

import (
	"fmt"
	"math"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
	"drawerwright/geom/plate"
)

// Strength is what a drawer weighs and how its bottom bears its load. What is not
// known is 0.
type Strength struct {
	Empty, Load float64 // kg, without hardware
	Slide       opening.Slide
	SlideLength float64
	Sag         plate.Sag // under the load, in mm and N/mm2
	SagLimit    float64   // mm
	Enough      float64   // thickness, in mm, with which the bottom keeps it
}

const (
	// mostLoaded is the part of a slide's rating that box and load together may
	// reach; common practice, no source: three quarters to four fifths.
	mostLoaded = 0.8
	// mostSag is the part of its shorter span by which a bottom may sag before it
	// shows and rubs; common practice, no source.
	mostSag = 1.0 / 200
)

// fieldLoad is the entry of a drawer's load.
const fieldLoad joinery.Field = "load"

// slideOf finds the slide that a drawer of a job runs on, in the bank that it is of.
func slideOf(j *job.Job, drawer int) *opening.Plan {
	for i, bank := range j.Banks {
		for _, n := range bank.Drawers {
			if n == drawer {
				return &j.Banks[i].Plan
			}
		}
	}
	return nil
}

// strengthen works out the strength of a drawer, and judges it.
func (d *Drawer) strengthen(load float64, plan *opening.Plan) (problems []joinery.Problem) {
	s := &d.Strength
	s.Load = load
	empty, known := d.Weight()
	if known {
		s.Empty = empty
	}
	if plan != nil {
		s.Slide, s.SlideLength = plan.Slide, plan.SlideLength
		if total := s.Empty + load; load > 0 && s.Slide.Load > 0 && total > s.Slide.Load*mostLoaded {
			problems = append(problems, joinery.Problem{Code: "weight", Field: fieldLoad,
				Message: fmt.Sprintf("box and load weigh %s and %s, %.0f %% of the %s that such slides are rated for; %.0f %% is usual at most", WeightText(s.Empty, d.Spec.Units), WeightText(load, d.Spec.Units), 100*total/s.Slide.Load, WeightText(s.Slide.Load, d.Spec.Units), 100*mostLoaded),
				Hint:    "a stronger slide, or less load"})
		}
	}
	if load > 0 {
		problems = append(problems, d.sag(load)...)
	}
	return problems
}

// sag of the bottom under an even load. Its edges, in grooves or on screws, are
// held better than simply supported and worse than clamped.
func (d *Drawer) sag(load float64) []joinery.Problem {
	stock, inside := d.Spec.Bottom, d.Inside
	if stock.Stiffness == 0 {
		return nil
	}
	across := stock.StiffnessAcross
	if across == 0 {
		across = stock.Stiffness
	}
	b := plate.Bottom{Length: inside.Width, Width: inside.Depth, Thickness: stock.Thickness.Min, Along: stock.Stiffness, Across: across, Poisson: stock.Poisson, Shear: stock.Shear}
	sag, err := plate.Of(b, load)
	if err != nil {
		return nil // beyond any drawer: sizes and stocks were judged before
	}
	s := &d.Strength
	s.Sag, s.SagLimit = sag, mostSag*math.Min(inside.Width, inside.Depth)
	if s.Enough, err = plate.ThicknessFor(b, load, s.SagLimit); err != nil || sag.Simple <= s.SagLimit {
		return nil
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(d.Spec.Units) + " " + d.Spec.Units.String() }
	return []joinery.Problem{{Code: "sag", Field: joinery.FieldBottom, Part: string(joinery.Bottom),
		Message: fmt.Sprintf("under %s, spread evenly, the bottom sags by %s (%s if its edges were clamped; the truth is between), and half as much again or twice that in time; %s is a two-hundredth of its span", WeightText(load, d.Spec.Units), text(sag.Simple), text(sag.Clamped), text(s.SagLimit)),
		Hint:    fmt.Sprintf("a bottom of %s of the same stock keeps that; or less load, or a divider under which a strip is glued", geom.LengthOf(s.Enough).RoundUp(d.Spec.Units).Text(d.Spec.Units))}}
}
