// Package weight says how heavy boxes and boards are, in kilograms, by the densities of their
// stocks in kg/m3. Lengths are in millimeters.
package weight

import "drawerwright/geom/joinery"

// Box is the weight of one box in kilograms, without hardware; known is false where the
// density of one of its stocks is not. See [Volume] for the error.
func Box(d joinery.Drawer) (kg float64, known bool) {
	const cubicMM = 1e-9 // of a cubic meter
	for _, p := range d.Parts {
		if p.Stock.Density == 0 {
			return 0, false
		}
		kg += float64(Volume(p.Panel) * cubicMM * p.Stock.Density * float64(len(p.Placements)))
	}
	return kg, true
}
