package geom

import (
	"math"
	"strconv"
	"strings"
)

// Text prints a length as a job file has it, with its unit: millimeters to 0.01
// ("12.21 mm"); inches as a fraction where the length is a whole number of
// 64ths ("17 5/8 in"), otherwise to 0.001 ("0.470 in"). On these printed grids
// [ParseLength] gives back the same length; anything else is rounded to them,
// half away from zero.
func (l Length) Text(u Unit) string { return l.Number(u) + " " + u.String() }

// Number is [Length.Text] without the unit.
func (l Length) Number(u Unit) string {
	if l < 0 {
		if s := l.opposite().Number(u); s != "0" {
			return "-" + s
		}
		return "0"
	}
	if u == Millimeter {
		return decimal(roundTo(l, hundredthMM), 2)
	}
	if n, exact := l.sixtyFourths(); exact {
		return fraction(n)
	}
	// Rounded, it may be a fraction: what prints alike reads alike.
	if l := Length(roundTo(l, thousandth)) * thousandth; l%sixtyFourth == 0 {
		return fraction(int64(l / sixtyFourth))
	}
	return pointed(roundTo(l, thousandth), 3)
}

// Three forms of a length for people, by what it is read with; in millimeters they differ in
// zeros alone. In inches:
//
//   - by a caliper, a machine or a fence with a dial, which set and check it: [Length.Fixed], 0.234;
//   - by a tape, which measures boards, boxes, openings, sheets and what is bought: [Length.Taped],
//     17 5/8, and 17.153 where it is no 64th; [Length.Measured], 17.153 (17 5/32), where it is cut or marked;
//   - by its name, of goods sold in millimeters: those, with the unit.

// Taped prints a length that is measured with a tape: of inches the 64th that it is to half a
// thousandth, else three decimals.
func (l Length) Taped(u Unit) string {
	if u != Inch {
		return l.Number(u)
	}
	if l < 0 {
		if s := l.opposite().Taped(u); s != "0" {
			return "-" + s
		}
		return "0"
	}
	if near, equal := l.near(); equal {
		return near
	}
	return l.Fixed(u)
}

// Measured is [Length.Taped] with the nearest 64th of an inch beside what is none:
// "17.153 (17 5/32)".
func (l Length) Measured(u Unit) string {
	text := l.Taped(u)
	if near, equal := l.near(); u == Inch && l > 0 && !equal && near != "0" {
		return text + " (" + near + ")"
	}
	return text
}

// AsSet is [Length.Fixed] of inches, and of millimeters without needless zeros: where a size that
// is set or checked stands in a sentence or a drawing.
func (l Length) AsSet(u Unit) string {
	if u == Inch {
		return l.Fixed(u)
	}
	return l.Number(u)
}

// Equal is the fraction of an inch, to a 64th, that a length is to half a thousandth: what a
// setup block or a rule sets it with. Empty of millimeters, whole inches and anything else.
func (l Length) Equal(u Unit) string {
	if near, equal := l.near(); u == Inch && l > 0 && equal && strings.Contains(near, "/") {
		return near
	}
	return ""
}

// near is the nearest 64th of an inch to a length that is not negative, and whether they are
// the same to half a thousandth.
func (l Length) near() (text string, equal bool) {
	n := roundTo(l, sixtyFourth)
	rest := l - Length(n)*sixtyFourth
	return fraction(n), max(rest, -rest) <= thousandth/2+Computed
}

// Span prints what lies between two lengths as a caliper shows them, the lesser first:
// "6.10 to 6.20", or one number where both print alike.
func Span(a, b Length, u Unit) string {
	low, high := min(a, b).Fixed(u), max(a, b).Fixed(u)
	if low == high {
		return low
	}
	return low + " to " + high
}

// Decimal prints a length as a decimal number for programs, to 0.01 mm or
// 0.0001 in, without the unit.
func (l Length) Decimal(u Unit) string {
	step, places := hundredthMM, 2
	if u == Inch {
		// Four places keep every 1/64 in apart from its neighbors on the 0.001 grid.
		step, places = thousandth/10, 4
	}
	if l < 0 {
		if s := l.opposite().Decimal(u); s != "0" {
			return "-" + s
		}
		return "0"
	}
	return decimal(roundTo(l, step), places)
}

