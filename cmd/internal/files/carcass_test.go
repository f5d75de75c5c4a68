package files_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/opening"
)

// sameMeasure is what a sum of a few lengths may be off, in mm.
const sameMeasure = 1e-6

// TestClearancesAsPrinted: in all samples what is measured about the drawers of an opening is
// what the lists say is free above, below and behind, and what the sum of their width leaves; and
// nothing collides.
func TestClearancesAsPrinted(t *testing.T) {
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, name := range samples {
		in, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		j, problems := job.Read("job.yaml", in, job.Files(load.Beside(name)))
		in.Close()
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := batch.Bare(j)
		groups := files.Cabinets(b)
		for i, bank := range b.Banks {
			count++
			c := groups[i].Carcass
			for _, k := range c.Collisions {
				t.Errorf("%s: %+v", name, k)
			}
			gaps := gapsOf(*c)
			said := record.CabinetOf(b, bank)
			sides := said.Opening.Width.MM()
			for _, term := range said.WidthFrom {
				sides -= float64(term.Times) * term.Each.MM()
			}
			for k, row := range said.Rows {
				d := b.Drawers[bank.Drawers[k]]
				behind := bank.Plan.RoomBehind + bank.Opening.ClearanceBehind
				f := d.Spec.DrawerFront
				if f != nil && bank.Opening.Fronts == opening.Inset { // it is planned for the thickest
					behind += f.Stock.Thickness.Max - f.Stock.Thickness.Mean
				}
				for what, want := range map[string]float64{
					"above " + row.Drawer + ", in its row": row.ClearanceAbove.MM(),
					"below " + row.Drawer + ", in its row": row.ClearanceBelow.MM(),
					"left of " + row.Drawer:                sides / 2,
					"right of " + row.Drawer:               sides / 2,
					"behind " + row.Drawer:                 behind,
				} {
					if got, ok := gaps[what]; !ok || math.Abs(got-want) > sameMeasure {
						t.Errorf("%s: %s is %g, %v, and the lists say %g", name, what, got, ok, want)
					}
				}
			}
		}
	}
	if count < 8 {
		t.Errorf("%d openings in the samples", count)
	}
}

func gapsOf(c carcass.Carcass) map[string]float64 {
	gaps := map[string]float64{}
	for _, k := range c.Clearances {
		gaps[k.Name] = k.Gap
	}
	return gaps
}

// planted is a job of two drawers above each other.
const planted = `units: mm
stock:
  ply: {thickness: 12}
  thin: {thickness: 6}
cutter: {kind: router, bits: {large: {diameter: 6}, small: {diameter: 4}}}
openings: {o: {width: 500, height: 300, depth: 480, cabinet: frameless, fronts: overlay}}
slides: {own: {kind: side-mount, screw-line: 35, height: 45}}
drawers:
  - {name: a, opening: o, slide: own, rows: 2, front-gap: 2, sides: ply, bottom: thin,
     drawer-front: {stock: ply, handles: knob}}
`

// TestCollisions: a knob that stands above its front, slides higher than the sides, a box that is
// too deep or wide, boxes into each other and what is under a box are found, by as much as they
// are in the way; without them nothing is.
func TestCollisions(t *testing.T) {
	under := strings.NewReplacer("own: {kind: side-mount, screw-line: 35, height: 45}", "own: {kind: undermount}",
		"bottom: thin", "bottom: thin, joinery: {bottom-height: 13}")
	high := strings.NewReplacer("height: 45", "height: 60", "rows: 2", "rows: 2, box-heights: [60]")
	frame := strings.NewReplacer("cabinet: frameless", "cabinet: face-frame, frame-overhang: 10")
	bank := func(b batch.Batch) *batch.Bank { return &b.Banks[0] }
	for name, c := range map[string]struct {
		text  string
		plant func(b batch.Batch)
		want  map[string]float64
	}{
		"none":             {text: planted},
		"none, undermount": {text: under.Replace(planted)},
		"none, face frame": {text: frame.Replace(planted)},
		"knob": {text: strings.Replace(planted, "handles: knob", "handles: knob, handle-from-top: 12.5", 1),
			want: map[string]float64{"drawer front of a-1 and knob of a-2 pulled": 0.5}},
		"high slides": {text: high.Replace(planted), want: map[string]float64{
			"left slide of a-1, higher than the left side of a-1":   5,
			"right slide of a-1, higher than the right side of a-1": 5,
			"left slide of a-2, higher than the left side of a-2":   5,
			"right slide of a-2, higher than the right side of a-2": 5}},
		"too deep": {text: planted, plant: func(b batch.Batch) {
			p := &bank(b).Plan
			p.Opening.Depth = p.SlideLength - 3
		}, want: map[string]float64{"left side of a-1 and the back of the opening": 3,
			"back of a-1 and the back of the opening":       3,
			"left slide of a-1 and the back of the opening": 3}},
		"into the one below": {text: planted, plant: func(b batch.Batch) {
			p := &bank(b).Plan
			p.Rows[0].BoxBottom -= p.Rows[0].BoxBottom - (p.Rows[1].BoxBottom + p.Rows[1].Box.Height) + 2
		}, want: map[string]float64{"left side of a-1 and left side of a-2": 2,
			"drawer front of a-1 and drawer front of a-2": 12}},
		"behind the front above": {text: planted, plant: func(b batch.Batch) {
			r := &bank(b).Plan.Rows[1]
			r.BoxBottom += r.Above + 2 + 3
		}, want: map[string]float64{"drawer front of a-1 and left side of a-2 pulled": 3}},
		"bottom too low": {text: under.Replace(planted), plant: func(b batch.Batch) {
			bank(b).Plan.Slide.BottomRecess += 2
		}, want: map[string]float64{"bottom of a-1 and left slide of a-1, in the box": 2,
			"back of a-1 and left slide of a-1, in the box": 2}},
		"too wide": {text: planted, plant: func(b batch.Batch) {
			p := &bank(b).Plan
			p.Slide.Clearance = (p.Opening.Width-p.Rows[0].Box.Width)/2 + 0.6
		},
			want: map[string]float64{"left side of a-1 and left slide of a-1": 0.6}},
	} {
		b := madeOf(t, c.text)
		if c.plant != nil {
			c.plant(b)
		}
		found := map[string]float64{}
		for _, k := range files.Cabinets(b)[0].Carcass.Collisions {
			name := k.Name
			if k.Pulled {
				name += " pulled"
			}
			found[name] = k.By
		}
		if len(found) > 0 && len(c.want) == 0 {
			t.Errorf("%s: %v", name, found)
		}
		for what, by := range c.want {
			if got, ok := found[what]; !ok || math.Abs(got-by) > sameMeasure {
				t.Errorf("%s: %s by %g, %v, not %g; there are %s", name, what, got, ok, by, fmt.Sprint(found))
			}
		}
	}
}

// TestNothingStandsInNothing: an opening without drawers, or whose drawers have no shape, is no panic.
func TestNothingStandsInNothing(t *testing.T) {
	b := madeOf(t, planted)
	bank := carcass.Bank{Unit: geom.Millimeter, Opening: b.Banks[0].Opening, Plan: b.Banks[0].Plan}
	if c := carcass.Make(bank); len(c.Outlines)+len(c.Clearances) > 0 {
		t.Errorf("%+v", c)
	}
	bank.Drawers = make([]carcass.Drawer, 2)
	if c := carcass.Make(bank); len(c.Clearances)+len(c.Collisions) > 0 || len(c.Travel) != 2 {
		t.Errorf("%+v", c)
	}
}
