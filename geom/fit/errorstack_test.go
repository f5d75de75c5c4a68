package fit

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// exact is what sums of a few floats may be off, in mm.
const exact = 1e-12

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s is %.9f, want %.9f", what, got, want)
	}
}

// linear is nominal + the sum of factor x source, with a term for each source.
func linear(nominal float64, factors []float64, from ...Source) Stack {
	s := Stack{Sources: from, Value: func(off []float64) float64 {
		v := nominal
		for i, f := range factors {
			v += float64(f * off[i])
		}
		return v
	}}
	for i, f := range factors {
		s.Terms = append(s.Terms, Term{i, math.Copysign(1, f)})
	}
	return s
}

func either(limit float64) Source { return Source{Minus: limit, Plus: limit, Shape: Normal} }

func halfOf(r geom.Interval) float64 { return (r.Max - r.Min) / 2 }

// TestPropagation: NIST/SEMATECH e-Handbook of Statistical Methods, 2.5.5.2: for
// Y = a X + b Z with independent X and Z, s(Y) = sqrt(a2 s(X)2 + b2 s(Z)2); so too
// limits of as many standard deviations.
func TestPropagation(t *testing.T) {
	r := linear(7, []float64{3, -2}, either(0.4), either(0.9)).Result()
	// (3 x 0.4)2 = 1.44, (2 x 0.9)2 = 3.24; together 4.68
	near(t, "likely", r.RootSumSquare, math.Sqrt(4.68), exact)
	near(t, "worst", halfOf(r.Worst), 1.2+1.8, exact)
	near(t, "part of Z", r.Shares[0].Part, 3.24/4.68, exact)
	near(t, "half of Z", r.Shares[0].Half, 1.8, exact)
	// Z half as large: 1.44 + 3.24 / 4
	near(t, "Z halved", r.Shares[0].Halved, 1.5, exact)
	if r.Shares[0].Source != 1 || r.Shares[1].Source != 0 {
		t.Errorf("the largest is not first: %+v", r.Shares)
	}
}

// TestStackExamples are those with which textbooks teach tolerance stacks (from
// memory, secondary sources).
func TestStackExamples(t *testing.T) {
	// Ten parts of +-0.1 on end: worst 10 x 0.1, likely 0.1 sqrt(10).
	var ten []Source
	var ones []float64
	for range 10 {
		ten, ones = append(ten, either(0.1)), append(ones, 1)
	}
	r := linear(100, ones, ten...).Result()
	near(t, "ten parts, worst", halfOf(r.Worst), 1, exact)
	near(t, "ten parts, likely", r.RootSumSquare, 0.316228, 5e-7)

	// A gap: 40.00 +-0.10 less 25.00 +-0.05, 2.00 +-0.03 and 10.00 +-0.05.
	r = linear(40-25-2-10, []float64{1, -1, -1, -1}, either(0.10), either(0.05), either(0.03), either(0.05)).Result()
	near(t, "gap", r.Nominal, 3, exact)
	near(t, "gap, least", r.Worst.Min, 2.77, exact)
	near(t, "gap, most", r.Worst.Max, 3.23, exact)
	near(t, "gap, likely", r.RootSumSquare, 0.1261, 5e-5) // sqrt(0.0100 + 0.0025 + 0.0009 + 0.0025)

	// The area of a rectangle of 10 +-1 by 5 +-1: 9 x 4 to 11 x 6. Alone, the length
	// moves it by 5, the width by 10.
	r = Stack{Sources: []Source{either(1), either(1)}, Terms: []Term{{0, 1}, {1, 1}},
		Value: func(off []float64) float64 { return (10 + off[0]) * (5 + off[1]) }}.Result()
	near(t, "area", r.Nominal, 50, exact)
	near(t, "least area", r.Worst.Min, 36, exact)
	near(t, "most area", r.Worst.Max, 66, exact)
	near(t, "likely area", r.RootSumSquare, math.Sqrt(25+100), exact)
}

// TestOneSided: with 0.3 above and 0.1 below, the worst is from -0.1 to 0.3 and the root
// half of what is between them, whichever way the measure moves.
func TestOneSided(t *testing.T) {
	from := Source{Minus: 0.1, Plus: 0.3}
	r := linear(5, []float64{1}, from).Result()
	near(t, "least", r.Worst.Min, 4.9, exact)
	near(t, "most", r.Worst.Max, 5.3, exact)
	near(t, "root", r.RootSumSquare, 0.2, exact)
	r = linear(5, []float64{-1}, from).Result()
	near(t, "least, falling", r.Worst.Min, 4.7, exact)
	near(t, "most, falling", r.Worst.Max, 5.1, exact)
	near(t, "root, falling", r.RootSumSquare, 0.2, exact)
}

// anyStack is linear, of up to eight sources.
func anyStack(t *rapid.T) Stack {
	var from []Source
	var factors []float64
	for range rapid.IntRange(1, 8).Draw(t, "sources") {
		from = append(from, Source{Minus: rapid.Float64Range(0, 0.5).Draw(t, "minus"), Plus: rapid.Float64Range(0, 0.5).Draw(t, "plus"),
			Shape: rapid.SampledFrom([]Shape{Uniform, Normal}).Draw(t, "shape")})
		factors = append(factors, rapid.SampledFrom([]float64{-2, -1, 0.5, 1, 3}).Draw(t, "factor"))
	}
	return linear(rapid.Float64Range(-10, 10).Draw(t, "nominal"), factors, from...)
}

// TestShares: they sum to 1, the largest first; what halving a source gives is what
// the stack with that source half as large gives; and no likely range is wider than
// the worst case.
func TestShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyStack(t)
		r := s.Result()
		if r.RootSumSquare > halfOf(r.Worst)+exact {
			t.Fatalf("root %g, worst %v", r.RootSumSquare, r.Worst)
		}
		total := 0.0
		for i, h := range r.Shares {
			total += h.Part
			if i > 0 {
				before := r.Shares[i-1] // halves within a nanometer of each other are one
				if a, b := alikeHalf(before.Half), alikeHalf(h.Half); a < b || a == b && before.Source > h.Source {
					t.Fatalf("share %d comes after that before: %+v", i, r.Shares)
				}
			}
			halved := s
			halved.Sources = slices.Clone(s.Sources)
			from := &halved.Sources[h.Source]
			from.Minus, from.Plus = from.Minus/2, from.Plus/2
			if got := halved.Result().RootSumSquare; math.Abs(got-h.Halved) > exact {
				t.Fatalf("halving source %d gives %.9f, recomputed %.9f", h.Source, h.Halved, got)
			}
		}
		if len(r.Shares) > 0 && math.Abs(total-1) > exact {
			t.Fatalf("the shares sum to %.15f", total)
		}
	})
}