// opposite is -l, but for the one int64 that has no opposite.
func (l Length) opposite() Length { return -max(l, -math.MaxInt64) }

// Fixed prints a length as a caliper shows it: always two decimals of a
// millimeter or three of an inch, halves away from zero, without the unit.
func (l Length) Fixed(u Unit) string {
	step, places := hundredthMM, 2
	if u == Inch {
		step, places = thousandth, 3
	}
	sign := ""
	if l < 0 {
		l = l.opposite()
		if roundTo(l, step) > 0 {
			sign = "-"
		}
	}
	return sign + pointed(roundTo(l, step), places)
}

// Fine is Fixed with as many decimals of an inch as a hundredth of a millimeter has: four.
func (l Length) Fine(u Unit) string {
	if u != Inch {
		return l.Fixed(u)
	}
	if l < 0 {
		return "-" + l.opposite().Fine(u)
	}
	return pointed(roundTo(l, thousandth/10), 4)
}

// RoundUp and RoundDown give the nearest length on the unit's printed grid that
// is not below or not above, for advice that must hold when it is followed: on
// 0.01 mm, or 0.001 in. What is on the grid, but for a nanometer of computing, stays.
func (l Length) RoundUp(u Unit) Length { return -(-l).RoundDown(u) }

func (l Length) RoundDown(u Unit) Length {
	step := hundredthMM
	if u == Inch {
		step = thousandth
	}
	down := (l + 1) / step * step
	if down > l+1 { // division cuts toward 0
		down -= step
	}
	return down
}

// Computed is how far the last bits of a computation, and the six decimals of a drawing in inches, may
// move a length. One that is so near to the middle between two printed numbers, or to a
// 64th, is taken for it: a size prints alike however it was come by.
const Computed Length = 26

// roundTo counts how many steps a length that is not negative holds, half up.
func roundTo(l, step Length) int64 {
	n := int64(l / step)
	if l%step >= step/2-Computed {
		n++
	}
	return n
}

// sixtyFourths of an inch that a length which is not negative is, if it is a whole number of
// them.
func (l Length) sixtyFourths() (n int64, exact bool) {
	n, rest := int64(l/sixtyFourth), l%sixtyFourth
	if rest >= sixtyFourth-Computed {
		return n + 1, true
	}
	return n, rest <= Computed
}

// decimal prints n units of 10^-places without needless zeros.
func decimal(n int64, places int) string {
	return strings.TrimSuffix(strings.TrimRight(pointed(n, places), "0"), ".")
}

// pointed prints n units of 10^-places, all of them.
func pointed(n int64, places int) string {
	digits := strconv.FormatInt(n, 10)
	if len(digits) <= places {
		digits = strings.Repeat("0", places+1-len(digits)) + digits
	}
	point := len(digits) - places
	return digits[:point] + "." + digits[point:]
}

// fraction prints n 64ths of an inch in lowest terms.
func fraction(n int64) string {
	whole, part, denom := n/fractionDenom, n%fractionDenom, int64(fractionDenom)
	for part != 0 && part%2 == 0 {
		part, denom = part/2, denom/2
	}
	switch {
	case part == 0:
		return strconv.FormatInt(whole, 10)
	case whole == 0:
		return strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(denom, 10)
	}
	return strconv.FormatInt(whole, 10) + " " + strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(denom, 10)
}

// Words are the words of a text between which it can be broken: a fraction stays with its whole
// number.
func Words(s string) []string {
	list := strings.Fields(s)
	if !strings.Contains(s, "/") {
		return list
	}
	n := 0
	for _, w := range list {
		if n > 0 && startsFraction(w) && strings.Trim(list[n-1], "(-0123456789") == "" {
			list[n-1] += " " + w
			continue
		}
		list[n] = w
		n++
	}
	return list[:n]
}

// startsFraction reports whether a word begins with one, as "5/8," does.
func startsFraction(w string) bool {
	above, below, cut := strings.Cut(w, "/")
	digit := func(r byte) bool { return '0' <= r && r <= '9' }
	return cut && above != "" && strings.Trim(above, "0123456789") == "" && below != "" && digit(below[0])
}
