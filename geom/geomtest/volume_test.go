package geomtest_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"

	"pgregory.net/rapid"
)

// TestVolume holds volumes in closed form against those worked out by hand.
func TestVolume(t *testing.T) {
	disc, square := geom.Circle(geom.Point{X: 50, Y: 50}, 20), geom.Rectangle(0, 0, 100, 100)
	for name, c := range map[string]struct {
		panel geom.Panel
		want  float64
	}{
		"blank": {geom.Panel{Outline: square, Thickness: 10}, 1e5},
		"bored": {geom.Panel{Outline: square, Thickness: 10, Pockets: []geom.Pocket{{Depth: 4, Outline: disc}}},
			1e5 - 4*400*math.Pi},
		"a hole": {geom.Panel{Outline: square, Thickness: 10, Holes: []geom.Loop{disc}}, 1e5 - 4000*math.Pi},
		// Two discs of 20 whose centers are 20 apart share 2 r2 acos(1/2) - r2 sqrt(3)/2 each way.
		"two that overlap": {geom.Panel{Outline: square, Thickness: 10, Pockets: []geom.Pocket{{Depth: 4, Outline: disc},
			{Depth: 4, Outline: disc.Translate(geom.Point{X: 20})}}},
			1e5 - 4*(800*math.Pi-(2*400*math.Pi/3-400*math.Sqrt(3)/2))},
		// Half of the disc lies beyond the edge.
		"over the edge": {geom.Panel{Outline: square, Thickness: 10, Pockets: []geom.Pocket{{Depth: 4,
			Outline: disc.Translate(geom.Point{X: 50})}}}, 1e5 - 4*200*math.Pi},
		"from both faces": {geom.Panel{Outline: square, Thickness: 10, Pockets: []geom.Pocket{{Depth: 6, Outline: disc},
			{Face: geom.Outside, Depth: 6, Outline: disc}}}, 1e5 - 4000*math.Pi},
		"rounded": {geom.Panel{Outline: geom.RoundedRectangle(0, 0, 80, 60, 10), Thickness: 10},
			10 * (4800 - (4-math.Pi)*100)},
	} {
		if got := geomtest.Volume(c.panel); math.Abs(got-c.want) > 1e-8*c.want {
			t.Errorf("%s: %.9f mm3, want %.9f", name, got, c.want)
		}
	}
}

// TestVolumeOfAny: the solids of any panels have it, as near as their chords are.
func TestVolumeOfAny(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := geomtest.AnyPanel().Draw(t, "panel")
		m, err := solid.Build(p, solid.Options{Chord: 1e-4})
		if err != nil {
			t.Fatal(err)
		}
		blank := p.Length() * p.Width() * p.Thickness
		if d := math.Abs(m.Volume() - geomtest.Volume(p)); d > 1e-5*blank {
			t.Fatalf("%g mm3 of %g apart", d, blank)
		}
	})
}
