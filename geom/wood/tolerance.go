package wood

import (
	"errors"
	"fmt"
	"math"
)

// Standard is a published tolerance on the thickness of plywood, with the finish
// of its faces.
type Standard uint8

const (
	// EN315Sanded: -(0.4 + 0.03 t), +(0.2 + 0.03 t) mm. EN 315:2000, table 1;
	// from memory, in part confirmed by tables of mills.
	EN315Sanded Standard = iota

	// EN315Unsanded: -(0.4 + 0.03 t), +(0.8 + 0.03 t) mm. EN 315:2000, table 1;
	// from memory. The lower side is unsettled, tables of mills have 0.1 mm less;
	// the wider one is taken.
	EN315Unsanded

	// PS1Sanded: 1/64 in both ways up to 3/4 in, 3 % above. US PS 1-19, secondary;
	// that 3/4 in itself belongs to the first is from memory.
	PS1Sanded

	// PS1Unsanded, also for touch-sanded and overlaid: 1/32 in both ways up to
	// 13/16 in, 5 % above. US PS 1-19, secondary.
	PS1Unsanded
)

// MaxNominal is the thickness in mm beyond which nothing is taken for a sheet;
// more than is made.
const MaxNominal = 200.0

const inch = 25.4

// PS 1 by category: up to which thickness a fixed tolerance holds, in mm.
const (
	ps1SandedUpTo   = 3.0 / 4 * inch
	ps1Sanded       = 1.0 / 64 * inch
	ps1SandedPart   = 0.03
	ps1UnsandedUpTo = 13.0 / 16 * inch
	ps1Unsanded     = 1.0 / 32 * inch
	ps1UnsandedPart = 0.05
)

var errNoStandard = errors.New("the standard is not one of the known ones")

// Tolerance gives by how many mm a sheet may be thinner (minus) and thicker
// (plus) than its nominal thickness in mm, both 0 or more. For PS 1 nominal is
// the performance category (23/32 in is 18.256 mm), not the size in a shop's
// talk. The standards mean sheets at about 10 % moisture (EN 315) and 9 % (PS 1).
// A sheet so thin that the tolerance leaves nothing of it is an error.
func Tolerance(standard Standard, nominal float64) (minus, plus float64, err error) {
	if err := inRange("the nominal thickness", nominal, math.SmallestNonzeroFloat64, MaxNominal, " mm"); err != nil {
		return 0, 0, err
	}
	switch standard {
	case EN315Sanded:
		minus, plus = 0.4+float64(0.03*nominal), 0.2+float64(0.03*nominal)
	case EN315Unsanded:
		minus, plus = 0.4+float64(0.03*nominal), 0.8+float64(0.03*nominal)
	case PS1Sanded:
		minus = stepped(nominal, ps1SandedUpTo, ps1Sanded, ps1SandedPart)
		plus = minus
	case PS1Unsanded:
		minus = stepped(nominal, ps1UnsandedUpTo, ps1Unsanded, ps1UnsandedPart)
		plus = minus
	default:
		return 0, 0, errNoStandard
	}
	if minus >= nominal {
		return 0, 0, fmt.Errorf("a nominal thickness of %g mm is less than its tolerance of %g mm", nominal, minus)
	}
	return minus, plus, nil
}

// stepSlack in mm keeps a category that was converted from inches on its own
// side of the step: a nanometer, the grid that lengths are held on.
const stepSlack = 1e-6

func stepped(nominal, upTo, fixed, part float64) float64 {
	if nominal <= upTo+stepSlack {
		return fixed
	}
	return part * nominal
}
