package sheet

import "drawerwright/geom"

// UsualKerf is what a table saw's blade takes, in mm: 3.2 mm, or an eighth of an inch; common
// practice, no source.
func UsualKerf(u geom.Unit) float64 {
	return u.Usual(3.2, 1.0/8)
}

// GuidedEdge is the shortest edge of a board, in mm, that a saw's fence guides; common
// practice, no source.
const GuidedEdge = 300.0

// UsualAllowances are how much larger, in mm, a board is first cut that gets its size by a cut of its own: where there
// is wood for it the kerf and 3 mm, or an eighth of an inch, so that the blade has wood on both sides; else 2 mm, or a
// sixteenth of an inch, all of it dust. Common practice, no source.
func UsualAllowances(u geom.Unit, kerf float64) [2]float64 {
	return [...]float64{kerf + u.Usual(3, 1.0/8), u.Usual(2, 1.0/16)}
}
