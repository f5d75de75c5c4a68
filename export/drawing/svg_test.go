package drawing

import (
	"math"
	"testing"
)

// TestHalvesGoOneWay: a processor that fuses a product and a sum may give the
// neighbors of a half of the last digit; all three must print alike.
func TestHalvesGoOneWay(t *testing.T) {
	for n := range 2000 {
		half := (float64(n) + 0.5) / 1e4
		want := num(half)
		for _, near := range []float64{math.Nextafter(half, 0), math.Nextafter(half, 1e9)} {
			if got := num(near); got != want {
				t.Fatalf("num(%v) = %s, num(%v) = %s", near, got, half, want)
			}
		}
	}
}
