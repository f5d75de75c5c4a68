package dxfread_test

import (
	"errors"
	"math"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"
)

// FuzzParse reads any bytes. It must give either a file of finite numbers whose
// lines go up, or an error with its rule and a line that there is.
func FuzzParse(f *testing.F) {
	f.Add([]byte(tags(whole)))
	f.Add(large(f, dxf.R2000, 3))
	f.Add(large(f, dxf.R12, 3))
	f.Add([]byte(tags(head + "0 ARC|8 A|10 1|20 2|40 3|50 350|51 10|230 -1|0 LINE|10 1|20 2|11 3|21 4|39 5" + tail)))
	f.Add([]byte("123456789012345678\r\n\x1a\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		lines := 1
		for _, c := range data {
			if c == '\n' {
				lines++
			}
		}
		file, err := dxfread.Parse(data)
		if err != nil {
			var e *dxfread.Error
			if file != nil || !errors.As(err, &e) || e.Line < 1 || e.Line > lines+1 || len(err.Error()) > 600 {
				t.Fatalf("%v, %d lines", err, lines)
			}
			return
		}
		last, vertices := 0, 0
		for _, e := range file.Entities {
			if e.Line <= last || e.Line > lines || e.Type == "" {
				t.Fatalf("%+v after line %d of %d", e, last, lines)
			}
			last = e.Line
			vertices += len(e.Vertices)
			numbers := []float64{e.X, e.Y, e.Radius, e.Low, e.High, e.Thickness}
			for _, v := range e.Vertices {
				numbers = append(numbers, v.X, v.Y, v.Bulge)
			}
			for _, v := range numbers {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%+v", e)
				}
			}
		}
		if len(file.Entities)+vertices+len(file.Layers)+len(file.Comments) > lines {
			t.Fatalf("%d entities with %d vertices in %d lines", len(file.Entities), vertices, lines)
		}
	})
}
