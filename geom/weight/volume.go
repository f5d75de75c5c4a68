package weight

import (
	"math"

	"drawerwright/geom"
)

// Volume is that of a panel's wood, in cubic millimeters. Where two pockets overlap, what
// they share is taken off twice: under a hundredth of a drawer's part.
func Volume(p geom.Panel) float64 {
	area := p.Outline.Area()
	for _, h := range p.Holes {
		area -= h.Area()
	}
	v := area * p.Thickness
	for _, k := range p.Pockets {
		v -= float64(k.Outline.Area() * math.Min(k.DepthAt(k.Outline.Bounds().Center().Y), p.Thickness))
	}
	return v
}
