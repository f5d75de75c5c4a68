// Package shoplog is a shop's log of test cuts. Lengths are in millimeters.
package shoplog

import "time"

// What is a quantity that a test cut tells of.
type What string

// The quantities that an accuracy is of, as the job file calls them.
const (
	Cutter What = "cutter" // width of a slot against that of the cutter
	Again  What = "cut"    // a second cut at one setting against the first
	Fence  What = "fence"
	Height What = "height"
	Length What = "length"
)

// Measured are all quantities of a log, in their order.
var Measured = []What{Cutter, Again, Fence, Height, Length}

// Tool is what a shop calls a machine and the cutter in it.
type Tool struct {
	Machine string
	Cutter  string // empty where the shop tells none apart
}

// Cut is one line of a log: a length that was aimed at, and what was measured.
type Cut struct {
	Date            time.Time // a day
	Tool            Tool
	What            What
	Aimed, Measured float64
	// Moved says that the setting was moved after the cut, so that none of a run is like it.
	Moved bool
}

// Off is by how much more was measured than aimed at.
func (c Cut) Off() float64 { return c.Measured - c.Aimed }
