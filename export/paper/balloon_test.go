package paper

import (
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/picture"

	"pgregory.net/rapid"
)

// circles are the balloons of a drawing: what is filled with white.
func circles(d drawing.Drawing) (list []geom.Rect) {
	for _, s := range d.Shapes {
		if s.Fill == drawing.White {
			list = append(list, geom.Loop(s.Paths[0]).Bounds())
		}
	}
	return list
}

// TestBalloonsKeepApart: up to twelve pieces in a picture of 150 x 100 mm, a few lines
// through it: each has its balloon; no two balloons touch, none leaves the drawing, and each has
// its number in it.
func TestBalloonsKeepApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := func(name string) geom.Point {
			return geom.Point{X: rapid.Float64Range(0, 150).Draw(t, name+" x"),
				Y: rapid.Float64Range(0, 100).Draw(t, name+" y")}
		}
		s := Scenery{Band: WideBand}
		s.Lines = []picture.Segment{{A: geom.Point{}, B: geom.Point{X: 150}}, {A: geom.Point{}, B: geom.Point{Y: 100}},
			{A: place("from"), B: place("to")}}
		n := rapid.IntRange(1, 12).Draw(t, "numbers")
		for i := range n {
			p := geom.Point{X: float64(37*(i%4)) + rapid.Float64Range(3, 30).Draw(t, "x"),
				Y: float64(33*(i/4)) + rapid.Float64Range(3, 27).Draw(t, "y")}
			s.Areas = append(s.Areas, Area{Loops: []geom.Loop{geom.Rectangle(p.X-2, p.Y-2, p.X+2, p.Y+2)},
				Mark: "12", Tint: drawing.Tint{200, 200, 200}})
		}
		d := s.Draw(geom.Point{X: 180, Y: 130})
		list := circles(d)
		if len(list) != n {
			t.Fatalf("%d balloons for %d numbers", len(list), n)
		}
		for i, a := range list {
			if a.Min.X < 0 || a.Min.Y < 0 || a.Max.X > d.Width || a.Max.Y > d.Height {
				t.Errorf("balloon %d leaves the drawing: %v", i+1, a)
			}
			for k, b := range list[:i] {
				if a.Center().To(b.Center()) < a.Width() {
					t.Errorf("balloons %d and %d touch", k+1, i+1)
				}
			}
			if box := d.Texts[i].Box(); box.Center().To(a.Center()) > 1 || !a.Contains(box) {
				t.Errorf("%s stands at %v, its balloon at %v", d.Texts[i].String, box, a)
			}
		}
	})
}
