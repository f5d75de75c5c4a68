package joinery

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// anyFingers draws what a shop joins with fingers on a saw or a router table: walls of
// 12 to 19, bottoms of 4 to 9, the usual cutters.
func anyFingers(t *rapid.T) Spec {
	number := func(least, most float64, name string) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
	s := saw(number(150, 900, "w"), number(50, 250, "h"), number(150, 700, "d"), rapid.SampledFrom([]float64{3.2, 4.8, 6, 6.35, 8, 9.5, 12.7}).Draw(t, "cutter"),
		sheet("sides", number(12, 19, "sides")), sheet("bottom", number(4, 9, "bottom")))
	if rapid.Bool().Draw(t, "other ends") {
		s.Front = sheet("ends", number(12, 19, "ends"))
		s.Back = s.Front
	}
	s.Joint = BoxJoint
	s.BottomFit = rapid.SampledFrom(allBottoms).Draw(t, "fit")
	s.GrooveEnds = rapid.SampledFrom([]GrooveEnds{GrooveThrough, GroovePlugged}).Draw(t, "ends")
	if rapid.IntRange(0, 2).Draw(t, "table") == 0 {
		s.Cutter.Kind = RouterTable
		s.GrooveEnds = rapid.SampledFrom([]GrooveEnds{GrooveThrough, GrooveStopped}).Draw(t, "stopped")
	}
	if rapid.IntRange(0, 2).Draw(t, "raised") == 0 {
		s.BottomHeight = number(3, 30, "rise")
	}
	if rapid.IntRange(0, 2).Draw(t, "blade") == 0 {
		s.Cutter.Groove = rapid.SampledFrom([]float64{2.4, 3.2, 6.35, s.Cutter.Width}).Draw(t, "groove cutter")
	}
	if rapid.IntRange(0, 3).Draw(t, "housed") == 0 {
		s.BackJoint, s.BackSetback = Housed, 15
	}
	return s
}

// TestSawnFingersTakeABottom: a box joint that is sawn either can be made as it is asked
// for, or hints lead to one that can, whichever of their ways is gone.
func TestSawnFingersTakeABottom(t *testing.T) {
	made, shifted, mended, plugged := 0, 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := anyFingers(t)
		for step := 0; ; step++ {
			d, problems := Build(s)
			next := slices.IndexFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() })
			if next < 0 {
				made++
				if d.Setup.FingerRow > 0 {
					shifted++
				}
				if step > 0 {
					mended++
				}
				if slices.ContainsFunc(d.Hardware, func(i Item) bool { return i.Offcut }) {
					plugged++
				}
				return
			}
			p := problems[next]
			if len(p.Remedies) == 0 || step > 5 {
				t.Fatalf("no way out of %q after %d hints: %q", fact(p), step, advice(p))
			}
			r := p.Remedies[rapid.IntRange(0, len(p.Remedies)-1).Draw(t, "way")]
			ends := r.Ends()
			s = Follow(s, r, ends[rapid.IntRange(0, len(ends)-1).Draw(t, "end")])
		}
	})
	t.Logf("%d made, %d with a row of another height, %d after a hint, %d with plugs", made, shifted, mended, plugged)
	if shifted == 0 || mended == 0 || plugged == 0 {
		t.Error("not all of it was tried")
	}
}

// TestNoFingers: slots that are hardly wider than half of the clearance leave no fingers, which is
// said before rows of them are counted.
func TestNoFingers(t *testing.T) {
	s := saw(400, 120, 450, 1, sheet("ply", 12), sheet("thin", 5.8))
	s.Joint, s.Limits = BoxJoint, DefaultLimits
	s.Limits.TongueClearance.Max = 5 // half of 0.05 and 5 in all, 2.53 as printed
	d, problems := Build(s)
	if d.Shaped || !slices.Contains(codes(problems), "!finger-width") {
		t.Fatalf("%v, shape %t", codes(problems), d.Shaped)
	}
	const want = "slots of 1 mm with 2.53 mm of clearance leave fingers of less than 1 mm"
	for _, p := range problems {
		if p.Code == "finger-width" && fact(p) != want {
			t.Error(fact(p))
		}
	}
}
