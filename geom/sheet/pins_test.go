package sheet

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/mill"
)

func TestPinFor(t *testing.T) {
	short := mill.Bit{Name: "short", Diameter: 4, Reach: 12}
	long, wide := mill.Bit{Name: "long", Diameter: 6, Reach: 30}, mill.Bit{Name: "wide", Diameter: 10, Reach: 30}
	parts := []CutPart{{Bits: []mill.Bit{short, long, wide, {Name: "point", Diameter: 1, Engraves: true}}}}
	// The narrowest that reaches 12 + 5 deep, for a pin of 6.
	if p := PinFor(parts, 12, 0, geom.Millimeter); p != (Pin{3, long}) || !p.Reaches(geom.LengthOf(Depth(12))) {
		t.Errorf("%+v", p)
	}
	if p := PinFor(parts, 12, 8, geom.Millimeter); p.Radius != 4 {
		t.Errorf("a pin of 8 is asked for: %+v", p)
	}
	only := []CutPart{{Bits: []mill.Bit{short}}}
	if p := PinFor(only, 12, 0, geom.Millimeter); p.Bit != short || p.Reaches(geom.LengthOf(Depth(12))) {
		t.Errorf("the only bit reaches 12 mm of 17: %+v", p)
	}
	own := parts[0]
	own.Work.Cuts = []mill.Cut{{Operation: mill.Registering, Bit: 2, Outline: geom.Circle(geom.Point{}, 5)}}
	for _, list := range [][]CutPart{{own, parts[0]}, {parts[0], own}} {
		if p := PinFor(list, 12, 0, geom.Millimeter); p != (Pin{5, wide}) {
			t.Errorf("the parts have holes of 10: %+v", p)
		}
	}
	if p := PinFor([]CutPart{{}}, 12, 0, geom.Millimeter); p != (Pin{}) {
		t.Errorf("no router, and %+v", p)
	}
}

func TestPinDistances(t *testing.T) {
	p := Pin{Radius: 3}
	if p.MinFromEdge() != 6 || p.TooNear(6) || !p.TooNear(5.99) || p.Beyond(7) != 13 { // 3 + 3, 3 + 3 + 7
		t.Errorf("least %g, beyond %g", p.MinFromEdge(), p.Beyond(7))
	}
}

// TestPlaces: each hole falls on one when the sheet is turned over end for end, on none when
// it is turned top to bottom, and all are clear of what is kept out.
func TestPlaces(t *testing.T) {
	s := Standing{Radius: 3, FromEdge: 6, Three: true, Short: [2]float64{3.5, 3.5}}
	const length, width = 1500, 1200
	for _, areas := range [][]geom.Rect{nil, {{Min: geom.Point{X: 0, Y: 390}, Max: geom.Point{X: 40, Y: 420}}}} {
		list, ok := s.Places(length, width, areas)
		if !ok || len(list) != 3 || list[0].X != 9.5 {
			t.Fatalf("%v, %v", list, ok)
		}
		if areas == nil && math.Abs(list[0].Y-400) > 1e-9 {
			t.Errorf("the first is at %v, not at a third of the width", list[0])
		}
		for _, q := range list {
			ends, over := geom.Point{X: length - q.X, Y: q.Y}, geom.Point{X: q.X, Y: width - q.Y}
			at := func(r geom.Point) bool {
				return slices.ContainsFunc(list, func(p geom.Point) bool { return p.To(r) < 2*s.Radius })
			}
			if !at(ends) || at(over) {
				t.Errorf("%v: end for end on a pin %v, top to bottom %v", q, at(ends), at(over))
			}
			for _, k := range areas {
				if k.Grow(s.Radius + PinWeb).Overlaps(geom.Around(q)) {
					t.Errorf("%v is in %v", q, k)
				}
			}
		}
	}
	if list, ok := s.Places(length, width, []geom.Rect{{Max: geom.Point{X: length, Y: width}}}); ok {
		t.Errorf("all is kept out, and pins stand at %v", list)
	}
	if list, ok := (Standing{}).Places(length, width, nil); !ok || list != nil {
		t.Errorf("no pins: %v, %v", list, ok)
	}
}

// TestVisiblyOff: on a strip of 34 a third of the width is 11.3, which turned top to bottom
// is 34 - 2 x 11.3 = 11.3 off: less than the 12 that one sees. 5 lower it is 21.3.
func TestVisiblyOff(t *testing.T) {
	list, ok := (Standing{Radius: 3, FromEdge: 6}).Places(500, 34, nil)
	if !ok || math.Abs(list[0].Y-(34.0/3-5)) > 1e-9 {
		t.Errorf("%v, %v", list, ok)
	}
}
