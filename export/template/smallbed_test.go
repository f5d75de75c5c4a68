package template

import "testing"

// TestSmallBeds: the search for seams ends on any bed, and where it finds some no piece is
// longer than the bed.
func TestSmallBeds(t *testing.T) {
	walls := []float64{10, 16, 90, 96, 97.5, 130, 171}
	for _, bed := range []float64{0, 1, 9, 23, 24, 40, 80, 120, 150, 199} {
		seams, ok := parted(200, bed, walls)
		if bed >= 150 && !ok || bed < 24 && ok {
			t.Errorf("bed %g: %v", bed, ok)
		}
		from := 0.0
		for _, at := range append(seams, 200-keyDepth) {
			if ok && at+keyDepth-from > bed {
				t.Errorf("bed %g: a piece from %g to %g", bed, from, at+keyDepth)
			}
			from = at
		}
	}
}
