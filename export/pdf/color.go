package pdf

import (
	"encoding/binary"
	"math"
	"slices"
)

// colors is the name of the color space of all documents.
const colors = "sRGB IEC61966-2.1"

// The sRGB space as IEC 61966-2-1:1999 has it: x and y of its primaries and of its white, D65.
var (
	primaries = [3][2]float64{{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}}
	white     = [2]float64{0.3127, 0.3290}
)

// d50 is the white of profiles (ISO 15076-1).
var d50 = vector{0.9642, 1, 0.8249}

// bradford is the matrix to the answers of the eye in which whites are adapted (ISO 15076-1, from memory).
var bradford = matrix{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}

type vector [3]float64

type matrix [3]vector // rows

func (m matrix) of(v vector) (out vector) {
	for i, row := range m {
		for k, x := range row {
			out[i] += float64(x * v[k])
		}
	}
	return out
}

func (m matrix) times(n matrix) (out matrix) {
	for k := range 3 {
		column := m.of(vector{n[0][k], n[1][k], n[2][k]})
		for i := range 3 {
			out[i][k] = column[i]
		}
	}
	return out
}

// inverse is that of a matrix which has one.
func (m matrix) inverse() (out matrix) {
	det := 0.0
	for i := range 3 {
		for k := range 3 {
			a, b, c, d := m[(k+1)%3][(i+1)%3], m[(k+2)%3][(i+2)%3], m[(k+1)%3][(i+2)%3], m[(k+2)%3][(i+1)%3]
			out[i][k] = float64(a*b) - float64(c*d)
		}
		det += float64(m[0][i] * out[i][0])
	}
	for i := range 3 {
		for k := range 3 {
			out[i][k] /= det
		}
	}
	return out
}

func diagonal(v vector) matrix { return matrix{{v[0], 0, 0}, {0, v[1], 0}, {0, 0, v[2]}} }

// xyz are the tristimulus values of a chromaticity, of luminance 1.
func xyz(at [2]float64) vector { return vector{at[0] / at[1], 1, (1 - at[0] - at[1]) / at[1]} }

// standardColors is an ICC profile of the sRGB space (ISO 15076-1, version 4): the device colors of a document mean
// what they mean on a usual screen.
func standardColors() []byte {
	var p matrix
	for k, at := range primaries {
		for i, v := range xyz(at) {
			p[i][k] = v
		}
	}
	toXYZ := p.times(diagonal(p.inverse().of(xyz(white))))
	from, to := bradford.of(xyz(white)), bradford.of(d50)
	adapt := bradford.inverse().times(diagonal(vector{to[0] / from[0], to[1] / from[1], to[2] / from[2]})).times(bradford)
	inD50 := adapt.times(toXYZ)
	column := func(k int) []float64 { return []float64{inD50[0][k], inD50[1][k], inD50[2][k]} }
	// The curve of IEC 61966-2-1: ((x + 0.055) / 1.055)^2.4 from 0.04045 on, x / 12.92 below.
	curve := numbers("para", 3<<16, []float64{2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045})
	return profile([]profileTag{
		{"desc", words(colors)}, {"cprt", words("no copyright, use freely")},
		{"wtpt", numbers("XYZ ", -1, d50[:])},
		{"chad", numbers("sf32", -1, slices.Concat(adapt[0][:], adapt[1][:], adapt[2][:]))},
		{"rXYZ", numbers("XYZ ", -1, column(0))}, {"gXYZ", numbers("XYZ ", -1, column(1))},
		{"bXYZ", numbers("XYZ ", -1, column(2))},
		{"rTRC", curve}, {"gTRC", curve}, {"bTRC", curve}})
}

// words are a text in one language.
func words(s string) []byte {
	out := append([]byte("mluc"), make([]byte, 4)...)
	for _, n := range []uint32{1, 12} {
		out = binary.BigEndian.AppendUint32(out, n)
	}
	out = append(out, "enUS"...)
	for _, n := range []uint32{uint32(2 * len(s)), 28} {
		out = binary.BigEndian.AppendUint32(out, n)
	}
	for _, b := range []byte(s) {
		out = append(out, 0, b)
	}
	return out
}

// numbers are in steps of 1/65536, after what their kind says, if it is not negative.
func numbers(kind string, says int64, list []float64) []byte {
	out := append([]byte(kind), make([]byte, 4)...)
	if says >= 0 {
		out = binary.BigEndian.AppendUint32(out, uint32(says))
	}
	for _, v := range list {
		out = binary.BigEndian.AppendUint32(out, uint32(int32(math.Round(v*65536))))
	}
	return out
}

type profileTag struct {
	name string
	data []byte
}

// profile puts a display's profile together: its head, where its tags stand, and these.
func profile(tags []profileTag) []byte {
	head := make([]byte, 128)
	binary.BigEndian.PutUint32(head[8:], 0x04200000) // version 4.2
	copy(head[12:], "mntrRGB XYZ ")
	binary.BigEndian.PutUint16(head[24:], 1999) // of the standard: a date is asked for
	binary.BigEndian.PutUint16(head[26:], 10)
	binary.BigEndian.PutUint16(head[28:], 1)
	copy(head[36:], "acsp")
	copy(head[68:], numbers("", -1, d50[:])[4:])
	table := binary.BigEndian.AppendUint32(nil, uint32(len(tags)))
	var body []byte
	for _, t := range tags {
		table = append(table, t.name...)
		table = binary.BigEndian.AppendUint32(table, uint32(128+4+12*len(tags)+len(body)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(t.data)))
		body = padded(append(body, t.data...))
	}
	out := append(append(head, table...), body...)
	binary.BigEndian.PutUint32(out, uint32(len(out)))
	return out
}
