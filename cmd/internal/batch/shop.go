package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom/advice"
	"drawerwright/geom/fit"
)

// shopOf is what the finished boxes of a drawer depend on beside their sizes.
func shopOf(j *job.Job, drawer int) advice.Shop {
	d := j.Drawers[drawer]
	f := advice.Shop{Accuracy: d.Accuracy, Boards: j.Boards(d.Spec)}
	if plan, _ := slideOf(j, drawer); plan != nil {
		if least, most, inside, known := plan.Running(); known {
			f.Slide = &fit.SlideFit{Min: least, Max: most, InsideCounts: inside}
		}
	}
	return f
}
