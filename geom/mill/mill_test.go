package mill

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

var six = Bit{Name: "six", Diameter: 6, Reach: 20}

func settings(bits ...Bit) Settings {
	return Settings{Bits: bits, Overcut: 1, Relief: ReliefDogbone, Slots: SlotsWidened, Register: Register{Place: PlaceWaste}}
}

func panel(pockets ...geom.Pocket) Part {
	return Part{Panel: geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12, Pockets: pockets}, MinThickness: 11.9, MaxThickness: 12.1}
}

func dado(x0, x1 float64) geom.Pocket {
	return geom.Pocket{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(x0, 0, x1, 100)}
}

// mustPrepare expects no error among the faults.
func mustPrepare(t *testing.T, p Part, s Settings) Operations {
	t.Helper()
	w, faults := Prepare(p, s)
	for _, f := range faults {
		if f.IsError() {
			t.Fatalf("%s: %v", f.Code, f)
		}
	}
	return w
}

func codes(found []geom.Diagnosis) (list []string) {
	for _, f := range found {
		if f.Fact.IsEmpty() || f.Ask.IsEmpty() && len(f.Remedies) == 0 || f.Subject.Setting == "" || (f.Measured == nil) != (f.Limit == nil) {
			list = append(list, "incomplete")
		}
		list = append(list, string(f.Code))
	}
	return list
}

func (w Operations) find(operation string) Cut {
	i := slices.IndexFunc(w.Cuts, func(c Cut) bool { return c.Operation == operation })
	if i < 0 {
		return Cut{}
	}
	return w.Cuts[i]
}

func bounds(t *testing.T, what string, l geom.Loop, x0, y0, x1, y1 float64) {
	t.Helper()
	b := l.Bounds()
	for i, d := range []float64{b.Min.X - x0, b.Min.Y - y0, b.Max.X - x1, b.Max.Y - y1} {
		if !(math.Abs(d) < 1e-9) {
			t.Errorf("%s: side %d of %v, want %g %g %g %g", what, i, b, x0, y0, x1, y1)
		}
	}
}

// TestOverRun: what leaves the panel runs past its edge by the radius and 1 mm,
// over a corner of the panel too; what does not leave it stays.
func TestOverRun(t *testing.T) {
	rabbet := geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 6, 100)}
	stopped := geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(20, 30, 280, 40)}
	w := mustPrepare(t, panel(dado(50, 58), rabbet, stopped), settings(six))
	bounds(t, "dado", w.find("dado").Outline, 50, -4, 58, 104)
	bounds(t, "rabbet", w.find("rabbet").Outline, -4, -4, 6, 104)
	if a := w.find("rabbet").Outline.Area(); math.Abs(a-10*108) > 1e-9 {
		t.Errorf("the rabbet's line encloses %g, want a full rectangle", a)
	}
	bounds(t, "groove", w.find("groove").Outline, 20, 30, 280, 40)
	if w.Beyond != 4 || math.Abs(w.Gap-6.05) > 1e-9 {
		t.Errorf("beyond %g, gap %g", w.Beyond, w.Gap)
	}
	// A rabbet narrower than its bit, which then overhangs the edge by more.
	narrow := geom.Pocket{Kind: geom.Rabbet, Depth: 6, Outline: geom.Rectangle(0, 0, 1.5, 100)}
	bounds(t, "narrow rabbet", mustPrepare(t, panel(narrow), settings(six)).find("rabbet").Outline,
		-4.55, -4.55, 1.5, 104.55)
	s := settings(six)
	s.Overcut = 5
	if w := mustPrepare(t, panel(dado(50, 58)), s); w.Beyond != 8 || w.Gap != 8 {
		t.Errorf("beyond %g, gap %g", w.Beyond, w.Gap)
	}
}

