package scene_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

// shown makes a box, whether it goes together or not, with the verdicts on it as it is set; none of
// one without a shape.
func shown(t *testing.T, s joinery.Spec) (m scene.Scene, d joinery.Drawer, sound bool) {
	t.Helper()
	d, _, sound = joinery.LayOut(s)
	if !d.Shaped {
		return m, d, sound
	}
	m, err := sceneOf(s, d)
	if err != nil {
		t.Fatal(err)
	}
	m.Boxes[0].Judged = func() []joinery.Check { return d.Fit }
	return m, d, sound
}

// TestTooThickIsSeen: what does not go in is seen with what is missing, and the word of its check.
// Thicknesses in mm, f half of the front's: a dado of a saw of 6.35 is 6.35 - f wider than a tongue.
func TestTooThickIsSeen(t *testing.T) {
	sawn := func(change func(*joinery.Spec)) joinery.Spec {
		s := spec(joinery.DadoRabbet, joinery.BottomGroovedIn)
		s.Cutter, s.GrooveEnds = joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, joinery.GrooveThrough
		change(&s)
		return s
	}
	for name, c := range map[string]struct {
		spec  joinery.Spec
		piece string
		gap   float64
		word  joinery.Verdict
		sound bool
	}{
		"tight":        {sawn(func(s *joinery.Spec) { s.Front = stock("f", 12.6); s.Back = s.Front }), "box front in the dado of the left side", 0.05, joinery.Tight, true},
		"no clearance": {sawn(func(s *joinery.Spec) { s.Front = stock("f", 12.7); s.Back = s.Front }), "box front in the dado of the left side", 0, joinery.WillNot, false},
		"a tongue":     {sawn(func(s *joinery.Spec) { s.Front = stock("f", 13); s.Back = s.Front }), "box front in the dado of the right side", -0.15, joinery.WillNot, false},
		"a back":       {sawn(func(s *joinery.Spec) { s.Front = stock("f", 16); s.Back = s.Front }), "back in the dado of the left side", -1.65, joinery.WillNot, false},
		"loose":        {sawn(func(s *joinery.Spec) { s.Front = stock("f", 10); s.Back = s.Front }), "box front in the dado of the left side", 1.35, joinery.Loose, false},
		"a bottom":     {sawn(func(s *joinery.Spec) { s.Bottom = stock("b", 6.5) }), "bottom in the groove of the box front", -0.15, joinery.WillNot, false},
		"either way":   {sawn(func(s *joinery.Spec) { s.Bottom, s.BottomFit = stock("b", 6.5), joinery.BottomAuto }), "bottom in the groove of the left side", -0.15, joinery.WillNot, false},
		"flush":        {sawn(func(s *joinery.Spec) { s.Bottom, s.BottomFit = stock("b", 13), joinery.BottomFlush }), "bottom in the groove of the left side", -0.65, joinery.WillNot, false},
		"a divider": {sawn(func(s *joinery.Spec) {
			s.Dividers = []joinery.Divider{{Direction: joinery.Across, Count: 1, Stock: stock("d", 7)}}
		}), "divider in the dado of the left side", -0.65, joinery.WillNot, false},
		"in a housing": {sawn(func(s *joinery.Spec) {
			s.Cutter.Width, s.Front = 13, stock("f", 25)
			s.BackJoint, s.BackSetback = joinery.Housed, 15
			s.Bottom, s.BottomFit = stock("b", 5), joinery.BottomCleats
		}), "back in the dado of the left side", 1, joinery.Loose, true},
		"with glue's room": {sawn(func(s *joinery.Spec) { s.GlueSpace = 1; s.Front = stock("f", 13); s.Back = s.Front }), "box front in the dado of the left side", -0.15, joinery.WillNot, false},
	} {
		m, d, sound := shown(t, c.spec)
		named := func(k scene.Clearance) bool { return k.Name == c.piece && k.Verdict != "" }
		list := m.Clearances(0)
		i := slices.IndexFunc(list, named)
		if i < 0 || sound != c.sound {
			t.Errorf("%s: sound %t, and %s is nowhere judged", name, sound, c.piece)
			continue
		}
		k := list[i]
		if math.Abs(k.Gap-c.gap) > 1e-9 || k.Verdict != string(c.word) {
			t.Errorf("%s: %g, %s, want %g, %s", name, k.Gap, k.Verdict, c.gap, c.word)
		}
		wide, want := array(k.High)[k.Axis]-array(k.Low)[k.Axis], math.Abs(c.gap)
		if name == "a divider" { // in the middle of its dado: half stands out either way
			want /= 2
		}
		if math.Abs(wide-want) > 1e-9 {
			t.Errorf("%s: drawn %g wide", name, wide)
		}
		if c.gap < 0 && !standsOut(k, scene.Wood(d)) {
			t.Errorf("%s: it does not stand out where it is said to", name)
		}
		if (len(m.Boxes[0].Overlaps) > 0) != (c.gap < 0) {
			t.Errorf("%s: %d overlaps", name, len(m.Boxes[0].Overlaps))
		}
	}
}

