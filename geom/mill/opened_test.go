package mill

import (
	"testing"

	"drawerwright/geom"
)

// TestOpened: two parts of 100 x 60 side by side, cut out with a bit of 6, which takes a band
// of 6.05 about each. Slots in these bands are open; one that takes the 2 mm of waste between
// the bands of parts 14.1 apart, or the middle of a notch wider than two bits, is not.
func TestOpened(t *testing.T) {
	bits := []Bit{{Name: "six", Diameter: 6}}
	plain := geom.Rectangle(0, 0, 100, 60)
	notched := func(wide float64) geom.Loop { // from above, 20 deep
		return geom.Polygon(geom.Point{}, geom.Point{X: 100}, geom.Point{X: 100, Y: 60},
			geom.Point{X: 50 + wide/2, Y: 60}, geom.Point{X: 50 + wide/2, Y: 40},
			geom.Point{X: 50 - wide/2, Y: 40}, geom.Point{X: 50 - wide/2, Y: 60}, geom.Point{Y: 60})
	}
	beside := geom.Rectangle(100, 5, 106.05, 55)
	for _, c := range []struct {
		name  string
		part  geom.Loop
		apart float64
		slot  geom.Loop
		want  bool
	}{
		{"in one band", plain, 30, beside, true},
		{"round its corner", plain, 30, geom.Polygon(geom.Point{X: 80, Y: -6.05}, geom.Point{X: 106.05, Y: -6.05},
			geom.Point{X: 106.05, Y: 30}, geom.Point{X: 100, Y: 30}, geom.Point{X: 100}, geom.Point{X: 80}), true},
		{"wider than the band", plain, 30, geom.Rectangle(100, 5, 106.2, 55), false},
		{"two bands that meet", plain, 12.05, geom.Rectangle(100, 5, 112.05, 55), true},
		{"waste between two bands", plain, 14.1, geom.Rectangle(100, 5, 114.1, 55), false},
		{"a notch of two bits", notched(11.9), 30, geom.Rectangle(40, 40, 60, 66.05), true},
		{"a wider one", notched(12.5), 30, geom.Rectangle(40, 60, 60, 66.05), false},
	} {
		outlines := []Cut{{Operation: Profile, Outline: c.part},
			{Operation: Profile, Outline: geom.Rectangle(100+c.apart, 0, 200+c.apart, 60)}}
		if got := opened([]Cut{{Operation: Slotting, Outline: c.slot}}, outlines, bits); got != c.want {
			t.Errorf("%s: %t, want %t", c.name, got, c.want)
		}
	}
	if opened([]Cut{{Outline: beside}}, nil, bits) {
		t.Error("open without any outline")
	}
	if opened([]Cut{{Outline: beside}}, []Cut{{Outline: plain, Bit: -1}}, bits) {
		t.Error("open by a saw")
	}
}

// TestBeginAt: slots that two outlines opened begin at the shallower of them, at 0 where one of
// these left wood.
func TestBeginAt(t *testing.T) {
	bits := []Bit{{Name: "six", Diameter: 6}}
	slots := []Cut{{Operation: Slotting, Outline: geom.Rectangle(100, 5, 112.05, 55)}}
	part := func(x float64) []Cut {
		return []Cut{{Operation: Profile, Outline: geom.Rectangle(x, 0, x+100, 60)}}
	}
	for apart, want := range map[float64]float64{12.05: 10.5, 14.1: 0} {
		for _, deep := range [][2]float64{{12, 10.5}, {10.5, 12}} {
			floors := []Floor{{deep[0], part(0)}, {deep[1], part(100 + apart)}}
			if got := BeginAt(slots, floors, bits); got != want {
				t.Errorf("parts %g apart: %g, want %g", apart, got, want)
			}
		}
	}
	if got := BeginAt(slots, nil, bits); got != 0 {
		t.Errorf("without outlines they begin at %g", got)
	}
}
