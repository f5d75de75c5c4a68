package gauge

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// ToOne reports whether boards are sorted to one thickness, since their range is less than a
// caliper reads.
func (s Range) ToOne() bool { return s.Max-s.Min < fit.CaliperReads }

// LongerThanBetween is by how much a box's front is longer than the space between its sides,
// in mm, where a caliper reads it; else 0. It is what fronts keep that are cut to their own
// sides.
func LongerThanBetween(d joinery.Drawer) float64 {
	if more := d.Dimensions.Walls.EndLen - d.Inside.Width; more > fit.CaliperReads {
		return more
	}
	return 0
}
