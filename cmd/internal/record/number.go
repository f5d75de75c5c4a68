package record

import (
	"math"

	"drawerwright/geom"
)

// Number converts and rounds, so that the last bits of a computation never show.
func Number(mm float64, u geom.Unit) float64 {
	steps := 1e6
	if u == geom.Inch {
		steps = 1e9
	}
	return math.Round(mm/u.MM()*steps)/steps + 0 // no negative zero
}

// Money rounds to hundredths.
func Money(v float64) float64 { return math.Round(v*100) / 100 }

// thousandth rounds a ratio.
func thousandth(v float64) float64 { return math.Round(v*1000) / 1000 }
