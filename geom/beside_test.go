package geom

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestBesideLimits: 0.0009 in beside 0.001 to 0.024 would print as the limit, and so would 0.0244 in; what keeps
// limits that are rounded inward is not printed beyond them.
func TestBesideLimits(t *testing.T) {
	inch := func(v float64) float64 { return float64(v * InchMM) }
	for _, c := range []struct {
		mm   float64
		u    Unit
		low  float64
		high float64
		want string
	}{
		{inch(0.0009), Inch, inch(0.001), inch(0.024), "0.0009"},
		{inch(0.0244), Inch, inch(0.001), inch(0.024), "0.0244"},
		{inch(0.00099), Inch, inch(0.001), inch(0.024), "0.00099"},
		{inch(0.0116), Inch, inch(0.001), inch(0.024), "0.012"},
		{inch(0.00051), Inch, inch(0.0005), inch(0.0242), "0.001"}, // right from 0.001 as printed
		{inch(0.02415), Inch, inch(0.0005), inch(0.0242), "0.024"}, // to 0.024
		{inch(0.0242), Inch, inch(0.0005), inch(0.0241), "0.0242"}, // which is beyond
		{0.026, Millimeter, 0.03, 0.6, "0.026"},
		{-0.2501, Millimeter, -0.25, 0.25, "-0.2501"},
		{-0.00004, Millimeter, 0, 5, "-0.00004"},
		{-0.000004, Millimeter, 0, 5, "0.00"}, // no verdict hangs on it
		{0.03, Millimeter, 0.03, 0.6, "0.03"},
		{0.104, Millimeter, 0.101, 0.109, "0.10"}, // limits nearer than a step stand as they are
	} {
		right := Interval{Min: c.low, Max: c.high}
		if got := FixedBeside(c.mm, right, c.u); got != c.want {
			t.Errorf("%.5f mm beside %.5f to %.5f prints as %s, want %s", c.mm, c.low, c.high, got, c.want)
		}
		if got := (Judged{MM: c.mm, Right: right, Fixed: true}).In(c.u); got != c.want+" "+c.u.String() {
			t.Errorf("%.5f mm in a sentence is %s, want %s", c.mm, got, c.want)
		}
	}
}

// TestBesideKeepsItsSide: whatever a measure and its limits, the number printed is on the side of the printed limits on
// which the measure is of the limits, in a table and in a sentence, and within a step of it.
func TestBesideKeepsItsSide(t *testing.T) {
	beyond := 0
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]Unit{Millimeter, Inch}).Draw(t, "unit")
		low := rapid.Float64Range(-2, 2).Draw(t, "low")
		if rapid.Bool().Draw(t, "on the grid") {
			low = LengthOf(low).RoundUp(u).MM()
		}
		right := Interval{Min: low, Max: low + rapid.Float64Range(0.06, 3).Draw(t, "wide")}
		mm := rapid.SampledFrom([]float64{right.Min, right.Max}).Draw(t, "near")
		mm += rapid.Float64Range(-0.05, 0.05).Draw(t, "off") * rapid.SampledFrom([]float64{1, 0.1, 0.002}).Draw(t, "little")
		for _, text := range []string{FixedBeside(mm, right, u),
			strings.TrimSuffix(Judged{MM: mm, Right: right, Fixed: true}.In(u), " "+u.String())} {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				t.Fatal(err)
			}
			a, b := Inward(right, u)
			from, to := a.fixed(u, 0), b.fixed(u, 0)
			switch {
			case mm < right.Min-Settle:
				beyond++
				if v >= from {
					t.Fatalf("%.7f mm is below %.7f, %s printed beside %s", mm, right.Min, text, a.Fixed(u))
				}
			case mm > right.Max+Settle:
				beyond++
				if v <= to {
					t.Fatalf("%.7f mm is above %.7f, %s printed beside %s", mm, right.Max, text, b.Fixed(u))
				}
			case v < from || v > to:
				t.Fatalf("%.7f mm is within %.7f to %.7f, %s printed beside %s to %s", mm, right.Min, right.Max, text,
					a.Fixed(u), b.Fixed(u))
			}
			step := 0.01
			if u == Inch {
				step = 0.001
			}
			if off := v - mm/u.MM(); off > step || off < -step {
				t.Fatalf("%.7f mm is printed as %s", mm, text)
			}
		}
	})
	if beyond == 0 {
		t.Error("nothing was beyond its limits")
	}
}
