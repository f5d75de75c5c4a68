package fit

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// kept is the part of other boxes than those that were aimed with whose measure comes
// within a window when it is set by aim beside where it is.
func kept(s Stack, window geom.Interval, aim float64) float64 {
	list, _ := SampleBoxes([]Stack{s}, []geom.Interval{{Min: s.Result().Nominal + window.Min - aim - settle, Max: s.Result().Nominal + window.Max - aim + settle}}, Samples, Seed+1)
	return list[0].Within
}

// TestNoBetterAim: of the widths of any drawer, for any window, no other place on a
// grid of 0.05 mm gives better odds than the one that is aimed at, by more than chance:
// four standard errors of a difference, and the two for which the aim stays in the middle.
func TestNoBetterAim(t *testing.T) {
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range anyDrawer(t) {
			inside := rapid.Bool().Draw(t, "inside")
			window := geom.Interval{Max: rapid.SampledFrom([]float64{0, 0.1, 0.5}).Draw(t, "plus")}
			window.Min = window.Max - rapid.SampledFrom([]float64{0.05, 0.2, 0.5, 1, 1.6}).Draw(t, "window")
			var s Stack
			for _, m := range Measures(d, MeasuredBoards(d.Spec), anyAccuracy(t), &SlideFit{Min: 1, Max: 2, InsideCounts: inside}) {
				if m.Code == SlideClearance {
					s = m.Stack
				}
			}
			aim := Aim(s, window)
			best := kept(s, window, aim)
			for step := -30; step <= 30; step++ {
				other := kept(s, window, aim+0.05*float64(step))
				by := math.Sqrt((best*(1-best) + other*(1-other)) / Samples)
				if other > best+6*by+1e-9 {
					t.Fatalf("%g, %g beside the aim, keeps %g, the aim %g", aim+0.05*float64(step),
						0.05*float64(step), other, best)
				}
			}
			if best > 0 && best < 1 {
				tried++
			}
		}
	})
	if tried == 0 {
		t.Error("every window takes all boxes")
	}
}

// TestAimOfBends: boards of a butt joint that are 0.2 thicker at most and never thinner
// make the box 2 x 0.1 wider in the mean; two that stand proud or not, each 0.2 either
// way, leave a quarter of the boxes as they are set, and the narrow window takes those.
func TestAimOfBends(t *testing.T) {
	butt := linear(400, []float64{1, 1}, Source{Plus: 0.2}, Source{Plus: 0.2})
	near(t, "aim", Aim(butt, geom.Interval{Min: -1, Max: 0}), -0.5-0.2, 0.01)
	proud := Stack{Sources: []Source{{Minus: 0.2, Plus: 0.2}, {Minus: 0.2, Plus: 0.2}}, Terms: []Term{{0, 1}, {1, 1}},
		Value: func(off []float64) float64 { return 400 + max(0, off[0]) + max(0, off[1]) }}
	// With them come those of which one board stands 0.02 proud at most, 2 x 1/2 x 1/20, less what
	// chance takes; a place that misses the quarter keeps few more than that. Where the aim lies
	// says less: a quarter that is beyond the window by less than settle is judged right.
	narrow := geom.Interval{Min: 0, Max: 0.02}
	if aim := Aim(proud, narrow); kept(proud, narrow, aim) < 0.25+0.05-0.02 {
		t.Errorf("aimed at %g: a quarter of the boxes is missed", aim)
	}
}

// TestAimAgainstScan: of any spread, one with two heaps and bends too, a scan of 4,000 places
// finds none that keeps more of the draws that were aimed with than the aim does, but for
// the two standard errors by which the middle may be worse; where it is left, the aim keeps
// more than the middle.
func TestAimAgainstScan(t *testing.T) {
	searched := 0
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(0.02, 0.5)
		bend, jump := rapid.SampledFrom([]float64{0, 1, 3}).Draw(t, "bend"), rapid.SampledFrom([]float64{0, 0.4, 1}).Draw(t, "jump")
		s := Stack{Sources: []Source{{Minus: size.Draw(t, "a"), Plus: size.Draw(t, "a")}, {Minus: size.Draw(t, "b"), Plus: size.Draw(t, "b"), Shape: Normal}}, Terms: []Term{{0, 1}, {1, 1}},
			Value: func(off []float64) float64 {
				v := off[1] + float64(bend*max(0, off[0]))
				if off[0] > 0 { // two heaps: boards of two makers
					v += jump
				}
				return v
			}}
		window := geom.Interval{Min: -rapid.Float64Range(0.01, 0.6).Draw(t, "below"), Max: rapid.Float64Range(0, 0.6).Draw(t, "above")}
		if againstScan(t, s, window) {
			searched++
		}
	})
	if searched == 0 {
		t.Error("the middle always does")
	}
}

// againstScan compares the aim with 4,000 places; searched says that it left the middle.
func againstScan(t interface{ Fatalf(string, ...any) }, s Stack, window geom.Interval) (searched bool) {
	off := deviations(s, Samples, Seed)
	slices.Sort(off)
	keeps := func(aim float64) int {
		from, _ := slices.BinarySearch(off, window.Min-aim-settle)
		to, _ := slices.BinarySearch(off, window.Max-aim+settle)
		return to - from
	}
	mean := 0.0
	for _, v := range off {
		mean += v / Samples
	}
	middle, aim := (window.Min+window.Max)/2-mean, Aim(s, window)
	got, chance := keeps(aim), 0.0
	if searched = math.Abs(aim-middle) >= 1e-9; !searched {
		part := float64(got) / Samples
		chance = 2 * math.Sqrt(part*(1-part)*Samples)
	} else if got <= keeps(middle) {
		t.Fatalf("aimed at %g, which keeps %d; the middle %g keeps %d", aim, got, middle, keeps(middle))
	}
	const places = 4000
	low, high := window.Min-off[len(off)-1], window.Max-off[0]
	for i := range places + 1 {
		other := low + (high-low)*float64(i)/places
		if n := keeps(other); float64(n) > float64(got)+chance+1 {
			t.Fatalf("%g keeps %d, the aim %g %d (the middle %g %d)", other, n, aim, got, middle, keeps(middle))
		}
	}
	return searched
}

// TestAimAsJudged: where boxes come out close together, those count too that a verdict lets
// through beyond the window's ends: of 10,000, a few.
func TestAimAsJudged(t *testing.T) {
	s := Stack{Sources: []Source{{Minus: 0.5, Plus: 0.08}, {Minus: 0.02, Plus: 0.02, Shape: Normal}},
		Terms: []Term{{0, 1}, {1, 1}}, Value: func(off []float64) float64 { return off[1] + max(0, off[0]) }}
	if !againstScan(t, s, geom.Interval{Min: -0.0106, Max: 0}) {
		t.Error("the middle does")
	}
}
