package sheet

import (
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// UsualTrim is what saws take off each edge of a sheet, in mm: 5 mm, or three sixteenths of an
// inch; common practice, no source.
func UsualTrim(u geom.Unit) float64 {
	if u == geom.Inch {
		return 3 * geom.InchMM / 16
	}
	return 5
}

// MinRim is the least that a router leaves of a sheet round its parts, in mm: what cuts
// and bits reach past a part, [mill.MinWaste], and what the sheet may be short.
func (n Needs) MinRim(short [2]float64) float64 {
	return n.Reach + mill.MinWaste + max(short[0], short[1])
}

// Grid is on what a shop sets stops and marks sheets: whole millimeters, or 32nds of an
// inch; common practice, no source.
func Grid(u geom.Unit) geom.Length {
	if u == geom.Inch {
		return geom.LengthOf(geom.InchMM / 32)
	}
	return geom.LengthOf(1)
}

// UpToGrid rounds up to the [Grid].
func UpToGrid(l geom.Length, u geom.Unit) geom.Length {
	grid := Grid(u)
	return (l + grid - 1) / grid * grid
}
