package geom

import (
	"fmt"
	"slices"
	"strconv"
)

// Quantity is a number of a sentence, which prints itself in a unit of length.
type Quantity interface{ In(Unit) string }

// Millimeters is a length, printed to the nearest step of the unit.
type Millimeters float64

// In prints the length with its unit.
func (l Millimeters) In(u Unit) string { return LengthOf(float64(l)).Text(u) }

// Caliper is a length as a caliper shows it, with all its decimals.
type Caliper float64

// In prints the length with its unit.
func (l Caliper) In(u Unit) string { return LengthOf(float64(l)).Fixed(u) + " " + u.String() }

// AtLeast is a lower bound in millimeters, rounded up, so that what is printed keeps it.
type AtLeast float64

// In prints the bound with its unit.
func (l AtLeast) In(u Unit) string { return LengthOf(float64(l)).RoundUp(u).Text(u) }

// AtMost is an upper bound in millimeters, rounded down, so that what is printed keeps it.
type AtMost float64

// In prints the bound with its unit.
func (l AtMost) In(u Unit) string { return LengthOf(float64(l)).RoundDown(u).Text(u) }

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

// In is the sentence for a reader who measures in u.
func (s Sentence) In(u Unit) string {
	args := slices.Clone(s.Args)
	for i, a := range args {
		if q, is := a.(Quantity); is {
			args[i] = q.In(u)
		}
	}
	return fmt.Sprintf(s.Format, args...)
}
