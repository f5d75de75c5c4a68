package coupon

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/mill"
	"drawerwright/geom/solid"
)

const in = geom.InchMM

// The four kinds of shop, with boards of 12 mm and 1/2 in.
var (
	sawMM     = Asked{Thickness: 12, Tongue: 6.1, Cutter: 5.93, Depth: 6, Unit: geom.Millimeter}
	routerMM  = Asked{Thickness: 12, Tongue: 6.2, Cutter: 6, Router: true, Depth: 6, Unit: geom.Millimeter}
	sawInch   = Asked{Thickness: in / 2, Tongue: 0.251 * in, Cutter: 0.244 * in, Depth: in / 4, Unit: geom.Inch}
	routerIn  = Asked{Thickness: in / 2, Tongue: in / 4, Cutter: in / 4, Router: true, Depth: in / 4, Unit: geom.Inch}
	fourShops = []Asked{sawMM, routerMM, sawInch, routerIn}
)

func must(t *testing.T, a Asked) Coupon {
	t.Helper()
	c, err := Make(a)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// TestLayout: widths and places by closed form.
//
//	saw, mm      6.1 - 0.1 is 6; two shims over 5.93 are 6.03. The last is 0.4 wider,
//	             6.43; with 15 beside it 21.43, so 22 apart. The comb begins at
//	             25 + 9 x 22 = 223, its pitch is 9.93 up to 10, and the panel ends at
//	             223 + 50 + 5.93 + 15 = 293.93, up to 294.
//	router, mm   6.2 - 0.1 = 6.1 is over 6.05. 6.5 + 15, so 22 apart; the comb's pitch is
//	             10, its slits 6.05; 223 + 50 + 6.05 + 15 = 294.05, up to 295.
//	saw, in      0.251 - 0.004 = 0.247; two shims of 0.002 over 0.244 are 0.248. The last
//	             is 0.264 = 6.7056; 21.7056 is 13.67 sixteenths, so 14/16 apart; the
//	             comb begins at 1 + 9 x 14/16 = 8.875. The pitch is 6.1976 + 4, 25.69
//	             sixty-fourths, so 26/64; 225.425 + 5 x 10.31875 + 6.1976 + 15 =
//	             298.21635, 187.85 sixteenths, up to 188/16.
//	router, in   the bit's 0.25 + 0.05 mm is 0.25197, up to 0.252. The last is 0.268 =
//	             6.8072; 21.8072 is 13.74 sixteenths, so 14/16. The pitch is 10.35, 26.08
//	             sixty-fourths, so 27/64; 225.425 + 53.578125 + 6.4 + 15 = 300.403125,
//	             189.23 sixteenths, up to 190/16.
//
// Across: 80 up to 80, and 50.39 sixteenths up to 51/16.
func TestLayout(t *testing.T) {
	for i, want := range []struct{ first, step, land, apart, pitch, slit, length, width float64 }{
		{6.03, 0.05, 25, 22, 10, 5.93, 294, 80},
		{6.1, 0.05, 25, 22, 10, 6.05, 295, 80},
		{0.248 * in, 0.002 * in, in, 14 * in / 16, 26 * in / 64, 0.244 * in, 188 * in / 16, 51 * in / 16},
		{0.252 * in, 0.002 * in, in, 14 * in / 16, 27 * in / 64, in/4 + 0.05, 190 * in / 16, 51 * in / 16},
	} {
		c := must(t, fourShops[i])
		if len(c.Slots) != 9 || c.Comb.Teeth != 5 || len(c.Panel.Pockets) != 9+6 {
			t.Fatalf("%d: %d slots, %d teeth, %d pockets", i, len(c.Slots), c.Comb.Teeth, len(c.Panel.Pockets))
		}
		if !near(c.Step, want.step) || !near(c.Comb.Pitch, want.pitch) || !near(c.Comb.Slit, want.slit) || !near(c.Comb.X, want.land+9*want.apart) ||
			!near(c.Comb.Tooth(), want.pitch-want.slit) {
			t.Errorf("%d: step %g, comb %+v, want %+v", i, c.Step, c.Comb, want)
		}
		if !near(c.Panel.Length(), want.length) || !near(c.Panel.Width(), want.width) {
			t.Errorf("%d: the panel is %g x %g, want %+v", i, c.Panel.Length(), c.Panel.Width(), want)
		}
		for n, p := range c.Panel.Pockets {
			x, width := c.Comb.X+float64(n-9)*want.pitch, want.slit
			if n < 9 {
				x, width = want.land+float64(n)*want.apart, want.first+float64(n)*want.step
				if s := c.Slots[n]; s.Number != n+1 || !near(s.X, x) || !near(s.Width, width) {
					t.Errorf("%d: slot %+v, want %g at %g", i, s, width, x)
				}
			}
			b := p.Outline.Bounds()
			if !near(b.Min.X, x) || !near(b.Max.X, x+width) || b.Min.Y != 0 || b.Max.Y != c.Panel.Width() || p.Face != geom.Inside || p.Depth != c.Asked.Depth {
				t.Errorf("%d: pocket %d is %+v, want %g at %g", i, n, p, width, x)
			}
		}
	}
}

// TestSeriesBegins: at the cutter where two steps below the tongue are narrower, on
// the printed grid where a router could not be known otherwise.
func TestSeriesBegins(t *testing.T) {
	for _, c := range []struct {
		tongue, cutter float64
		router         bool
		want           float64
	}{
		{6, 6.2, false, 6.2},
		{6.1, 6, false, 6},       // just two steps below
		{6, 6.2, true, 6.25},     // the bit and 0.05
		{6.123, 5, true, 6.03},   // 6.023, up to 0.01
		{6.25, 6.1, true, 6.15},  // both alike
		{6.5, 3.6, false, 6.4},   // 56 steps over the cutter
		{6.5, 3.63, false, 6.43}, // 6.38 would be below 6.4
	} {
		a := Asked{Thickness: 12, Tongue: c.tongue, Cutter: c.cutter, Router: c.router, Depth: 6}
		if got := must(t, a).Slots[0].Width; !near(got, c.want) {
			t.Errorf("%+v: begins at %g", c, got)
		}
	}
}

// TestFaults: each says what was measured, and following its hint helps.
func TestFaults(t *testing.T) {
	for name, c := range map[string]struct {
		a     Asked
		says  string
		hint  string
		mends func(*Asked)
	}{
		"thin tongue": {Asked{12, 0.9, false, 6, true, 6, 0, ""}, "the tongue's thickness is given as 0.9 mm", "1 mm to 600 mm", func(a *Asked) { a.Tongue, a.Cutter = 1, 0.95 }},
		"no tongue":   {Asked{12, math.NaN(), false, 6, true, 6, 0, ""}, "tongue's thickness is given as 0 mm", "", nil},
		"no board":    {Asked{0, 6, false, 6, true, 6, 0, ""}, "the board's thickness is given as 0 mm", "3 mm to", nil},
		"vast":        {Asked{math.Inf(1), 6, false, 6, true, 6, 0, ""}, "the board's thickness", "", nil},
		"no cutter":   {Asked{12, 6, false, -1, false, 6, 0, ""}, "the cutter's width is given as -1 mm", "0.5 mm", nil},
		"shallow":     {Asked{12, 6, false, 6, false, 0.5, 0, ""}, "the slots' depth is given as 0.5 mm", "1 mm", nil},
		"deep":        {Asked{12, 6, false, 6, false, 10.5, 0, ""}, "slots 10.5 mm deep leave 1.5 mm of a board of 12 mm", "10 mm deep or less, or take a board of 12.5 mm", func(a *Asked) { a.Depth = 10 }},
		"wide bit":    {Asked{12, 6, false, 8, true, 6, 0, ""}, "of 8 mm makes is 8.05 mm wide, 2.05 mm more than the tongue of 6 mm", "5.95 mm or less", func(a *Asked) { a.Cutter = 5.95 }},
		"wide saw":    {Asked{12, 6, false, 8, false, 6, 0, ""}, "2.00 mm more than", "6 mm or less", func(a *Asked) { a.Cutter = 6 }},
		// 3 and 58 steps of 0.05 are 5.9, the last of nine 6.3; two passes make 6 - 0.2.
		"thin blade": {Asked{12, 6, false, 3, false, 6, 0, ""}, "slots up to 5.80 mm, and the widest is 6.30 mm", "as the tongue, 6 mm", func(a *Asked) { a.Cutter = 6 }},
		// 30.3 + 15, so 46 apart: 25 + 9 x 46 = 439, 439 + 5 x 34 + 30 + 15 = 654.
		"long": {Asked{40, 30, false, 30, false, 6, 0, ""}, "tongue of 30 mm and the cutter of 30 mm the coupon is 654 mm long, more than 600 mm", "thinner tongue", func(a *Asked) { a.Tongue, a.Cutter = 20, 20 }},
	} {
		_, err := Make(c.a)
		var f geom.Diagnosis
		if !errors.As(err, &f) {
			t.Errorf("%s: %v", name, err)
			continue
		}
		fact, ask := f.Fact.In(geom.Millimeter), f.Ask.In(geom.Millimeter)
		if !strings.Contains(fact, c.says) || !strings.Contains(ask, c.hint) || ask == "" || err.Error() != fact+"; "+ask || f.Measured == nil || f.Limit == nil {
			t.Errorf("%s: %v", name, err)
		}
		if c.mends != nil {
			c.mends(&c.a)
			must(t, c.a)
		}
	}
}

// TestAnyCoupon: whatever is asked for gives a fault, or a panel that keeps the rules
// and is a closed solid, with nine slots a step apart and lands that do not flex; and
// a router with that bit cuts every slot as wide as it is meant.
func TestAnyCoupon(t *testing.T) {
	made := 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(low, high float64, name string) float64 {
			if rapid.IntRange(0, 19).Draw(t, name+" odd") == 0 {
				return rapid.Float64().Draw(t, name)
			}
			return math.Round(100*rapid.Float64Range(low, high).Draw(t, name)) / 100
		}
		a := Asked{Thickness: number(6, 25, "thickness"), Tongue: number(3, 19, "tongue"), Router: rapid.Bool().Draw(t, "router"),
			Depth: number(1, 12, "depth"), Unit: rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")}
		a.Cutter = float64(number(0.5, 1.1, "cutter") * a.Tongue)
		c, err := Make(a)
		if err != nil {
			if f := (geom.Diagnosis{}); !errors.As(err, &f) || f.Fact.IsEmpty() || f.Ask.IsEmpty() {
				t.Fatalf("%v", err)
			}
			return
		}
		made++
		if again, _ := Make(a); !reflect.DeepEqual(c, again) {
			t.Fatalf("not the same twice")
		}
		check(t, c)
	})
	if made == 0 {
		t.Error("no coupon was made")
	}
}

