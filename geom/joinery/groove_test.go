package joinery

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// TestPassesCoverTheGroove: the passes of a cutter for grooves reach from the lower wall
// of the groove to its upper one and leave nothing between them; they are no more than
// that takes, and the bottom has the play that was asked for, or what one pass gives.
func TestPassesCoverTheGroove(t *testing.T) {
	several := 0
	rapid.Check(t, func(t *rapid.T) {
		s := saw(460, 140, 500, 6.35, sheet("birch", 12), sheet("any", rapid.Float64Range(3, 13).Draw(t, "bottom")))
		s.Cutter.Groove = rapid.Float64Range(1.5, 13).Draw(t, "blade")
		s.BottomFit = rapid.SampledFrom([]BottomFit{BottomAuto, BottomGroovedIn, BottomSlideIn, BottomFlush}).Draw(t, "fit")
		if rapid.Bool().Draw(t, "raised") {
			s.BottomHeight = rapid.Float64Range(3, 20).Draw(t, "height")
		}
		if rapid.Bool().Draw(t, "just too narrow") { // for a pass less
			n := float64(rapid.IntRange(1, 3).Draw(t, "passes"))
			s.Cutter.Groove = (s.Bottom.Thickness.Mean + s.GrooveClearance - rapid.Float64Range(0, 3e-5).Draw(t,
				"left")) / n
		}
		d, problems := Build(s)
		if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
			return
		}
		g := d.part(Front).Panel.Pockets[0].Outline.Bounds()
		at, blade := d.Setup.GrooveFences(), s.Cutter.Groove
		for i, fence := range at {
			if i > 0 && fence > at[i-1]+blade+1e-9 {
				t.Fatalf("passes of %g at %g leave wood between them", blade, at)
			}
		}
		if last := at[len(at)-1] + blade; math.Abs(at[0]-g.Min.Y) > sameFence || math.Abs(last-g.Max.Y) > sameFence {
			t.Fatalf("passes of %g at %g do not make the groove from %g to %g", blade, at, g.Min.Y, g.Max.Y)
		}
		if n := len(at); n > 1 && float64(n-1)*blade >= g.Height() {
			t.Fatalf("%d passes of %g over %g", n, blade, g.Height())
		} else if n > 1 {
			several++
		}
		stands := s.Bottom.Thickness.Mean
		if s.BottomFit == BottomFlush {
			stands -= g.Min.Y
		}
		if want := max(stands+s.GrooveClearance, blade); math.Abs(g.Height()-want) > 1e-9 {
			t.Fatalf("a groove %g wide, not %g", g.Height(), want)
		}
	})
	if several == 0 {
		t.Error("one pass was always enough")
	}
}
