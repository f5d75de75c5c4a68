package mill

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/sweep"

	"pgregory.net/rapid"
)

// TestReliefShapes: closed forms. A relief of radius rho on the bisector adds a
// half disc on a chord 2 rho long across the corner, which cut the triangle of
// area rho^2 off: pi rho^2 / 2 - rho^2. One through a side adds half a disc.
func TestReliefShapes(t *testing.T) {
	const radius = 3.0
	rho := radius + reliefOver
	l := geom.Rectangle(0, 0, 60, 40)
	for _, c := range []struct {
		name  string
		shape Relief
		need  []bool
		add   float64
	}{
		{"one on the bisector", ReliefDogbone, []bool{true, false, false, false}, math.Pi*rho*rho/2 - rho*rho},
		{"four on the bisector", ReliefDogbone, []bool{true, true, true, true}, 4 * (math.Pi*rho*rho/2 - rho*rho)},
		{"one through the side", ReliefTBone, []bool{false, true, false, false}, math.Pi * rho * rho / 2},
		{"four through the side", ReliefTBone, []bool{true, true, true, true}, 4 * math.Pi * rho * rho / 2},
	} {
		out, ok := relieve(l, c.need, radius, c.shape)
		if !ok || math.Abs(out.Area()-l.Area()-c.add) > 1e-9 {
			t.Errorf("%s: %v, adds %g, want %g", c.name, ok, out.Area()-l.Area(), c.add)
		}
	}
	// The shorter sides are those at x = 0 and 60.
	out, _ := relieve(l, []bool{true, true, true, true}, radius, ReliefTBone)
	bounds(t, "side", out, -rho, 0, 60+rho, 40)
	out, _ = relieve(l, []bool{true, true, true, true}, radius, ReliefDogbone)
	most := rho - rho/math.Sqrt2
	bounds(t, "bisector", out, -most, -most, 60+most, 40+most)
}

// TestReliefLetsIn: whatever slot, bit and shape, after relief the bit reaches
// every corner of the part that goes in, and before it did not where relief was
// said to be due.
func TestReliefLetsIn(t *testing.T) {
	due := 0
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(0.5, 8).Draw(t, "radius")
		w, h := radius*rapid.Float64Range(2, 12).Draw(t, "w"), radius*rapid.Float64Range(2, 12).Draw(t, "h")
		play := rapid.SampledFrom([]float64{0, 0.05, 0.2, 1, 3}).Draw(t, "play")
		shape := rapid.SampledFrom([]Relief{ReliefDogbone, ReliefTBone}).Draw(t, "shape")
		if w <= 2*play+0.1 || h <= 2*play+0.1 {
			return
		}
		l := geom.Rectangle(0, 0, w, h)
		takes := geom.Rectangle(play, play, w-play, h-play)
		need := needRelief(l, takes, radius, nil)
		reaches := func(l geom.Loop, within float64) bool {
			loops, err := sweep.Pocket(l, radius)
			if err != nil || len(loops) != 1 {
				t.Fatalf("%v, %d pieces", err, len(loops))
			}
			for _, v := range takes {
				if !nearlyInside(v.Point, loops[0], within) {
					return false
				}
			}
			return true
		}
		if !need[0] {
			if !reaches(l, 2*inTheWay) {
				t.Fatal("no relief is asked for, and the part does not go in")
			}
			return
		}
		due++
		if reaches(l, inTheWay/2) {
			t.Fatal("relief is asked for, and the part goes in without")
		}
		out, ok := relieve(l, need, radius, shape)
		if !ok {
			t.Fatalf("no room in %g x %g for a bit of %g", w, h, 2*radius)
		}
		if !reaches(out, 2*inTheWay) {
			t.Fatalf("relieved %v still keeps the part out", out)
		}
	})
	if due == 0 {
		t.Error("no relief was due")
	}
}

// nearlyInside reports whether a point is inside a loop or no further than that from it.
func nearlyInside(p geom.Point, l geom.Loop, within float64) bool {
	ring := l.Flatten(1e-5)
	inside := false
	near := math.Inf(1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
		d := b.To(a)
		if d == 0 {
			continue
		}
		s := math.Max(0, math.Min(1, ((p.X-a.X)*(b.X-a.X)+(p.Y-a.Y)*(b.Y-a.Y))/(d*d)))
		near = math.Min(near, p.To(geom.Point{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y)}))
	}
	return inside || near < within
}

