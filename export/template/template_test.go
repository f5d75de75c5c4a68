package template

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxftest"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/kerf"
)

func options() Options {
	return Options{Job: "BENCH", Thickness: 3.15, MinBridge: 0.18, Mark: 1.2, Bed: geom.Point{X: 600, Y: 400}, Pin: 5, Dowel: "5 mm"}
}

// built are the panels of a drawer.
func built(s joinery.Spec) []Panel {
	d, problems, _ := joinery.LayOut(s)
	if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
		return nil
	}
	var list []Panel
	for _, p := range d.Parts {
		list = append(list, Panel{Name: "box-" + string(p.Role) + p.Label, Panel: p.Panel, Stock: p.Stock.Name, Thickness: fmt.Sprintf("%.2f", p.Panel.Thickness), End: "FRONT END", OtherEnd: "BACK END"})
	}
	return list
}

func spec(joint joinery.Joint) joinery.Spec {
	ply := joinery.Stock{Name: "ply", Thickness: joinery.Measure(12.2), Grain: joinery.GrainNone}
	board := joinery.Stock{Name: "board", Thickness: joinery.Measure(5.9), Grain: joinery.GrainNone}
	return joinery.Spec{Name: "a", Count: 1, Width: 460, Height: 140, Depth: 500, Sides: ply, Front: ply, Back: ply, Bottom: board, BottomFit: joinery.BottomAuto, BottomClearance: 2,
		Joint: joint, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, GrooveEnds: joinery.GrooveThrough}
}

// onWall is how near, in mm, an edge that marks a wall is to it.
const onWall = 0.01

// wallsMarked tells which straight walls of a face's pockets have no edge of an opening,
// and no scored line, on them.
func wallsMarked(plate Plate, p Panel, face geom.Face) (missing []string) {
	seen := looked(p, face)
	bounds := seen.Panel.Outline.Bounds()
	on := func(upright bool, at, from, to float64) bool {
		check := func(a, b geom.Point) bool {
			if upright {
				return math.Abs(a.X-at) < onWall && math.Abs(b.X-at) < onWall && min(max(a.Y, b.Y),
					to)-max(min(a.Y, b.Y), from) > 0.5*min(shortest, to-from)
			}
			return math.Abs(a.Y-at) < onWall && math.Abs(b.Y-at) < onWall && min(max(a.X, b.X),
				to)-max(min(a.X, b.X), from) > 0.5*min(shortest, to-from)
		}
		for _, l := range slices.Concat(toLoops(plate.Engrave), plate.cuts()) {
			for i, v := range l {
				if check(v.Point, l[(i+1)%len(l)].Point) {
					return true
				}
			}
		}
		return false
	}
	o := plate.Origin
	for _, k := range seen.Panel.Pockets {
		for i, v := range k.Outline {
			n := k.Outline[(i+1)%len(k.Outline)]
			switch {
			case v.Bulge != 0:
			case v.X == n.X && v.X > bounds.Min.X+edgeRoom && v.X < bounds.Max.X-edgeRoom:
				if !on(true, v.X+o.X, max(min(v.Y, n.Y), bounds.Min.Y)+o.Y, min(max(v.Y, n.Y), bounds.Max.Y)+o.Y) {
					missing = append(missing, fmt.Sprintf("%s at x %.2f", k.Kind, v.X))
				}
			case v.Y == n.Y && v.Y > bounds.Min.Y+edgeRoom && v.Y < bounds.Max.Y-edgeRoom:
				if !on(false, v.Y+o.Y, max(min(v.X, n.X), bounds.Min.X)+o.X, min(max(v.X, n.X), bounds.Max.X)+o.X) {
					missing = append(missing, fmt.Sprintf("%s at y %.2f", k.Kind, v.Y))
				}
			}
		}
	}
	return missing
}

func toLoops(paths [][]geom.Vertex) (list []geom.Loop) {
	for _, p := range paths {
		list = append(list, p)
	}
	return list
}

