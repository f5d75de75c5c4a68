package fit

import (
	"fmt"
	"math"
)

// Odds are the part of random boxes that come out right, 0 to 1. All says that none can
// be wrong: the worst case is within the limits.
type Odds struct {
	Fraction float64
	Certain  bool
}

// Of1000 is how many of 1,000 come out right, as a table has it. What is not sure to be
// all is never called all.
func (o Odds) Of1000() string {
	switch n := math.Round(1000 * o.Fraction); {
	case o.Certain:
		return "all"
	case n >= 1000:
		return "> 999"
	case n < 1:
		return "< 1"
	default:
		return fmt.Sprintf("%.0f", n)
	}
}

// Spoken is the same as a sentence has it.
func (o Odds) Spoken() string {
	switch text := o.Of1000(); text {
	case "> 999":
		return "more than 999"
	case "< 1":
		return "fewer than 1"
	default:
		return text
	}
}

// String says it in words.
func (o Odds) String() string {
	switch text := o.Spoken(); text {
	case "all":
		return "all boxes come out right"
	case "1":
		return "1 of 1,000 boxes comes out right"
	default:
		return text + " of 1,000 boxes come out right"
	}
}
