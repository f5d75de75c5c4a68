package dxf

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"
)

// square is a closed square of side 10.
var square = []Vertex{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}}

// Each broken rule is named with its layer, its entity, its vertex and its
// value, and nothing is written.
func TestErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	long := strings.Repeat("L", 32)
	for _, c := range []struct {
		name string
		draw func(d *Drawing, l LayerID)
		want Error
	}{
		{"nan x", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, []Vertex{{}, {X: nan}, {Y: 1}}) },
			Error{ErrNotFinite, "CUT", 1, 1, "x", nan}},
		{"inf y", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, []Vertex{{}, {X: 1}, {Y: -inf}}) },
			Error{ErrNotFinite, "CUT", 1, 2, "y", -inf}},
		{"nan bulge", func(d *Drawing, l LayerID) { d.Polyline(l, Open, []Vertex{{}, {X: 1, Bulge: nan}}) },
			Error{ErrNotFinite, "CUT", 1, 1, "bulge", nan}},
		{"x out of range", func(d *Drawing, l LayerID) { d.Polyline(l, Open, []Vertex{{X: 1e6 + 1}, {X: 1}}) },
			Error{ErrOutOfRange, "CUT", 1, 0, "x", 1e6 + 1}},
		{"y out of range", func(d *Drawing, l LayerID) { d.Polyline(l, Open, []Vertex{{X: 1}, {Y: -1.5e6}}) },
			Error{ErrOutOfRange, "CUT", 1, 1, "y", -1.5e6}},
		{"bulge out of range", func(d *Drawing, l LayerID) { d.Polyline(l, Open, []Vertex{{Bulge: 1e7}, {Y: 1}}) },
			Error{ErrOutOfRange, "CUT", 1, 0, "bulge", 1e7}},
		{"arc out of range", func(d *Drawing, l LayerID) { d.Polyline(l, Open, []Vertex{{Bulge: 1e5}, {Y: 100}}) },
			Error{ErrOutOfRange, "CUT", 1, 0, "bulge", 1e5}},
		{"no vertex", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, nil) },
			Error{ErrTooFewVertices, "CUT", 1, -1, "vertices", 0}},
		{"one vertex, open", func(d *Drawing, l LayerID) { d.Polyline(l, Open, square[:1]) },
			Error{ErrTooFewVertices, "CUT", 1, -1, "vertices", 1}},
		{"one vertex, closed", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, []Vertex{{Bulge: 1}}) },
			Error{ErrTooFewVertices, "CUT", 1, -1, "vertices", 1}},
		{"two straight edges", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, square[:2]) },
			Error{ErrTooFewVertices, "CUT", 1, -1, "vertices", 2}},
		{"a bulge that rounds to none", func(d *Drawing, l LayerID) { d.Polyline(l, Closed, []Vertex{{Bulge: 1e-10}, {X: 1}}) },
			Error{ErrTooFewVertices, "CUT", 1, -1, "vertices", 2}},
		{"radius 0", func(d *Drawing, l LayerID) { d.Circle(l, 1, 2, 0) },
			Error{ErrRadius, "CUT", 1, -1, "radius", 0}},
		{"radius below 0", func(d *Drawing, l LayerID) { d.Circle(l, 1, 2, -3) },
			Error{ErrRadius, "CUT", 1, -1, "radius", -3}},
		{"radius that rounds to 0", func(d *Drawing, l LayerID) { d.Circle(l, 1, 2, 4e-7) },
			Error{ErrRadius, "CUT", 1, -1, "radius", 4e-7}},
		{"radius nan", func(d *Drawing, l LayerID) { d.Circle(l, 1, 2, nan) },
			Error{ErrNotFinite, "CUT", 1, -1, "radius", nan}},
		{"center out of range", func(d *Drawing, l LayerID) { d.Circle(l, 1, -2e6, 3) },
			Error{ErrOutOfRange, "CUT", 1, -1, "y", -2e6}},
		{"circle out of range", func(d *Drawing, l LayerID) { d.Circle(l, 9e5, 0, 2e5) },
			Error{ErrOutOfRange, "CUT", 1, -1, "radius", 2e5}},
		{"no layer", func(d *Drawing, l LayerID) { d.Circle(0, 1, 2, 3) },
			Error{ErrUnknownLayer, "", 1, -1, "layer number", 0}},
		{"another drawing's layer", func(d *Drawing, l LayerID) { d.Polyline(l+1, Closed, square) },
			Error{ErrUnknownLayer, "", 1, -1, "layer number", 2}},
		{"below the layers", func(d *Drawing, l LayerID) { d.Polyline(-1, Closed, square) },
			Error{ErrUnknownLayer, "", 1, -1, "layer number", -1}},
		{"layer name", func(d *Drawing, l LayerID) { d.Layer("Cut", 2) },
			Error{ErrLayerName, "Cut", -1, -1, "place of the first wrong character", 2}},
		{"long layer name", func(d *Drawing, l LayerID) { d.Version = R12; d.Layer(long, 2) },
			Error{ErrLayerNameLong, long, -1, -1, "characters, where 31 are allowed", 32}},
		{"color 0", func(d *Drawing, l LayerID) { d.Layer("A", 0) },
			Error{ErrLayerColor, "A", -1, -1, "color", 0}},
		{"color 256", func(d *Drawing, l LayerID) { d.Layer("A", 256) },
			Error{ErrLayerColor, "A", -1, -1, "color", 256}},
		{"another color", func(d *Drawing, l LayerID) { d.Layer("CUT", 2) },
			Error{ErrColorClash, "CUT", -1, -1, "color", 2}},
		{"long name, found when written", func(d *Drawing, l LayerID) { d.Layer(long, 2); d.Version = R12 },
			Error{ErrLayerNameLong, long, -1, -1, "characters, where 31 are allowed", 32}},
		{"version", func(d *Drawing, l LayerID) { d.Version = 2 },
			Error{ErrVersion, "", -1, -1, "version", 2}},
		{"unit", func(d *Drawing, l LayerID) { d.Unit = -1 },
			Error{ErrUnit, "", -1, -1, "unit", -1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var d Drawing
			l := d.Layer("CUT", 1)
			d.Polyline(l, Closed, square)
			c.draw(&d, l)
			kept := d.err
			d.Circle(9, nan, 0, 0) // the first error stays
			if kept != nil && d.err != kept {
				t.Errorf("a later error took the first one's place: %v", d.err)
			}
			if kept == nil {
				d.err = nil // found when written
			}
			var out bytes.Buffer
			n, err := d.WriteTo(&out)
			if n != 0 || out.Len() != 0 {
				t.Errorf("%d bytes written, %d said", out.Len(), n)
			}
			var got *Error
			if !errors.As(err, &got) || !errors.Is(err, c.want.Rule) {
				t.Fatalf("%v, want the rule %v", err, c.want.Rule)
			}
			same := got.Value == c.want.Value || math.IsNaN(got.Value) && math.IsNaN(c.want.Value)
			got.Value, c.want.Value = 0, 0
			if !same || *got != c.want {
				t.Errorf("%v, want %v", err, &c.want)
			}
		})
	}
}

