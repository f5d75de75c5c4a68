package job

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// aim is by how much wider than a plan has them its boxes are made, so that most of
// them run on their slides: what the width of a box is off comes from one that is built
// for the first row. Nothing is aimed at where the slide allows no error, or where no
// box can be built, of which others tell.
func (b *builder) aim(j *Job, d Drawer, plan opening.Plan) float64 {
	least, most, inside, known := plan.Running()
	if !known || !d.sound || len(plan.Rows) == 0 {
		return 0
	}
	row, trial := plan.Rows[0], d.Spec
	trial.Width, trial.Height, trial.Depth = row.Box.Width, row.Box.Height, row.Box.Depth
	trial.Undermount, trial.Lip = row.Undermount, row.Lip
	trial.Dividers, trial.Insert, trial.Pull, trial.DrawerFront = nil, nil, joinery.Pull{}, nil // they move no width
	box, _, sound := joinery.LayOut(trial)
	if !sound {
		return 0
	}
	for _, m := range fit.Measures(box, j.Boards(d.Spec), d.Accuracy, &fit.SlideFit{Min: least, Max: most, InsideCounts: inside}) {
		if m.Code == fit.SlideClearance {
			by := fit.Aim(m.Stack, geom.Interval{Min: least - m.Nominal, Max: most - m.Nominal})
			step := widthStep[b.units]
			return math.Round((row.Box.Width+by)/step)*step - row.Box.Width
		}
	}
	return 0
}

// widthStep is what widths that are aimed at are rounded to, in mm: as a caliper reads.
var widthStep = map[geom.Unit]float64{geom.Millimeter: 0.01, geom.Inch: 0.001 * geom.InchMM}

// Boards are the spreads of the stocks of a drawer.
func (j *Job) Boards(s joinery.Spec) fit.Boards {
	return fit.Boards{Sides: j.Spreads[s.Sides.Name], Front: j.Spreads[s.Front.Name], Back: j.Spreads[s.Back.Name], Bottom: j.Spreads[s.Bottom.Name]}
}
