package packet

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
)

// seen is how pictures look on a box: from before, a little from the right, and above.
var seen = picture.From(-30, 30)

// picture draws a box, its solids with hidden lines removed.
func (m maker) picture(d batch.Drawer) (drawing.Drawing, error) {
	grid := geom.FineGrid(2 * max(d.Outside.Width, d.Outside.Height, d.Outside.Depth))
	var placed []solid.Mesh
	for _, p := range d.Parts {
		mesh, err := solid.Build(p.Panel, solid.Options{Grid: grid})
		if err != nil {
			return drawing.Drawing{}, err
		}
		for _, at := range p.Stands {
			placed = append(placed, mesh.Place(at, grid))
		}
	}
	lines := picture.Draw(placed, seen)
	b := picture.Bounds(lines)
	scale := min(pictured.X/b.Width(), pictured.Y/b.Height())
	out := drawing.Drawing{Width: scale * b.Width(), Height: scale * b.Height()}
	for _, s := range lines {
		at := func(p geom.Point) geom.Point {
			return geom.Point{X: scale * (p.X - b.Min.X), Y: scale * (p.Y - b.Min.Y)}
		}
		out.Line(drawing.Medium, at(s.A), at(s.B))
	}
	return out, nil
}
