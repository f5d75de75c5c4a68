// Package geomtest holds panels for tests: random ones for properties, known ones
// that benchmarks share.
package geomtest

import (
	"math"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// MaxPockets is the most pockets that [AnyPanel] puts on a panel.
const MaxPockets = 30

// AnyPanel draws panels with up to [MaxPockets] overlapping pockets on both
// faces: rectangles, rounded ones and circles, some beyond the edge, some
// through, many with sides and depths in common.
func AnyPanel() *rapid.Generator[geom.Panel] { return rapid.Custom(panel) }

func panel(t *rapid.T) geom.Panel {
	number := func(low, high float64, name string) float64 {
		v := rapid.Float64Range(low, high).Draw(t, name)
		// Multiples of 0.5 make coincident edges and depths common.
		if rapid.Bool().Draw(t, "coarse") {
			return math.Max(0.5, math.Round(2*v)/2)
		}
		return v
	}
	length, width := number(50, 600, "length"), number(40, 300, "width")
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, width), Thickness: number(4, 25, "thickness")}
	for range rapid.IntRange(0, MaxPockets).Draw(t, "pockets") {
		x, y := number(0, length+20, "x")-20, number(0, width+20, "y")-20
		w, h := number(1, length/2, "w"), number(1, width/2, "h")
		k := geom.Pocket{Depth: number(0.5, p.Thickness*1.1, "depth"), Outline: geom.Rectangle(x, y, x+w, y+h)}
		switch rapid.IntRange(0, 3).Draw(t, "shape") {
		case 0:
			k.Outline = geom.Circle(geom.Point{X: x, Y: y}, h/2)
		case 1:
			k.Outline = geom.RoundedRectangle(x, y, x+w, y+h, number(0.5, 20, "r"))
		}
		if rapid.Bool().Draw(t, "outside") {
			k.Face = geom.Outside
		}
		p.Pockets = append(p.Pockets, k)
	}
	return p
}
