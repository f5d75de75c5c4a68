package supplies

import (
	"maps"
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

func TestGlueFor(t *testing.T) {
	if kg := GlueFor(2.5e6); math.Abs(kg-0.45) > 1e-12 { // 2.5 m2 of 180 g
		t.Errorf("%g kg, want 0.45", kg)
	}
}

func TestBandedEdge(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 500, 120)}
	for role, want := range map[joinery.Role]float64{joinery.Bottom: 0, joinery.Side: 500, joinery.DividerRole: 500,
		joinery.DrawerFrontRole: 1240} { // 2 (500 + 120)
		if edge := BandedEdge(joinery.Part{Role: role, Panel: panel}); math.Abs(edge-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", role, edge, want)
		}
	}
}

func TestFor(t *testing.T) {
	box, _, sound := joinery.LayOut(joinery.Spec{Width: 400, Height: 120, Depth: 400, Count: 3, Joint: joinery.Butt,
		Fasteners: joinery.Screws, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6}, GrooveEnds: joinery.GrooveThrough,
		BottomFit: joinery.BottomAuto, BottomClearance: 2, Limits: joinery.DefaultLimits, Sides: board("ply", 12),
		Front: board("ply", 12), Back: board("ply", 12), Bottom: board("thin", 5.8)})
	if !sound {
		t.Fatal("the box is not sound")
	}
	side, _ := opening.BuiltIn(opening.SideMount, geom.Millimeter)
	d := Drawer{Drawer: box, Slide: side, SlideLength: 350,
		Banded: []Banded{{Stock: "ply", Edge: 400, Thickness: 0.5, Price: 2, Pieces: 10}}}
	count := make(map[Kind]float64)
	cost := 0.0
	for _, s := range For([]Drawer{d}) {
		count[s.Kind] += s.Quantity
		cost += s.Cost
	}
	screws := 0
	for _, h := range box.Hardware {
		screws += h.Count
	}
	if count[Slides] != 3 || screws == 0 || count[Hardware]+count[Offcut] != float64(3*screws) {
		t.Errorf("slides, hardware and offcuts: %v, of one box %d pieces", count, screws)
	}
	// 10 edges of 400 mm and a tenth: 4400 mm, of 2 a meter 8.80
	if math.Abs(count[Banding]-4400) > 1e-9 || math.Abs(cost-8.8) > 1e-9 {
		t.Errorf("banding %g for %g, want 4400 for 8.80", count[Banding], cost)
	}
	if want := GlueFor(3 * box.GlueArea()); math.Abs(count[Glue]-want) > 1e-12 || want == 0 {
		t.Errorf("glue %g, want %g", count[Glue], want)
	}
	d.GluedUp = 1e6 // 180 g
	list := For([]Drawer{d})
	if want := GlueFor(3*box.GlueArea()) + 0.18; math.Abs(list[len(list)-1].Quantity-want) > 1e-12 {
		t.Errorf("glue %g with boards glued up, want %g", list[len(list)-1].Quantity, want)
	}
	d.Slide = opening.Slide{Kind: opening.NoSlide}
	for _, s := range For([]Drawer{d}) {
		if s.Kind == Slides {
			t.Error("a drawer without slides takes some")
		}
	}
}

func board(name string, thick float64) joinery.Stock {
	return joinery.Stock{Name: name, Thickness: joinery.Thickness{Mean: thick, Min: thick, Max: thick}}
}

// TestForStrips: a pair of each strip for each drawer, instead of slides and of what goes behind them.
func TestForStrips(t *testing.T) {
	wooden, _ := opening.BuiltIn(opening.Wooden, geom.Millimeter)
	d := Drawer{Drawer: joinery.Drawer{Spec: joinery.Spec{Count: 3}}, Slide: wooden, SlideLength: 350, Packing: 19,
		Strips: []opening.Strip{{Part: opening.Runner, Length: 350}, {Part: opening.Guide, Length: 330}}}
	got := make(map[Kind]float64)
	for _, s := range For([]Drawer{d}) {
		if got[s.Kind] += s.Quantity; s.Kind == "guide" && s.Strip.Length != 330 {
			t.Errorf("%+v", s)
		}
	}
	if want := map[Kind]float64{"runner": 6, "guide": 6, Glue: 0}; !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestBehindSlides: two pieces of packing and two shims for each drawer, as long as its slides;
// none where the height of the slide is not known, or nothing is to go behind it.
func TestBehindSlides(t *testing.T) {
	side, _ := opening.BuiltIn(opening.SideMount, geom.Millimeter)
	flat := side
	flat.Height = 0
	box := joinery.Drawer{Spec: joinery.Spec{Count: 3}}
	for name, c := range map[string]struct {
		d    Drawer
		want map[Kind][2]float64 // pieces, thickness
	}{
		"both": {Drawer{Drawer: box, Slide: side, SlideLength: 350, Packing: 19, Shim: 0.75},
			map[Kind][2]float64{Packing: {6, 19}, Shim: {6, 0.75}}},
		"a shim": {Drawer{Drawer: box, Slide: side, SlideLength: 350, Shim: 0.75},
			map[Kind][2]float64{Shim: {6, 0.75}}},
		"neither": {Drawer{Drawer: box, Slide: side, SlideLength: 350},
			map[Kind][2]float64{}},
		"no height known": {Drawer{Drawer: box, Slide: flat, SlideLength: 350, Packing: 19, Shim: 0.75},
			map[Kind][2]float64{}},
	} {
		got := make(map[Kind][2]float64)
		for _, s := range For([]Drawer{c.d}) {
			if s.Kind != Packing && s.Kind != Shim {
				continue
			}
			if got[s.Kind] = [2]float64{s.Quantity, s.Thickness}; s.SlideLength != 350 || s.Slide.Height != side.Height {
				t.Errorf("%s: %s %g long, %g high", name, s.Kind, s.SlideLength, s.Slide.Height)
			}
		}
		if !maps.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
