// Package dxftest judges the DXF files that tests have written. [Strict] says in
// what a file breaks the rules that the strictest readers hold a file to, and
// [ReadBack] gives what a sound one draws, as package dxfread reads it.
//
// It shares no code with the writer, so that a mistake there is not made here a
// second time. Strict judges the tags themselves, and the shapes as dxfread
// reads them. It knows ASCII files of the versions AC1009 (R12) and AC1015
// (R2000) with polylines and circles, which is all that this project writes:
// whatever else a file holds is a fault.
// The rules follow the same sources as package dxf; those on owners and
// dictionaries are values from memory, tried against what other libraries write.
package dxftest
