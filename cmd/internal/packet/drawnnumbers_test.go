package packet

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
)

// recorded are the numbers that a drawing of a part of the record may have, in words: ends and
// places along both axes, from either end, where the outline or a cut begins or ends or a hole
// has its center, depths from either face, and how wide cuts are.
func recorded(p record.Part, words func(mm float64) string) map[string]bool {
	known := map[string]bool{words(0): true, words(p.Length.MM()): true, words(p.Width.MM()): true,
		words(p.Thickness.MM()): true}
	place := func(x, y float64) {
		for _, v := range []float64{x, p.Length.MM() - x, y, p.Width.MM() - y} {
			known[words(v)] = true
		}
	}
	for _, v := range p.Outline {
		place(v.X.MM(), v.Y.MM())
	}
	for _, o := range p.Operations {
		known[words(o.Depth.MM())], known[words(p.Thickness.MM()-o.Depth.MM())] = true, true
		var l geom.Loop
		for _, v := range o.Outline {
			l = append(l, geom.Vertex{Point: geom.Point{X: v.X.MM(), Y: v.Y.MM()}, Bulge: v.Bulge})
		}
		b := l.Bounds()
		place(b.Min.X, b.Min.Y)
		place(b.Max.X, b.Max.Y)
		place(b.Center().X, b.Center().Y)
		known[words(b.Width())], known[words(b.Height())] = true, true
		cut := b.Intersect(geom.Rect{Max: geom.Point{X: p.Length.MM(), Y: p.Width.MM()}}) // not beyond the edges
		known[words(cut.Width())], known[words(cut.Height())] = true, true
	}
	return known
}

// clearances are the rooms beside parts in cuts, in words: what a box is set for, all of it or half at either end, and
// by how much a cut is wider or deeper than the wood beside another.
func clearances(r record.Report, words func(mm float64) string) map[string]bool {
	known := make(map[string]bool)
	for _, f := range r.Fit {
		known[words(math.Abs(f.Nominal.MM()))], known[words(math.Abs(f.Nominal.MM()/2))] = true, true
	}
	var cuts, wood []float64
	for _, p := range r.Parts {
		for _, o := range p.Operations {
			deep := o.Depth.MM()
			var l geom.Loop
			for _, v := range o.Outline {
				l = append(l, geom.Vertex{Point: geom.Point{X: v.X.MM(), Y: v.Y.MM()}, Bulge: v.Bulge})
			}
			b := l.Bounds().Intersect(geom.Rect{Max: geom.Point{X: p.Length.MM(), Y: p.Width.MM()}})
			cuts = append(cuts, deep, min(b.Width(), b.Height()))
			wood = append(wood, p.Thickness.MM()-deep, p.Thickness.MM())
		}
	}
	for _, c := range cuts {
		for _, w := range append(wood, cuts...) {
			known[words(math.Abs(c-w))] = true
		}
	}
	return known
}

// unrecorded lists the numbers of a drawing that are none of those known, as they stand or
// with words behind them.
func unrecorded(d drawn, known map[string]bool) (list []string) {
	for _, w := range d.Texts {
		if !w.Value || known[w.String] {
			continue
		}
		behind := false
		for i, c := range w.String {
			behind = behind || c == ' ' && known[w.String[:i]]
		}
		if !behind {
			list = append(list, w.String)
		}
	}
	return list
}

// isLetter is what stands for a number that parts of one drawing differ in.
var isLetter = regexp.MustCompile(`^[LW]\d*$`)

// lettered is a drawing of a family with the figures of one of its parts for its letters, as drawings print them.
func (d drawn) lettered(part int) drawn {
	d.Texts = slices.Clone(d.Texts)
	for i, w := range d.Texts {
		at := slices.IndexFunc(d.family.letters, func(l letter) bool { return l.name == w.String })
		if !w.Value || at < 0 {
			continue
		}
		d.Texts[i].String = d.family.dimension(d.family.groups[part].Parts[0].Panel)(d.family.letters[at].values[part])
	}
	return d
}

