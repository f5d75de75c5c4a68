package sheet

// UsualKerf is what a table saw's blade takes, in mm; common practice, no source.
const UsualKerf = 3.2

// GuidedEdge is the shortest edge of a board, in mm, that a saw's fence guides; common
// practice, no source.
const GuidedEdge = 300.0
