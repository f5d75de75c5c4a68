package gauge

import (
	"math"
	"strconv"

	"drawerwright/geom"
)

// Rounded is a row as a sheet shows it, in the sheet's unit. The limits are rounded
// inward, so that what is right on paper is right; where the usual decimals would leave
// the target outside, there are more of them.
type Rounded struct {
	Target, Min, Max float64
	Places           int // decimals that are shown
}

// Text is one of the row's numbers as it is shown.
func (r Rounded) Text(v float64) string { return strconv.FormatFloat(v, 'f', r.Places, 64) }

// maxDecimals is how many more decimals than usual are shown.
const maxDecimals = 2

// Round rounds a row in a unit: to two decimals of a millimeter, three of an inch, or
// as many more as it needs.
func (r Row) Round(u geom.Unit) Rounded {
	usual := 2
	if u == geom.Inch {
		usual = 3
	}
	for places := usual; ; places++ {
		steps := math.Pow10(places) / u.MM()
		nanometer := steps * 1e-6 // what is on the grid, but for computing, stays
		least, most := math.Ceil(float64(r.Min*steps)-nanometer), math.Floor(float64(r.Max*steps)+nanometer)
		// By way of whole nanometers, as every other output rounds a setting.
		target := math.Round(float64(geom.LengthOf(r.Target)) / math.Round(1e6/steps))
		inside := least <= target && target <= most && least < most
		if !inside && places < usual+maxDecimals {
			continue
		}
		if least <= most { // a target at a limit that no grid holds
			target = min(max(target, least), most)
		}
		in := func(steps float64) float64 { return (steps + 0) / math.Pow10(places) } // never -0
		return Rounded{in(target), in(least), in(most), places}
	}
}