// TestSideIsMarked: on the plate for a dado-rabbet's side the walls of its dados stand
// 6.1 and 12.45 from both ends, f and f + w, those of its groove as far from the lower
// edge; the plate for the front's outside shows the shoulders 6.1 from its ends.
func TestSideIsMarked(t *testing.T) {
	plates, problems := Panels(built(spec(joinery.DadoRabbet)), options())
	if len(problems) > 0 {
		t.Error(problems)
	}
	var side, front *Plate
	for i, p := range plates {
		switch p.Name {
		case "box-side-inside":
			side = &plates[i]
		case "box-box-front-outside":
			front = &plates[i]
		}
	}
	if side == nil || front == nil {
		t.Fatalf("plates: %v", plates)
	}
	edges := func(p *Plate) (xs, ys []float64) {
		for _, l := range p.Openings {
			b := l.Bounds()
			xs, ys = append(xs, b.Min.X-p.Origin.X, b.Max.X-p.Origin.X), append(ys, b.Min.Y-p.Origin.Y,
				b.Max.Y-p.Origin.Y)
		}
		return xs, ys
	}
	has := func(list []float64, want float64) bool {
		return slices.ContainsFunc(list, func(v float64) bool { return math.Abs(v-want) < onWall })
	}
	xs, ys := edges(side)
	for _, want := range []float64{6.1, 12.45, 500 - 6.1, 500 - 12.45} {
		if !has(xs, want) {
			t.Errorf("no slot has an edge %g from the front end: %v", want, xs)
		}
	}
	for _, want := range []float64{6.1, 12.45} {
		if !has(ys, want) {
			t.Errorf("no slot has an edge %g over the lower edge: %v", want, ys)
		}
	}
	// 460 - 2 x 12.2 + 2 x 6.1 = 447.8 long.
	xs, _ = edges(front)
	for _, want := range []float64{6.1, 447.8 - 6.1} {
		if !has(xs, want) {
			t.Errorf("no slot has an edge %g from the front's end: %v", want, xs)
		}
	}
	// The pins touch the panel's edges from outside.
	var low, left int
	for _, l := range side.cuts() {
		if c, r, round := l.AsCircle(); round && r == 2.5 {
			if math.Abs(c.Y+r-side.Origin.Y) < 1e-9 {
				low++
			} else if math.Abs(c.X+r-side.Origin.X) < 1e-9 {
				left++
			}
		}
	}
	if low != 2 || left != 1 {
		t.Errorf("%d pins at the lower edge and %d at the end", low, left)
	}
	// The back has the front's cuts: one plate serves both.
	if !slices.Equal(front.Parts, []string{"box-box-front", "box-back"}) && len(front.Parts) != 1 {
		t.Errorf("the front's plate serves %v", front.Parts)
	}
}

// wordsCollide finds words that run into each other, cuts or beyond the plate.
func wordsCollide(p Plate) (list []string) {
	b := p.Outline.Bounds()
	words := slices.Clone(p.Words)
	if p.stamp.Text != "" {
		words = append(words, p.stamp)
	}
	for i, w := range words {
		box := w.box()
		if !b.Contains(box) {
			list = append(list, w.Text+" leaves the plate")
		}
		for _, v := range words[:i] {
			if box.Overlaps(v.box()) {
				list = append(list, w.Text+" runs into "+v.Text)
			}
		}
		for _, l := range p.cuts() {
			if box.Overlaps(l.Bounds()) {
				list = append(list, w.Text+" runs into a cut")
			}
		}
	}
	return list
}

