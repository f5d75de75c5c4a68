package mill

import (
	"strings"
	"testing"

	"drawerwright/geom"
)

// engraved is a panel of 300 x 100 with a groove from y 20 to 26 and dados at both ends.
func engraved(face geom.Face, area geom.Rect) Part {
	p := panel(geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(0, 20, 300, 26)}, geom.Pocket{Kind: geom.Dado, Depth: 5, Outline: geom.Rectangle(140, 0, 146, 100)})
	// One stroke, twice as long as it is high, so that it shows which way it runs.
	p.Engraving = &Engraving{Face: face, Area: area, Lines: [][]geom.Point{{{X: 0, Y: 0}, {X: 2, Y: 1}}}, Wide: 2}
	return p
}

func boxFrom(x0, y0, x1, y1 float64) geom.Rect {
	return geom.Rect{Min: geom.Point{X: x0, Y: y0}, Max: geom.Point{X: x1, Y: y1}}
}

// TestEngraving: five diameters high in the middle of its area, but clear of the dado there
// by half the bit, the web, and the overcut; with the bit that engraves, which cuts nothing
// else.
func TestEngraving(t *testing.T) {
	s := settings(Bit{Name: "six", Diameter: 6}, Bit{Name: "point", Diameter: 1, Engraves: true})
	s.Engrave.Depth = 0.3
	w := mustPrepare(t, engraved(geom.Inside, boxFrom(0, 0, 300, 20)), s)
	c := w.find(EngravingOperation)
	if c.Bit != 1 || c.Depth != 0.3 || c.Remaining != 11.7 || len(c.Path) != 2 || w.Engraved == nil || !w.Engraved.Room.IsEmpty() || w.Engraved.Height != 6 {
		t.Fatalf("%+v, %+v", c, w.Engraved)
	}
	// The middle is at 150: 12 long from 144 to 156. The nearest place, in steps of 1, that
	// is 0.5 + 0.8 beyond the dado's end at 146 begins at 148.
	if a, b := c.Path[0].Point, c.Path[1].Point; a != (geom.Point{X: 148, Y: 7}) || b != (geom.Point{X: 160, Y: 13}) {
		t.Errorf("from %v to %v", a, b)
	}
	for _, other := range w.Cuts {
		if other.Bit == 1 && other.Operation != EngravingOperation {
			t.Errorf("the bit for numbers cuts a %s", other.Operation)
		}
	}
	if last := w.Cuts[len(w.Cuts)-1].Operation; last != Profile {
		t.Errorf("%s is the last", last)
	}
	// On the underside of a panel without pockets, which is then cut out from there, it runs
	// the other way in panel coordinates.
	under := engraved(geom.Outside, boxFrom(0, 0, 300, 100))
	under.Pockets = nil
	w = mustPrepare(t, under, s)
	c = w.find(EngravingOperation)
	if a, b := c.Path[0].Point, c.Path[1].Point; c.Face != geom.Outside || a != (geom.Point{X: 156, Y: 47}) || b != (geom.Point{X: 144, Y: 53}) || len(w.Faces) != 1 || w.Faces[0] != geom.Outside || w.find(Profile).Face != geom.Outside {
		t.Errorf("%+v on %v from %v to %v", c, w.Faces, a, b)
	}
}

// TestEngravingLeftOut: where there is no room it is left out, and said why.
func TestEngravingLeftOut(t *testing.T) {
	for name, c := range map[string]struct {
		area   geom.Rect
		bit    float64
		height float64
		why    string
	}{
		"too low for the bit":     {boxFrom(0, 0, 300, 20), 6, 0, "too small for the bit fine of 6 mm: they have to be 24 mm high"},
		"too low for the height":  {boxFrom(0, 0, 300, 20), 1, 18, "clear of edges and cuts"},
		"too small for the bit":   {boxFrom(0, 0, 300, 20), 3, 10, "they have to be 12 mm high"},
		"all of it a groove":      {boxFrom(0, 15, 300, 30), 1, 0, "clear of edges and cuts"},
		"too short":               {boxFrom(0, 0, 10, 20), 1, 0, "clear of edges and cuts"},
		"beyond the panel's edge": {boxFrom(290, -50, 310, 20), 1, 0, "clear of edges and cuts"},
	} {
		s := settings(Bit{Name: "fine", Diameter: c.bit})
		s.Engrave = Engrave{Depth: 0.3, Height: c.height}
		w, _ := Prepare(engraved(geom.Inside, c.area), s)
		if w.Engraved == nil || !strings.Contains(w.Engraved.Room.In(geom.Millimeter), c.why) {
			t.Errorf("%s: %+v, want %q", name, w.Engraved, c.why)
		}
		for _, k := range w.Cuts {
			if k.Operation == EngravingOperation {
				t.Errorf("%s: engraved all the same", name)
			}
		}
	}
}
