package page

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// front is a cabinet seen from before: an opening with the fronts of its rows, or the rows where
// they have none. Lengths in mm, from the lower left corner of the opening.
type front struct {
	Name   string     `json:"name"`
	Width  float64    `json:"width"`
	Height float64    `json:"height"`
	Rows   []frontRow `json:"rows"`  // from the top
	Slide  string     `json:"slide"` // its length, in the unit of the job, as "550 mm"
	Said   string     `json:"said"`  // what the numbers are heights of
}

type frontRow struct {
	Drawer string  `json:"drawer"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Bottom float64 `json:"bottom"`
	Text   string  `json:"text"` // the height, in the unit that is shown
}

// boxWidth says where the width of the boxes of an opening comes from.
type boxWidth struct {
	Opening string `json:"opening"`
	Said    string `json:"said"`
}

// boxWidthOf is that of the opening that a drawer stands in; nil where it is in none.
func boxWidthOf(b batch.Batch, drawer int) *boxWidth {
	at := slices.IndexFunc(b.Banks, func(k batch.Bank) bool { return slices.Contains(k.Drawers, drawer) })
	if at < 0 {
		return nil
	}
	c := record.CabinetOf(b, b.Banks[at])
	return &boxWidth{c.Name, present.WidthText(c, b.Units)}
}

// frontOf is that of the drawers that an entry of the file stands for; nil where they are in no
// opening.
func frontOf(b batch.Batch, j *job.Job, entry int) *front {
	at := slices.IndexFunc(b.Banks, func(k batch.Bank) bool { return j.Drawers[k.Drawers[0]].Entry() == entry })
	if at < 0 {
		return nil
	}
	k := b.Banks[at]
	f := &front{Name: k.Name, Width: k.Plan.Opening.Width, Height: k.Plan.Opening.Height,
		Slide: geom.LengthOf(k.Plan.SlideLength).Text(j.Units),
		Said:  "The numbers are the heights of the drawer fronts."}
	if k.Opening.Fronts == opening.NoFront {
		f.Said = "The numbers are how high the opening of each box is: there are no drawer fronts."
	}
	for i, r := range k.Plan.Rows {
		f.Rows = append(f.Rows, frontRow{j.Drawers[k.Drawers[i]].Name, r.FrontWidth, r.FrontHeight, r.FrontBottom,
			words.Size(r.FrontHeight, b.Units) + " " + b.Units.String()})
	}
	return f
}