func check(t *rapid.T, c Coupon) {
	if v := c.Panel.Check(); len(v) > 0 {
		t.Fatalf("%s", v[0].Diagnosis(c.Panel).Fact.In(c.Asked.Unit))
	}
	m, err := solid.Build(c.Panel, solid.Options{})
	if err == nil {
		err = geomtest.CheckMesh(m)
	}
	if err != nil {
		t.Fatal(err)
	}
	// Tongue - 2 steps, or what the cutter makes at least; at most a step, or 0.001 in, more.
	low := max(c.Asked.Tongue-2*c.Step, c.Asked.Cutter)
	if over := c.Slots[0].Width - low; len(c.Slots) != 9 || over < -2e-6 || over > c.Step+0.05 {
		t.Fatalf("%d slots from %g, want %g", len(c.Slots), c.Slots[0].Width, low)
	}
	end := 0.0 // of the slot before
	for i, s := range c.Slots {
		land := s.X - end
		if i == 0 && land < 25-1e-9 || i > 0 && (land < 12 || land > 17.1) || s.Width < c.Asked.Cutter-1e-9 {
			t.Fatalf("slot %+v after a land of %g", s, land)
		}
		if i > 0 && !near(s.Width-c.Slots[i-1].Width, c.Step) {
			t.Fatalf("slot %+v is no step wider", s)
		}
		end = s.X + s.Width
	}
	if tooth := c.Comb.Tooth(); c.Comb.X-end < 12 || tooth < 3.94 || tooth > 4.5+1e-9 || c.Panel.Length() > 600+1e-9 {
		t.Fatalf("%+v after %g on a panel of %g", c.Comb, end, c.Panel.Length())
	}
	if end = c.Comb.X + 5*c.Comb.Pitch + c.Comb.Slit; c.Panel.Length()-end < 12 {
		t.Fatalf("the comb ends at %g of %g", end, c.Panel.Length())
	}
	if short := slices.ContainsFunc(c.Steps, func(s string) bool { return strings.Contains(s, "is short for a machine") }); short != (c.Panel.Length() < 300-1e-6) {
		t.Fatalf("%g long, called short: %t", c.Panel.Length(), short)
	}
	if !c.Asked.Router {
		return
	}
	part := mill.Part{Panel: c.Panel, MinThickness: c.Asked.Thickness, MaxThickness: c.Asked.Thickness}
	for _, slots := range []mill.Slots{mill.SlotsWidened, mill.SlotsCenterline} {
		w, faults := mill.Prepare(part, mill.Settings{Bits: []mill.Bit{{Name: "bit", Diameter: c.Asked.Cutter}}, Overcut: mill.UsualOvercut(geom.Millimeter),
			Relief: mill.ReliefDogbone, Slots: slots, Register: mill.Register{Place: mill.PlaceWaste}, Unit: c.Asked.Unit})
		for _, f := range faults {
			if f.IsError() {
				t.Fatal(f)
			}
		}
		for _, k := range w.Cuts[:len(w.Cuts)-1] { // the outline is the last
			if b, want := k.Outline.Bounds(), c.Panel.Pockets[k.Pocket].Outline.Bounds(); math.Abs(b.Width()-want.Width()) > 2e-6 || b.Max.Y <= want.Max.Y {
				t.Fatalf("a slot of %g is drawn %g wide, to %g", want.Width(), b.Width(), b.Max.Y)
			}
		}
	}
}
