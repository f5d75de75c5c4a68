package batch

import (
	"fmt"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
	"drawerwright/geom/strength"
	"drawerwright/geom/weight"
)

// Strength is what a drawer weighs and how its bottom bears its load. What is not
// known is 0.
type Strength struct {
	Empty, Load float64 // kg, without hardware
	Slide       opening.Slide
	SlideLength float64
	strength.Bottom
}

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
func (d *Drawer) strengthen(j *job.Job, drawer int) (problems []proposal) {
	s, load, plan := &d.Strength, j.Drawers[drawer].Load, slideOf(j, drawer)
	s.Load = load
	empty, known := weight.Box(d.Drawer)
	if known {
		s.Empty = empty
	}
	if plan != nil {
		s.Slide, s.SlideLength = plan.Slide, plan.SlideLength
		if total := s.Empty + load; strength.Overloads(s.Slide, s.Empty, load) {
			problems = append(problems, proposal{Problem: joinery.Problem{Code: "weight", Field: fieldLoad,
				Message: fmt.Sprintf("box and load weigh %s and %s, %.0f %% of the %s that such slides are rated for; %.0f %% is usual at most", words.Weight(s.Empty, d.Spec.Units), words.Weight(load, d.Spec.Units), 100*total/s.Slide.Load, words.Weight(s.Slide.Load, d.Spec.Units), 100*strength.MostLoaded),
				Hint:    "take a stronger slide"}, ways: [][]Way{lessLoad(j, drawer, strength.SlideRoom(s.Slide, s.Empty))}, also: "take a stronger slide"})
		}
	}
	if load > 0 {
		problems = append(problems, d.sag(j, drawer, load)...)
	}
	if plan != nil && d.BottomOut > plan.RoomBehind {
		text := func(mm float64) string { return geom.LengthOf(mm).Text(d.Spec.Units) }
		problems = append(problems, proposal{Problem: joinery.Problem{Code: "bottom-behind", Field: joinery.FieldBottom, Part: string(joinery.Bottom),
			Message: fmt.Sprintf("in the dampest air the bottom stands out %s behind the back, and there is %s behind the box: the drawer no longer closes", text(d.BottomOut), text(plan.RoomBehind)),
			Hint:    "take a bottom of quartersawn boards or of sheet stock, or a shorter slide"}})
	}
	return problems
}

// lessLoad is a load up to so many kg, written to a tenth of the shop's unit.
func lessLoad(j *job.Job, drawer int, most float64) []Way {
	value, kg := words.AtMost(most, j.Units)
	if kg == 0 {
		return nil
	}
	return []Way{{Text: "write a load of " + value + " or less", Edits: []job.Edit{{Path: j.DrawerPath(drawer, string(fieldLoad)), Value: value}}, Load: kg}}
}
