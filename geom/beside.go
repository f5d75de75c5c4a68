package geom

import (
	"strconv"
)

// Inward gives both ends of what is right, in mm, on the printed grid, rounded inward: what is right on paper is
// right. Ends that are nearer to each other than a step stay as they are.
func Inward(right Interval, u Unit) (low, high Length) {
	least, most := LengthOf(right.Min), LengthOf(right.Max)
	if low, high = least.RoundUp(u), most.RoundDown(u); low > high {
		return least, most
	}
	return low, high
}

// FixedBeside prints a length as a caliper shows it, beside what is right as [Inward] has it: on the side of both
// limits, as they are printed, on which it is. One that rounding would move within them has more decimals; one that
// it would move out is at the limit.
func FixedBeside(mm float64, right Interval, u Unit) string {
	l, places := besideOf(mm, right, u)
	return l.pointedTo(u, places)
}

// besideOf is a length as it is printed beside what is right, and with how many decimals more than usual.
func besideOf(mm float64, right Interval, u Unit) (l Length, more int) {
	l = LengthOf(mm)
	low, high := Inward(right, u)
	from, to, is := low.fixed(u, 0), high.fixed(u, 0), l.fixed(u, 0)
	switch {
	case mm < right.Min-Settle:
		for more < mostMore && l.fixed(u, more) >= from {
			more++
		}
	case mm > right.Max+Settle:
		for more < mostMore && l.fixed(u, more) <= to {
			more++
		}
	case is < from:
		return low, 0
	case is > to:
		return high, 0
	}
	return l, more
}

// mostMore decimals tell a length from any other.
const mostMore = 5

// fixed is the number that is printed of a length in a unit, with so many decimals more than usual.
func (l Length) fixed(u Unit, more int) float64 {
	v, _ := strconv.ParseFloat(l.pointedTo(u, more), 64) // as it was written
	return v
}

// pointedTo is [Length.Fixed] with so many decimals more.
func (l Length) pointedTo(u Unit, more int) string {
	if more == 0 {
		return l.Fixed(u)
	}
	places := 2
	if u == Inch {
		places = 3
	}
	return strconv.FormatFloat(l.MM()/u.MM(), 'f', places+more, 64)
}

// Judged is a length in a sentence that says what is right of it, printed as [FixedBeside] does. Fixed is with all
// its decimals, as a caliper shows it.
type Judged struct {
	MM    float64
	Right Interval
	Fixed bool
}

// In prints the length with its unit.
func (b Judged) In(u Unit) string {
	if l, more := besideOf(b.MM, b.Right, u); more == 0 && !b.Fixed {
		return l.Text(u)
	}
	return b.decimals(u)
}

// decimals is the same without a fraction.
func (b Judged) decimals(u Unit) string { return FixedBeside(b.MM, b.Right, u) + " " + u.String() }

// RightIs is what is right of a length, printed inward.
type RightIs struct {
	Interval
	Fixed bool
}

// In prints both ends with their unit.
func (r RightIs) In(u Unit) string {
	low, high := Inward(r.Interval, u)
	if r.Fixed {
		return r.decimals(u)
	}
	return low.Text(u) + " to " + high.Text(u)
}

// decimals is the same without fractions.
func (r RightIs) decimals(u Unit) string {
	low, high := Inward(r.Interval, u)
	return Caliper(low.MM()).In(u) + " to " + Caliper(high.MM()).In(u)
}
