package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom/fit"
)

// Shop is what the finished boxes of a drawer depend on beside their sizes.
type Shop struct {
	Boards   fit.Boards
	Accuracy fit.Accuracy
	Slide    *fit.Running // nil without, or where its maker allows anything
}

func shopOf(j *job.Job, drawer int) Shop {
	d := j.Drawers[drawer]
	f := Shop{Accuracy: d.Accuracy, Boards: fit.Boards{
		Sides: j.Spreads[d.Sides.Name], Front: j.Spreads[d.Front.Name], Back: j.Spreads[d.Back.Name], Bottom: j.Spreads[d.Bottom.Name],
	}}
	if plan := slideOf(j, drawer); plan != nil {
		if least, most, inside, known := plan.Running(); known {
			f.Slide = &fit.Running{Least: least, Most: most, InsideCounts: inside}
		}
	}
	return f
}

// Measures are what the joints and the box of a drawer will do.
func (d Drawer) Measures() []fit.Measure {
	return fit.Box(d.Drawer, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide)
}
