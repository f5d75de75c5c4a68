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
	f := Shop{Accuracy: d.Accuracy, Boards: j.Boards(d.Spec)}
	if plan := slideOf(j, drawer); plan != nil {
		if least, most, inside, known := plan.Running(); known {
			f.Slide = &fit.Running{Least: least, Most: most, InsideCounts: inside}
		}
	}
	return f
}
