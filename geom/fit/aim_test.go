package fit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// kept is the part of other boxes than those that were aimed with whose measure comes
// within a window when it is set by aim beside where it is.
func kept(s Stack, window Range, aim float64) float64 {
	list, _ := Draw([]Stack{s}, []Range{{s.Result().Nominal + window.Min - aim - settle, s.Result().Nominal + window.Max - aim + settle}}, Draws, Seed+1)
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
			window := Range{Max: rapid.SampledFrom([]float64{0, 0.1, 0.5}).Draw(t, "plus")}
			window.Min = window.Max - rapid.SampledFrom([]float64{0.05, 0.2, 0.5, 1, 1.6}).Draw(t, "window")
			var s Stack
			for _, m := range Box(d, MeasuredBoards(d.Spec), anyAccuracy(t), &Running{Least: 1, Most: 2, InsideCounts: inside}) {
				if m.Code == SlideClearance {
					s = m.Stack
				}
			}
			aim := Aim(s, window)
			best := kept(s, window, aim)
			for step := -30; step <= 30; step++ {
				other := kept(s, window, aim+0.05*float64(step))
				by := math.Sqrt((best*(1-best) + other*(1-other)) / Draws)
				if other > best+6*by+1e-9 {
					t.Fatalf("%g, %g beside the aim, keeps %g, the aim %g", aim+0.05*float64(step), 0.05*float64(step), other, best)
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
	near(t, "aim", Aim(butt, Range{-1, 0}), -0.5-0.2, 0.01)
	proud := Stack{Sources: []Source{{Minus: 0.2, Plus: 0.2}, {Minus: 0.2, Plus: 0.2}}, Terms: []Term{{0, 1}, {1, 1}},
		Value: func(off []float64) float64 { return 400 + max(0, off[0]) + max(0, off[1]) }}
	if aim := Aim(proud, Range{0, 0.02}); aim < 0 || aim > 0.02+exact {
		t.Errorf("aimed at %g: a quarter of the boxes is missed", aim)
	}
}
