package scene

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"

	"pgregory.net/rapid"
)

// TestBlocksAreTheWood: the blocks of any panel of straight lines have the volume of its
// solid, and no two of them overlap.
func TestBlocksAreTheWood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := geomtest.AnyPanel().Draw(t, "panel")
		p.Holes = slices.DeleteFunc(p.Holes, func(l geom.Loop) bool { return !square(l) })
		p.Pockets = slices.DeleteFunc(p.Pockets, func(k geom.Pocket) bool { return !square(k.Outline) })
		if !square(p.Outline) {
			t.Skip("an outline with arcs or slopes") // blocks along the axes are approximate there
		}
		m, err := solid.Build(p, solid.Options{})
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		list := blocks(p)
		for i, b := range list {
			sum += (b.High[0] - b.Low[0]) * (b.High[1] - b.Low[1]) * (b.High[2] - b.Low[2])
			for _, c := range list[i+1:] {
				if b.And(c).Least() > 1e-9 {
					t.Fatalf("%v and %v overlap", b, c)
				}
			}
		}
		if blank := p.Length() * p.Width() * p.Thickness; math.Abs(sum-m.Volume()) > 1e-5*blank {
			t.Fatalf("blocks of %.2f mm3, the solid has %.2f", sum, m.Volume())
		}
	})
}

// square reports whether all sides of a loop run along x or y.
func square(l geom.Loop) bool {
	for i, v := range l {
		w := l[(i+1)%len(l)]
		if v.Bulge != 0 || v.X != w.X && v.Y != w.Y {
			return false
		}
	}
	return true
}
