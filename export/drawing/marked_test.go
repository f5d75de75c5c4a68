package drawing

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestMarked: a drawing as data has the paths and places that its SVG has, and its roles.
func TestMarked(t *testing.T) {
	d := Drawing{Width: 40, Height: 30}
	d.Loops(Thin, 0.5, geom.Loop{{Point: geom.Point{X: 5, Y: 5}, Bulge: 1}, {Point: geom.Point{X: 9, Y: 5}}})
	d.Line(Thin, geom.Point{X: 1, Y: 2}, geom.Point{X: 3, Y: 4})
	d.Shapes[0].Role, d.Shapes[1].Role = "disc", "line"
	d.Write(Text{String: "12 < 13", At: geom.Point{X: 7, Y: 8}, Size: 2.5, Align: Right, Role: "number"})
	var svg bytes.Buffer
	if err := d.WriteSVG(&svg, "drawn"); err != nil {
		t.Fatal(err)
	}
	m := d.Marked()
	if len(m.Shapes) != 2 || m.Shapes[0].Role != "disc" || m.Shapes[1].Role != "line" {
		t.Fatalf("the shapes are %+v", m.Shapes)
	}
	for _, s := range m.Shapes {
		if !strings.Contains(svg.String(), `<path d="`+s.Path+`"`) {
			t.Errorf("the SVG has no path %s", s.Path)
		}
	}
	want := MarkedText{"number", 7, 22, 2.5, m.Texts[0].Length, "end", "12 < 13"}
	if m.Texts[0] != want || math.Abs(want.Length-d.Texts[0].Box().Width()) > 1e-6 {
		t.Errorf("the text is %+v, not %+v", m.Texts[0], want)
	}
	if !strings.Contains(svg.String(), `text-anchor="end" x="7" y="22"`) {
		t.Errorf("the SVG has the text elsewhere: %s", svg.String())
	}
}
