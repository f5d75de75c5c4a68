package joinery

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func tailed(change func(*Spec)) Spec {
	s := saw(400, 100, 300, 6, sheet("ash", 12), sheet("thin", 3.8))
	s.Joint, s.Cutter, s.GrooveEnds = Dovetail, Cutter{Kind: Hand, Width: 4}, GrooveStopped
	s.BottomClearance, s.DadoClearance = 2, 0.2
	change(&s)
	return s
}

// TestDovetailSizes, by hand. Pins are 12 wide, half pins 6, so that (100 - 12 + 12) / 48 is two tails, of
// (100 - 12 - 12) / 2 = 38 each. A flank leans 12 / 8 = 1.5. The play of 0.2 is 0.05 at every flank of every
// part: sockets are 38.1 wide at the inside face, tails 38 - 0.1 at their base and 3 more at their end.
func TestDovetailSizes(t *testing.T) {
	d := mustBuild(t, tailed(func(*Spec) {}))
	side, front := d.part(Side).Panel, d.part(Front).Panel
	at := func(p geom.Panel, x float64) []float64 {
		list := p.Outline.Flatten(0.01).Crossings(nil, geom.AlongY, x)
		slices.Sort(list)
		return list
	}
	same := func(what string, got []float64, want ...float64) {
		t.Helper()
		if len(got) != len(want) {
			t.Fatalf("%s: %v", what, got)
		}
		for i := range got {
			near(t, what, got[i], want[i])
		}
	}
	same("tails at their base", at(side, 12-1e-9), 6.05, 43.95, 56.05, 93.95)
	same("tails at their end", at(side, 1e-9), 4.55, 45.45, 54.55, 95.45)
	same("pins on the inside face", at(front, 6), 0, 5.95, 44.05, 55.95, 94.05, 100)
	flanks := 0
	for _, k := range front.Pockets {
		if k.Kind == geom.Flank {
			flanks++
			b := k.Outline.Bounds()
			near(t, "flank", b.Height(), 1.5)
			near(t, "flank's length", b.Width(), 12)
			near(t, "flank's depth", k.Depth, 12)
		}
	}
	if flanks != 2*4 {
		t.Errorf("%d flanks", flanks)
	}
	// The groove is 3 over the half pin and a quarter of the play, all of it in the lowest tail: it runs out into
	// the sockets of the front, and stops in the tails of the side, 12 - 6 from the end.
	groove := func(p geom.Panel) geom.Rect {
		i := slices.IndexFunc(p.Pockets, func(k geom.Pocket) bool { return k.Kind == geom.Groove })
		return p.Pockets[i].Outline.Bounds()
	}
	near(t, "groove's height", groove(side).Min.Y, 9.05)
	near(t, "front's groove", groove(front).Min.X, 12)
	if from := groove(side).Min.X; from <= 0 || from > 12-6 {
		t.Errorf("the side's groove begins %g from the end", from)
	}
	near(t, "bottom", d.part(Bottom).Panel.Length(), 400-2*12+2*6-2)
	d = mustBuild(t, tailed(func(s *Spec) { s.Tails, s.DovetailSlope = 1, 6 }))
	same("one tail at its end", at(d.part(Side).Panel, 1e-9), 6.05-2, 93.95+2)
}

