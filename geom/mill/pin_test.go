package mill

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestPinOfTheShop: a panel cut on both faces lies on pins that the shop has, made by a
// bit that reaches through 12 mm and 5 mm into the spoilboard.
func TestPinOfTheShop(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12, Pockets: []geom.Pocket{
		{Kind: geom.Groove, Face: geom.Inside, Depth: 6, Outline: geom.Rectangle(0, 6, 400, 16)},
		{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 10, 200)}}}
	for _, c := range []struct {
		unit geom.Unit
		bits []Bit
		want float64
	}{
		{geom.Millimeter, []Bit{{Diameter: 6, Reach: 22}}, 6},
		{geom.Millimeter, []Bit{{Diameter: 8, Reach: 22}, {Diameter: 3, Reach: 12}}, 8}, // the narrow one is too short
		{geom.Inch, []Bit{{Diameter: 6.35, Reach: 22}, {Diameter: 3.175, Reach: 12.7}}, 6.35},
		{geom.Inch, []Bit{{Diameter: 3.175, Reach: 22}}, 6.35},
	} {
		work, faults := Prepare(Part{Panel: panel, MinThickness: 12, MaxThickness: 12}, Settings{Bits: c.bits, Overcut: 1, SmallPart: 100, Unit: c.unit})
		for _, f := range faults {
			if f.IsError() {
				t.Fatalf("%+v: %+v", c, f)
			}
		}
		for _, pin := range work.Pins {
			if _, r, round := pin.AsCircle(); !round || math.Abs(2*r-c.want) > 1e-9 {
				t.Errorf("%+v: a pin of %v", c, 2*r)
			}
		}
		if len(work.Pins) != 2 {
			t.Errorf("%+v: %d pins", c, len(work.Pins))
		}
	}
}
