package gauge

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// CutDepth is the row of the cut in the sides by which a template gauges a corner: the
// dado's, or the side's rabbet; of several the last.
func (s Limits) CutDepth() (row Row, found bool) {
	for _, r := range s.Rows {
		if r.Kind == fit.DadoDepth || r.Kind == fit.SideRabbet {
			row, found = r, true
		}
	}
	return row, found
}

// Tongue is between which thicknesses, in mm, a tongue is right: as it is read or, where the
// depth of the rabbet is, what that leaves of every board in its range, if front and back are
// alike.
func (s Limits) Tongue(spec joinery.Spec) (least, most float64, found bool) {
	for _, r := range s.Rows {
		switch r.Kind {
		case fit.TongueThick:
			least, most, found = r.Min, r.Max, true
		case fit.RabbetDeep:
			t := spec.Front.Thickness
			if low, high := t.Max-r.Max, t.Min-r.Min; spec.Front.Same(spec.Back) && low < high {
				least, most, found = low, high, true
			}
		}
	}
	return least, most, found
}
