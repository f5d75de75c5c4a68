// Package sheet decides what the machines that take sheets apart need of them: kerf, gap and
// trim, the pins on which a sheet is turned over, areas to keep out of, how much shorter than
// its size a sheet may be, and which offcuts are kept.
//
// Lengths are millimeters from the lower left corner of the sheet with the inside faces of
// its parts up, x along its length; where a type of the package nest is taken or given they
// are its nanometers.
package sheet
