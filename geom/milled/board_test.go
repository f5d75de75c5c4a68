package milled_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/milled"
	"drawerwright/geom/sweep"
)

const (
	bit   = 6.0
	thick = 12.0
	// corner is what a bit leaves in a square corner: (1 - pi/4) r2.
	corner = (1 - math.Pi/4) * bit * bit / 4
)

// reached is what the bit reaches of a line.
func reached(t testing.TB, l geom.Loop) []geom.Loop {
	t.Helper()
	loops, err := sweep.Pocket(l, bit/2)
	if err != nil {
		t.Fatal(err)
	}
	return loops
}

// around is what the bit sweeps beside an outline, and what that encloses.
func around(t testing.TB, l geom.Loop) []geom.Loop {
	t.Helper()
	loops, err := sweep.Outset(l, bit)
	if err != nil {
		t.Fatal(err)
	}
	return loops
}

// dogbones are a rectangle's corners cleared by a circle of the bit's radius whose rim goes
// through the corner, on its bisector.
func dogbones(x0, y0, x1, y1 float64) geom.Loop {
	// The circle leaves the sides twice the middle's distance from the corner.
	d := bit / 2 * math.Sqrt2
	l := geom.Loop{}
	add := func(x, y, bulge float64) { l = append(l, geom.Vertex{Point: geom.Point{X: x, Y: y}, Bulge: bulge}) }
	add(x0+d, y0, 0)
	add(x1-d, y0, 1)
	add(x1, y0+d, 0)
	add(x1, y1-d, 1)
	add(x1-d, y1, 0)
	add(x0+d, y1, 1)
	add(x0, y1-d, 0)
	add(x0, y0+d, 1)
	return l
}

// polygon has its corners at x, y by turns.
func polygon(at ...float64) geom.Loop {
	var l geom.Loop
	for i := 0; i < len(at); i += 2 {
		l = append(l, geom.Vertex{Point: geom.Point{X: at[i], Y: at[i+1]}})
	}
	return l
}

// board is a plain one of 300 x 100 mm with some cuts.
func board(cuts ...milled.Cut) milled.Board {
	return milled.Board{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: thick, Cuts: cuts}
}

// TestVolumes holds solids against volumes worked out by hand, within what chords make of their
// arcs: two thirds of their distance along them.
func TestVolumes(t *testing.T) {
	const blank = 300 * 100 * thick
	pocket := geom.Rectangle(100, 20, 200, 80)
	slot := []geom.Loop{geom.RoundedRectangle(40, -10, 46, 110, 3)}
	ring := []geom.Loop{geom.Circle(geom.Point{X: 150, Y: 50}, 30), geom.Circle(geom.Point{X: 150, Y: 50}, 20).Reverse()}
	// A circle on the bisector through a corner: half of it lies beyond the chord between the
	// places where it leaves the sides, and the corner's triangle within.
	bone := math.Pi*bit*bit/8 - bit*bit/4
	skin := board()
	skin.CutOut = []milled.Cut{{Depth: thick - 0.5, Reach: around(t, skin.Outline)}}
	aside := 800*bit + math.Pi*bit*bit // beside the outline, round its corners
	// One slot from the end of a tab of 8 mm all the way to its other end, its ends square.
	between := polygon(154, 0, 154, -9, 310, -9, 310, 110, -10, 110, -10, -9, 146, -9, 146, 0,
		0, 0, 0, 100, 300, 100, 300, 0)
	tabs := board(milled.Cut{Depth: thick + 1, Reach: []geom.Loop{between}})
	tabs.CutOut = []milled.Cut{{Depth: thick - 1.5, Reach: skin.CutOut[0].Reach}}
	for name, c := range map[string]struct {
		panel geom.Panel
		want  float64
		arcs  float64 // of cuts, in mm, times their depth
	}{
		"round corners": {board(milled.Cut{Depth: 5, Reach: reached(t, pocket)}).Trimmed(),
			blank - 5*(6000-4*corner), 5 * math.Pi * bit},
		"dogbones": {board(milled.Cut{Depth: 5, Reach: reached(t, dogbones(100, 20, 200, 80))}).Trimmed(),
			blank - 5*(6000+4*bone), 5 * 2 * math.Pi * bit},
		"past the edges": {board(milled.Cut{Depth: 5, Reach: slot}).Trimmed(), blank - 5*6*100, 0},
		"a ring": {board(milled.Cut{Face: geom.Outside, Depth: 5, Reach: ring}).Trimmed(),
			blank - 5*math.Pi*(900-400), 5 * 2 * math.Pi * 50},
		"onion skin": {skin.FromSheet(), blank + 0.5*aside, 0.5 * 2 * math.Pi * bit},
		"trimmed":    {skin.Trimmed(), blank, 0},
		"a tab":      {tabs.FromSheet(), blank + 1.5*8*bit, 0},
	} {
		m, err := milled.Solid(c.panel, 0)
		if err != nil {
			t.Fatal(err)
		}
		if err := geomtest.CheckMesh(m); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if got := geomtest.Volume(c.panel); math.Abs(got-c.want) > 1e-9*c.want {
			t.Errorf("%s: its regions hold %.6f mm3, want %.6f", name, got, c.want)
		}
		if d := math.Abs(m.Volume() - c.want); d > 2.0/3*milled.Chord*c.arcs+1e-6*c.want {
			t.Errorf("%s: %.4f mm3, want %.4f within %.4f", name, m.Volume(), c.want, 2.0/3*milled.Chord*c.arcs)
		}
	}
}

