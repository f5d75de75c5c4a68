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

// UsualAllowance is how much larger, in mm, a board is first cut that gets its size by a cut of its own: 2 mm, or a
// sixteenth of an inch; common practice, no source.
func UsualAllowance(u geom.Unit) float64 {
	return u.Usual(2, 1.0/16)
}
