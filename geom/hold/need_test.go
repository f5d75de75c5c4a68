package hold

import "testing"

// TestSpacingFor: at the spacing a part asks for no more tabs than it has, at one that is a
// twentieth less for more.
func TestSpacingFor(t *testing.T) {
	const nm = 1e6
	part := Part{Box: Box{X1: 320 * nm, Y1: 90 * nm}}
	for has := MinTabs; has < 30; has++ {
		at := SpacingFor(410, has) // 320 + 90
		if n := (Sheet{Parts: []Part{part}, Spacing: int64(at * nm)}).MinTabs(0); n != has {
			t.Errorf("at %g mm it asks for %d, and has %d", at, n, has)
		}
		if n := (Sheet{Parts: []Part{part}, Spacing: int64(0.95 * at * nm)}).MinTabs(0); has > 10 && n <= has {
			t.Errorf("at %g mm it asks for %d too", 0.95*at, n)
		}
	}
	if at := SpacingFor(1e6, MinTabs); at != maxSpacing {
		t.Errorf("spacing %g", at)
	}
}