// TestDrawnNumbersAreRecorded: every number of a drawing, of samples and random jobs, is one of
// the record; and every part shows its length and its width.
func TestDrawnNumbersAreRecorded(t *testing.T) {
	count := 0
	anyJobs(t, geomtest.Cases(40, 400), func(name string, b batch.Batch) {
		m := maker{batch: b, unit: b.Units}
		parts := make(map[string]map[string]bool)
		all := make(map[string]bool) // of corners, in which several parts meet
		long := make(map[string][2]string)
		r := record.Make(b, sheets.Plan{}, nil)
		for words := range clearances(r, m.asSet) {
			all[words+" clearance"] = true
		}
		for _, p := range r.Parts {
			parts[p.Name] = recorded(p, m.asSet)
			long[p.Name] = [2]string{m.number(p.Length.MM()), m.number(p.Width.MM())}
			for _, w := range []string{long[p.Name][0], long[p.Name][1], m.number(0)} {
				parts[p.Name][w] = true
			}
			for w := range parts[p.Name] {
				all[w] = true
			}
		}
		for _, d := range drawnOf(b) {
			count += len(d.Texts)
			if d.family == nil {
				for _, w := range unrecorded(d, all) {
					if !isLetter.MatchString(w) {
						t.Errorf("%s, %s: %q is no number of the record", name, d.of, w)
					}
				}
				continue
			}
			for i, g := range d.family.groups {
				of := g.Parts[0].Name
				own := d.lettered(i)
				for _, w := range unrecorded(own, parts[of]) {
					t.Errorf("%s, %s: %q is no number of the record", name, of, w)
				}
				var said []string
				for _, w := range own.Texts {
					said = append(said, w.String)
				}
				for _, w := range long[of] {
					if !slices.Contains(said, w) {
						t.Errorf("%s, %s: %q is not in %q", name, of, w, strings.Join(said, ", "))
					}
				}
			}
		}
	})
	if count < 3000 {
		t.Errorf("only %d texts", count)
	}
}

// TestCutsAreNamed: every cut and every hole of a part, of samples and random jobs, has its name
// in a drawing of it.
func TestCutsAreNamed(t *testing.T) {
	count := 0
	anyJobs(t, geomtest.Cases(40, 400), func(name string, b batch.Batch) {
		said := make(map[string][]string)
		for _, d := range drawnOf(b) {
			for _, w := range d.Texts {
				if d.family == nil {
					break
				}
				for _, g := range d.family.groups {
					of := g.Parts[0].Name
					said[of] = append(said[of], w.String)
				}
			}
		}
		for _, g := range batch.Merged(b) {
			p := g.Parts[0]
			for _, tag := range tags(p.Panel) {
				if count++; !slices.Contains(said[p.Name], tag) {
					t.Errorf("%s, %s: %s has no name in the drawing", name, p.Name, tag)
				}
			}
		}
	})
	if count < 500 {
		t.Errorf("only %d cuts", count)
	}
}

// TestClearancesAreDrawn: the clearance of a tongue in its dado, of a housed back and of a bottom in their grooves, as
// cuts are set, is a size of the drawing of the corner in every sample.
func TestClearancesAreDrawn(t *testing.T) {
	drawn := 0
	for _, k := range packets(t) {
		m := maker{Book: book(k.batch, "", func(drawing.Page) {}), batch: k.batch, unit: k.batch.Units}
		for _, g := range m.alike() {
			var said []string
			for _, d := range m.detailed(g[0], m.Whole()) {
				for _, w := range d.Texts {
					said = append(said, w.String)
				}
			}
			for _, f := range k.report.FitOf(g[0].Spec.Name) {
				switch f.Check {
				case joinery.CheckTongueClearance, joinery.CheckBackClearance, joinery.CheckGrooveClearance:
					drawn++
					if want := m.asSet(f.Nominal.MM()) + " clearance"; !slices.Contains(said, want) {
						t.Errorf("%s, %s: %q is not in %q", k.file, f.Drawer, want, said)
					}
				}
			}
		}
	}
	if drawn < 25 {
		t.Errorf("%d clearances", drawn)
	}
}

// TestNoHoleIsMeasuredInSection: a corner is cut at 106 of 200, past the middle of a dowel's hole at 106.8: what is
// seen of that is narrower than the hole, and no size of it.
func TestNoHoleIsMeasuredInSection(t *testing.T) {
	b := read(t, "tall.yaml", []byte(`units: mm
stock: {birch: {thickness: 15}, ply: {thickness: 5.9}}
cutter: {kind: router, diameter: 6}
drawers: [{name: tall, outside: 460 x 200 x 380, sides: birch, bottom: ply, joint: butt, fasteners: dowels}]
`))
	texts := 0
	for _, d := range drawnOf(b) {
		if d.family != nil {
			continue
		}
		for _, w := range d.Texts {
			if texts++; strings.Contains(w.String, "hole") {
				t.Errorf("%s: %q", d.of, w.String)
			}
		}
	}
	if texts == 0 {
		t.Error("no corner was drawn")
	}
}
