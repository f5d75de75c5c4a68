package nest

import (
	"testing"

	"pgregory.net/rapid"
)

// TestDualFeasible: lengths that go into the whole together have values of at most 1.
func TestDualFeasible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(2, 300).Draw(t, "whole")
		var lengths, all []int64
		for left := whole; left > 0; {
			l := rapid.Int64Range(1, left).Draw(t, "length")
			left -= l
			lengths = append(lengths, l)
		}
		all = append(lengths, rapid.SliceOfN(rapid.Int64Range(1, whole), 0, 10).Draw(t, "others")...)
		for _, f := range functions(all, whole, rapid.SampledFrom([]int{fewThresholds, maxThresholds}).Draw(t, "most")) {
			sum := 0.0
			for _, l := range lengths {
				sum += f.of(l)
			}
			if sum > 1+1e-9 {
				t.Fatalf("%+v: %g for %v", f, sum, lengths)
			}
		}
	})
}
