package mill

import (
	"math"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// TestTabsKeepClear: whatever pull, notch and mouth a panel has, tabs keep off them by two
// slots' width, which the slots at both sides of a tab need: in its own drawing, and where
// they may stand on a sheet.
func TestTabsKeepClear(t *testing.T) {
	const slot = 6 + SlotRoom
	tabs, stretches := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		length, height := rapid.Float64Range(250, 700).Draw(t, "length"), rapid.Float64Range(90, 250).Draw(t, "height")
		pull := rapid.Float64Range(60, length-60).Draw(t, "middle of the pull")
		notch := rapid.Float64Range(10, 40).Draw(t, "notch")
		mouth := rapid.Float64Range(notch+20, length-30).Draw(t, "mouth")
		at := func(x, y, bulge float64) geom.Vertex {
			return geom.Vertex{Point: geom.Point{X: x, Y: y}, Bulge: bulge}
		}
		const radius = 25
		p := panel()
		p.Outline = geom.Loop{at(notch, 0, 0), at(length, 0, 0), at(length, height, 0), at(pull+radius, height, -1), at(pull-radius, height, 0), at(0, height, 0), at(0, 12, 0), at(notch, 12, 0)}
		p.Pockets = []geom.Pocket{{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(mouth, 0, mouth+8, 40)}}
		s := tabbed()
		s.Tabs.Marked = true
		w := mustPrepare2(t, p, s)
		// What a tab keeps off: on the lower side the notch and the mouth, on the upper the pull.
		lower := [][2]float64{{0, notch}, {mouth, mouth + 8}, {length, length}}
		upper := [][2]float64{{0, 0}, {pull - radius, pull + radius}, {length, length}}
		clear := func(side string, from, to float64, list [][2]float64) {
			for _, k := range list {
				if gap := math.Max(k[0]-to, from-k[1]); gap < 2*slot-1e-6 {
					t.Fatalf("a tab from %g to %g of the %s side is %g from %v", from, to, side, gap, k)
				}
			}
		}
		for _, m := range w.Tabs {
			b := m.Bounds()
			if b.Max.X-b.Min.X < tabbed().Tabs.Width-1e-6 { // at an end
				continue
			}
			tabs++
			if b.Max.Y <= 1e-6 {
				clear("lower", b.Min.X, b.Max.X, lower)
			} else {
				clear("upper", b.Min.X, b.Max.X, upper)
			}
		}
		for side, list := range map[int][][2]float64{0: lower, 2: upper} {
			for _, f := range w.Sides[side] {
				stretches++
				clear([]string{"lower", "", "upper"}[side], f.Min, f.Max, list)
			}
		}
	})
	if tabs == 0 || stretches == 0 {
		t.Errorf("%d tabs, %d stretches", tabs, stretches)
	}
}
