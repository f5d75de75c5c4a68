package prove_test

import (
	"math"
	"path/filepath"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/milled"
)

// TestMilledBoards: what the bits leave of each part of the samples, by its drawings, makes
// closed solids. They hold what the regions of its cuts leave in closed form, and more by no
// more than chords keep from their arcs.
func TestMilledBoards(t *testing.T) {
	names, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			f := build(t, sample(t, filepath.Base(name)))
			r := f.report(t)
			p, err := prove.New(r)
			if err != nil {
				t.Fatal(err)
			}
			w := p.Worker()
			for _, part := range r.Parts {
				board, err := w.Board(part.Name, f.ReadFile)
				if err != nil {
					t.Fatal(err)
				}
				for way, panel := range map[string]geom.Panel{"trimmed": board.Trimmed(), "from its sheet": board.FromSheet()} {
					holds(t, part.Name+" "+way, panel)
				}
			}
		})
	}
}

// holds judges the solid of a panel as milled.
func holds(t *testing.T, name string, panel geom.Panel) {
	t.Helper()
	m, err := milled.Solid(panel, 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := geomtest.CheckMesh(m); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	// Two thirds of the chords' distance along the arcs, through the thickness; and the grid.
	arcs, all := 0.0, 0.0
	loops := append([]geom.Loop{panel.Outline}, panel.Holes...)
	for _, k := range panel.Pockets {
		loops = append(loops, k.Outline)
	}
	for _, l := range loops {
		all += l.Perimeter()
		for i := range l {
			if l[i].Bulge != 0 {
				arcs += l.SideLength(i)
			}
		}
	}
	allowed := (2.0/3*milled.Chord*arcs + 1e-4*all) * panel.Thickness
	want := geomtest.Volume(panel)
	if d := math.Abs(m.Volume() - want); d > allowed {
		t.Errorf("%s: it holds %.3f mm3, in closed form %.3f; %.3f is allowed", name, m.Volume(), want, allowed)
	}
}