func TestErrorMessage(t *testing.T) {
	var d Drawing
	l := d.Layer("DADO_INSIDE_5-99MM", 1)
	d.Polyline(l, Closed, square)
	d.Polyline(l, Closed, []Vertex{{}, {X: 1}, {X: 2e6}})
	const want = `dxf: layer "DADO_INSIDE_5-99MM", entity 1, vertex 2, x = 2e+06: beyond what a drawing may hold`
	if got := d.err; got == nil || got.Error() != want {
		t.Errorf("%v, want %s", got, want)
	}
}

// The limits themselves are allowed.
func TestLimits(t *testing.T) {
	var d Drawing
	l := d.Layer("A", 255)
	d.Polyline(l, Open, []Vertex{{X: -MaxCoordinate, Y: MaxCoordinate}, {X: MaxCoordinate, Y: -MaxCoordinate}})
	d.Circle(l, 0, 0, MaxCoordinate)
	d.Circle(l, 0, 0, 5e-7)
	d.Polyline(l, Closed, []Vertex{{Bulge: MaxBulge}, {X: 0.001}})
	d.Polyline(l, Closed, []Vertex{{X: 1}, {X: 2, Bulge: 1e-9}})
	if err := d.err; err != nil {
		t.Error(err)
	}
}

// A layer of a name that is known is the same, and a fault leaves nothing drawn.
func TestLayerAndFault(t *testing.T) {
	var d Drawing
	a, b := d.Layer("A", 1), d.Layer("B", 2)
	if a == b || a == 0 || b == 0 {
		t.Fatalf("layers %d and %d", a, b)
	}
	if again := d.Layer("A", 1); again != a {
		t.Errorf("layer A is %d, then %d", a, again)
	}
	d.Polyline(a, Closed, square)
	before := d.extents
	d.Polyline(a, Closed, []Vertex{{X: -5}, {X: 500}, {X: math.NaN()}})
	if len(d.entities) != 1 || len(d.nodes) != 4 || d.extents != before {
		t.Errorf("%d entities, %d vertices, extents %v after a fault", len(d.entities), len(d.nodes), d.extents)
	}
	if id := d.Layer("C", 3); id != 0 {
		t.Errorf("layer %d after a fault", id)
	}
}

// Vertices are copied.
func TestCopies(t *testing.T) {
	var d Drawing
	v := []Vertex{{X: 1}, {X: 2}, {Y: 3}}
	d.Polyline(d.Layer("A", 1), Closed, v)
	before := written(t, &d)
	v[0].X = 99
	if after := written(t, &d); !bytes.Equal(before, after) {
		t.Error("a vertex changed after it was drawn")
	}
}

// written gives the bytes of a drawing's file.
func written(tb testing.TB, d *Drawing) []byte {
	tb.Helper()
	var out bytes.Buffer
	n, err := d.WriteTo(&out)
	if err != nil {
		tb.Fatal(err)
	}
	if n != int64(out.Len()) {
		tb.Fatalf("%d bytes said, %d written", n, out.Len())
	}
	return out.Bytes()
}
