package joinery

import (
	"math"

	"drawerwright/geom"
)

// Hidden is an area of one face of a part, in panel coordinates, that does not show in the
// finished box: of walls the strip of the inside face below the bottom's groove, of a
// bottom its underside. ok is false for other parts.
func (p Part) Hidden() (face geom.Face, area geom.Rect, ok bool) {
	box := p.Panel.Outline.Bounds()
	switch p.Role {
	case Side, Front, Back:
		low := math.Inf(1)
		for _, k := range p.Panel.Pockets {
			if b := k.Outline.Bounds(); k.Kind == geom.Groove && k.Face == geom.Inside && b.Width() > b.Height() {
				low = math.Min(low, b.Min.Y)
			}
		}
		box.Max.Y = low
		return geom.Inside, box, low < math.Inf(1)
	case Bottom:
		if len(p.Placements) == 0 {
			return face, area, false
		}
		if p.Placements[0].Normal().Z > 0 { // its inside face is up
			return geom.Outside, box, true
		}
		return geom.Inside, box, true
	}
	return face, area, false
}
