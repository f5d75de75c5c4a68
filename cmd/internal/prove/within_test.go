package prove

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestWithin: the part of a shape that lies in a panel of 100 x 50, in closed form.
func TestWithin(t *testing.T) {
	panel := geom.Rect{Max: geom.Point{X: 100, Y: 50}}
	segment := func(r, d float64) float64 { return r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d) } // beyond d from the middle
	for name, c := range map[string]struct {
		loop geom.Loop
		want float64
	}{
		"inside":             {geom.Rectangle(10, 10, 30, 20), 200},
		"all of it":          {geom.Rectangle(-5, -5, 200, 100), 5000},
		"past one edge":      {geom.Rectangle(-5, 10, 5, 20), 50},
		"past two":           {geom.Rectangle(90, 40, 120, 60), 100},
		"right across":       {geom.Rectangle(40, -9, 46, 59), 300},
		"outside":            {geom.Rectangle(110, 10, 120, 20), 0},
		"along the edge":     {geom.Rectangle(-10, 0, 0, 50), 0},
		"clockwise":          {geom.Rectangle(-5, 10, 5, 20).Reverse(), 50},
		"a circle inside":    {geom.Circle(geom.Point{X: 50, Y: 25}, 10), 100 * math.Pi},
		"in a corner":        {geom.Circle(geom.Point{}, 10), 25 * math.Pi},
		"on an edge":         {geom.Circle(geom.Point{X: 50, Y: 50}, 10), 50 * math.Pi},
		"most of a circle":   {geom.Circle(geom.Point{X: 50, Y: 44}, 10), 100*math.Pi - segment(10, 6)},
		"a little of it":     {geom.Circle(geom.Point{X: -6, Y: 25}, 10), segment(10, 6)},
		"a triangle over it": {geom.Polygon(geom.Point{X: -50, Y: 0}, geom.Point{X: 50, Y: 0}, geom.Point{X: 0, Y: 50}), 1250},
	} {
		for _, chord := range []float64{toldChord, judgedChord} {
			// A chord takes off up to two thirds of its sagitta along its length.
			if got, tolerance := (region{box: panel}).within(c.loop, chord), 1e-9+chord*20*math.Pi; math.Abs(got-c.want) > tolerance {
				t.Errorf("%s: %.6f mm2, want %.6f", name, got, c.want)
			}
		}
	}
}
