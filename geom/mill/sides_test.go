package mill

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestSides: tabs may stand on the sides of the box about a panel that no part bears on,
// clear of mouths of pockets and of corners by the slot beside them.
func TestSides(t *testing.T) {
	s := settings(six)
	s.Tabs = Tabs{Width: 8, Height: 2, Spacing: 100}
	p := panel(dado(50, 58)) // 300 x 100, open at the bottom and at the top
	p.Outline = p.Outline.With(geom.Mating, 1, 3)
	w := mustPrepare(t, p, s)
	const room = 2 * (6 + SlotRoom)
	for side, want := range [4][]geom.Interval{0: {{Min: room, Max: 50 - room}, {Min: 58 + room, Max: 300 - room}}, 2: {{Min: room, Max: 50 - room}, {Min: 58 + room, Max: 300 - room}}} {
		if len(w.Sides[side]) != len(want) {
			t.Errorf("side %d: %v, want %v", side, w.Sides[side], want)
			continue
		}
		for i, f := range w.Sides[side] {
			if math.Abs(f.Min-want[i].Min) > 1e-9 || math.Abs(f.Max-want[i].Max) > 1e-9 {
				t.Errorf("side %d: %v, want %v", side, f, want[i])
			}
		}
	}
}

// TestFollow: a slot along the box about a notched outline is brought into the notch, arcs
// and all; one along a plain rectangle stays.
func TestFollow(t *testing.T) {
	slot := geom.Rectangle(10, 100, 290, 106)
	if got := Follow(slot, geom.Rectangle(0, 0, 300, 100)); got.Area() != slot.Area() {
		t.Errorf("%v", got)
	}
	half := geom.Loop{{Point: geom.Point{}}, {Point: geom.Point{X: 300}}, {Point: geom.Point{X: 300, Y: 100}}, {Point: geom.Point{X: 180, Y: 100}, Bulge: -1},
		{Point: geom.Point{X: 120, Y: 100}}, {Point: geom.Point{Y: 100}}} // a half round of 30
	got := Follow(slot, half)
	if want := 280*6 + math.Pi*30*30/2; math.Abs(got.Area()-want) > 1e-6 {
		t.Errorf("area %g, want %g: %v", got.Area(), want, got)
	}
	// Past the first corner of the outline: two sides of it, and a notch of 20 x 10 at the left.
	left := geom.Polygon(geom.Point{}, geom.Point{X: 300}, geom.Point{X: 300, Y: 100}, geom.Point{Y: 100}, geom.Point{Y: 60}, geom.Point{X: 10, Y: 60}, geom.Point{X: 10, Y: 40}, geom.Point{Y: 40})
	corner := geom.Polygon(geom.Point{X: -6, Y: -6}, geom.Point{X: 50, Y: -6}, geom.Point{X: 50}, geom.Point{}, geom.Point{Y: 90}, geom.Point{X: -6, Y: 90})
	if got := Follow(corner, left); math.Abs(got.Area()-(corner.Area()+200)) > 1e-6 {
		t.Errorf("area %g, want %g: %v", got.Area(), corner.Area()+200, got)
	}
	if got := Follow(geom.Rectangle(10, 110, 290, 116), half); got.Area() != 280*6 {
		t.Errorf("a slot that is not beside the outline: %v", got)
	}
}