// TestTailsFillSockets: at any depth from the outside of front and back, tails and pins leave half of the play
// between them, and nothing else.
func TestTailsFillSockets(t *testing.T) {
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(from, to float64, what string) float64 { return rapid.Float64Range(from, to).Draw(t, what) }
		s := tailed(func(s *Spec) {
			s.Height, s.DadoClearance = number(40, 300, "height"), number(0.06, 0.39, "play")
			s.Sides, s.Front = sheet("a", number(6, 22, "sides")), sheet("b", number(6, 26, "front"))
			s.Back, s.BottomFit = sheet("c", number(6, 26, "back")), BottomApplied
			s.DovetailSlope = float64(rapid.IntRange(5, 10).Draw(t, "slope"))
			s.Tails = rapid.IntRange(0, 4).Draw(t, "tails")
		})
		d, problems := Build(s)
		if slices.ContainsFunc(problems, geom.Diagnosis.IsError) {
			return
		}
		built++
		side, ring := d.part(Side).Panel, d.part(Side).Panel.Outline.Flatten(0.001)
		for _, r := range []Role{Front, Back} {
			end := d.part(r).Panel
			for _, share := range []float64{0.01, 0.3, 0.7, 0.99} {
				deep := share * end.Thickness
				x := deep
				if r == Back {
					x = side.Length() - deep
				}
				tails := ring.Crossings(nil, geom.AlongY, x)
				pins := end.Outline.Flatten(0.001).Crossings(nil, geom.AlongY, s.Sides.Thickness.Mean/2)
				for i, y := range pins { // a flank takes off what is as deep as that
					for _, k := range end.Pockets {
						b := k.Outline.Bounds()
						if k.Lean > 0 && math.Abs(b.Max.Y-y) < 1e-9 && b.Min.X == 0 {
							pins[i] = b.Min.Y + share*b.Height()
						}
						if k.Lean < 0 && math.Abs(b.Min.Y-y) < 1e-9 && b.Min.X == 0 {
							pins[i] = b.Max.Y - share*b.Height()
						}
					}
				}
				slices.Sort(tails)
				slices.Sort(pins)
				if len(pins) != len(tails)+2 {
					t.Fatalf("%v pins, %v tails", pins, tails)
				}
				for i, y := range tails {
					if gap := math.Abs(y - pins[i+1]); math.Abs(gap-s.DadoClearance/2) > 1e-9 {
						t.Fatalf("%s, %g deep: %g between a tail and a pin, not %g", r, deep, gap, s.DadoClearance/2)
					}
				}
			}
		}
	})
	if built == 0 {
		t.Error("none was built")
	}
}

// TestDovetailProblems: what cannot be cut is refused, with a change that helps.
func TestDovetailProblems(t *testing.T) {
	for name, c := range map[string]struct {
		spec Spec
		says string
	}{
		"router": {tailed(func(s *Spec) { s.Cutter.Kind = Router }), "a CNC router's bit cuts straight down"},
		"saw": {tailed(func(s *Spec) { s.Cutter.Kind, s.GrooveEnds = Saw, GrooveThrough }),
			"a table saw would need its blade tilted"},
		"router table": {tailed(func(s *Spec) { s.Cutter.Kind = RouterTable }), "a router table would need a jig"},
		"many tails":   {tailed(func(s *Spec) { s.Tails = 5 }), "the tails, 5 at each end, would be 8 mm wide"},
		"low box": {tailed(func(s *Spec) { s.Height, s.BottomFit = 20, BottomApplied }),
			"the tails, 1 at each end"},
		"in a pin":     {tailed(func(s *Spec) { s.BottomHeight = 4 }), "it would come out through a pin's end"},
		"across a pin": {tailed(func(s *Spec) { s.BottomHeight = 42 }), "it would come out through a pin's end"},
		"under a back": {tailed(func(s *Spec) { s.BottomFit = BottomSlideIn }), "the back's tails would show"},
	} {
		_, problems := Build(c.spec)
		i := slices.IndexFunc(problems, geom.Diagnosis.IsError)
		if i < 0 || !strings.Contains(problems[i].Fact.In(geom.Millimeter), c.says) || len(problems[i].Remedies) == 0 {
			t.Errorf("%s: %+v", name, problems)
		}
	}
	// Where it runs through, it shows in the ends of tails.
	_, problems := Build(tailed(func(s *Spec) { s.GrooveEnds = GrooveThrough }))
	const shows = "in the ends of the tails of the sides"
	if len(problems) != 1 || !strings.Contains(problems[0].Fact.In(geom.Millimeter), shows) {
		t.Errorf("through: %+v", problems)
	}
}
