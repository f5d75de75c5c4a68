package dxfread

import (
	"math"
	"strconv"
)

// exactDigits is how many decimal digits a uint64 holds whatever they are.
const exactDigits = 19

// exactWhole is the whole number up to which a float64 holds each one.
const exactWhole = 1 << 53

// tens are the powers of ten that a float64 holds exactly.
var tens = [...]float64{
	1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
}

// real reads a decimal number with or without a point and an exponent, blanks
// about it, and gives the nearest float64, the very bits of strconv.ParseFloat.
// It says no to what is not one or is not finite.
//
// A few digits without an exponent, as drawings have, are a whole number below
// 2^53 over a power of ten up to 1e22. Both are exact, so that the one division
// rounds once, to the nearest (W. D. Clinger, How to Read Floating Point Numbers
// Accurately, 1990).
func real(b []byte) (float64, bool) {
	i := 0
	for i < len(b) && b[i] == ' ' {
		i++
	}
	negative := i < len(b) && b[i] == '-'
	if negative {
		i++
	}
	var mantissa uint64
	first := i
	for i < len(b) && b[i]-'0' <= 9 {
		mantissa = mantissa*10 + uint64(b[i]-'0')
		i++
	}
	digits, decimals := i-first, 0
	if i < len(b) && b[i] == '.' {
		i++
		first = i
		for i < len(b) && b[i]-'0' <= 9 {
			mantissa = mantissa*10 + uint64(b[i]-'0')
			i++
		}
		decimals = i - first
		digits += decimals
	}
	if i < len(b) || digits == 0 || digits > exactDigits || mantissa > exactWhole {
		return anyReal(trim(b))
	}
	v := float64(mantissa) / tens[decimals]
	if negative {
		v = -v
	}
	return v, true
}

// anyReal reads whatever number the format allows. Go's names for what is not
// finite, its hexadecimals and its underscores are none of them.
func anyReal(b []byte) (float64, bool) {
	for _, c := range b {
		if c-'0' > 9 && c != '.' && c != '+' && c != '-' && c != 'e' && c != 'E' {
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(string(b), 64)
	return v, err == nil // beyond all numbers is an error too
}

func finite(v float64) bool { return math.Abs(v) <= math.MaxFloat64 }

// wholeDigits bounds the digits of a whole number. The format's longest are of
// 64 bits; none that is read here has more than 32.
const wholeDigits = 18

// whole reads a whole number without blanks about it.
func whole(b []byte) (int, bool) {
	negative := len(b) > 0 && b[0] == '-'
	if negative || len(b) > 0 && b[0] == '+' {
		b = b[1:]
	}
	if len(b) == 0 || len(b) > wholeDigits {
		return 0, false
	}
	var v int64
	for _, c := range b {
		if c-'0' > 9 {
			return 0, false
		}
		v = v*10 + int64(c-'0')
	}
	if negative {
		v = -v
	}
	if int64(int(v)) != v {
		return 0, false
	}
	return int(v), true
}
