// Package dxftest reads back the DXF files that tests have written. [Parse]
// gives the layers and the geometry, and [Strict] says in what a file breaks the
// rules that the strictest readers hold a file to.
//
// It shares no code with the writer, so that a mistake there is not made here a
// second time. It reads ASCII files of the versions AC1009 (R12) and AC1015
// (R2000) with polylines and circles, which is all that this project writes:
// whatever else a file holds is a fault to Strict and is passed over by Parse.
// The rules follow the same sources as package dxf; those on owners and
// dictionaries are values from memory, tried against what other libraries write.
package dxftest