// TestReliefOnlyWhereDue: the part decides. A dado that runs through and a groove
// whose part ends short of its corners need none; one that ends in them does.
func TestReliefOnlyWhereDue(t *testing.T) {
	takes := func(x0 float64) geom.Pocket {
		return geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(20, 30, 280, 40), Takes: geom.Rectangle(x0, 30.1, 300-x0, 39.9)}
	}
	for _, c := range []struct {
		name string
		k    geom.Pocket
		arcs int
	}{
		{"runs through", dado(50, 58), 0},
		{"ends short", takes(24), 0},
		{"ends in the corners", takes(20.5), 4},
	} {
		w := mustPrepare(t, panel(c.k), settings(six))
		arcs := 0
		for _, v := range w.find(c.k.Kind.String()).Outline {
			if v.Bulge != 0 {
				arcs++
			}
		}
		if arcs != c.arcs {
			t.Errorf("%s: %d arcs, want %d", c.name, arcs, c.arcs)
		}
	}
	// Where relief would break out of the panel, a smaller bit is taken.
	near := geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(2, 30, 280, 40), Takes: geom.Rectangle(2.2, 30.1, 279, 39.9)}
	s := settings(six, Bit{Name: "small", Diameter: 1.5})
	s.Relief = ReliefTBone
	w := mustPrepare(t, panel(near), s)
	if got := w.find("groove"); got.Bit != 1 {
		t.Errorf("bit %d", got.Bit)
	}
	s.Bits = s.Bits[:1]
	if _, faults := Prepare(panel(near), s); codes(faults)[0] != "corner-relief" {
		t.Errorf("got %v", codes(faults))
	}
}

// TestReliefOfEach: every operation has its own; with none a corner stays as it is drawn
// where nothing square goes, and is refused where something does.
func TestReliefOfEach(t *testing.T) {
	taking := panel(geom.Pocket{Kind: geom.Groove, Depth: 5, Outline: geom.Rectangle(20, 30, 280, 40), Takes: geom.Rectangle(20, 30, 280, 40)},
		geom.Pocket{Kind: geom.Dado, Depth: 5, Outline: geom.Rectangle(100, 50, 110, 90), Takes: geom.Rectangle(100, 50, 110, 90)})
	s := settings(Bit{Name: "six", Diameter: 6})
	s.Reliefs = map[string]Relief{"groove": ReliefTBone}
	w := mustPrepare(t, taking, s)
	// Half circles through the short side of the groove have a bulge of 1; rounds on the
	// bisector sweep half a turn too, but begin off the corner, on the long side.
	corner := func(operation string, x, y float64) bool {
		return slices.ContainsFunc(w.find(operation).Outline,
			func(v geom.Vertex) bool { return math.Abs(v.X-x) < 1e-9 && math.Abs(v.Y-y) < 1e-9 })
	}
	if !corner("groove", 20, 30) || corner("dado", 100, 50) {
		t.Errorf("groove %v, dado %v", w.find("groove").Outline, w.find("dado").Outline)
	}
	s.Reliefs = map[string]Relief{"groove": ReliefNone}
	_, faults := Prepare(taking, s)
	if len(faults) != 1 || !faults[0].IsError() || faults[0].Code != "corner-relief" || faults[0].Subject.Setting != SettingRelief ||
		!strings.Contains(faults[0].Error(), "the groove on the inside face keeps round corners of 3 mm") || !reflect.DeepEqual(faults[0].Remedies, relieved("groove")) {
		t.Errorf("%+v", faults)
	}
	taking.Pockets[0].Takes = geom.Rectangle(23, 30, 277, 40) // which ends before the rounds begin
	if w := mustPrepare(t, taking, s); len(w.find("groove").Outline) != 4 {
		t.Errorf("groove %v", w.find("groove").Outline)
	}
	s.Reliefs = map[string]Relief{"profile": ReliefNone}
	withNotch := Part{Panel: notched(5, 6), MinThickness: 12, MaxThickness: 12}
	if _, faults := Prepare(withNotch, s); len(faults) != 1 || faults[0].Subject.Setting != SettingRelief || !strings.Contains(faults[0].Error(), "the outline keeps round inside corners") {
		t.Errorf("%+v", faults)
	}
}
