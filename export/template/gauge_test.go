package template

import (
	"math"
	"slices"
	"testing"
)

// TestBlocks: of 6.1 one plate of 3.15 and of the spacers 3 make 6.15, 0.05 over.
func TestBlocks(t *testing.T) {
	list := Blocks(Corner{Name: "s", Fence: 6.1, Height: 6.1}, []float64{0.5, 1, 1.5, 3}, options())
	if len(list) != 1 || list[0].Count != 1 {
		t.Fatalf("%+v", list)
	}
	if want := "1 x 3.15 + 3 = 6.15, 0.05 over"; !slices.ContainsFunc(list[0].Words, func(w Word) bool { return w.Text == want }) {
		t.Errorf("no words %q: %v", want, list[0].Words)
	}
}

// TestBlocksAlone: without spacers it is the number of plates that comes nearest, over
// or short.
func TestBlocksAlone(t *testing.T) {
	o := options()
	o.Thickness = 3.2
	for target, want := range map[float64]int{6.25: 2, 4.7: 1, 4.9: 2, 1: 1} {
		if list := Blocks(Corner{Name: "s", Fence: target, Height: target}, nil, o); len(list) != 1 || list[0].Count != want {
			t.Errorf("%g: %+v", target, list)
		}
	}
}

// TestGauge: the tooth is as long as the dado is deep, the mouths as wide as tongues may
// be at the most and the least.
func TestGauge(t *testing.T) {
	p := Gauge(Corner{Name: "s", Fence: 6.1, Height: 6.1, Cutter: 6.35, Deep: 6.1, Depths: [2]float64{6, 6.3}, Tongue: [2]float64{5.98, 6.23}}, options())
	// The rectangle from the edge up, 110 x 52, less the hollows beside the tooth, 1.2 x 1.5,
	// with the tooth, 5.75 x 6.1, less the mouths, 14 x (5.98 + 6.23).
	want := 110*52.0 - 2*1.2*1.5 + 5.75*6.1 - 14*(5.98+6.23)
	if got := p.Outline.Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, should be %g", got, want)
	}
}

// TestBlocksForGlueRoom: dados that are deeper than tongues are long have a block of
// their own.
func TestBlocksForGlueRoom(t *testing.T) {
	list := Blocks(Corner{Name: "s", Fence: 6.1, Height: 6.1, Deep: 6.3}, nil, options())
	if len(list) != 2 || list[1].Name != "block-s-dado-height" {
		t.Errorf("%+v", list)
	}
}
