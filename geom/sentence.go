package geom

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Quantity is a number of a sentence, which prints itself in a unit of length.
type Quantity interface{ In(Unit) string }

// Millimeters is a length, printed to the nearest step of the unit.
type Millimeters float64

// In prints the length with its unit.
func (l Millimeters) In(u Unit) string { return LengthOf(float64(l)).Text(u) }

// decimals is the same without a fraction.
func (l Millimeters) decimals(u Unit) string { return Caliper(l).In(u) }

// Caliper is a length as a caliper shows it, with all its decimals.
type Caliper float64

// In prints the length with its unit.
func (l Caliper) In(u Unit) string { return LengthOf(float64(l)).Fixed(u) + " " + u.String() }

// decimals is the same: it has no fraction.
func (l Caliper) decimals(u Unit) string { return l.In(u) }

// AtLeast is a lower bound in millimeters, rounded up, so that what is printed keeps it.
type AtLeast float64

// In prints the bound with its unit.
func (l AtLeast) In(u Unit) string { return LengthOf(float64(l)).RoundUp(u).Text(u) }

// decimals is the same without a fraction.
func (l AtLeast) decimals(u Unit) string {
	return Caliper(LengthOf(float64(l)).RoundUp(u).MM()).In(u)
}

// AtMost is an upper bound in millimeters, rounded down, so that what is printed keeps it.
type AtMost float64

// In prints the bound with its unit.
func (l AtMost) In(u Unit) string { return LengthOf(float64(l)).RoundDown(u).Text(u) }

// decimals is the same without a fraction.
func (l AtMost) decimals(u Unit) string {
	return Caliper(LengthOf(float64(l)).RoundDown(u).MM()).In(u)
}

// Count is a number of pieces.
type Count int

// In prints the number: pieces have no unit.
func (n Count) In(Unit) string { return strconv.Itoa(int(n)) }

// Sentence is words with quantities in their places, by the verbs of package fmt: a
// [Quantity], or a sentence within, is printed in the reader's unit and takes %s.
type Sentence struct {
	Format string
	Args   []any
}

// Sentencef is a sentence of its parts.
func Sentencef(format string, args ...any) Sentence { return Sentence{format, args} }

// IsEmpty reports whether there are no words.
func (s Sentence) IsEmpty() bool { return s.Format == "" }

// In is the sentence for a reader who measures in u. Inches are all fractions or all decimals in it.
func (s Sentence) In(u Unit) string {
	return s.in(u, u == Inch && s.hasDecimals())
}

// decimals is the sentence without fractions.
func (s Sentence) decimals(u Unit) string { return s.in(u, true) }

func (s Sentence) in(u Unit, pointed bool) string {
	args := slices.Clone(s.Args)
	for i, a := range args {
		q, is := a.(Quantity)
		if !is {
			continue
		}
		text := q.In(u)
		if both, is := a.(fractional); is && pointed && strings.Contains(text, "/") {
			text = both.decimals(u)
		}
		args[i] = text
	}
	return fmt.Sprintf(s.Format, args...)
}

// fractional is a quantity that may print as a fraction of an inch.
type fractional interface{ decimals(Unit) string }

// hasDecimals reports whether a quantity of the sentence, or of one within it, is no fraction of an inch.
func (s Sentence) hasDecimals() bool {
	return slices.ContainsFunc(s.Args, func(a any) bool {
		if within, is := a.(Sentence); is {
			return within.hasDecimals()
		}
		q, is := a.(fractional)
		return is && strings.Contains(q.(Quantity).In(Inch), ".")
	})
}
