package packet

import (
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/picture"
	"drawerwright/preview/scene"
)

// clamped shows the walls in their clamps, as they stand when the last of them is on, and both
// diagonals.
func (t Taken) clamped(s scene.Step) paper.Scenery {
	shown, _, solids := t.standing(s.Frame)
	var tints []drawing.Tint
	for _, p := range shown {
		tints = append(tints, t.tones[t.drawer.Parts[p.Part].Stock.Name])
	}
	for _, c := range s.Clamps {
		tint := steelTone
		if c.Pad {
			tint = drawing.Tint(scene.WoodTone(0))
		}
		solids, tints = append(solids, cuboid(c.Low, c.High)), append(tints, tint)
	}
	size := t.drawer.Outside
	corner := func(x, y float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: size.Height + glueThick} }
	diagonals := []picture.Between{{From: corner(0, 0), To: corner(size.Width, size.Depth)},
		{From: corner(size.Width, 0), To: corner(0, size.Depth)}}
	out := paper.Scenery{Lines: picture.Draw(solids, Seen), Paths: picture.DrawBetween(diagonals, solids, Seen)}
	for i, loops := range picture.Areas(solids, Seen) {
		out.Areas = append(out.Areas, paper.Area{Loops: loops, Tint: tints[i]})
	}
	return out
}
