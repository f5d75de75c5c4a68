// Package words says quantities as the shop of a job does: in its unit, with the noun that
// fits the number, ranges with the lesser end first.
package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// Factors between units, all exact but that of stress, which is to nine digits.
const (
	poundKG   = geom.PoundKG
	ounces    = 16 // of a pound
	squareFt  = 12 * 12 * geom.InchMM * geom.InchMM
	footMM    = 12 * geom.InchMM
	psi       = 145.037738 // of a newton a square millimeter
	meterMM   = 1000
	squareMM  = 1e6 // of a square meter
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

// And names all of a list.
func And(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " and " + list[last]
}

// Either is what the trade of a job's unit says, for a length that is no more exact than
// that: 150 mm, or 6 in.
func Either(u geom.Unit, mm, in string) string {
	if u == geom.Inch {
		return in
	}
	return mm
}

// Length is one in mm for a person who sets a fence, a height or a stop: as a caliper shows
// it and, in inches, with the 64th that it is, for a setup block: "0.234 in (15/64)".
func Length(mm float64, u geom.Unit) string {
	l := geom.LengthOf(mm)
	text := l.Fixed(u) + " " + u.String()
	if block := l.Equal(u); block != "" {
		text += " (" + block + ")"
	}
	return text
}

// Place is where something is marked with a rule: "2 1/2", "0.236 (15/64)".
func Place(mm float64, u geom.Unit) string {
	if u != geom.Inch {
		return geom.LengthOf(mm).Fixed(u)
	}
	return geom.LengthOf(mm).Measured(u)
}

// PlaceIn is [Place] with the unit, in a sentence.
func PlaceIn(mm float64, u geom.Unit) string {
	at, near, beside := strings.Cut(Place(mm, u), " (")
	if at += " " + u.String(); beside {
		at += " (" + near
	}
	return at
}

// Within are limits of what a caliper reads, in mm, both rounded inward, so that what is right on
// paper is right.
func Within(least, most float64, u geom.Unit) string {
	low, high := geom.Inward(geom.Interval{Min: least, Max: most}, u)
	return To(low.Fixed(u), high.Fixed(u))
}

// Rounding says why a sum of printed lengths may differ from a printed one: thicknesses are means of readings, and what
// is worked out of them is rounded only where it is printed.
func Rounding(u geom.Unit) string {
	return "Each length is rounded by itself, to " + Either(u, "0.01 mm", "0.001 in") +
		": a sum of printed lengths may be off by that, or twice that."
}

// OffBy is by how much something may be off, rounded down, in the figures in which limits stand everywhere.
func OffBy(mm float64, u geom.Unit) string { return geom.LengthOf(mm).RoundDown(u).Fixed(u) }

// Tape prints a length as a tape is read: of inches the nearest 32nd.
func Tape(mm float64, u geom.Unit) string { return onTape(math.Round(mm/tapeStep), mm, u) }

// Size is a size in a list, read with a tape: [Tape], without needless zeros of millimeters.
func Size(mm float64, u geom.Unit) string {
	if u != geom.Inch {
		return geom.LengthOf(mm).Number(u)
	}
	return Tape(mm, u)
}

// SizeAtMost is [Size] of what must not be promised longer than it is.
func SizeAtMost(mm float64, u geom.Unit) string {
	if u != geom.Inch {
		return geom.LengthOf(mm).Number(u)
	}
	return TapeAtMost(mm, u)
}

// TapeAtMost is Tape of what must not be promised longer than it is.
func TapeAtMost(mm float64, u geom.Unit) string {
	return onTape(math.Floor((mm+geom.Settle)/tapeStep), mm, u)
}

// tapeStep is the finest line of a usual tape in inches, in mm; common practice, no source.
const tapeStep = geom.InchMM / 32

func onTape(steps, mm float64, u geom.Unit) string {
	if u != geom.Inch {
		return geom.LengthOf(mm).Fixed(u)
	}
	return geom.LengthOf(steps * tapeStep).Number(u)
}

// Bit is how wide a router's bit is: the fraction of an inch by which it is called, else as a caliper
// shows it.
func Bit(mm float64, u geom.Unit) string {
	if called := geom.LengthOf(mm).Equal(u); called != "" {
		return called + " " + u.String()
	}
	return Length(mm, u)
}

// Drill is the size of a bit by which a shop takes it up: a fraction of an inch where it is
// one; in an inch job one of whole or half millimeters, as metric hardware has them, by
// those. metric says that it is.
func Drill(mm float64, u geom.Unit) (size string, metric bool) {
	l := geom.LengthOf(mm)
	half, metric := setup.MetricDrill(mm)
	switch block := l.Equal(u); {
	case u == geom.Millimeter:
		return l.Text(u), false
	case block != "":
		return block + " in", false
	case metric:
		return geom.LengthOf(half).Text(geom.Millimeter) + " (" + l.Fixed(u) + " in)", true
	}
	return Length(mm, u), false
}

// computing is what a number of millimeters may be off a whole one by computing alone.
const computing = 1e-4

// Sold is the size by which goods are sold: in an inch job that of goods made in millimeters is in
// those, as "500 mm", where it is whole ones and no 64th.
func Sold(mm float64, u geom.Unit) string {
	l := geom.LengthOf(mm)
	if u == geom.Inch && strings.Contains(l.Taped(u), ".") && math.Abs(mm-math.Round(mm)) < computing {
		return l.Text(geom.Millimeter)
	}
	return l.Text(u)
}

// To joins the two ends of a range as they are printed; one, where both print alike.
func To(low, high string) string {
	if low == high {
		return low
	}
	return low + " to " + high
}

// Span is two lengths in mm as a caliper shows them, without a unit.
func Span(a, b float64, u geom.Unit) string {
	return geom.Span(geom.LengthOf(a), geom.LengthOf(b), u)
}

// Grams is a weight in kg, of whole grams.
func Grams(kg float64) float64 { return math.Round(kg*inGrammes) / inGrammes }

// Weight is one that is worked out, in kilograms or pounds, to what is known of it: densities are
// averages, and tenths count below 10 only. It is of whole grams as report.json has it, so that both
// round alike.
func Weight(kg float64, u geom.Unit) string {
	n, unit := weighed(kg, u)
	if n < tenthsBelow {
		return fmt.Sprintf("%.1f %s", n, unit)
	}
	return fmt.Sprintf("%.0f %s", n, unit)
}

// tenthsBelow is the weight from which tenths are not known.
const tenthsBelow = 10

// Given is a weight as somebody gives it, to a tenth.
func Given(kg float64, u geom.Unit) string {
	n, unit := weighed(kg, u)
	return strconv.FormatFloat(math.Round(n*10)/10, 'f', -1, 64) + " " + unit
}

// Rating is what slides carry: as the maker gives it, or in the other unit whole pounds that it
// surely is.
func Rating(kg float64, u geom.Unit) string {
	n, unit := weighed(kg, u)
	if tenths := math.Round(n * 10); u == geom.Inch && tenths >= 10*tenthsBelow {
		return fmt.Sprintf("%.0f %s", math.Floor(tenths/10), unit)
	}
	return Given(kg, u)
}

// weighed is a weight of whole grams in the unit of a job.
func weighed(kg float64, u geom.Unit) (n float64, unit string) {
	if kg = Grams(kg); u == geom.Inch {
		return kg / poundKG, "lb"
	}
	return kg, "kg"
}

// Kilograms is a weight within a sentence.
type Kilograms float64

// In prints it to a tenth, so that two that are compared can be told apart.
func (kg Kilograms) In(u geom.Unit) string {
	n, unit := weighed(float64(kg), u)
	return fmt.Sprintf("%.1f %s", n, unit)
}

// AtMost is a weight as a job file has it, rounded down to a tenth, and how much that is in
// kg; nothing where that is none.
func AtMost(kg float64, u geom.Unit) (text string, is float64) {
	unit, one := "kg", 1.0
	if u == geom.Inch {
		unit, one = "lb", poundKG
	}
	n := math.Floor(kg/one*10) / 10
	if n <= 0 {
		return "", 0
	}
	return strconv.FormatFloat(n, 'f', -1, 64) + " " + unit, n * one
}

// Little is a small weight that is estimated, rounded up, with its unit: five grammes, or half
// ounces.
func Little(kg float64, u geom.Unit) (quantity float64, unit string) {
	if u == geom.Inch {
		return math.Ceil(kg/poundKG*ounces*2) / 2, "oz"
	}
	return math.Ceil(kg*inGrammes/5) * 5, "g"
}

// Area is one of square millimeters, in the unit in which board is sold, with that unit.
func Area(mm2 float64, u geom.Unit) (area float64, unit string) {
	if u == geom.Inch {
		return mm2 / squareFt, "sq ft"
	}
	return mm2 / squareMM, "m2"
}

// SquareMM is an area of board in square millimeters, from the unit of [Area].
func SquareMM(area float64, u geom.Unit) float64 {
	if u == geom.Inch {
		return area * squareFt
	}
	return area * squareMM
}

// SmallArea is one of square millimeters on a part.
func SmallArea(mm2 float64, u geom.Unit) string {
	if u == geom.Inch {
		return fmt.Sprintf("%.4f sq in", mm2/(geom.InchMM*geom.InchMM))
	}
	return fmt.Sprintf("%.1f mm2", mm2)
}

// Run is a length in mm of what is sold by the meter or the foot, with that unit.
func Run(mm float64, u geom.Unit) (length float64, unit string) {
	if u == geom.Inch {
		return mm / footMM, "ft"
	}
	return mm / meterMM, "m"
}

// Stresses are two of N/mm2, the lesser first, in [StressUnit].
func Stresses(a, b float64, u geom.Unit) string {
	k, digits := 1.0, 1
	if u == geom.Inch {
		k, digits = psi, 0
	}
	low, high := fmt.Sprintf("%.*f", digits, k*min(a, b)), fmt.Sprintf("%.*f", digits, k*max(a, b))
	return To(low, high)
}

// StressUnit is the unit of stress.
func StressUnit(u geom.Unit) string { return Either(u, "N/mm2", "psi") }
