package advice

import "drawerwright/geom/joinery"

// Finest is what a shop keeps anything within at the best, in mm; common practice, no source.
func Finest(k joinery.CutterKind) float64 {
	if k == joinery.Hand {
		return 0.1
	}
	return 0.03
}
