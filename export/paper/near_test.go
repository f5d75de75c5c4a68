package paper

import (
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// TestNear: what touches a rectangle is found, however large it is, and wherever.
func TestNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box := func(name string, most float64) geom.Rect {
			of := func(least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
			at := geom.Point{X: of(-50, 350), Y: of(-50, 350)}
			return geom.Rect{Min: at, Max: at.Add(geom.Point{X: of(0, most), Y: of(0, most)})}
		}
		var boxes near[geom.Rect]
		for range rapid.IntRange(0, 40).Draw(t, "boxes") {
			one := box("box", rapid.SampledFrom([]float64{0, 5, 40, 400}).Draw(t, "size"))
			boxes.add(one, one)
		}
		b, touches := box("asked", 30), false
		for _, one := range boxes.of {
			touches = touches || b.Overlaps(one)
		}
		if boxes.any(b, b.Overlaps) != touches {
			t.Fatalf("%v touches %v: %v", b, boxes.of, touches)
		}
	})
}
