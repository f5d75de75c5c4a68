package geom

import "fmt"

// Unit is a unit of length that a job is written in and results are printed in.
type Unit uint8

const (
	Millimeter Unit = iota // the zero value
	Inch
)

// InchMM is the length of one inch in millimeters: exactly 25.4 by the
// international yard and pound agreement of 1959.
const InchMM = 25.4

// String gives the unit's symbol as job files write it.
func (u Unit) String() string {
	if u == Inch {
		return "in"
	}
	return "mm"
}

// MM is the number of millimeters in one unit.
func (u Unit) MM() float64 {
	if u == Inch {
		return InchMM
	}
	return 1
}

// Usual is a measure that is a convention, in mm: one of millimeters, or the round one of inches that
// a shop keeps to that measures in them.
func (u Unit) Usual(mm, inches float64) float64 {
	if u == Inch {
		return float64(inches * InchMM)
	}
	return mm
}

// PoundKG is the avoirdupois pound, in kg, by definition.
const PoundKG = 0.45359237

// UsualLoad is a load that is a convention, in kg: one of kilograms, or the round one of pounds.
func (u Unit) UsualLoad(kg, pounds float64) float64 {
	if u == Inch {
		return float64(pounds * PoundKG)
	}
	return kg
}

// Step is the smallest step that settings are printed in, in millimeters: a hundredth of a
// millimeter, or a thousandth of an inch. Common practice, no source.
func (u Unit) Step() float64 {
	if u == Inch {
		return InchMM / 1000
	}
	return 0.01
}

// ParseUnit reads "mm" or "in".
func ParseUnit(s string) (Unit, error) {
	switch s {
	case "mm":
		return Millimeter, nil
	case "in":
		return Inch, nil
	}
	return 0, fmt.Errorf("%q is not a unit of a job: write mm or in", s)
}