// TestAnyTemplate: whatever the drawer, every wall is marked, nothing that is cut comes
// nearer to anything else than the least bridge, words stand free, and pieces fit the
// bed and add up to the plate.
func TestAnyTemplate(t *testing.T) {
	joints := joinery.Joints
	made := map[joinery.Joint]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := spec(rapid.SampledFrom(joints).Draw(t, "joint"))
		s.Width, s.Height, s.Depth = rapid.Float64Range(150, 900).Draw(t, "w"), rapid.Float64Range(70,
			300).Draw(t, "h"), rapid.Float64Range(150, 700).Draw(t, "d")
		switch {
		case s.Joint == joinery.Dovetail:
			s = byHand(s)
		case rapid.Bool().Draw(t, "router"):
			s.Cutter, s.GrooveEnds = joinery.Cutter{Kind: joinery.Router, Width: 5}, joinery.GrooveStopped
			s.DadoClearance, s.GrooveClearance = 0.2, 0.2
			s.Pull = rapid.SampledFrom([]joinery.Pull{{}, {Shape: joinery.PullHole, Width: 32}, {Shape: joinery.PullHalf, Width: 60}}).Draw(t, "pull")
		}
		o := options()
		o.Bed = geom.Point{X: rapid.Float64Range(250, 1000).Draw(t, "bed"), Y: rapid.Float64Range(200, 600).Draw(t, "bed")}
		if rapid.Bool().Draw(t, "lip") {
			o.Register = Lip
		}
		if rapid.Bool().Draw(t, "coarse") {
			o.MinBridge = 3.175
		}
		panels := built(s)
		plates, _ := Panels(panels, o)
		for _, p := range plates {
			made[s.Joint]++
			for _, panel := range panels {
				for _, face := range []geom.Face{geom.Inside, geom.Outside} {
					if p.Name == panel.Name+"-"+face.String() {
						if missing := wallsMarked(p, panel, face); len(missing) > 0 {
							t.Fatalf("%s: no mark for %v", p.Name, missing)
						}
					}
				}
			}
			pieces := p.Split()
			area := 0.0
			for _, q := range pieces {
				area += q.Outline.Area()
				b := q.Outline.Bounds()
				if len(p.seams[0])+len(p.seams[1]) > 0 && !o.fits(b.Max.X, b.Max.Y) {
					t.Fatalf("%s is %v on a bed of %v", q.Name, b, o.Bed)
				}
				for _, f := range q.Made(o.MinBridge).Found {
					if f.IsError() || f.Code == kerf.Bridge {
						t.Fatalf("%s: %s at %v", q.Name, f.Error(), f.At)
					}
				}
				if list := wordsCollide(q); len(list) > 0 {
					t.Fatalf("%s: %v", q.Name, list)
				}
			}
			// The joints' play is all that is missing: no more than it is wide, along seams and
			// round keys, whose sides are longer than the seam by less than half.
			b := p.Outline.Bounds()
			lost := keyClearance * 2.2 * (float64(len(p.seams[0]))*b.Max.Y + float64(len(p.seams[1]))*b.Max.X)
			if area > p.Outline.Area()+1e-6 || area < p.Outline.Area()-lost-1e-6 {
				t.Fatalf("%s: pieces of %g mm2 for %g", p.Name, area, p.Outline.Area())
			}
		}
	})
	for _, j := range joints {
		if made[j] == 0 {
			t.Errorf("no plate for a %s: %v", j, made)
		}
	}
}

// TestFiles: plates are drawn in both versions as the strict checker wants them, with
// and without a kerf, and without cuts on the layer of what is scored.
func TestFiles(t *testing.T) {
	o := options()
	plates, _ := Panels(built(spec(joinery.DadoRabbet)), o)
	plates = append(plates, Stick(Side{Name: "left", Height: 720, Lines: []Line{{"top", 610.2}, {"low", 122.7}}, Holes: []geom.Point{{X: 37, Y: 610.2}, {X: 261, Y: 610.2}, {X: 37, Y: 122.7}}}, o))
	corner := Corner{Name: "setting", Fence: 6.1, Height: 6.1, Cutter: 6.35, Deep: 6.1, Depths: [2]float64{6, 6.3}, Tongue: [2]float64{5.98, 6.23}}
	plates = append(plates, Gauge(corner, o))
	plates = append(plates, Blocks(corner, []float64{0.5, 1, 1.5, 3}, o)...)
	for _, p := range plates {
		for _, q := range p.Split() {
			for _, k := range []float64{0, 0.18} {
				c := q.Made(k)
				for _, f := range c.Found {
					if f.IsError() {
						t.Errorf("%s: %s", q.Name, f.Error())
					}
				}
				if list := wordsCollide(q); len(list) > 0 {
					t.Errorf("%s: %v", q.Name, list)
				}
				for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
					for _, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
						var out bytes.Buffer
						if _, err := Draw(c, v, u).WriteTo(&out); err != nil {
							t.Fatal(q.Name, err)
						}
						if err := dxftest.Strict(out.Bytes()); err != nil {
							t.Errorf("%s: %v", q.Name, err)
						}
					}
				}
			}
		}
	}
}

