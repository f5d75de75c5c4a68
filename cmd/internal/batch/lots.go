package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom/advice"
	"drawerwright/geom/joinery"
)

// Boxes are what the drawers of a job come out as, and nothing else of them; false where one cannot be made.
func Boxes(j *job.Job, known *advice.Memory) (list []advice.Box, sound bool) {
	for i, d := range j.Drawers {
		spec := d.Spec
		spec.Units = j.Units
		box, _, ok := joinery.LayOut(spec)
		if !ok {
			return nil, false
		}
		list = append(list, known.Box(box, shopOf(j, i)))
	}
	return list, true
}
