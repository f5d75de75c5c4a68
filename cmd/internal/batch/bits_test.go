package batch_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// sets of bits: some fit bottoms of 8 mm and more, some hardly the corner's dados.
var sets = [][]float64{{8, 4}, {4, 8}, {6, 3}, {10, 6, 3}, {6.35, 3.175}, {8, 6, 4, 3}, {12, 8, 6, 3}, {5, 4.8}}

// give gives a drawer bits.
func give(d *job.Drawer, bits []mill.Bit) {
	d.Bits, d.Spec.Bits = bits, nil
	d.Cutter.Width = math.Inf(1)
	for _, b := range bits {
		d.Cutter.Width = min(d.Cutter.Width, b.Diameter)
		if len(bits) > 1 {
			d.Spec.Bits = append(d.Spec.Bits, joinery.Bit{Diameter: b.Diameter, Reach: b.Reach})
		}
	}
}

// routed is the job of a seed, cut by a router with several bits, and its bottoms
// thickened now and then, so that a wide bit gets into their grooves.
func routed(t *testing.T, seed uint64) *job.Job {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(jobtest.Seeded(seed, jobtest.Want{Machine: "router"}).Text))
	if problems.Failed() {
		return nil
	}
	r := rand.New(rand.NewPCG(seed, 7))
	var bits []mill.Bit
	for i, d := range sets[r.IntN(len(sets))] {
		bits = append(bits, mill.Bit{Name: fmt.Sprintf("b%d", i+1), Diameter: d, Reach: []float64{0, 40, 40, 12}[r.IntN(4)]})
	}
	bits[0].Reach = 0 // one at least reaches everywhere
	thicker := []float64{0, 0, 3, 5}[r.IntN(4)]
	for i := range j.Drawers {
		d := &j.Drawers[i]
		give(d, bits)
		d.Bottom.Thickness.Mean += thicker
		d.Bottom.Thickness.Min += thicker
		d.Bottom.Thickness.Max += thicker
	}
	return j
}

// routedJobs are those of the first seeds that can be built, by their seeds.
func routedJobs(t *testing.T) map[uint64]batch.Batch {
	t.Helper()
	made.Do(func() {
		for seed := range uint64(geomtest.Cases(120, 150)) {
			if j := routed(t, seed); j != nil {
				if b, problems := batch.Make(t.Context(), j); !erring(problems) {
					jobsMade[seed] = b
				}
			}
		}
	})
	return jobsMade
}

var (
	made     sync.Once
	jobsMade = map[uint64]batch.Batch{}
)

func erring(problems []batch.Problem) bool {
	return slices.ContainsFunc(problems, func(p batch.Problem) bool { return p.IsError() })
}

// TestMadeForItsBit: whatever bits a router has, each pocket is that which a router with
// the legend's bit alone would get, in the wood and on the drawing.
func TestMadeForItsBit(t *testing.T) {
	compared, widerThanLeast := 0, 0
	for seed, b := range routedJobs(t) {
		for _, d := range b.Drawers {
			for n, bit := range d.Bits {
				spec := d.Spec
				spec.Bits, spec.Cutter.Width = nil, bit.Diameter
				alone, _, sound := joinery.LayOut(spec)
				if !sound || len(alone.Parts) != len(d.Parts) {
					continue
				}
				for k, p := range d.Parts {
					q := alone.Parts[k]
					settings := b.Router
					settings.Bits = []mill.Bit{bit}
					work, _ := mill.Prepare(mill.Part{Panel: q.Panel, MinThickness: p.Stock.Thickness.Min, MaxThickness: p.Stock.Thickness.Max}, settings)
					for _, c := range p.Work().Cuts {
						if c.Bit != n || c.Pocket < 0 || !sameSlots(d.Drawer.Parts, alone.Parts, k, c.Pocket) {
							continue
						}
						compared++
						if bit.Diameter > d.Spec.Cutter.Width {
							widerThanLeast++
						}
						name := fmt.Sprintf("seed %d, %s, %s with %s of %g", seed, p.Name, c.Operation,
							bit.Name, bit.Diameter)
						if !same(p.Panel.Pockets[c.Pocket].Outline, q.Panel.Pockets[c.Pocket].Outline) {
							t.Errorf("%s: laid out as %v, with that bit alone %v", name,
								p.Panel.Pockets[c.Pocket].Outline, q.Panel.Pockets[c.Pocket].Outline)
							continue
						}
						at := slices.IndexFunc(work.Cuts, func(o mill.Cut) bool { return o.Pocket == c.Pocket })
						if at < 0 || !same(c.Outline, work.Cuts[at].Outline) || !same(c.Path, work.Cuts[at].Path) {
							t.Errorf("%s: drawn otherwise than with that bit alone", name)
						}
					}
				}
			}
		}
	}
	t.Logf("%d pockets compared, %d with a wider bit than the narrowest", compared, widerThanLeast)
	if compared < 2000 || widerThanLeast < 500 {
		t.Error("too few")
	}
}