// standsOut reports whether what is in a slot, and not what has it, is on the near side of a block, and the other way
// round on its far side.
func standsOut(c scene.Clearance, wood []carcass.Piece) bool {
	in, of, far := wood[c.Joint.In], wood[c.Joint.Of], unitOf(c.Axis).Scale(0.01)
	near, beyond := c.Low.Sub(far), c.High.Add(far)
	if !c.Joint.Up {
		near, beyond = c.High.Add(far), c.Low.Sub(far)
	}
	aside := c.High.Sub(c.Low).Scale(0.37) // blocks of wood often end at half
	aside = aside.Sub(unitOf(c.Axis).Scale(aside.Dot(unitOf(c.Axis))))
	if !c.Joint.Up {
		aside = aside.Scale(-1)
	}
	near, beyond = near.Add(aside), beyond.Sub(aside)
	return holds(in, near) && !holds(of, near) && holds(of, beyond) && !holds(in, beyond)
}

func array(v geom.Vec3) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

// TestAnyThickness: whatever corner and bottom, boards of any thickness make a box that is drawn or
// has no shape. In a sound one every gap is one; else what does not go in is as much too thick as
// its check says.
func TestAnyThickness(t *testing.T) {
	var jams, shapeless, sound int
	each(t, func(t *testing.T, s joinery.Spec, _ scene.Scene) {
		for _, sides := range []float64{5, 12, 14} {
			for _, bottom := range []float64{3, 6, 12} {
				for _, kind := range []joinery.CutterKind{joinery.Saw, joinery.Router} {
					for _, play := range []float64{0, 0.2} {
						s.Sides = stock("ply", sides)
						s.Front, s.Back, s.Bottom = s.Sides, s.Sides, stock("board", bottom)
						s.Cutter, s.DadoClearance, s.GrooveClearance = joinery.Cutter{Kind: kind, Width: 6}, play, play
						m, d, can := shown(t, s)
						switch {
						case !d.Shaped && can:
							t.Fatalf("%g and %g: a sound box has no shape", sides, bottom)
						case !d.Shaped:
							shapeless++
						case can:
							sound++
						}
						at := fmt.Sprintf("%g and %g, %s, play %g", sides, bottom, kind, play)
						if d.Shaped {
							jams += judged(t, at, m.Clearances(0), d, can)
						}
					}
				}
			}
		}
	})
	if jams < 100 || shapeless < 100 || sound < 100 {
		t.Errorf("%d that do not go in, %d boxes without a shape, %d sound ones", jams, shapeless, sound)
	}
}

// judged holds the clearances of a box against its checks, and counts what does not go in.
func judged(t *testing.T, at string, list []scene.Clearance, d joinery.Drawer, sound bool) (jams int) {
	t.Helper()
	for _, c := range d.Fit {
		if c.Verdict != joinery.WillNot {
			continue
		}
		jams++
		seen := func(k scene.Clearance) bool {
			return k.Measure == c.Name && k.Verdict == string(c.Verdict) && math.Abs(k.Gap-c.Nominal) < 1e-6
		}
		if sound || !slices.ContainsFunc(list, seen) {
			t.Errorf("%s, sound %t: %s of %g is not seen", at, sound, c.Name, c.Nominal)
		}
	}
	for _, k := range list {
		if k.Gap <= 0 && (sound || k.Verdict != string(joinery.WillNot)) {
			t.Errorf("%s, sound %t: %s of %g is %q", at, sound, k.Name, k.Gap, k.Verdict)
		}
	}
	return jams
}
