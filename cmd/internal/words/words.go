// Package words says quantities as the shop of a job does: in its unit, with the noun that
// fits the number, ranges with the lesser end first.
package words

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/geom"
)

// Factors between units, all exact but that of stress, which is to nine digits.
const (
	poundKG   = 0.45359237 // the avoirdupois pound
	ounces    = 16         // of a pound
	squareFt  = 12 * 12 * geom.InchMM * geom.InchMM
	footMM    = 12 * geom.InchMM
	psi       = 145.037738 // of a newton a square millimetre
	metreMM   = 1000
	squareMM  = 1e6 // of a square metre
	inGrammes = 1000
)

// Count is a number with its noun.
func Count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// Some names the first few of a list.
func Some(names []string) string {
	const most = 4
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// Either is what the trade of a job's unit says, for a length that is no more exact than
// that: 150 mm, or 6 in.
func Either(u geom.Unit, mm, in string) string {
	if u == geom.Inch {
		return in
	}
	return mm
}

// Span is two lengths in mm as a caliper shows them, without a unit.
func Span(a, b float64, u geom.Unit) string {
	return geom.Span(geom.LengthOf(a), geom.LengthOf(b), u)
}

// Grams is a weight in kg, of whole grams.
func Grams(kg float64) float64 { return math.Round(kg*inGrammes) / inGrammes }

// Weight in kilograms, or in pounds, of whole grams as report.json has it, so that both
// round alike.
func Weight(kg float64, u geom.Unit) string {
	kg = Grams(kg)
	if u == geom.Inch {
		return fmt.Sprintf("%.1f lb", kg/poundKG)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// Little is a small weight, rounded up, with its unit: grammes, or tenths of an ounce.
func Little(kg float64, u geom.Unit) (quantity float64, unit string) {
	if u == geom.Inch {
		return math.Ceil(kg/poundKG*ounces*10) / 10, "oz"
	}
	return math.Ceil(kg * inGrammes), "g"
}

// Area is one of square millimetres, in the unit in which board is sold, with that unit.
func Area(mm2 float64, u geom.Unit) (area float64, unit string) {
	if u == geom.Inch {
		return mm2 / squareFt, "sq ft"
	}
	return mm2 / squareMM, "m2"
}

// SmallArea is one of square millimetres on a part.
func SmallArea(mm2 float64, u geom.Unit) string {
	if u == geom.Inch {
		return fmt.Sprintf("%.4f sq in", mm2/(geom.InchMM*geom.InchMM))
	}
	return fmt.Sprintf("%.1f mm2", mm2)
}

// Run is a length in mm of what is sold by the metre or the foot, with that unit.
func Run(mm float64, u geom.Unit) (length float64, unit string) {
	if u == geom.Inch {
		return mm / footMM, "ft"
	}
	return mm / metreMM, "m"
}

// Stresses are two of N/mm2, the lesser first, in [StressUnit].
func Stresses(a, b float64, u geom.Unit) string {
	k, digits := 1.0, 1
	if u == geom.Inch {
		k, digits = psi, 0
	}
	low, high := fmt.Sprintf("%.*f", digits, k*min(a, b)), fmt.Sprintf("%.*f", digits, k*max(a, b))
	if low == high {
		return low
	}
	return low + " to " + high
}

// StressUnit is the unit of stress.
func StressUnit(u geom.Unit) string { return Either(u, "N/mm2", "psi") }
