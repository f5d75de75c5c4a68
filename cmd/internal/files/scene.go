package files

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/fit"
	"drawerwright/preview/scene"
)

// explodeBy is how far parts of an exploded box move out, of its largest size:
// far enough to see into the joints, near enough to see where they belong.
const explodeBy = 0.2

// Boxed is a drawer to look at: its scene, the grid of its solids, and how far parts
// move apart in its exploded box.
type Boxed struct {
	Scene       scene.Scene
	Grid, Apart float64
}

// BoxOf makes the scene of one drawer, its clearances judged, and with its parts as they are
// milled where there are any.
func BoxOf(d batch.Drawer, milled []geom.Panel) (b Boxed, err error) {
	largest := max(d.Outside.Width, d.Outside.Height, d.Outside.Depth)
	if f := d.Spec.DrawerFront; f != nil { // it may stand out beyond the box
		largest = max(largest, f.Width, f.Height)
	}
	b.Apart = float64(explodeBy * largest)
	b.Grid = geom.FineGrid(largest + 2*b.Apart) // a proud front begins below 0, and the exploded box ends at largest + Apart
	of := sceneOf(d)
	of.Milled = milled
	if b.Scene, err = scene.Make(of, b.Grid); err == nil {
		box, of := &b.Scene.Boxes[0], d.Box // which stays, where a function of the drawer would keep a second one
		box.Judged = of.Judged
		if len(of.Outcome.Measures) > 0 { // it can be made
			box.Joints = func() []fit.Joint { return fit.Joints(of.Drawer, of.Shop.Boards, of.Shop.Accuracy) }
		}
	}
	return b, err
}

// StockNames are the stocks of a job, whose order their colors follow.
func StockNames(b batch.Batch) (names []string) {
	for _, s := range b.Stocks {
		names = append(names, s.Name)
	}
	return names
}

// Cabinets are the drawers of each opening, as they stand and run in it.
func Cabinets(b batch.Batch) (groups []scene.Group) {
	for _, bank := range b.Banks {
		g := scene.Group{Name: bank.Name}
		in := carcass.Bank{Unit: b.Units, Opening: bank.Opening, Plan: bank.Plan}
		for i, row := range bank.Plan.Rows {
			d := b.Drawers[bank.Drawers[i]]
			at := geom.Vec3{X: (bank.Plan.Opening.Width - row.Box.Width) / 2, Z: row.BoxBottom}
			g.Boxes, g.At = append(g.Boxes, bank.Drawers[i]), append(g.At, at)
			in.Drawers = append(in.Drawers, carcass.Drawer{Name: d.Spec.Name, At: at, Pieces: scene.Wood(d.Drawer),
				Front: d.Spec.DrawerFront})
		}
		if len(g.Boxes) > 0 {
			g.Carcass = new(carcass.Make(in))
		}
		groups = append(groups, g)
	}
	return groups
}