// TestChords: no corner of a round wall is further from its arc than it says, nor is the middle of
// a chord.
func TestChords(t *testing.T) {
	for _, r := range []float64{0.5, 1.5, 3, 6.35, 63} {
		b := board(milled.Cut{Depth: 5, Reach: []geom.Loop{geom.Circle(geom.Point{X: 150, Y: 50}, r)}})
		m, err := milled.Solid(b.Trimmed(), 0)
		if err != nil {
			t.Fatal(err)
		}
		worst, seen := 0.0, 0
		for i := range m.Triangles {
			p, q, s := m.Corners(i)
			for _, e := range [][2]geom.Vec3{{p, q}, {q, s}, {s, p}} {
				from := func(v geom.Vec3) float64 { return math.Hypot(v.X-150, v.Y-50) }
				onRim := math.Abs(from(e[0])-r) <= 1e-3 && math.Abs(from(e[1])-r) <= 1e-3
				if e[0].Z != e[1].Z || e[0].Z != thick || !onRim {
					continue
				}
				mid := e[0].Add(e[1]).Scale(0.5)
				if d := math.Hypot(e[0].X-e[1].X, e[0].Y-e[1].Y); d < r { // along the rim
					worst, seen = math.Max(worst, math.Abs(from(mid)-r)), seen+1
				}
			}
		}
		if seen == 0 || worst > milled.Chord+1e-4 {
			t.Errorf("radius %g: chords are %g mm off at most, of %d", r, worst, seen)
		}
	}
}

// BenchmarkSide is a drawer's side with two dados that run past its edges, and a groove that
// stops in them with its corners cleared.
func BenchmarkSide(b *testing.B) {
	lines := []geom.Loop{geom.Rectangle(6, -4, 12.35, 104), geom.Rectangle(287.65, -4, 294, 104),
		dogbones(8, 10, 292, 18.5)}
	reach := func() (side milled.Board) {
		side = board()
		for _, l := range lines {
			side.Cuts = append(side.Cuts, milled.Cut{Depth: 6.1, Reach: reached(b, l)})
		}
		return side
	}
	side := reach()
	b.Run("solid", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := milled.Solid(side.Trimmed(), 0); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("from its lines", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := milled.Solid(reach().Trimmed(), 0); err != nil {
				b.Fatal(err)
			}
		}
	})
}
