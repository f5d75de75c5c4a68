package dxf

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/dxf/dxftest"

	"pgregory.net/rapid"
)

// micrometer is 1 µm in drawing units, by unit: 0.001 mm, or 0.001/25.4 in.
var micrometer = map[Unit]float64{Millimeter: 0.001, Inch: 0.001 / 25.4}

// bulgeTolerance is half of the ninth decimal.
const bulgeTolerance = 0.5e-9 + 1e-15

// shape is what was drawn, kept to compare with what is read.
type shape struct {
	layer  string
	closed bool
	v      []Vertex // of a polyline
	circle [3]float64
	height [2]float64 // elevation and thickness
}

// genShape draws a polyline whose neighboring vertices stay apart when rounded,
// or a circle.
func genShape(t *rapid.T, layer string) shape {
	coordinate := rapid.Float64Range(-4000, 4000)
	if rapid.IntRange(0, 4).Draw(t, "circle") == 0 {
		return shape{layer: layer, circle: [3]float64{
			coordinate.Draw(t, "cx"), coordinate.Draw(t, "cy"), rapid.Float64Range(0.01, 500).Draw(t, "r"),
		}}
	}
	s := shape{layer: layer, closed: rapid.Bool().Draw(t, "closed")}
	n := rapid.IntRange(2, 12).Draw(t, "n")
	for i := range n {
		p := Vertex{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")}
		// Lanes 0.01 apart keep any two of the vertices apart.
		p.X = math.Trunc(p.X) + 0.01*float64(i) + 0.00123
		if rapid.Bool().Draw(t, "bent") {
			p.Bulge = rapid.Float64Range(-3, 3).Draw(t, "bulge")
		}
		s.v = append(s.v, p)
	}
	if s.closed && n == 2 {
		s.v[0].Bulge = 0.5
	}
	return s
}

func (s shape) draw(d *Drawing) {
	l := d.Layer(s.layer, len(s.layer)%255+1)
	d.Level(s.height[0], s.height[1])
	if s.v == nil {
		d.Circle(l, s.circle[0], s.circle[1], s.circle[2])
		return
	}
	d.Polyline(l, Course(s.closed), s.v)
}

// differs says how what was read differs from what was drawn.
func (s shape) differs(e dxfread.Entity, u Unit) string {
	apart := func(a, b float64) bool { return !(math.Abs(a-b) <= micrometer[u]) }
	switch {
	case e.Layer != s.layer:
		return "layer " + e.Layer
	case apart(e.Low, s.height[0]) || apart(e.High, s.height[0]) || apart(e.Thickness, s.height[1]):
		return fmt.Sprintf("from %v to %v, %v thick, want %v", e.Low, e.High, e.Thickness, s.height)
	case s.v == nil:
		if e.Type != "CIRCLE" || apart(e.X, s.circle[0]) || apart(e.Y, s.circle[1]) || apart(e.Radius, s.circle[2]) {
			return fmt.Sprintf("%s %v %v %v, want %v", e.Type, e.X, e.Y, e.Radius, s.circle)
		}
		return ""
	case e.Type == "CIRCLE" || e.Closed != s.closed || len(e.Vertices) != len(s.v):
		return fmt.Sprintf("%s, closed %t, %d vertices", e.Type, e.Closed, len(e.Vertices))
	}
	for i, got := range e.Vertices {
		want := s.v[i]
		if !s.closed && i == len(s.v)-1 {
			want.Bulge = 0
		}
		if apart(got.X, want.X) || apart(got.Y, want.Y) || !(math.Abs(got.Bulge-want.Bulge) <= bulgeTolerance) {
			return fmt.Sprintf("vertex %d: %v, want %v", i, got, want)
		}
	}
	return ""
}

// Whatever is drawn comes back from the file to 1 µm, in both versions and
// units, and the file breaks no rule.
func TestRoundTrip(t *testing.T) {
	for _, v := range []Version{R2000, R12} {
		for _, u := range []Unit{Millimeter, Inch} {
			t.Run(fmt.Sprintf("version %d unit %d", v, u), func(t *testing.T) {
				rapid.Check(t, func(t *rapid.T) { roundTrip(t, v, u) })
			})
		}
	}
}

func roundTrip(t *rapid.T, v Version, u Unit) {
	d := Drawing{Version: v, Unit: u, Comments: rapid.SliceOfN(rapid.String(), 0, 3).Draw(t, "comments")}
	names := rapid.SliceOfN(rapid.StringMatching(`[A-Z0-9_-]{1,31}`), 1, 9).Draw(t, "layers")
	var shapes []shape
	for range rapid.IntRange(0, 20).Draw(t, "shapes") {
		s := genShape(t, rapid.SampledFrom(names).Draw(t, "layer"))
		if rapid.Bool().Draw(t, "raised") {
			s.height = [2]float64{rapid.Float64Range(-100, 100).Draw(t, "elevation"), rapid.Float64Range(-100, 100).Draw(t, "thickness")}
		}
		shapes = append(shapes, s)
		s.draw(&d)
	}
	f, err := dxftest.ReadRaised(&d)
	if err != nil {
		t.Fatal(err)
	}
	if unit := map[Unit]dxfread.Unit{Millimeter: dxfread.Millimeter, Inch: dxfread.Inch}[u]; f.Unit != unit {
		t.Fatalf("unit %v", f.Unit)
	}
	if len(f.Entities) != len(shapes) {
		t.Fatalf("%d entities, want %d", len(f.Entities), len(shapes))
	}
	for i, s := range shapes {
		if diff := s.differs(f.Entities[i], u); diff != "" {
			t.Fatalf("entity %d: %s", i, diff)
		}
	}
	var out bytes.Buffer
	if _, err := d.WriteTo(&out); err != nil {
		t.Fatal(err)
	}
	table, err := dxftest.Layers(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	colors := make(map[string]int)
	for _, l := range table {
		colors[l.Name] = l.Color
	}
	for _, s := range shapes {
		if colors[s.layer] != len(s.layer)%255+1 {
			t.Fatalf("layer %s has color %d", s.layer, colors[s.layer])
		}
	}
}

// The comparison above can fail.
func TestRoundTripComparison(t *testing.T) {
	line := shape{layer: "A", v: []Vertex{{X: 1, Bulge: 0.25}, {X: 2}}}
	circle := shape{layer: "A", circle: [3]float64{1, 2, 3}}
	good := dxfread.Entity{Type: "POLYLINE", Layer: "A", Vertices: []dxfread.Vertex{{X: 1, Bulge: 0.25}, {X: 2}}}
	if diff := line.differs(good, Inch); diff != "" {
		t.Errorf("the same: %s", diff)
	}
	off := func(change func(e *dxfread.Entity)) dxfread.Entity {
		e := good
		e.Vertices = append([]dxfread.Vertex(nil), good.Vertices...)
		change(&e)
		return e
	}
	for i, e := range []dxfread.Entity{
		off(func(e *dxfread.Entity) { e.Layer = "B" }),
		off(func(e *dxfread.Entity) { e.Closed = true }),
		off(func(e *dxfread.Entity) { e.Vertices = e.Vertices[:1] }),
		off(func(e *dxfread.Entity) { e.Vertices[1].X += 0.00005 }), // 1.27 µm
		off(func(e *dxfread.Entity) { e.Vertices[1].Y = math.NaN() }),
		off(func(e *dxfread.Entity) { e.Vertices[0].Bulge += 1e-9 }),
		{Type: "CIRCLE", Layer: "A", X: 1, Y: 2, Radius: 3, Closed: true},
	} {
		if line.differs(e, Inch) == "" {
			t.Errorf("case %d: no difference seen", i)
		}
	}
	if circle.differs(good, Inch) == "" {
		t.Error("a polyline passed for a circle")
	}
}

// A drawing without anything, one without layers drawn on, and one with 300
// layers, among them layer 0 declared, break no rule.
func TestStrictCorners(t *testing.T) {
	for _, v := range []Version{R2000, R12} {
		for _, u := range []Unit{Millimeter, Inch} {
			empty := Drawing{Version: v, Unit: u}
			layers := Drawing{Version: v, Unit: u}
			layers.Layer("A", 1)
			many := Drawing{Version: v, Unit: u, Comments: []string{"a\nb", strings.Repeat("long ", 500)}}
			for i := range 300 {
				l := many.Layer(fmt.Sprintf("LAYER_%d", i), i%255+1)
				many.Polyline(l, Closed, []Vertex{{X: float64(i)}, {X: float64(i) + 1, Bulge: -0.3}, {Y: 5}})
			}
			many.Circle(many.Layer("0", 3), 1, 2, 3)
			large := benchDrawing(t, v, 5000)
			large.Unit = u
			for i, d := range []*Drawing{&empty, &layers, &many, large, sample(v, u)} {
				data := written(t, d)
				if err := dxftest.Strict(data); err != nil {
					t.Errorf("version %d, unit %d, drawing %d: %v", v, u, i, err)
				}
			}
		}
	}
}
