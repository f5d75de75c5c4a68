package sheet

import "drawerwright/geom"

// UsualKept are the longer and the shorter side, in mm, of the smallest offcut that is kept: 300 x
// 100 mm, or 12 x 4 in; common practice, no source.
func UsualKept(u geom.Unit) [2]float64 {
	return [2]float64{u.Usual(300, 12), u.Usual(100, 4)}
}

// WorthSheet is how many seconds at the saw are worth a sheet; common practice, no source.
const WorthSheet = 600

// UsualMaxWeight is the heaviest board, in kg, that one person puts onto a saw; common
// practice, no source.
const UsualMaxWeight = 23.0

// MaxAlone is the area of the largest sheet, in square mm, that one person puts onto a saw where nobody knows what it
// weighs: little more than one of 2440 x 1220 mm (common practice, no source).
const MaxAlone = 3.0e6

// OffcutSide is a side of an offcut as it is put on the shelf: rounded down to the [Grid].
func OffcutSide(l geom.Length, u geom.Unit) geom.Length { return l - l%Grid(u) }