// TestOverRunShapes: pockets that leave over a slanted neighbor, an arc, and a
// panel that is no rectangle.
func TestOverRunShapes(t *testing.T) {
	outline := geom.Rectangle(0, 0, 300, 100)
	// A trapezium on the bottom edge: its slanted walls go on in their own direction.
	l := geom.Polygon(geom.Point{X: 100, Y: 0}, geom.Point{X: 140, Y: 0}, geom.Point{X: 130, Y: 10}, geom.Point{X: 110, Y: 10})
	bounds(t, "trapezium", overRun(l, openSides(l, outline), 4), 96, -4, 144, 10)
	// Half a circle on the top edge: the arc ends square on it, so that a step is made.
	arc := geom.Loop{{Point: geom.Point{X: 160, Y: 100}}, {Point: geom.Point{X: 140, Y: 100}, Bulge: 1}}
	out := overRun(arc, openSides(arc, outline), 4)
	bounds(t, "half circle", out, 140, 90, 160, 104)
	if want := arc.Area() + 4*20; math.Abs(out.Area()-want) > 1e-9 {
		t.Errorf("area %g, want %g", out.Area(), want)
	}
	// The whole of a panel's face.
	all := geom.Rectangle(0, 0, 300, 100)
	bounds(t, "all", overRun(all, openSides(all, outline), 4), -4, -4, 304, 104)
}

// TestWidestBit: the widest that fits in width, arcs and reach.
func TestWidestBit(t *testing.T) {
	bits := []Bit{{Name: "small", Diameter: 3, Reach: 10}, {Name: "large", Diameter: 8, Reach: 20}, {Name: "deep", Diameter: 5, Reach: 30}}
	for _, c := range []struct {
		name string
		k    geom.Pocket
		want string
	}{
		{"wide", dado(50, 60), "large"},
		{"just as wide", dado(50, 58), "deep"}, // which leaves it as wide as that
		{"with room", dado(50, 58.05), "large"},
		{"narrow", dado(50, 57.9), "deep"},
		{"narrower", dado(50, 54), "small"},
		{"open on one side", geom.Pocket{Kind: geom.Rabbet, Depth: 6, Outline: geom.Rectangle(0, 0, 4, 100)}, "large"},
		{"round", geom.Pocket{Kind: geom.Cutout, Depth: 12, Outline: geom.RoundedRectangle(100, 30, 160, 60, 3)}, "deep"},
		{"hole", geom.Pocket{Kind: geom.Drill, Depth: 6, Outline: geom.Circle(geom.Point{X: 50, Y: 50}, 4)}, "large"},
	} {
		w := mustPrepare(t, panel(c.k), settings(bits...))
		if got := bits[w.find(c.k.Kind.String()).Bit].Name; got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
	for _, c := range []struct {
		code string
		k    geom.Pocket
	}{
		{"bit-width", dado(50, 52)},
		{"bit-radius", geom.Pocket{Kind: geom.Cutout, Depth: 9, Outline: geom.RoundedRectangle(100, 30, 160, 60, 1)}},
		{"bit-reach", geom.Pocket{Kind: geom.Dado, Depth: 11, Outline: geom.Rectangle(50, 0, 54, 100)}},
	} {
		if _, faults := Prepare(panel(c.k), settings(bits...)); !slices.Equal(codes(faults), []string{c.code}) {
			t.Errorf("%s: got %v", c.code, codes(faults))
		}
	}
	// No bit cuts a thick panel out.
	if _, faults := Prepare(panel(), settings(Bit{Name: "short", Diameter: 6, Reach: 12})); !slices.Equal(codes(faults), []string{"bit-reach"}) {
		t.Errorf("outline: got %v", codes(faults))
	}
}

// TestExactSlot: a slot of the bit's own width is 0.05 mm wider, or a line.
func TestExactSlot(t *testing.T) {
	w := mustPrepare(t, panel(dado(50, 56)), settings(six))
	bounds(t, "widened", w.find("dado").Outline, 49.975, -4, 56.025, 104)
	// One that is wider by less than that is brought to the same width.
	w = mustPrepare(t, panel(dado(50, 56.03)), settings(six))
	bounds(t, "nearly", w.find("dado").Outline, 49.99, -4, 56.04, 104)
	s := settings(six)
	s.Slots = SlotsCenterline
	w = mustPrepare(t, panel(dado(50, 56)), s)
	c := w.find("dado")
	want := []geom.Vertex{{Point: geom.Point{X: 53, Y: -1}}, {Point: geom.Point{X: 53, Y: 101}}}
	if len(c.Outline) != 0 || !slices.Equal(c.Path, want) {
		t.Errorf("path %v, want %v", c.Path, want)
	}
	if w.Beyond != 4 {
		t.Errorf("beyond %g", w.Beyond)
	}
	// One that takes a square part into its round ends is no line.
	stopped := geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(20, 30, 280, 36), Takes: geom.Rectangle(20.5, 30, 279.5, 36)}
	if c := mustPrepare(t, panel(stopped), s).find("groove"); len(c.Path) != 0 || len(c.Outline) <= 4 {
		t.Errorf("drawn as %v %v", c.Path, c.Outline)
	}
	// A stopped one: the line ends a radius before the slot does.
	w = mustPrepare(t, panel(geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(20, 30, 280, 36)}), s)
	if c := w.find("groove"); !slices.Equal(c.Path, []geom.Vertex{{Point: geom.Point{X: 23, Y: 33}}, {Point: geom.Point{X: 277, Y: 33}}}) {
		t.Errorf("path %v", c.Path)
	}
}

