package sheet

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/mill"
	"drawerwright/geom/nest"
)

func TestClearTrim(t *testing.T) {
	mm := func(v float64) int64 { return int64(geom.LengthOf(v)) }
	z := nest.Sheet{Length: mm(1000), Width: mm(500),
		Trim: nest.Trim{Left: mm(10), Right: mm(10), Bottom: mm(10), Top: mm(10)}}
	clamp := geom.Rect{Min: geom.Point{X: 0, Y: 200}, Max: geom.Point{X: 60, Y: 280}}
	// The clamp and what reaches 6 past parts: 66 off the left end.
	want := z.Trim
	want.Left = mm(66)
	if got := ClearTrim(z, []geom.Rect{clamp}, 6); got != want {
		t.Errorf("trims %v, want %v", got, want)
	}
	if got := ClearTrim(z, nil, 6); got != z.Trim {
		t.Errorf("nothing is kept out: %v", got)
	}
	turned := KeptOut([]geom.Rect{clamp}, geom.Outside, 1000)[0]
	if turned.Min.X != 940 || turned.Max.X != 1000 || turned.Min.Y != 200 {
		t.Errorf("turned over it is %v", turned)
	}
	if same := KeptOut([]geom.Rect{clamp}, geom.Inside, 1000)[0]; same != clamp {
		t.Errorf("inside faces up it is %v", same)
	}
}

func TestStrayOf(t *testing.T) {
	part := cutOut(6, 0) // from 100, 100 to 300, 200, and 6 mm round it
	whole := geom.Rect{Max: geom.Point{X: 306, Y: 206}}
	if s, found := StrayOf(part, whole, nil); found {
		t.Errorf("it just fits, and %+v strays", s)
	}
	narrow := geom.Rect{Max: geom.Point{X: 305.99, Y: 206}}
	if s, found := StrayOf(part, narrow, nil); !found || s.KeptOut || s.Bounds.Max.X != 306 {
		t.Errorf("the sheet is too short: %v, %+v", found, s)
	}
	beside := geom.Rect{Min: geom.Point{X: 50, Y: 50}, Max: geom.Point{X: 94, Y: 300}}
	if s, found := StrayOf(part, whole, []geom.Rect{beside}); found {
		t.Errorf("the clamp is just beside it, and %+v strays", s)
	}
	beside.Max.X = 94.1
	if s, found := StrayOf(part, whole, []geom.Rect{beside}); !found || !s.KeptOut {
		t.Errorf("the clamp is cut: %v, %+v", found, s)
	}
	line := CutPart{Bits: []mill.Bit{{Diameter: 6}}, Work: mill.Operations{Cuts: []mill.Cut{{Operation: "dado",
		Path: []geom.Vertex{{Point: geom.Point{X: 2, Y: 10}}, {Point: geom.Point{X: 50, Y: 10}}}}}}}
	if _, found := StrayOf(line, whole, nil); !found { // the bit's radius reaches 1 mm past the sheet
		t.Error("a bit along a line 2 mm from the edge stays on the sheet")
	}
}
