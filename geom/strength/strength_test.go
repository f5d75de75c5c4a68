package strength

import (
	"math"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// box is one with a square bottom, 400 mm inside, of a stock alike in all directions.
func box(thickness float64) joinery.Drawer {
	stock := joinery.Stock{Name: "board", Thickness: joinery.Thickness{Mean: thickness, Min: thickness, Max: thickness},
		Stiffness: 3000, Poisson: 0.3, Creep: 2, Grain: joinery.GrainNone}
	return joinery.Drawer{Spec: joinery.Spec{Bottom: stock}, Inside: joinery.Size{Width: 400, Depth: 400}}
}

// TestBottomOf: a square plate on simple supports sags by 0.00406 q a^4 / D, with
// D = E t^3 / 12 (1 - nu^2) (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8).
func TestBottomOf(t *testing.T) {
	b := BottomOf(box(5), 4)
	q := 4 * 9.80665 / (400 * 400) // N/mm2
	want := 0.00406 * q * math.Pow(400, 4) / (3000 * 125 / (12 * (1 - 0.09)))
	if math.Abs(b.Sag.Simple-want) > 0.002*want {
		t.Errorf("sags by %g, want %g", b.Sag.Simple, want)
	}
	if math.Abs(b.SagLimit-2) > 1e-12 || math.Abs(b.Lasting-2*b.Sag.Simple) > 1e-12 {
		t.Errorf("limit %g, want 2; lasting %g, want twice %g", b.SagLimit, b.Lasting, b.Sag.Simple)
	}
	most := b.MaxLoad(4)
	at := BottomOf(box(5), most)
	if math.Abs(at.Sag.Simple-at.SagLimit) > 1e-9 {
		t.Errorf("under %g kg it sags by %g, limit %g", most, at.Sag.Simple, at.SagLimit)
	}
	if BottomOf(box(5), 0.99*most).SagsTooMuch() || !BottomOf(box(5), 1.01*most).SagsTooMuch() {
		t.Error("it is too much below the most load, or is not above it")
	}
}

// TestEnough: a bottom of the thickness that is enough keeps its limit, a thinner one does not.
func TestEnough(t *testing.T) {
	b := BottomOf(box(4), 30)
	if !b.SagsTooMuch() || b.Enough <= 4 {
		t.Fatalf("4 mm under 30 kg: sags %g of %g, enough is %g", b.Sag.Simple, b.SagLimit, b.Enough)
	}
	if BottomOf(box(b.Enough+1e-4), 30).SagsTooMuch() || !BottomOf(box(b.Enough-1e-3), 30).SagsTooMuch() {
		t.Errorf("%g mm is not where it just keeps its limit", b.Enough)
	}
}

func TestUnknownStiffness(t *testing.T) {
	d := box(5)
	d.Spec.Bottom.Stiffness = 0
	if b := BottomOf(d, 10); b != (Bottom{}) || b.SagsTooMuch() {
		t.Errorf("nothing is known of it, and it says %+v", b)
	}
}

// TestEitherWay: where the grain is of no matter, the worse way to lie counts.
func TestEitherWay(t *testing.T) {
	d := box(5)
	d.Inside.Width, d.Spec.Bottom.StiffnessAcross = 600, 1000
	either := BottomOf(d, 10).Sag.Simple
	d.Spec.Bottom.Grain = joinery.GrainLength
	along := BottomOf(d, 10).Sag.Simple
	d.Inside.Width, d.Inside.Depth = 400, 600
	across := BottomOf(d, 10).Sag.Simple
	if math.Abs(either-max(along, across)) > 1e-12 || math.Abs(along-across) < 1e-3 {
		t.Errorf("either way %g, along %g, across %g", either, along, across)
	}
}

func TestOverloads(t *testing.T) {
	s := opening.Slide{Load: 50} // 40 kg by four fifths
	for _, c := range []struct {
		box, load float64
		want      bool
	}{{5, 35, false}, {5, 35.1, true}, {0, 40, false}, {45, 0, false}} {
		if got := Overloads(s, c.box, c.load); got != c.want {
			t.Errorf("box %g, load %g: %v", c.box, c.load, got)
		}
	}
	if Overloads(opening.Slide{}, 10, 1000) {
		t.Error("a slide of no rating is overloaded")
	}
	if room := SlideRoom(s, 5); math.Abs(room-35) > 1e-12 {
		t.Errorf("room for %g kg, want 35", room)
	}
}
