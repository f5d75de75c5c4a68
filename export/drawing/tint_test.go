package drawing

import (
	"bytes"
	"compress/zlib"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestTint: an area of a tint is that color in SVG and PDF, black is black again after it, and in a
// gray picture it is as dark as its luma: 0.299 x 224 + 0.587 x 191 + 0.114 x 140 = 195.
func TestTint(t *testing.T) {
	var d Drawing
	d.Width, d.Height = 20, 10
	d.Loops(Pen{}, 1, geom.Rectangle(0, 0, 5, 10))
	d.Area(Tint{224, 191, 140}, geom.Rectangle(5, 0, 15, 10))
	d.Loops(Pen{}, 1, geom.Rectangle(15, 0, 20, 10))

	var svg bytes.Buffer
	if err := d.WriteSVG(&svg, "tint"); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(svg.String(), `fill="#e0bf8c"`); n != 1 {
		t.Errorf("SVG has the tint %d times", n)
	}

	var pdf bytes.Buffer
	if err := WritePDF(&pdf, Info{}, func(yield func(Page) bool) { yield(Page{Drawing: d}) }); err != nil {
		t.Fatal(err)
	}
	_, rest, _ := bytes.Cut(pdf.Bytes(), []byte("stream\n"))
	unpacked, err := zlib.NewReader(bytes.NewReader(rest))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(unpacked)
	if err != nil {
		t.Fatal(err)
	}
	_, after, found := strings.Cut(string(text), "0.878 0.749 0.549 rg\n")
	if !found || !strings.Contains(after, "0.000 g\n") {
		t.Errorf("PDF has %q", text)
	}

	var dots bytes.Buffer
	if err := d.WritePNG(&dots, 25.4); err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(&dots)
	if err != nil {
		t.Fatal(err)
	}
	if r, _, _, _ := picture.At(10, 5).RGBA(); math.Abs(float64(r>>8)-195) > 8.5 { // of sixteen grays
		t.Errorf("PNG is %d there", r>>8)
	}
}
