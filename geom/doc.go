// Package geom holds what every part of drawerwright measures with: lengths,
// closed plane loops of lines and arcs, panels with pockets on both faces, and
// the rules that a panel must keep.
//
// Start with [ParseLength] for what a person writes, [Panel] for what a machine
// cuts, and [Panel.Check] for what is wrong with it.
//
// Everything is in millimeters. Panel coordinates have the inside face up and
// toward you: x along the panel's length, y up from its bottom edge, z from 0
// at the outside face to the thickness at the inside face, the origin at the
// lower left corner of the blank. A pocket is stored once, in panel coordinates,
// whichever face it is cut from.
package geom
