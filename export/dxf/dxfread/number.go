package dxfread

import (
	"math"
	"strconv"
)

// real reads a decimal number with or without a point and an exponent, blanks
// about it, and gives the nearest float64. It says no to what is not one or is not
// finite. Go's names for what is not finite, its hexadecimals and its underscores are
// no numbers of the format.
func real(b []byte) (float64, bool) {
	b = trim(b)
	for _, c := range b {
		if c-'0' > 9 && c != '.' && c != '+' && c != '-' && c != 'e' && c != 'E' {
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(string(b), 64)
	return v, err == nil // beyond all numbers is an error too
}

func finite(v float64) bool { return math.Abs(v) <= math.MaxFloat64 }

// whole reads a whole number without blanks about it.
func whole(b []byte) (int, bool) {
	v, err := strconv.Atoi(string(b))
	return v, err == nil
}
