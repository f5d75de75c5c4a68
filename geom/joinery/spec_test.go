package joinery

import (
	"testing"

	"pgregory.net/rapid"
)

// TestMeanOfEqualReadings: the mean is between the least and the greatest reading to the last bit, also of readings
// that are equal, of which a sum divided by their number can be less.
func TestMeanOfEqualReadings(t *testing.T) {
	if x := Measure(12.2, 12.2, 12.2); x.Mean != 12.2 {
		t.Errorf("the mean of three equal readings is %v", x.Mean)
	}
	rapid.Check(t, func(t *rapid.T) {
		readings := rapid.SliceOfN(rapid.Float64Range(1, 60), 1, 9).Draw(t, "readings")
		if x := Measure(readings...); x.Mean < x.Min || x.Mean > x.Max {
			t.Errorf("%v", x)
		}
	})
}
