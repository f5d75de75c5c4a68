package lumber

import (
	"math"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// TestPiece, by hand. Of boards of 150: 424 + 50 = 474, rounded up to 475; 140 + 6 = 146 to 150, 144.1 + 6 to 155,
// which is too wide: two of (144.1 + 6) / 2 + 6 = 81.05, up to 85. 190: (190 + 6) / 2 + 6 = 104 to 105.
// 288: one of 294, two of 153, three of (288 + 6) / 3 + 6 = 104.
func TestPiece(t *testing.T) {
	b := Boards{Rough: 27, Width: 150, Waste: 0.25}
	for width, want := range map[float64]Piece{140: {475, 150, 1}, 144: {475, 150, 1}, 144.1: {475, 85, 2}, 190: {475, 105, 2},
		288: {475, 105, 3}} {
		if p := b.Piece(424, width); p != want {
			t.Errorf("%g wide: %+v, want %+v", width, p, want)
		}
	}
	// In inches: 17 + 2, 5 + 1/4; 12 wide of boards of 6: 12 1/4 / 2 + 1/4 = 6 3/8, three of 4 1/3, up to 4 1/2.
	const in = geom.InchMM
	inch := Boards{Unit: geom.Inch, Rough: in, Width: 6 * in}
	for width, want := range map[float64]Piece{5: {19, 5.25, 1}, 12: {19, 4.5, 3}} {
		p := inch.Piece(17*in, width*in)
		if math.Abs(p.Length/in-want.Length) > 1e-9 || math.Abs(p.Width/in-want.Width) > 1e-9 ||
			p.Strips != want.Strips {
			t.Errorf("%g in wide: %g x %g in, %d", width, p.Length/in, p.Width/in, p.Strips)
		}
	}
	// Eight boards of 19 x 4 1/2 x 1 in, three to a part, are 8 x 3 x 85.5 / 144 = 14.25 board feet.
	if feet := inch.Volume(inch.Piece(17*in, 12*in), 8) / BoardFoot; math.Abs(feet-14.25) > 1e-9 {
		t.Errorf("%g board feet", feet)
	}
	// A quarter more is wasted: 2 x 2 x 475 x 105 x 27 x 1.25; one joint each of 475 x 16.
	p := b.Piece(424, 190)
	if v := b.Volume(p, 2); math.Abs(v-4*475*105*27*1.25) > 1e-3 {
		t.Errorf("%g mm3", v)
	}
	if a := p.Glued(16, 2); a != 2*475*16 {
		t.Errorf("%g mm2 of glue", a)
	}
}

// TestAnyPiece: the boards of a part are wide enough for it once their edges are jointed, no wider than those that are
// bought, and no fewer would be.
func TestAnyPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		b := Boards{Unit: u, Rough: 27, Width: rapid.Float64Range(60, 400).Draw(t, "board")}
		width := rapid.Float64Range(20, 900).Draw(t, "width")
		p := b.Piece(500, width)
		most, trim := b.Width-Edges(u), Trim(u)
		if p.Strips == 1 {
			trim = 0
		}
		if float64(p.Strips)*(p.Width-Edges(u)) < width+trim-1e-6 || p.Width > b.Width+1e-6 ||
			p.Strips > 1 && math.Ceil((width+Trim(u))/float64(p.Strips-1)/step(u))*step(u) < most-step(u)-Trim(u) {
			t.Errorf("%g of %g: %+v", width, b.Width, p)
		}
	})
}

// TestRoughFor: 22 planes to 17 and no more; 15/16 in takes 5/4, 13/16 in 4/4, as is usual.
func TestRoughFor(t *testing.T) {
	for thick, want := range map[float64]float64{15: 20, 15.1: 27, 22: 27, 22.1: 34, 75: 80} {
		if r, ok := RoughFor(thick, geom.Millimeter); r != want || !ok {
			t.Errorf("%g: %g, %v", thick, r, ok)
		}
	}
	for thick, want := range map[float64]float64{13. / 16: 1, 15. / 16: 1.25, 1 + 1./16: 1.25, 1.75: 2} {
		if r, ok := RoughFor(thick*geom.InchMM, geom.Inch); math.Abs(r-want*geom.InchMM) > 1e-9 || !ok {
			t.Errorf("%g in: %g in, %v", thick, r/geom.InchMM, ok)
		}
	}
	if _, ok := RoughFor(76, geom.Millimeter); ok {
		t.Error("76 of 80")
	}
	if need, ok := Planes(18, 16, geom.Millimeter); need != 18 || !ok {
		t.Error(need, ok)
	}
	if _, ok := Planes(17.9, 16, geom.Millimeter); ok {
		t.Error("17.9 planes to 16")
	}
}
