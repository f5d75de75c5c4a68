package setup

import (
	"math"

	"drawerwright/geom"
)

// sameDrill is how near a diameter is to a whole or half millimeter that is meant to be one,
// in mm: less than a caliper shows.
const sameDrill = 0.005

// MetricDrill is the size in whole or half millimeters by which a shop that works in inches
// takes a bit up, as metric hardware has them, common practice, no source; there is none for
// a diameter in mm that is a 64th of an inch, or none of those sizes.
func MetricDrill(diameter float64) (size float64, metric bool) {
	half := math.Round(2*diameter) / 2
	return half, geom.LengthOf(diameter).Equal(geom.Inch) == "" && math.Abs(diameter-half) < sameDrill && half > 0
}
