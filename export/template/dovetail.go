package template

import (
	"slices"

	"drawerwright/geom"
)

// leans reports whether a panel has pins.
func leans(p geom.Panel) bool {
	return slices.ContainsFunc(p.Pockets, func(k geom.Pocket) bool { return k.Lean != 0 })
}

const endGrain = "end grain"

// endOf is the end grain of a panel with pins, the outside face to the left, as the panel's left end shows it;
// turned upside down it is the right one, since pins are alike from both edges.
func endOf(p Panel) Panel {
	thick, high := p.Panel.Thickness, p.Panel.Width()
	out := Panel{Name: p.Name, Stock: p.Stock, Thickness: p.Thickness, End: "OUTSIDE FACE", OtherEnd: "INSIDE FACE",
		Stop: "outside face", lies: endGrain}
	out.Panel = geom.Panel{Outline: geom.Rectangle(0, 0, thick, high), Thickness: p.Panel.Length()}
	wide := p.Panel.OutsideOutline()
	for _, e := range p.Panel.EdgeCuts {
		b := e.Area.Bounds()
		if e.Kind != geom.PinCut || b.Min.X > p.Panel.Outline.Bounds().Min.X {
			continue
		}
		at := b // the same socket on the outside face
		for i, v := range p.Panel.Outline {
			if v.X == b.Max.X && v.Y == b.Min.Y {
				at.Min.Y = wide[i].Y
			}
			if v.X == b.Max.X && v.Y == b.Max.Y {
				at.Max.Y = wide[i].Y
			}
		}
		socket := geom.Polygon(geom.Point{Y: at.Min.Y}, geom.Point{X: thick, Y: b.Min.Y},
			geom.Point{X: thick, Y: b.Max.Y}, geom.Point{Y: at.Max.Y})
		out.Panel.Pockets = append(out.Panel.Pockets,
			geom.Pocket{Kind: geom.Cutout, Depth: out.Panel.Thickness, Outline: socket})
	}
	return out
}

// dovetailed reports whether a panel, as a face shows it, has tails or pins.
func dovetailed(p geom.Panel) bool {
	return slices.ContainsFunc(p.EdgeCuts,
		func(e geom.EdgeCut) bool { return e.Kind == geom.TailCut || e.Kind == geom.PinCut })
}

// slanted opens a slot along a straight wall from a to b that is neither upright nor level, beside what else is
// cut out; false where there is no room.
func (t *tracer) slanted(a, b geom.Point, side float64) bool {
	if t.slot() <= t.MinBridge {
		return false
	}
	aside := b.Sub(a).Unit().Left().Scale(side * t.slot())
	slot := geom.Polygon(a, b, b.Add(aside), a.Add(aside))
	if slot.Area() < 0 {
		slot = slot.Reverse()
	}
	if !t.free(slot) {
		return false
	}
	t.plate.Openings = append(t.plate.Openings, slot)
	return true
}
