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
// chord of 4 m by 1 µm; with nine the worst is 0.25 µm over a whole kilometer
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

// appendTo appends the number as a real of the format: always with a decimal
// point and one digit after it, trailing zeros trimmed, never "-0.0".
func (m micro) appendTo(b []byte) []byte { return appendFixed(b, int64(m), uint64(microOne)) }

// appendTo appends the number as [micro.appendTo] does.
func (n nano) appendTo(b []byte) []byte { return appendFixed(b, int64(n), uint64(nanoOne)) }

// appendFixed appends v/one in decimals; one is a power of ten.
func appendFixed(b []byte, v int64, one uint64) []byte {
	u := uint64(v)
	if v < 0 {
		b, u = append(b, '-'), -u // the smallest int64 too
	}
	b = strconv.AppendUint(b, u/one, 10)
	point := len(b)
	b = strconv.AppendUint(b, one+u%one, 10) // the 1 of one is where the point goes
	b[point] = '.'
	for b[len(b)-1] == '0' && len(b) > point+2 {
		b = b[:len(b)-1]
	}
	return b
}