// sameSlots reports whether all slots of a drawer but one are as wide as with one bit
// alone: where grooves end and screws stand follows from them.
func sameSlots(p, q []joinery.Part, part, pocket int) bool {
	for n := range p {
		if len(p[n].Panel.Pockets) != len(q[n].Panel.Pockets) {
			return false
		}
		for i, k := range p[n].Panel.Pockets {
			a, b := k.Outline.Bounds(), q[n].Panel.Pockets[i].Outline.Bounds()
			slot := k.Kind == geom.Dado || k.Kind == geom.Groove
			if slot && (n != part || i != pocket) && math.Abs(min(a.Width(), a.Height())-min(b.Width(), b.Height())) > 1e-6 {
				return false
			}
		}
	}
	return true
}

func same(a, b geom.Loop) bool {
	return slices.EqualFunc(a, b,
		func(v, w geom.Vertex) bool { return v.To(w.Point) < 1e-6 && math.Abs(v.Bulge-w.Bulge) < 1e-6 })
}

// TestLikeCutsHaveOneBit: cuts of one kind, depth and width have one bit in all drawers
// that are cut with the same bits, and so has a layer in all drawings.
func TestLikeCutsHaveOneBit(t *testing.T) {
	jobs, shared := 0, 0
	for seed, b := range routedJobs(t) {
		jobs++
		like, layers := map[string]string{}, map[string]string{}
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				for _, c := range p.Work().Cuts {
					if c.Pocket < 0 {
						continue
					}
					k := p.Panel.Pockets[c.Pocket]
					if k.Kind != geom.Dado && k.Kind != geom.Groove {
						continue
					}
					r := k.Outline.Bounds()
					key := fmt.Sprintf("%s %s %.4f deep, %.4f wide, rising %v", k.Kind, k.Face, k.Depth,
						min(r.Width(), r.Height()), len(k.Takes) > 0 && k.Kind == geom.Dado)
					if k.Kind == geom.Groove { // those of one box are alike
						key += " " + d.Spec.Name
					}
					if first, known := like[key]; known && first != p.Bits[c.Bit].Name {
						t.Errorf("seed %d: %s has %s, and another of %s %s", seed, p.Name,
							p.Bits[c.Bit].Name, key, first)
					}
					like[key] = p.Bits[c.Bit].Name
				}
				for _, drawn := range p.Drawings {
					for _, l := range b.Layers(p, drawn) {
						if first, known := layers[l.Name]; known && first != p.Bits[l.Bit].Name {
							t.Errorf("seed %d: layer %s has %s in %s and %s elsewhere", seed, l.Name,
								p.Bits[l.Bit].Name, drawn.File, first)
						}
						layers[l.Name] = p.Bits[l.Bit].Name
						if strings.HasSuffix(l.Name, "_"+strings.ToUpper(p.Bits[l.Bit].Name)) {
							shared++
						}
					}
				}
			}
		}
	}
	t.Logf("%d jobs, %d layers with the name of their bit", jobs, shared)
	if jobs < 60 || shared < 20 {
		t.Error("too few")
	}
}

// TestOneShortBit: a bit that is too short for the holes that a part is turned over on, and perhaps to cut it
// out, is one error with the reach that does for all.
func TestOneShortBit(t *testing.T) {
	for reach, want := range map[string][]geom.Code{"10": {"bit-reach"}, "14": {"bit-reach"}, "17": nil} {
		text := "units: mm\nstock:\n  birch: {thickness: [11.9, 11.95]}\n  ply: {thickness: [6.1, 6.05]}\n" +
			"cutter: {kind: router, bits: {six: {diameter: 6, reach: " + reach + "}}}\n" +
			"drawers:\n  - {name: box, outside: 380 x 120 x 420, sides: birch, bottom: ply}\n"
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			t.Fatal(problems)
		}
		_, found := batch.Make(t.Context(), j)
		var codes []geom.Code
		for _, p := range found {
			if p.IsError() {
				codes = append(codes, p.Code)
				if hint := p.Shown(j).Hint; !strings.Contains(hint, "16.95 mm or more") {
					t.Errorf("reach %s: %s", reach, hint)
				}
			}
		}
		if !slices.Equal(codes, want) {
			t.Errorf("reach %s: %v", reach, codes)
		}
	}
}
