package dxfread_test

import (
	"bytes"
	"fmt"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/dxf/dxftest"
)

// large is a drawing of many closed polylines of four vertices with six
// decimals, one of them bent in every fourth.
func large(tb testing.TB, version dxf.Version, polylines int) []byte {
	tb.Helper()
	d := dxf.Drawing{Version: version}
	layers := []dxf.LayerID{d.Layer("DADO_INSIDE_5-99MM", 1), d.Layer("GROOVE_INSIDE_6-00MM", 2)}
	for i := range polylines {
		x, y := float64(i%1000)*12.345678, float64(i/1000)*23.456789
		bulge := 0.0
		if i%4 == 0 {
			bulge = 0.414213562
		}
		d.Polyline(layers[i/100%2], dxf.Closed, []dxf.Vertex{
			{X: x, Y: y}, {X: x + 6.35, Y: y, Bulge: bulge}, {X: x + 6.35, Y: y + 139.999999}, {X: x, Y: y + 139.999999},
		})
	}
	return written(tb, &d)
}

func written(tb testing.TB, d *dxf.Drawing) []byte {
	tb.Helper()
	var out bytes.Buffer
	if _, err := d.WriteTo(&out); err != nil {
		tb.Fatal(err)
	}
	return out.Bytes()
}

// BenchmarkParse reads a file of either version, splits the same file into its
// tags, and counts its lines, which is the least that any reader must do.
func BenchmarkParse(b *testing.B) {
	for _, c := range []struct {
		name      string
		version   dxf.Version
		polylines int
	}{{"R2000", dxf.R2000, 100_000}, {"R12", dxf.R12, 50_000}} {
		data := large(b, c.version, c.polylines)
		run := func(name string, read func() error) {
			b.Run(fmt.Sprintf("%s/%s", c.name, name), func(b *testing.B) {
				b.SetBytes(int64(len(data)))
				b.ReportAllocs()
				for b.Loop() {
					if err := read(); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
		run("Parse", func() error { _, err := dxfread.Parse(data); return err })
		run("tags alone", func() error { _, err := dxftest.ReadTags(bytes.NewReader(data)); return err })
		run("lines counted", func() error {
			if bytes.Count(data, []byte{'\n'})%2 != 0 {
				return dxfread.ErrTags
			}
			return nil
		})
	}
}
