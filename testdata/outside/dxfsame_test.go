package outside

import (
	"drawerwright/export/layer"
	"fmt"
	"math"
	"slices"
)

// sameLine reports whether two lines have the same sides: closed ones from whichever
// corner they start, open ones from either end.
func sameLine(a, b [][3]float64, closed bool) bool {
	if len(a) != len(b) {
		return false
	}
	same := func(at func(i int) [3]float64) bool {
		for i, p := range a {
			q := at(i)
			if math.Abs(p[0]-q[0]) >= micrometer || math.Abs(p[1]-q[1]) >= micrometer || math.Abs(p[2]-q[2]) >= 1e-6 {
				return false
			}
		}
		return true
	}
	if !closed {
		return same(func(i int) [3]float64 { return b[i] }) || same(func(i int) [3]float64 { return b[len(b)-1-i] })
	}
	for shift := range a {
		if same(func(i int) [3]float64 { return b[(i+shift)%len(b)] }) {
			return true
		}
	}
	return false
}

// sameEntity compares in millimeters; scale is that of b's unit.
func sameEntity(a, b entity, scale float64) bool {
	if withoutBit(a.Layer) != withoutBit(b.Layer) || a.Closed != b.Closed || (a.Type == "CIRCLE") != (b.Type == "CIRCLE") {
		return false
	}
	if a.Type == "CIRCLE" {
		return math.Hypot(a.Center[0]-b.Center[0]*scale,
			a.Center[1]-b.Center[1]*scale) < micrometer && math.Abs(a.Radius-b.Radius*scale) < micrometer
	}
	points := make([][3]float64, len(b.Points))
	for i, p := range b.Points {
		points[i] = [3]float64{p[0] * scale, p[1] * scale, p[2]}
	}
	return sameLine(a.Points, points, a.Closed)
}

// compare takes what should be drawn from what a reader found; labels are left
// out. It gives what is missing, doubled or too much.
func compare(want, got []entity, scale float64) error {
	rest := slices.DeleteFunc(slices.Clone(want), ofBlank)
	for _, e := range got {
		if e.Layer == layer.Label || ofBlank(e) {
			continue
		}
		i := slices.IndexFunc(rest, func(w entity) bool { return sameEntity(w, e, scale) })
		if i < 0 {
			return fmt.Errorf("%s on %s at %v is not in the panel, or there twice", e.Type, e.Layer, e.Points)
		}
		rest = slices.Delete(rest, i, i+1)
	}
	if len(rest) > 0 {
		return fmt.Errorf("%s at %v is missing, among %d", rest[0].Layer, rest[0].Points, len(rest))
	}
	return nil
}
