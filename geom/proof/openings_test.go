package proof

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestOpenings: what passes through a hand hold, a hole of a row, a pull in the upper edge
// or a notch in the lower one shares nothing with the wall; moved aside it shares the
// wood beside it, in closed form. The front is 13 thick and 376 long, between x 12 and 388.
func TestOpenings(t *testing.T) {
	handHold := func(p []Piece) {
		p[front].Board.Cuts = append(p[front].Board.Cuts, Cut{Face: geom.Inside, Depth: madeTf + 1, Shape: ShapeOf(geom.RoundedRectangle(138, 45, 238, 75, 15))})
	}
	row := func(p []Piece) {
		for i := range 5 {
			p[front].Board.drill(madeTf+1, 100+32*float64(i), 60, 10)
		}
	}
	ring := func(points ...geom.Point) func([]Piece) {
		return func(p []Piece) { p[front].Board.Outline = ShapeOf(geom.Polygon(points...)) }
	}
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	pull := ring(at(0, 0), at(376, 0), at(376, 100), at(238, 100), at(238, 70), at(138, 70), at(138, 100), at(0, 100))
	notch := ring(at(0, 0), at(138, 0), at(138, 5), at(238, 5), at(238, 0), at(376, 0), at(376, 100), at(0, 100))
	for name, c := range map[string]struct {
		cut  func([]Piece)
		z    float64 // of a bar of 40 x 4, lying flat, through the wall
		wide float64
		by   float64 // it is moved aside
		want float64
	}{
		"a hand hold":            {handHold, 58, 40, 0, 0},
		"beside a hand hold":     {handHold, 58, 40, 70, 40 * 4 * madeTf}, // 200 + 70 - 20 is 12 past its end
		"half in a hand hold":    {handHold, 58, 40, 50, 20 * 4 * madeTf},
		"a hole of a row":        {row, 58, 6, 0, 0}, // 6 x 4 about its middle: corners at 3.6 of 5
		"between holes of a row": {row, 58, 6, 16, 6 * 4 * madeTf},
		"a pull in the edge":     {pull, 80, 40, 0, 0},
		"under a pull":           {pull, 62, 40, 0, 40 * 4 * madeTf},
		"half under a pull":      {pull, 68, 40, 0, 40 * 2 * madeTf},
		"a notch":                {notch, 0, 40, 0, 0},
		"over a notch":           {notch, 3, 40, 0, 40 * 2 * madeTf}, // of 3 to 7, 5 to 7
		"beside a notch":         {notch, 0, 40, 50, 20 * 4 * madeTf},
	} {
		t.Run(name, func(t *testing.T) {
			list := madeBox{front: joinery.Butt, back: joinery.Butt}.pieces()[:bottom]
			c.cut(list)
			// The third hole of the row is at 100 + 64 along the front, 388 - 164 in the box;
			// the middle of the others at 200.
			middle := 200.0
			if name == "a hole of a row" || name == "between holes of a row" {
				middle = 388 - 164
			}
			bar := plank(c.wide, 60, 4)
			list = append(list, Piece{Name: "bar", Role: Other, Board: bar, Placement: geom.Placement{Origin: geom.Vec3{X: middle - c.wide/2 + c.by, Y: -20, Z: c.z}, X: geom.Right, Y: geom.Back}})
			b := assemble(list)
			shared := 0.0
			for _, o := range b.Overlaps {
				if o.A == "front" && o.B == "bar" {
					shared += o.Volume
				}
			}
			const rounds = 25 // mm3 of what chords make of the round ends
			if !near(shared, c.want, rounds) || c.want == 0 && shared != 0 {
				t.Errorf("%.2f mm3 are shared, want %.2f: %+v", shared, c.want, b.Overlaps)
			}
		})
	}
}
