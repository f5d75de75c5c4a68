package wood

import (
	"errors"
	"math"
)

// Moisture in percent. Between [MinLinear] and [MaxLinear] wood moves in
// proportion to its moisture; above [FiberSaturation] it does not move. Wood
// Handbook p. 13-17, original.
const (
	MinLinear       = 6.0
	MaxLinear       = 14.0
	FiberSaturation = 30.0
)

// maxGravity is the specific gravity of wood without pores, from memory; no wood
// is heavier.
const maxGravity = 1.53

// maxCoefficient is ten times what any wood has; beyond it a coefficient is in
// percent or otherwise mistaken.
const maxCoefficient = 0.05

// maxWidth in mm is more than any tree has.
const maxWidth = 1e5

var (
	errNoSheet = errors.New("the sheet is not one of the known kinds")
	errNoCut   = errors.New("the cut is neither flatsawn nor quartersawn")
	errSeason  = errors.New("the damp air is drier than the dry air")
)

// Cut is how a board was sawn from the log.
type Cut uint8

const (
	Flatsawn    Cut = iota // rings along the width: it moves by the tangential coefficient
	Quartersawn            // rings across the width: by the radial one
)

// Coefficient gives the change of a board's width for one percent of moisture.
// Few boards are wholly flatsawn or quartersawn: the width of a flatsawn board
// moves somewhat less than this, that of a quartersawn one somewhat more.
func (s Species) Coefficient(cut Cut) (float64, error) {
	switch cut {
	case Flatsawn:
		return s.Tangential, nil
	case Quartersawn:
		return s.Radial, nil
	}
	return 0, errNoCut
}

// Change gives by how much a width in mm changes when the moisture goes from one
// percentage to another: width * coefficient * (to - from), negative when it
// shrinks. Wood Handbook, equation 13-2.
//
// The equation is meant for moistures from [MinLinear] to [MaxLinear]. Beyond
// them, up to [FiberSaturation], the result is an estimate and limited is true;
// moisture below 0 or above that is an error.
func Change(width, coefficient, from, to float64) (change float64, limited bool, err error) {
	if err := inRange("the width", width, math.SmallestNonzeroFloat64, maxWidth, " mm"); err != nil {
		return 0, false, err
	}
	if err := inRange("the coefficient", coefficient, math.SmallestNonzeroFloat64, maxCoefficient, ""); err != nil {
		return 0, false, err
	}
	for _, m := range []float64{from, to} {
		if err := inRange("the moisture", m, 0, FiberSaturation, " %"); err != nil {
			return 0, false, err
		}
		limited = limited || m < MinLinear || m > MaxLinear
	}
	return width * (coefficient * (to - from)), limited, nil
}

// Density gives kg/m3 of wood with a moisture in percent, G being its ovendry
// mass by its volume at that moisture: 1000 G (1 + moisture / 100). Wood
// Handbook, chapter 4; the formula from memory.
func Density(G, moisture float64) (float64, error) {
	if err := inRange("the specific gravity", G, math.SmallestNonzeroFloat64, maxGravity, ""); err != nil {
		return 0, err
	}
	if err := inRange("the moisture", moisture, 0, FiberSaturation, " %"); err != nil {
		return 0, err
	}
	return 1000 * G * (1 + moisture/100), nil
}

// Season is how a board moves from the air that it was worked in through the
// driest and the dampest that it will stand in, each for long enough.
type Season struct {
	Now, Dry, Damp float64 // moisture in percent

	// Shrink and Swell are parts of the width as worked, both 0 or more. Shrink
	// is 0 where it is never drier than now, Swell where it is never damper.
	Shrink, Swell float64

	Limited bool // the moistures go beyond MinLinear..MaxLinear, see Change
}

// Air is the air in which wood lies now, and the driest and the dampest in which it will
// stand, as relative humidities from 0 to 1, at a temperature in degrees Celsius.
type Air struct{ Now, Driest, Dampest, Celsius float64 }

// SeasonalMovement gives the movement of a board's width in the air of a year. A finish or
// a short season makes it less. Errors as [EMC] and [Change].
func SeasonalMovement(s Species, cut Cut, air Air) (Season, error) {
	c, err := s.Coefficient(cut)
	if err != nil {
		return Season{}, err
	}
	return season(c, air)
}

// SheetMovement gives an upper bound of how the length and the width of a sheet move in
// such air. A sheet is taken to be as moist as wood in the same air; it is somewhat drier.
func SheetMovement(s Sheet, air Air) (Season, error) {
	if len(s.bending) == 0 {
		return Season{}, errNoSheet
	}
	return season(s.InPlane, air)
}

// season moves by a coefficient between the humidities of the air.
func season(c float64, air Air) (Season, error) {
	if air.Dampest < air.Driest {
		return Season{}, errSeason
	}
	var m [3]float64
	var err error
	for i, rh := range []float64{air.Now, air.Driest, air.Dampest} {
		if m[i], err = EMC(air.Celsius, rh); err != nil {
			return Season{}, err
		}
	}
	dry, limitedDry, err := Change(1, c, m[0], m[1])
	if err != nil {
		return Season{}, err
	}
	damp, limitedDamp, err := Change(1, c, m[0], m[2])
	if err != nil {
		return Season{}, err
	}
	return Season{
		Now: m[0], Dry: m[1], Damp: m[2],
		Shrink: max(0, -dry), Swell: max(0, damp),
		Limited: limitedDry || limitedDamp,
	}, nil
}
