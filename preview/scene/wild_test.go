package scene_test

import (
	"math/rand/v2"
	"testing"

	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
)

// TestWildBoxesAreDrawn: of any lengths, far from those of a shop too, a box is laid out without a
// panic, and one that has its shape makes solids.
func TestWildBoxesAreDrawn(t *testing.T) {
	drawn := 0
	for seed := range uint64(geomtest.Cases(4000, 40_000)) { // most are refused at once
		s := wild(rand.New(rand.NewPCG(seed, 1)))
		d, _, sound := joinery.LayOut(s)
		if sound && !d.Shaped {
			t.Fatalf("seed %d: a sound box has no shape: %+v", seed, s)
		}
		if !d.Shaped {
			continue
		}
		drawn++
		if _, err := sceneOf(s, d); err != nil || len(d.Parts) < 4 {
			t.Fatalf("seed %d: %d parts, %v: %+v", seed, len(d.Parts), err, s)
		}
	}
	if drawn < 400 {
		t.Errorf("%d were drawn", drawn)
	}
}

// wild is a drawer of lengths within what a job may say, but for each other.
func wild(r *rand.Rand) joinery.Spec {
	above := func(least, most float64) float64 { // short ones oftener
		return least + (most-least)*r.Float64()*r.Float64()
	}
	length := func(most float64) float64 { return above(0.1, most) }
	corners := joinery.Joints
	bottoms := []joinery.BottomFit{joinery.BottomAuto, joinery.BottomGroovedIn, joinery.BottomFlush, joinery.BottomSlideIn,
		joinery.BottomFielded, joinery.BottomApplied, joinery.BottomCleats}
	s := spec(corners[r.IntN(len(corners))], bottoms[r.IntN(len(bottoms))])
	s.Width, s.Height, s.Depth = above(1, 600), above(1, 300), above(1, 600)
	for _, board := range []*joinery.Stock{&s.Sides, &s.Front, &s.Back, &s.Bottom} {
		*board = stock("board", above(1, 50))
	}
	s.Cutter = joinery.Cutter{Kind: joinery.Kinds[r.IntN(len(joinery.Kinds))], Width: above(0.5, 30)}
	s.DadoClearance, s.GrooveClearance, s.BottomClearance = length(5), length(5), length(50)
	s.Limits = joinery.DefaultLimits
	s.Limits.TongueClearance.Max = above(0.1, 5)
	if r.IntN(2) == 0 {
		s.FenceDistance, s.CutterHeight, s.BottomHeight = length(30), length(30), length(30)
	}
	if r.IntN(3) == 0 {
		s.BackJoint, s.BackSetback = joinery.Housed, length(30)
	}
	if r.IntN(2) == 0 {
		s.FingerWidth, s.GlueSpace, s.Pull.Shape = above(1.5, 50), length(5), joinery.PullSlot
		s.Dividers = []joinery.Divider{{Direction: joinery.Across, Count: 2, Stock: stock("divider", above(1, 40))},
			{Direction: joinery.Along, Count: 1, Stock: stock("loose", above(1, 40)), Loose: true}}
	}
	return s
}