// TestSawn: without bits everything is drawn as it is.
func TestSawn(t *testing.T) {
	p := panel(dado(50, 56), geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(0, 0, 6, 100)})
	w := mustPrepare(t, p, settings())
	bounds(t, "dado", w.find("dado").Outline, 50, 0, 56, 100)
	if w.find(Registering).Outline != nil || w.Beyond != 0 || !w.find(Profile).Through() {
		t.Errorf("%+v", w)
	}
}

// TestFaces: what is cut on which face, and where the outline goes.
func TestFaces(t *testing.T) {
	in, out := dado(50, 58), dado(50, 58)
	out.Face = geom.Outside
	for _, c := range []struct {
		name  string
		part  Part
		faces []geom.Face
		turn  bool
	}{
		{"plain", panel(), []geom.Face{geom.Inside}, false},
		{"inside", panel(in), []geom.Face{geom.Inside}, false},
		{"outside", panel(out), []geom.Face{geom.Outside}, false},
		{"both", panel(in, out), []geom.Face{geom.Outside, geom.Inside}, true},
	} {
		w := mustPrepare(t, c.part, settings(six))
		if !slices.Equal(w.Faces, c.faces) || w.TurnedOver() != c.turn {
			t.Errorf("%s: %v", c.name, w.Faces)
		}
		if last := c.faces[len(c.faces)-1]; w.find(Profile).Face != last {
			t.Errorf("%s: the outline is on the %s face", c.name, w.find(Profile).Face)
		}
	}
}

// TestRegister: two holes that fall on the same two pins before and after turning
// over, and not when the panel was turned top to bottom.
func TestRegister(t *testing.T) {
	out := dado(50, 58)
	out.Face = geom.Outside
	holes := func(w Operations, f geom.Face) (list []geom.Point) {
		for _, c := range w.Cuts {
			if c.Operation == Registering && c.Face == f {
				center, _, _ := c.Outline.AsCircle()
				list = append(list, center)
			}
		}
		return list
	}
	for _, place := range []Place{PlaceWaste, PlaceCenterline} {
		s := settings(six)
		s.Register.Place = place
		p := panel(dado(80, 88), out)
		w := mustPrepare(t, p, s)
		in := holes(w, geom.Outside) // which is cut first
		if len(in) != 2 || len(holes(w, geom.Inside)) != 0 || len(w.Pins) != 2 {
			t.Fatalf("%s: %v, pins %v", place, in, w.Pins)
		}
		if reach := map[Place]float64{PlaceWaste: 6.05 + registerWeb + 6 + registerWeb, PlaceCenterline: 6.05}[place]; w.EndGap < reach-1e-9 || w.EndGap > reach+1 {
			t.Errorf("%s: end gap %g, want at least %g", place, w.EndGap, reach)
		}
		on := func(q geom.Point) bool {
			return slices.ContainsFunc(in, func(h geom.Point) bool { return h.To(q) < 1e-9 })
		}
		for _, h := range in {
			if !on(geom.Point{X: 300 - h.X, Y: h.Y}) {
				t.Errorf("%s: %v is on no pin when turned end for end", place, h)
			}
		}
		if on(geom.Point{X: in[0].X, Y: 100 - in[0].Y}) && on(geom.Point{X: in[1].X, Y: 100 - in[1].Y}) {
			t.Errorf("%s: goes on turned top to bottom too", place)
		}
	}
	for _, c := range []struct {
		name string
		r    Register
		part Part
		code string
	}{
		{"too near", Register{Place: PlaceWaste, Distance: 5}, panel(dado(80, 88), out), "register"},
		{"too small", Register{Place: PlaceWaste, Diameter: 4}, panel(dado(80, 88), out), "register"},
		{"in a pocket", Register{Place: PlaceCenterline}, panel(dado(146, 154), out), "register"},
		{"no room", Register{Place: PlaceCenterline, Distance: 48}, panel(dado(80, 88), out), "register"},
		{"reach ends in the board", Register{Place: PlaceWaste, Diameter: 6.5}, Part{Panel: panel(dado(80, 88), out).Panel, MinThickness: 15.5, MaxThickness: 15.5}, "bit-reach"},
	} {
		s := settings(six)
		s.Register = c.r
		if _, faults := Prepare(c.part, s); !slices.Equal(codes(faults), []string{c.code}) {
			t.Errorf("%s: %v", c.name, codes(faults))
		}
	}
}

