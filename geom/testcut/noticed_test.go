package testcut

import (
	"math"
	"testing"

	"drawerwright/geom/joinery"
)

func TestCutterOff(t *testing.T) {
	for _, c := range []struct {
		is, sigma float64
		clash     []string
		want      bool
	}{{6.1, 0.01, nil, true}, {5.9, 0.01, nil, true}, {6.04, 0.01, nil, false}, {6.1, 0.04, nil, false},
		{6.1, 0.01, []string{"slot"}, false}} {
		a := Advice{Stated: 6, Cutter: Estimated{c.is, c.sigma}}
		if a.Conflicts = c.clash; a.CutterOff() != c.want {
			t.Errorf("%+v: %v", c, a.CutterOff())
		}
	}
}

func TestPrinted(t *testing.T) {
	m := Move{From: 5.994, To: 6.046, By: 0.052, Action: Leave, Better: true}.Printed(0.01)
	if math.Abs(m.By-0.06) > 1e-9 || !m.Better || m.Sure { // 6.05 - 5.99: a move that a shop makes
		t.Errorf("%+v", m)
	}
	if m = (Move{From: 6, To: 6.044, Action: Leave, Better: true}).Printed(0.01); m.Better || !m.Sure { // 0.04
		t.Errorf("%+v", m)
	}
	if m = (Move{From: 6, To: 6.044, Action: Make, Better: true}).Printed(0.01); !m.Better || m.Sure {
		t.Errorf("a move that has to be made: %+v", m)
	}
	if !Tiny(-0.009) || Tiny(0.011) {
		t.Error("a hundredth is what a shop sets")
	}
}

func TestEitherWay(t *testing.T) {
	j := Predicted{Check: joinery.Check{Nominal: 0.25, LowerLimit: 0.1, UpperLimit: 0.4}, Sigma: 0.08}
	if !j.EitherWay() { // 0.09 to 0.41
		t.Error("it may be out on both sides")
	}
	if j.Sigma = 0.07; j.EitherWay() { // 0.11 to 0.39
		t.Error("it is within")
	}
}
