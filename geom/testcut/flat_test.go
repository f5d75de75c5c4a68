package testcut_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// TestMovesOfAFlatFront: T = 12.2, f = 6.1, w = 6.35; the rabbets are 7 long, in two passes
// of the cutter, the last with its near side 0.65 before the fence. The fence for the dados
// is df = 0.3 too far away, the cutter for the rabbets dr = 0.2 too high and the fence for
// them de = -0.4 off:
//
//	edge f + df = 6.4, rabbet T - f + dr = 6.3 deep, tongue T - 6.3 = 5.9
//	play 6.35 - 5.9 = 0.45, recess 6.4 - 6.3 = 0.1, tongues 7 - 0.4 = 6.6 long
//
// Of a cutter that is also dw = 0.1 wider the dado's far wall and the end of the rabbet
// are dw further: slot 6.45, play 0.55, tongues 6.7 long. On end one fence would have made
// both the edge and the tongue, and its being off 0.3 a recess of 0.6.
func TestMovesOfAFlatFront(t *testing.T) {
	s := spec()
	s.OnEnd, s.CutterHeight = joinery.OnEnd{Length: geom.Interval{Min: 150, Max: 300}}, 7
	for _, dw := range []float64{0, 0.1} {
		a := cut(t, s).Advise([]testcut.Reading{
			reading(testcut.Slot, 6.35+dw), reading(testcut.Edge, 6.4), reading(testcut.Tongue, 5.9), reading(testcut.RabbetDepth, 6.3), reading(testcut.Depth, 7.1),
			reading(testcut.TongueLength, 6.6+dw), reading(testcut.Clearance, 0.45+dw), reading(testcut.Recess, 0.1), reading(testcut.Front, 12.2), reading(testcut.Sides, 12.2),
		})
		if len(a.Conflicts) > 0 {
			t.Fatal(a.Conflicts)
		}
		target := move(t, a, testcut.Fence).To
		for what, want := range map[testcut.Setting][2]float64{
			testcut.Fence: {6.4, target}, testcut.RabbetHeight: {6.3, 12.2 - target}, testcut.Height: {7.1, 7}, testcut.EndPlace: {6.6 + dw, 7},
		} {
			m := move(t, a, what)
			if math.Abs(m.From-want[0]) > slack || math.Abs(m.To-want[1]) > slack || math.Abs(m.From+m.By-m.To) > 1e-9 {
				t.Errorf("cutter %+g: the %s is moved %+v, not from %g to %g", dw, what, m, want[0], want[1])
			}
		}
		if math.Abs(target-6.1) > dw+slack {
			t.Errorf("cutter %+g: the fence is to be at %g", dw, target)
		}
		for _, q := range a.AsItIs {
			want := map[string]float64{"recess": 0.1, "tongue-clearance": 0.45 + dw, "outside-width": 400 + 2*7 - 2*(6.6+dw), "shoulder-gap": -0.5 + dw}[string(q.Code)]
			if math.Abs(q.Nominal-want) > 3*slack {
				t.Errorf("cutter %+g: %s is %g, not %g", dw, q.Code, q.Nominal, want)
			}
		}
	}
	// With no more than the slot read, a cutter dw wider is known to make longer tongues,
	// but for what it was known by before: 0.1 (0.2^2 / (0.2^2 + 0.04^2)), about 0.097.
	a := cut(t, s).Advise([]testcut.Reading{reading(testcut.Slot, 6.45)})
	if m := move(t, a, testcut.EndPlace); math.Abs(m.From-7.1) > slack {
		t.Errorf("two passes of a wider cutter make tongues of %g", m.From)
	}
}