func BenchmarkHundredLayouts(b *testing.B) {
	var panels []Panel
	for i := range 100 {
		s := spec(joinery.DadoRabbet)
		s.Width, s.Depth = 300+float64(i)*4, 350+float64(i)*3
		panels = append(panels, built(s)[0])
		panels[i].Name = fmt.Sprint("box", i)
	}
	for b.Loop() {
		plates, _ := Panels(panels, options())
		for _, p := range plates {
			for _, q := range p.Split() {
				var out bytes.Buffer
				if _, err := Draw(q.Made(0.18), dxf.R2000, geom.Millimeter).WriteTo(&out); err != nil {
					b.Fatal(err)
				}
			}
		}
	}
}

// TestRemediesHold: pins that cannot be cut are named with what was compared, and strips
// instead of them end that.
func TestRemediesHold(t *testing.T) {
	o := options()
	o.Pin, o.MinBridge = 2, 3
	panels := built(spec(joinery.DadoRabbet))
	_, found := Panels(panels, o)
	pins := 0
	for _, d := range found {
		if d.Subject.Setting != SettingPin {
			continue
		}
		if pins++; d.Measured != geom.Millimeters(2) || d.Limit != geom.Millimeters(3) || !reflect.DeepEqual(d.Remedies, withLip) {
			t.Errorf("%+v", d)
		}
	}
	o.Register = Lip
	_, left := Panels(panels, o)
	if pins == 0 || slices.ContainsFunc(left, func(d geom.Diagnosis) bool { return d.Subject.Setting == SettingPin }) {
		t.Errorf("%d of pins, with strips: %v", pins, left)
	}
}

// byHand is a box that is cut so.
func byHand(s joinery.Spec) joinery.Spec {
	s.Cutter, s.GrooveEnds = joinery.Cutter{Kind: joinery.Hand, Width: 5}, joinery.GrooveStopped
	s.DadoClearance, s.GrooveClearance = 0.2, 0.2
	return s
}

// TestDovetailsMarked: by a plate of the side a knife runs along both flanks of every tail, and by plates of the
// front's faces and its end grain along every pin.
func TestDovetailsMarked(t *testing.T) {
	s := byHand(spec(joinery.Dovetail))
	s.Tails = 2
	plates, found := Panels(built(s), options())
	if len(found) > 0 {
		t.Fatal(found)
	}
	slanted, names := make(map[string]int), []string{}
	for _, p := range plates {
		names = append(names, p.Name)
		for _, l := range p.Openings {
			if _, square := l.AsRect(1e-9); !square && len(l) == 4 {
				slanted[p.Name]++
			}
		}
	}
	// Two tails have four flanks at each end of a side, and as many are on the end grain of a front.
	want := map[string]int{"box-side-inside": 8, "box-box-front-end": 4}
	for _, name := range names {
		if slanted[name] != want[name] {
			t.Errorf("%s has %d slanted slots, not %d", name, slanted[name], want[name])
		}
	}
	if len(names) != 4 {
		t.Error(names)
	}
	end := plates[slices.Index(names, "box-box-front-end")]
	// The edge of a slot is on the pin's flank: 12.2 / 8 aside over the thickness.
	half, run := 12.2/2, 12.2/8
	low, high := end.Origin.Add(geom.Point{Y: half - run - 0.05}), end.Origin.Add(geom.Point{X: 12.2, Y: half - 0.05})
	if !slices.ContainsFunc(end.Openings, func(l geom.Loop) bool {
		return slices.ContainsFunc(l, func(v geom.Vertex) bool { return v.To(low) < onWall }) &&
			slices.ContainsFunc(l, func(v geom.Vertex) bool { return v.To(high) < onWall })
	}) {
		t.Errorf("no slot from %v to %v: %v", low, high, end.Openings)
	}
}
