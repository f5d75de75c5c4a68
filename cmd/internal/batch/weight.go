package batch

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Weight of one box in kilograms, without hardware; ok is false where a stock's
// density is not known. Pockets that overlap count twice: under a hundredth.
func (d Drawer) Weight() (kg float64, ok bool) {
	for _, p := range d.Parts {
		if p.Stock.Density == 0 {
			return 0, false
		}
		kg += float64(volume(p.Panel) * 1e-9 * p.Stock.Density * float64(len(p.Stands)))
	}
	return kg, true
}

// volume is a panel's, in cubic millimetres.
func volume(p geom.Panel) float64 {
	area := p.Outline.Area()
	for _, h := range p.Holes {
		area -= h.Area()
	}
	v := area * p.Thickness
	for _, k := range p.Pockets {
		v -= float64(k.Outline.Area() * math.Min(k.Depth, p.Thickness))
	}
	return v
}

// AllRound reports whether a part gets edge banding on all its edges, where its stock
// has one: drawer fronts do, walls and dividers on the upper edge alone.
func (p Part) AllRound() bool { return p.Role == joinery.DrawerFrontRole }

// banding is the length of edge banding, in millimetres, that a piece takes.
func (p Part) banding() float64 {
	switch {
	case p.Role == joinery.Bottom:
		return 0
	case p.AllRound():
		return p.Panel.Outline.Perimeter()
	}
	return p.Panel.Length()
}
