package opening

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// framed is a bank of two boxes 400 deep on wooden runners of 20 with web frames, in a cabinet without a face frame.
func framed(change func(*Bank)) Bank {
	slide, _ := BuiltIn(Wooden, geom.Millimeter)
	b := Bank{Unit: geom.Millimeter, Slide: slide, Rows: make([]Row, 2), Graduation: Equal,
		Opening: Opening{Width: []float64{500}, Height: []float64{300}, Depth: []float64{405}, Fronts: NoFront,
			WebFrame: 60, DustPanel: 6},
		Sides: joinery.Stock{Name: "sides", Thickness: joinery.Measure(12)}}
	change(&b)
	return b
}

// TestWebFrame, by hand: rails are as long as the opening is wide and 60 wide; between them are 400 - 120 = 280, into
// both of which runners of 25 reach by 10; a panel reaches as far, less 2, and in width 500 - 50 + 20 - 2. Of the
// screws, 37 behind the front edge and every 64, the first one is in the rail or less than 20 behind it, and of the
// others those are left that are 20 before the back rail.
func TestWebFrame(t *testing.T) {
	p, found := Solve(framed(func(*Bank) {}))
	if geom.AnyError(found) {
		t.Fatal(found)
	}
	var got []Strip
	for _, s := range p.Strips {
		if s.Row == 1 && s.Part != Kicker {
			got = append(got, s)
		}
	}
	foot := p.Rows[1].BoxBottom - 20
	want := []Strip{
		{FrontRail, 1, 500, 60, 20, 0, 0, foot},
		{BackRail, 1, 500, 60, 20, 0, 340, foot},
		{Runner, 1, 300, 25, 20, 0, 50, foot},
		{DustPanel, 1, 468, 298, 6, -16, 51, foot + 7},
	}
	if !slices.Equal(got, want) {
		t.Errorf("%+v,\nwant %+v", got, want)
	}
	first, last := math.Inf(1), 0.0
	for _, h := range p.Holes {
		first, last = min(first, h.X), max(last, h.X)
	}
	if first != 37+64 || last != 37+4*64 {
		t.Errorf("holes from %g to %g", first, last)
	}
}

// TestWebFrameBehindFrame: in a face frame, frames begin behind it, are as much wider as its stiles stand in, and
// guides stand on their runners.
func TestWebFrameBehindFrame(t *testing.T) {
	p, found := Solve(framed(func(b *Bank) { b.Opening.FaceFrame, b.Opening.FrameOverhang = true, 15 }))
	if geom.AnyError(found) {
		t.Fatal(found)
	}
	for _, s := range p.Strips {
		switch {
		case s.From < 20, s.Part == FrontRail && (s.Length != 530 || s.From != 20), s.Part == Runner && s.Width != 40,
			s.Part == DustPanel && s.Length != 530-80+18, s.Part == BackRail && s.From+s.Width != 400,
			s.Part == Guide && s.Bottom != p.Rows[s.Row].BoxBottom:
			t.Errorf("%+v", s)
		}
	}
}

// TestWebFrameRefused: what cannot be made names what to write.
func TestWebFrameRefused(t *testing.T) {
	for name, change := range map[string]func(*Bank){
		"other slide":  func(b *Bank) { b.Slide, _ = BuiltIn(SideMount, geom.Millimeter) },
		"wide rails":   func(b *Bank) { b.Opening.WebFrame = 180 },
		"thick panel":  func(b *Bank) { b.Opening.DustPanel = 14 },
		"thin runners": func(b *Bank) { b.Slide.WearStrip = 12 },
	} {
		_, found := Solve(framed(change))
		i := slices.IndexFunc(found, func(d geom.Diagnosis) bool { return d.Code == "web-frame" })
		if i < 0 || !found[i].IsError() || found[i].Ask.IsEmpty() {
			t.Errorf("%s: %v", name, found)
		}
	}
}
