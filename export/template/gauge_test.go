package template

import (
	"math"
	"testing"
)

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
