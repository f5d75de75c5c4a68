package weight

import "drawerwright/geom/joinery"

// Board is the weight of a square meter of a stock in kilograms, at the mean of its readings;
// 0 where its density is not known.
func Board(s joinery.Stock) float64 {
	const mm = 1000 // of a meter
	return s.Density * s.Thickness.Mean / mm
}
