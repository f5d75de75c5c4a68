package dxfread_test

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"

	"pgregory.net/rapid"
)

// rounded gives the float64 nearest to the decimal that the writer makes of v:
// six decimals of a length, nine of a bulge.
func rounded(v float64, decimals float64) float64 {
	one := math.Pow(10, decimals)
	if v = math.Round(v*one) / one; v == 0 {
		return 0 // not the negative one
	}
	return v
}

// drawn draws an entity in each of several ways, and gives what must be read.
func drawn(t *rapid.T, d *dxf.Drawing, layer string) dxfread.Entity {
	l := d.Layer(layer, 1)
	length := rapid.Float64Range(-9999, 9999)
	if rapid.IntRange(0, 3).Draw(t, "circle") == 0 {
		x, y, r := length.Draw(t, "x"), length.Draw(t, "y"), rapid.Float64Range(0.001, 999).Draw(t, "r")
		d.Circle(l, x, y, r)
		return dxfread.Entity{Type: "CIRCLE", Layer: layer, Closed: true, X: rounded(x, 6), Y: rounded(y, 6), Radius: rounded(r, 6)}
	}
	e := dxfread.Entity{Type: "LWPOLYLINE", Layer: layer, Closed: rapid.Bool().Draw(t, "closed")}
	if d.Version == dxf.R12 {
		e.Type = "POLYLINE"
	}
	n := rapid.IntRange(3, 40).Draw(t, "n")
	vertices := make([]dxf.Vertex, n)
	for i := range vertices {
		vertices[i] = dxf.Vertex{X: length.Draw(t, "x"), Y: length.Draw(t, "y")}
		if rapid.Bool().Draw(t, "bent") {
			vertices[i].Bulge = rapid.Float64Range(-5, 5).Draw(t, "bulge")
		}
		read := dxfread.Vertex{X: rounded(vertices[i].X, 6), Y: rounded(vertices[i].Y, 6), Bulge: rounded(vertices[i].Bulge, 9)}
		if !e.Closed && i == n-1 {
			read.Bulge = 0
		}
		e.Vertices = append(e.Vertices, read)
	}
	d.Polyline(l, dxf.Course(e.Closed), vertices)
	return e
}

// writtenAndRead gives what is read of what is written.
func writtenAndRead(t *rapid.T, d *dxf.Drawing) *dxfread.File {
	var out bytes.Buffer
	if _, err := d.WriteTo(&out); err != nil {
		t.Fatal(err)
	}
	f, err := dxfread.Parse(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Whatever the writer writes is read to the last bit, in both versions and
// units.
func TestRoundTrip(t *testing.T) {
	units := map[dxf.Unit]dxfread.Unit{dxf.Millimeter: dxfread.Millimeter, dxf.Inch: dxfread.Inch}
	versions := map[dxf.Version]string{dxf.R2000: "AC1015", dxf.R12: "AC1009"}
	for v, version := range versions {
		for u, unit := range units {
			t.Run(fmt.Sprint(version, unit), func(t *testing.T) {
				rapid.Check(t, func(t *rapid.T) {
					d := dxf.Drawing{Version: v, Unit: u, Comments: []string{rapid.StringMatching(`[ -~]{0,40}`).Draw(t, "comment")}}
					names := rapid.SliceOfNDistinct(rapid.StringMatching(`[A-Z_-][A-Z0-9_-]{0,30}`), 1, 9, rapid.ID[string]).Draw(t, "layers")
					want := &dxfread.File{Version: version, Unit: unit, Layers: append([]string{"0"}, names...)}
					for _, name := range names {
						d.Layer(name, 1)
					}
					for range rapid.IntRange(0, 20).Draw(t, "entities") {
						want.Entities = append(want.Entities, drawn(t, &d, rapid.SampledFrom(names).Draw(t, "layer")))
					}
					got := writtenAndRead(t, &d)
					if len(got.Comments) < 1 || got.Comments[0] != "Units: "+map[dxfread.Unit]string{dxfread.Millimeter: "millimeters", dxfread.Inch: "inches"}[unit] {
						t.Fatalf("comments %q", got.Comments)
					}
					got.Comments = nil
					last := 0
					for i := range got.Entities {
						if got.Entities[i].Line <= last {
							t.Fatalf("entity %d in line %d after line %d", i, got.Entities[i].Line, last)
						}
						last, got.Entities[i].Line = got.Entities[i].Line, 0
					}
					if !reflect.DeepEqual(got, want) {
						t.Fatalf("\n%+v\nwant\n%+v", got, want)
					}
				})
			})
		}
	}
}
