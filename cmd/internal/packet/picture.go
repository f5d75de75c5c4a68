package packet

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
)

// Seen is how pictures look on a box: from before, a little from the right, and above.
var Seen = picture.From(-30, 30)

// picture draws a box, its solids with hidden lines removed.
func (m maker) picture(d batch.Drawer) (drawing.Drawing, error) {
	grid := geom.FineGrid(2 * max(d.Outside.Width, d.Outside.Height, d.Outside.Depth))
	var placed []solid.Mesh
	for _, p := range d.Parts {
		mesh, err := solid.Build(p.Panel, solid.Options{Grid: grid})
		if err != nil {
			return drawing.Drawing{}, err
		}
		for _, at := range p.Placements {
			placed = append(placed, mesh.Place(at, grid))
		}
	}
	return paper.Picture(picture.Draw(placed, Seen), pictured), nil
}
