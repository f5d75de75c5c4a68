package dxf

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// benchPolylines is how many polylines the benchmark writes, each closed and of
// four vertices. The peer's time for the same: testdata/peers/dxf_r12writer.py.
const benchPolylines = 100_000

// benchRectangle gives the i-th rectangle of the benchmark. The same formula
// stands in the peer's script.
func benchRectangle(i int) [4]Vertex {
	x, y := float64(i%1000)*12.345678, float64(i/1000)*23.456789
	w, h := x+6.35, y+139.999999
	return [4]Vertex{{X: x, Y: y}, {X: w, Y: y}, {X: w, Y: h}, {X: x, Y: h}}
}

func benchDrawing(tb testing.TB, version Version, polylines int) *Drawing {
	d := &Drawing{Version: version}
	l := d.Layer("DADO_INSIDE_5-99MM", 1)
	for i := range polylines {
		v := benchRectangle(i)
		d.Polyline(l, Closed, v[:])
	}
	if err := d.err; err != nil {
		tb.Fatal(err)
	}
	return d
}

// BenchmarkWrite writes drawings to a file, and for comparison the bytes of the
// R2000 one as they are.
func BenchmarkWrite(b *testing.B) {
	path := filepath.Join(b.TempDir(), "bench.dxf")
	for _, c := range []struct {
		name    string
		version Version
	}{{"drawerwright/R2000", R2000}, {"drawerwright/R12", R12}} {
		b.Run(c.name, func(b *testing.B) {
			d := benchDrawing(b, c.version, benchPolylines)
			b.ReportAllocs()
			for b.Loop() {
				file, err := os.Create(path)
				if err != nil {
					b.Fatal(err)
				}
				n, err := d.WriteTo(file)
				if err != nil {
					b.Fatal(err)
				}
				if err := file.Close(); err != nil {
					b.Fatal(err)
				}
				b.SetBytes(n)
			}
		})
	}
	for _, c := range []struct {
		name    string
		version Version
	}{{"raw bytes/R2000", R2000}, {"raw bytes/R12", R12}} {
		b.Run(c.name, func(b *testing.B) {
			var data bytes.Buffer
			if _, err := benchDrawing(b, c.version, benchPolylines).WriteTo(&data); err != nil {
				b.Fatal(err)
			}
			b.SetBytes(int64(data.Len()))
			for b.Loop() {
				if err := os.WriteFile(path, data.Bytes(), 0o600); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkDraw collects the same polylines without writing them.
func BenchmarkDraw(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		benchDrawing(b, R2000, benchPolylines)
	}
}
