package dxf

import (
	"math"
	"strconv"
)

// micro is a fixed-point number of 1e-6: a length in millionths of the drawing
// unit, which is 1 nm in a metric drawing and 25 nm in one in inches.
type micro int64

// nano is a fixed-point number of 1e-9, for bulges. A bulge is multiplied by
// half the chord, so that six decimals would move the middle of an arc over a
// chord of 4 m by 1 µm; with nine the worst is 0.25 µm over a whole kilometre
// (a chord of 1e6 mm).
type nano int64

const (
	microOne micro = 1_000_000
	nanoOne  nano  = 1_000_000_000
)

// toMicro rounds to the nearest millionth, halves away from zero. The product is
// rounded to a float64 first, so a "half" is one as far as float64 can tell.
func toMicro(v float64) micro { return micro(math.Round(v * float64(microOne))) }

// toNano rounds to the nearest 1e-9 as [toMicro] does to 1e-6.
func toNano(v float64) nano { return nano(math.Round(v * float64(nanoOne))) }

func (m micro) float() float64 { return float64(m) / float64(microOne) }

func (n nano) float() float64 { return float64(n) / float64(nanoOne) }

// pairs holds the decimal digits of 0 to 99, two each.
const pairs = "00010203040506070809" +
	"10111213141516171819" +
	"20212223242526272829" +
	"30313233343536373839" +
	"40414243444546474849" +
	"50515253545556575859" +
	"60616263646566676869" +
	"70717273747576777879" +
	"80818283848586878889" +
	"90919293949596979899"

// appendTo appends the number as a real of the format: always with a decimal
// point and one digit after it, trailing zeros trimmed, never "-0.0".
func (m micro) appendTo(b []byte) []byte {
	b, u := appendSign(b, int64(m))
	whole := u / uint64(microOne)
	b = appendWhole(b, whole)
	frac := uint32(u - whole*uint64(microOne))
	if frac == 0 {
		return append(b, '.', '0')
	}
	high, mid, low := frac/10_000*2, frac/100%100*2, frac%100*2
	b = append(b, '.', pairs[high], pairs[high+1], pairs[mid], pairs[mid+1], pairs[low], pairs[low+1])
	return trimZeros(b)
}

// appendTo appends the number as [micro.appendTo] does.
func (n nano) appendTo(b []byte) []byte {
	b, u := appendSign(b, int64(n))
	whole := u / uint64(nanoOne)
	b = appendWhole(b, whole)
	frac := uint32(u - whole*uint64(nanoOne))
	if frac == 0 {
		return append(b, '.', '0')
	}
	b = append(b, '.', byte('0'+frac/100_000_000))
	for div := uint32(1_000_000); div > 0; div /= 100 {
		p := frac / div % 100 * 2
		b = append(b, pairs[p], pairs[p+1])
	}
	return trimZeros(b)
}

// appendSign appends the sign and gives the magnitude, the smallest int64 too.
func appendSign(b []byte, v int64) ([]byte, uint64) {
	if v < 0 {
		return append(b, '-'), -uint64(v)
	}
	return b, uint64(v)
}

// appendWhole appends the digits of a whole number, the usual lengths of a
// drawing (below 10,000) without a loop.
func appendWhole(b []byte, v uint64) []byte {
	if v >= 10_000 {
		return strconv.AppendUint(b, v, 10)
	}
	high, low := uint32(v)/100*2, uint32(v)%100*2
	switch {
	case v >= 1000:
		return append(b, pairs[high], pairs[high+1], pairs[low], pairs[low+1])
	case v >= 100:
		return append(b, pairs[high+1], pairs[low], pairs[low+1])
	case v >= 10:
		return append(b, pairs[low], pairs[low+1])
	default:
		return append(b, pairs[low+1])
	}
}

// trimZeros drops the zeros at the end of a fraction that is not zero.
func trimZeros(b []byte) []byte {
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	return b
}
