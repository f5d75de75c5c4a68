package scene_test

import (
	"math"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

// TestPatches: in a rabbet joint each end of box front and back lies at the floor of a rabbet, as
// large as the end, 12 x 135 mm over the bottom of 5; both pieces have the patch, which makes
// eight. Faces lie in planes across their axis, and each looks at the other piece.
func TestPatches(t *testing.T) {
	s := spec(joinery.Rabbet, joinery.BottomApplied)
	d, _, _ := joinery.LayOut(s)
	box := scene.Opened(d)
	role := func(i int) joinery.Role { return d.Parts[box.Pieces[i].Part].Role }
	ends := 0.0
	for _, p := range box.Patches(d) {
		if role(p.Piece) == joinery.Bottom || role(p.Other) == joinery.Bottom {
			continue
		}
		size := p.High.Sub(p.Low)
		if [3]float64{size.X, size.Y, size.Z}[p.Axis] != 0 {
			t.Errorf("a patch of %v across axis %d", size, p.Axis)
		}
		if p.Axis == 0 {
			ends += size.Y * size.Z
			end := role(p.Piece) != joinery.Side
			if left := p.Low.X < d.Outside.Width/2; p.Up == (left == end) {
				t.Errorf("the patch of the %s at x = %g looks the wrong way", role(p.Piece), p.Low.X)
			}
		}
	}
	if want := 8 * 12 * 135.0; math.Abs(ends-want) > 0.1 {
		t.Errorf("%.0f mm2 of ends and floors, should be %.0f", ends, want)
	}
}
