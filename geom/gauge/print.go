package gauge

import (
	"math"
	"strconv"

	"drawerwright/geom"
)

// Printed is a row as a sheet prints it, without the unit. The limits are rounded
// inwards, so that what is right on paper is right; where the usual decimals would leave
// the target outside, there are more of them.
type Printed struct{ Target, Min, Max string }

// maxDecimals is how many more decimals than usual are printed.
const maxDecimals = 2

// Print prints a row in a unit: with two decimals of a millimetre, three of an inch, or
// as many more as it needs.
func (r Row) Print(u geom.Unit) Printed {
	usual := 2
	if u == geom.Inch {
		usual = 3
	}
	for places := usual; ; places++ {
		steps := math.Pow10(places) / u.MM()
		nanometre := steps * 1e-6 // what is on the grid, but for computing, stays
		least, most := math.Ceil(float64(r.Min*steps)-nanometre), math.Floor(float64(r.Max*steps)+nanometre)
		// By way of whole nanometres, as every other output rounds a setting.
		target := math.Round(float64(geom.LengthOf(r.Target)) / math.Round(1e6/steps))
		inside := least <= target && target <= most && least < most
		if !inside && places < usual+maxDecimals {
			continue
		}
		if least <= most { // a target at a limit that no grid holds
			target = min(max(target, least), most)
		}
		text := func(v float64) string { return strconv.FormatFloat((v+0)/math.Pow10(places), 'f', places, 64) }
		return Printed{text(target), text(least), text(most)}
	}
}
