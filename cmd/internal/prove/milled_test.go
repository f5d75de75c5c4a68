package prove_test

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/milled"
	"drawerwright/preview/stl"
)

// TestMilledBoards: what the bits leave of each part of a router, by its drawings, makes
// closed solids. They hold what the regions of its cuts leave in closed form, and more by no
// more than chords keep from their arcs.
func TestMilledBoards(t *testing.T) {
	for _, text := range []string{milledJob, sample(t, "router-boxes.yaml"), sample(t, "no-flip.yaml")} {
		f := build(t, text)
		t.Run(f.report(t).Job, func(t *testing.T) {
			r := f.report(t)
			p, err := prove.New(record.Keep(r))
			if err != nil {
				t.Fatal(err)
			}
			w := p.Worker()
			for _, part := range r.Parts {
				board, err := w.Board(part.Name, f.ReadFile)
				if err != nil {
					t.Fatal(err)
				}
				holds(t, part.Name+", trimmed", board.Trimmed())
				holds(t, part.Name+", from its sheet", board.FromSheet())
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

// milledJob has reliefs in lips behind the dados, tabs, onion skins, and numbers.
const milledJob = `units: mm
preview: milled
stock:
  ply 18: {thickness: [18, 17.95, 18.05]}
  ply 12: {thickness: [12, 11.96, 12.04]}
  ply 6: {thickness: [6, 5.97, 6.03]}
cutter: {kind: router, bits: {three: {diameter: 3, reach: 20}, point: {diameter: 1, reach: 4}}}
router: {tabs: {width: 8, height: 2, spacing: 150}, onion-skin: 0.4, engrave: {bit: point, depth: 0.4}}
joinery: {cutter-height: 9}
drawers:
  - {name: lips, outside: 300 x 120 x 250, sides: ply 18, box-front: ply 12, bottom: ply 6}
`

// unrelieved is a loop with its reliefs filled up to the chords of their arcs.
func unrelieved(l geom.Loop) geom.Loop {
	m := slices.Clone(l)
	for i := range m {
		if m[i].Bulge > 0.9 {
			m[i].Bulge = 0
		}
	}
	return m
}

// TestPlantedMilled: a part's solid that is not what its drawings have cut is found.
func TestPlantedMilled(t *testing.T) {
	f := build(t, milledJob)
	if all := faultsOf(f.checked(t)); len(all) != 0 {
		t.Fatalf("without any: %+v", all)
	}
	r := f.report(t)
	p, err := prove.New(record.Keep(r))
	if err != nil {
		t.Fatal(err)
	}
	w := p.Worker()
	side, bottom := 0, slices.IndexFunc(r.Parts, func(q record.Part) bool { return q.Role == "bottom" })
	withoutRelief := func(c *milled.Cut) { c.Reach = []geom.Loop{unrelieved(c.Reach[0])} }
	aside := func(b *milled.Board) {
		b.Cuts[0].Reach = []geom.Loop{b.Cuts[0].Reach[0].Translate(geom.Point{X: 0.5})}
	}
	eachCut := func(change func(*milled.Cut)) func(*milled.Board) {
		return func(b *milled.Board) {
			for i := range b.Cuts {
				change(&b.Cuts[i])
			}
		}
	}
	for name, c := range map[string]struct {
		part int
		harm func(*milled.Board)
		code string
	}{
		"unharmed":                {side, func(*milled.Board) {}, ""},
		"a pocket 0.1 deeper":     {side, func(b *milled.Board) { b.Cuts[0].Depth += 0.1 }, "solid-face"},
		"all pockets 0.1 deeper":  {side, eachCut(func(c *milled.Cut) { c.Depth += 0.1 }), "solid-face"},
		"a cut left out":          {side, func(b *milled.Board) { b.Cuts = b.Cuts[1:] }, "solid-face"},
		"reliefs left out":        {side, eachCut(withoutRelief), "solid-face"},
		"a pocket 0.5 aside":      {side, aside, "solid-place"},
		"tabs left out":           {side, func(b *milled.Board) { b.CutOut = nil }, "solid-size"},
		"tabs 0.1 higher":         {side, func(b *milled.Board) { b.CutOut[0].Depth -= 0.1 }, "solid-face"},
		"an onion skin left out":  {bottom, func(b *milled.Board) { b.CutOut = nil }, "solid-size"},
		"an onion skin of double": {bottom, func(b *milled.Board) { b.CutOut[0].Depth -= 0.4 }, "solid-face"},
	} {
		t.Run(name, func(t *testing.T) {
			part := r.Parts[c.part]
			b, err := w.Board(part.Name, f.ReadFile)
			if err != nil {
				t.Fatal(err)
			}
			b.Cuts, b.CutOut = slices.Clone(b.Cuts), slices.Clone(b.CutOut)
			c.harm(&b)
			m, err := milled.Solid(b.FromSheet(), 0)
			if err != nil {
				t.Fatal(err)
			}
			var data bytes.Buffer
			if err := stl.Binary(&data, part.Name, m); err != nil {
				t.Fatal(err)
			}
			spoilt := build(t, milledJob)
			spoilt.files[part.Files.STL] = data.Bytes()
			all := faultsOf(spoilt.checked(t))
			found := slices.ContainsFunc(all, func(v record.Fault) bool {
				return v.Code == c.code && v.File == part.Files.STL
			})
			if !found && (c.code != "" || len(all) > 0) {
				t.Errorf("%q of %s is not found: %+v", c.code, part.Files.STL, all)
			}
		})
	}
}
