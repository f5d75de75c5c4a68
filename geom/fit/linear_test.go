package fit

import "testing"

// TestLesserIsExact: of two lengths of which the lesser counts, the other changes nothing,
// not by the last bit either: limits that stand where a bound is met stay there.
func TestLesserIsExact(t *testing.T) {
	r := straight(length(480, frontLength)).lessLesser(length(6.1, leftDado), length(6.1, leftRabbet))
	off := make([]float64, sources)
	off[leftDado], off[leftRabbet] = 0.1, 0.11
	want := r.Value(off)
	for i := range 1000 {
		off[leftRabbet] = 0.11 + float64(i)*0.000137
		if got := r.Value(off); got != want || got < 480-6.2-1e-9 || got > 480-6.2+1e-9 {
			t.Fatalf("with the other %.6f longer it is %.17g, and was %.17g", off[leftRabbet], got, want)
		}
	}
}