// TestRegisterBesidePulls: where a pull is cut on the center line the holes go elsewhere on
// it, clear of it, and never as far below the middle as above.
func TestRegisterBesidePulls(t *testing.T) {
	out := dado(50, 58)
	out.Face = geom.Outside
	hole := geom.Pocket{Kind: geom.Cutout, Depth: 12, Outline: geom.Circle(geom.Point{X: 150, Y: 70}, 15)}
	low := geom.Pocket{Kind: geom.Cutout, Depth: 12, Outline: geom.RoundedRectangle(120, 15, 180, 40, 12)}
	notched := panel(dado(80, 88), out)
	notched.Outline = geom.Loop{{Point: geom.Point{}}, {Point: geom.Point{X: 300}}, {Point: geom.Point{X: 300, Y: 100}}, {Point: geom.Point{X: 185, Y: 100}, Bulge: -1},
		{Point: geom.Point{X: 115, Y: 100}}, {Point: geom.Point{Y: 100}}} // half round, 65 to 100
	for name, c := range map[string]struct {
		part     Part
		from, to float64 // of what is cut on the center line
	}{"a hole": {panel(dado(80, 88), out, hole), 55, 85}, "a hand-hold": {panel(dado(80, 88), out, low), 15, 40}, "a half-round": {notched, 65, 100}} {
		s := settings(six)
		s.Register.Place = PlaceCenterline
		w := mustPrepare(t, c.part, s)
		var at []float64
		for _, pin := range w.Pins {
			center, r, _ := pin.AsCircle()
			if at = append(at, center.Y); center.X != 150 || center.Y+r > c.from-registerWeb && center.Y-r < c.to+registerWeb || center.Y < r+registerWeb || center.Y > 100-r-registerWeb {
				t.Errorf("%s: a hole of %g at %v", name, r, center)
			}
		}
		if len(at) != 2 || math.Abs(at[0]+at[1]-100) < 3 || math.Abs(at[0]-at[1]) < 12 {
			t.Errorf("%s: holes at %v", name, at)
		}
	}
}

// TestGap: panels must lie apart for overcut and bit.
func TestGap(t *testing.T) {
	s := settings(six)
	s.PartSpacing = 9 // the bit and 3 of wood
	mustPrepare(t, panel(dado(50, 58)), s)
	s.PartSpacing = 8.9
	if _, faults := Prepare(panel(dado(50, 58)), s); !slices.Equal(codes(faults), []string{"part-spacing"}) {
		t.Errorf("got %v", codes(faults))
	}
	// Registration holes reach further beyond the ends.
	out := dado(50, 58)
	out.Face = geom.Outside
	turned := settings(six)
	turned.PartSpacing = 10
	if _, faults := Prepare(panel(dado(80, 88), out), turned); !slices.Equal(codes(faults), []string{"part-spacing"}) {
		t.Errorf("holes: got %v", codes(faults))
	}
	turned.PartSpacing = 19
	mustPrepare(t, panel(dado(80, 88), out), turned)
	s.PartSpacing, s.Overcut = 10, 4.5
	if _, faults := Prepare(panel(dado(50, 58)), s); !slices.Equal(codes(faults), []string{"part-spacing"}) {
		t.Errorf("overcut 7.5, gap 10: got %v", codes(faults))
	}
}
