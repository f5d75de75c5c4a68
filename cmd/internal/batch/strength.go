package batch

import (
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
	// Packing and Shim are what goes between slides and cabinet at each side, in mm thick.
	Packing, Shim float64
	Strips        []opening.Strip // that it runs on
	strength.Bottom
}

// fieldLoad is the entry of a drawer's load.
const fieldLoad geom.Setting = "load"

// CodeBottomBehind is of a bottom that swells further behind its box than there is room.
const CodeBottomBehind geom.Code = "bottom-behind"

// slideOf finds the slide that a drawer of a job runs on, in the bank that it is of, and its row there.
func slideOf(j *job.Job, drawer int) (plan *opening.Plan, row int) {
	for i, bank := range j.Banks {
		for row, n := range bank.Drawers {
			if n == drawer {
				return &j.Banks[i].Plan, row
			}
		}
	}
	return nil, 0
}

// strengthen works out the strength of a drawer, judges it, and notes what is against it.
func (d *Drawer) strengthen(j *job.Job, drawer int) (problems []proposal) {
	s, load := &d.Strength, j.Drawers[drawer].Load
	plan, row := slideOf(j, drawer)
	s.Load = load
	empty, known := weight.Box(d.Drawer)
	if known {
		s.Empty = empty
	}
	if plan != nil {
		s.Slide, s.SlideLength = plan.Slide, plan.SlideLength
		s.Packing, s.Shim = plan.Packing, plan.Shim
		for _, one := range plan.Strips {
			if one.Row == row {
				s.Strips = append(s.Strips, one)
			}
		}
		if total := s.Empty + load; strength.Overloads(s.Slide, s.Empty, load) {
			stronger := geom.Sentencef("take a stronger slide")
			problems = append(problems, proposal{Diagnosis: geom.Diagnosis{
				Code: "weight", Level: geom.LevelWarning, Subject: geom.Subject{Setting: fieldLoad},
				Fact: geom.Sentencef("box and load weigh %s and %s, %.0f %% of the %s that such slides are rated for; %.0f %% is usual at most",
					words.Kilograms(s.Empty), words.Kilograms(load), 100*total/s.Slide.Load, words.Kilograms(s.Slide.Load), 100*strength.MaxLoaded),
				Measured: words.Kilograms(total), Limit: words.Kilograms(s.Slide.Load * strength.MaxLoaded),
				Ask: stronger,
			}, ways: [][]Way{lessLoad(j, drawer, strength.SlideRoom(s.Slide, s.Empty))}, also: stronger})
		}
	}
	if load > 0 {
		problems = append(problems, d.sag(j, drawer, load)...)
		problems = append(problems, d.held(j, drawer, load)...)
	}
	if plan != nil && d.BottomOut > plan.RoomBehind {
		problems = append(problems, proposal{Diagnosis: geom.Diagnosis{
			Code: CodeBottomBehind, Level: geom.LevelWarning, Subject: geom.Subject{Setting: joinery.SettingBottom, Part: string(joinery.Bottom)},
			Fact: geom.Sentencef("in the dampest air the bottom stands out %s behind the back, and there is %s behind the box: the drawer no longer closes",
				geom.Millimeters(d.BottomOut), geom.Millimeters(plan.RoomBehind)),
			Measured: geom.Millimeters(d.BottomOut), Limit: geom.Millimeters(plan.RoomBehind),
			Ask: geom.Sentencef("take a bottom of quartersawn boards or of sheet stock, or a shorter slide"),
		}})
	}
	for _, p := range problems {
		d.Against = append(d.Against, p.Diagnosis)
	}
	return problems
}

// lessLoad is a load up to so many kg, written to a tenth of the shop's unit.
func lessLoad(j *job.Job, drawer int, most float64) []Way {
	value, kg := words.AtMost(most, j.Units)
	if kg == 0 {
		return nil
	}
	return []Way{{Way: j.LoadWay(drawer, value), Load: kg}}
}
