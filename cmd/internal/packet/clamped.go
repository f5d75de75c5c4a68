package packet

import (
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// clampSize is how thick the bar of a clamp is drawn, of the box's largest size.
const clampSize = 0.022

// clampPart is a piece of a clamp, with its tone.
type clampPart struct {
	solid.Mesh
	tone drawing.Tint
}

// clamped shows the walls in their clamps, as they stand when the last of them is on, and both
// diagonals.
func (t Taken) clamped(s stage) paper.Scenery {
	var shown []scene.Piece
	for _, p := range t.box.Pieces {
		if len(p.Moves) == 0 || p.Moves[0].Step >= s.from {
			shown = append(shown, p)
		}
	}
	solids := t.at(0, shown)
	var tints []drawing.Tint
	for _, p := range shown {
		tints = append(tints, t.tones[t.drawer.Parts[p.Part].Stock.Name])
	}
	for _, c := range t.clamps() {
		solids, tints = append(solids, c.Mesh), append(tints, c.tone)
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

// clamps go along box front and back, from side to side; and along the sides, from front to back,
// where the joint has to be pulled home that way too.
func (t Taken) clamps() (list []clampPart) {
	size, s := t.drawer.Outside, t.drawer.Spec
	thick := float64(clampSize * max(size.Width, size.Height, size.Depth))
	across := []float64{s.Front.Thickness.Mean / 2, size.Depth - s.Back.Thickness.Mean/2}
	for _, y := range across {
		list = append(list, bar{long: size.Width, at: y, thick: thick, box: size}.parts()...)
	}
	if s.Joint == joinery.DadoRabbet || s.Joint == joinery.Butt {
		return list // the sides pull box front and back square, or fasteners hold them
	}
	for _, x := range []float64{s.Sides.Thickness.Mean / 2, size.Width - s.Sides.Thickness.Mean/2} {
		list = append(list, bar{long: size.Depth, at: x, thick: thick, box: size, turned: true}.parts()...)
	}
	return list
}

// bar is a clamp under the box, with a jaw at either end: the upper edges are free to be measured.
type bar struct {
	long, at, thick float64 // the box along the bar, and where it lies across
	box             joinery.Size
	turned          bool // along the box's Y
}

// parts are the bar, the jaws and the pads of a clamp. Bars along Y lie under those along X.
func (c bar) parts() (list []clampPart) {
	e, high := c.thick, c.box.Height
	under := -2 * e
	if c.turned {
		under -= 2 * e
	}
	add := func(tone drawing.Tint, from, to, half, low, top float64) {
		a, b := geom.Vec3{X: from, Y: c.at - half, Z: low}, geom.Vec3{X: to, Y: c.at + half, Z: top}
		if c.turned {
			a.X, a.Y, b.X, b.Y = a.Y, a.X, b.Y, b.X
		}
		list = append(list, clampPart{cuboid(a, b), tone})
	}
	pad := drawing.Tint(scene.WoodTone(0))
	add(pad, -e/2, 0, 1.2*e, 0.1*high, 0.9*high)
	add(pad, c.long, c.long+e/2, 1.2*e, 0.1*high, 0.9*high)
	add(steelTone, -1.5*e, -e/2, 0.6*e, under, 0.7*high)
	add(steelTone, c.long+e/2, c.long+1.5*e, 0.6*e, under, 0.7*high)
	add(steelTone, -e/2, c.long+e/2, 0.6*e, under, under+e)
	return list
}
