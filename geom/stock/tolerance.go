package stock

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

// Assumed is between which thicknesses, by a standard for plywood, boards are of which there
// is a single reading, in mm below and above it: the European standard in a shop that
// measures in millimeters, the American one in another. Common practice, no source. Several
// readings speak for themselves, and solid wood is planed at one setting: nothing is assumed
// of these, nor of what is too thin or too thick for the standard.
func Assumed(s joinery.Stock, readings int, u geom.Unit) (by wood.Standard, minus, plus float64, ok bool) {
	if readings != 1 || s.Solid {
		return by, 0, 0, false
	}
	by = wood.EN315Sanded
	if u == geom.Inch {
		by = wood.PS1Sanded
	}
	minus, plus, err := wood.Tolerance(by, s.Thickness.Mean)
	return by, minus, plus, err == nil
}
