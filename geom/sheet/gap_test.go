package sheet

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/hold"
	"drawerwright/geom/mill"
)

// cutOut is a part that a bit of a diameter cuts out, which leaves an onion skin under it.
func cutOut(diameter, skin float64) CutPart {
	return CutPart{Bits: []mill.Bit{{Diameter: diameter}}, Work: mill.Operations{Reach: diameter,
		Cuts: []mill.Cut{{Operation: mill.Profile, Outline: geom.Rectangle(100, 100, 300, 200), Remaining: skin}}}}
}

func TestNeeds(t *testing.T) {
	alike := NeedsOf([]CutPart{cutOut(6, 0), cutOut(6, 0)})
	// 6 and 3 apart; the band is the bit and the room of its slot.
	if alike.Mixed || alike.Least() != 9 || math.Abs(alike.Band-6-mill.SlotRoom) > 1e-12 || alike.Drawn() != alike.Band {
		t.Errorf("parts held alike: %+v, least %g", alike, alike.Least())
	}
	for name, other := range map[string]CutPart{"an onion skin": cutOut(6, 0.5), "another bit": cutOut(4, 0)} {
		// two bands of 6.05 and 3
		if n := NeedsOf([]CutPart{cutOut(6, 0), other}); !n.Mixed || math.Abs(n.Least()-15.1) > 1e-9 {
			t.Errorf("%s: %+v, least %g, want 15.1", name, n, n.Least())
		}
	}
	// 6 and 3, and the shorter side counts: 6 + 3 + 4
	if rim := alike.MinRim([2]float64{1, 4}); rim != 13 {
		t.Errorf("rim %g, want 13", rim)
	}
}

func TestHeldBy(t *testing.T) {
	slots := cutOut(6, 1.5)
	slots.Work.Cuts = append(slots.Work.Cuts, mill.Cut{Operation: mill.Slotting})
	marks := cutOut(6, 0)
	marks.Work.Tabs = []geom.Loop{geom.Rectangle(0, 0, 6, 6)}
	for _, c := range []struct {
		part CutPart
		want hold.Kind
	}{{cutOut(6, 0), hold.Loose}, {cutOut(6, 0.5), hold.OnionSkin}, {slots, hold.Tabs}, {marks, hold.Tabs}} {
		if got := HeldBy(c.part.Work); got != c.want {
			t.Errorf("%+v: held by %d, want %d", c.part.Work, got, c.want)
		}
	}
}

func TestGrid(t *testing.T) {
	for _, c := range []struct {
		mm, up, down float64
		unit         geom.Unit
	}{{12.5, 13, 12, geom.Millimeter}, {13, 13, 13, geom.Millimeter}, {1, 1.5875, 0.79375, geom.Inch}} {
		if up := UpToGrid(geom.LengthOf(c.mm), c.unit); up != geom.LengthOf(c.up) {
			t.Errorf("%g up is %g, want %g", c.mm, up.MM(), c.up)
		}
		if down := OffcutSide(geom.LengthOf(c.mm), c.unit); down != geom.LengthOf(c.down) {
			t.Errorf("an offcut of %g is %g, want %g", c.mm, down.MM(), c.down)
		}
	}
}
