package strength

import (
	"math"

	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
	"drawerwright/geom/wood"
)

// Thicknesses are found to settledThickness, in mm, in at most thicknessSteps steps: the
// thickness depends on the stiffness by its cube root, so that each step leaves less
// than a third of the error.
const (
	settledThickness = 1e-6
	thicknessSteps   = 40
)

// enough is the mean thickness, in mm, of a bottom of the same stock, as even as this one,
// whose thinnest board keeps the limit; 0 where none does.
func enough(stock joinery.Stock, b plate.Bottom, load, limit float64) float64 {
	uneven := stock.Thickness.Mean - stock.Thickness.Min
	kind, follows := wood.FindSheet(stock.StiffAs)
	mean := stock.Thickness.Mean
	for range thicknessSteps {
		if follows {
			along, across, err := kind.Stiffness(mean)
			if err != nil {
				return 0
			}
			b.Along, b.Across = along, across
		}
		thin, err := plate.ThicknessFor(b, load, limit)
		if err != nil {
			return 0
		}
		last := mean
		if mean = thin + uneven; math.Abs(mean-last) < settledThickness {
			return mean
		}
	}
	return 0
}
