package joinery

import (
	"math"
	"testing"
)

// TestButtedBackOverSlides: a back that ends between the sides loses its lower corners to
// slides under the box, each 35 x 13 with a round of 4 in its inner corner.
func TestButtedBackOverSlides(t *testing.T) {
	s := saw(460, 140, 450, 6.2, sheet("birch", 12), sheet("ply", 5.9))
	s.Joint, s.BottomHeight = Butt, 13
	s.Undermount = &Undermount{BottomRecess: 13, MaxSide: 16, NotchWidth: 35, NotchHeight: 13, HookDiameter: 6, HookDepth: 10, HookHeight: 27, HookIn: 7}
	back := mustBuild(t, s).part(Back)
	// 460 - 2 x 12 long; a round of radius r in a corner leaves r^2 (1 - pi/4).
	near(t, "back", back.Panel.Outline.Area(), 436*140-2*35*13+2*16*(1-math.Pi/4))
	if back.Panel.Outline.Bounds().Max.X != 436 {
		t.Errorf("the back is %v long", back.Panel.Outline.Bounds().Max.X)
	}
}
