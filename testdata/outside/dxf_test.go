package outside

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
)

// entity is a polyline or circle as an outside reader sees it.
type entity struct {
	Layer, Type string
	Closed      bool
	Points      [][3]float64 // x, y, bulge
	Center      [2]float64
	Radius      float64
}

// audited is what dxf_audit.py tells of a file.
type audited struct {
	File, Version string
	Insunits      *int
	Measurement   *int
	Errors, Fixes int
	Log           []string
	Layers        []struct {
		Name  string
		Color int
	}
	Entities []entity
}

// micrometre is the tolerance of re-read geometry, in millimetres.
const micrometre = 1e-3

// audit opens files with ezdxf; any error, fix or line in its log fails.
func audit(t *testing.T, files []string) []audited {
	t.Helper()
	list := lines[audited](t, "", python, append([]string{"dxf_audit.py"}, files...)...)
	if len(list) != len(files) {
		t.Fatalf("ezdxf answers for %d of %d files", len(list), len(files))
	}
	for _, a := range list {
		if a.Errors != 0 || a.Fixes != 0 || len(a.Log) != 0 {
			t.Errorf("%s: %d errors, %d fixes, log %q", a.File, a.Errors, a.Fixes, a.Log)
		}
	}
	return list
}

// sameLoop tells whether two closed loops have the same sides, from whichever
// corner they start.
func sameLoop(a, b [][3]float64) bool {
	if len(a) != len(b) {
		return false
	}
	for shift := range a {
		same := true
		for i := range a {
			p, q := a[i], b[(i+shift)%len(b)]
			same = same && math.Abs(p[0]-q[0]) < micrometre && math.Abs(p[1]-q[1]) < micrometre && math.Abs(p[2]-q[2]) < 1e-6
		}
		if same {
			return true
		}
	}
	return false
}

// sameEntity compares in millimetres; scale is that of b's unit.
func sameEntity(a, b entity, scale float64) bool {
	if a.Layer != b.Layer || a.Closed != b.Closed || (a.Type == "CIRCLE") != (b.Type == "CIRCLE") {
		return false
	}
	if a.Type == "CIRCLE" {
		return math.Hypot(a.Center[0]-b.Center[0]*scale, a.Center[1]-b.Center[1]*scale) < micrometre && math.Abs(a.Radius-b.Radius*scale) < micrometre
	}
	points := make([][3]float64, len(b.Points))
	for i, p := range b.Points {
		points[i] = [3]float64{p[0] * scale, p[1] * scale, p[2]}
	}
	return sameLoop(a.Points, points)
}

// compare takes what should be cut from what a reader found; labels are left
// out. It gives what is missing, doubled or too much.
func compare(want, got []entity, scale float64) error {
	rest := slices.Clone(want)
	for _, e := range got {
		if e.Layer == router.LabelLayer {
			continue
		}
		i := slices.IndexFunc(rest, func(w entity) bool { return sameEntity(w, e, scale) })
		if i < 0 {
			return fmt.Errorf("%s on %s at %v is not in the panel, or there twice", e.Type, e.Layer, e.Points)
		}
		rest = slices.Delete(rest, i, i+1)
	}
	if len(rest) > 0 {
		return fmt.Errorf("%s is missing, among %d", rest[0].Layer, len(rest))
	}
	return nil
}

// expected lists, in millimetres, what the drawing of one face of a panel holds
// by the contract: worked out from the panel anew.
func expected(p geom.Panel, face geom.Face, unit geom.Unit) []entity {
	var list []entity
	add := func(layer string, l geom.Loop) {
		if c, r, ok := l.AsCircle(); ok {
			x := c.X
			if face == geom.Outside {
				x = p.Length() - x
			}
			list = append(list, entity{Layer: layer, Type: "CIRCLE", Closed: true, Center: [2]float64{x, c.Y}, Radius: r})
			return
		}
		e := entity{Layer: layer, Closed: true}
		for i, v := range l {
			e.Points = append(e.Points, [3]float64{v.X, v.Y, v.Bulge})
			if face == geom.Outside {
				// Mirrored and run backwards: each corner has the side before it.
				before := l[(i+len(l)-1)%len(l)]
				e.Points[i] = [3]float64{p.Length() - v.X, v.Y, before.Bulge}
			}
		}
		if face == geom.Outside {
			slices.Reverse(e.Points)
		}
		list = append(list, e)
	}
	for _, k := range p.Pockets {
		if k.Face == face {
			depth := "THROUGH"
			if k.Depth < p.Thickness {
				// Halves go up; the nudge keeps decimal halves halves in float64.
				n := int(math.Floor(k.Depth*100 + 0.5 + 1e-9))
				depth = fmt.Sprintf("%d-%02dMM", n/100, n%100)
				if unit == geom.Inch {
					n = int(math.Floor(k.Depth/25.4*1000 + 0.5 + 1e-9))
					depth = fmt.Sprintf("%d-%03dIN", n/1000, n%1000)
				}
			}
			add(strings.ToUpper(fmt.Sprintf("%s_%s_%s", k.Kind, face, depth)), k.Outline)
		}
	}
	if face == geom.Inside {
		for _, h := range p.Holes {
			add("CUTOUT_INSIDE_THROUGH", h)
		}
		add("PROFILE_INSIDE_THROUGH", p.Outline)
	} else {
		add("BLANK", p.Outline)
	}
	side := 100.0
	if unit == geom.Inch {
		side = 4 * 25.4
	}
	low := p.Width() + side/5
	square := entity{Layer: "SCALE", Closed: true}
	for _, c := range [][2]float64{{0, low}, {side, low}, {side, low + side}, {0, low + side}} {
		square.Points = append(square.Points, [3]float64{c[0], c[1], 0})
	}
	return append(list, square)
}

// panelOf brings a part of the report back into a panel, in millimetres.
func panelOf(p part, scale float64) geom.Panel {
	out := geom.Panel{Outline: geom.Rectangle(0, 0, p.Length*scale, p.Width*scale), Thickness: p.Thickness * scale}
	for _, op := range p.Operations {
		k := geom.Pocket{Depth: op.Depth * scale}
		for kind := geom.Dado; kind <= geom.Cutout; kind++ {
			if kind.String() == op.Kind {
				k.Kind = kind
			}
		}
		if op.Face == "outside" {
			k.Face = geom.Outside
		}
		for _, v := range op.Outline {
			k.Outline = append(k.Outline, geom.Vertex{Point: geom.Point{X: v[0] * scale, Y: v[1] * scale}})
		}
		out.Pockets = append(out.Pockets, k)
	}
	return out
}

// checkHeader judges the unit and version that a file states.
func checkHeader(t *testing.T, a audited, version, unit string) {
	t.Helper()
	if want := map[string]string{"R2000": "AC1015", "R12": "AC1009"}[version]; a.Version != want {
		t.Errorf("%s: version %s, want %s", a.File, a.Version, want)
	}
	// $INSUNITS: 1 inch, 4 mm; $MEASUREMENT: 0 English, 1 metric (DXF Reference, HEADER).
	units, measurement := 4, 1
	if unit == "in" {
		units, measurement = 1, 0
	}
	if version == "R2000" && (a.Insunits == nil || *a.Insunits != units || a.Measurement == nil || *a.Measurement != measurement) {
		t.Errorf("%s: $INSUNITS %v, $MEASUREMENT %v in %s", a.File, a.Insunits, a.Measurement, unit)
	}
	if version == "R12" {
		text, err := os.ReadFile(a.File)
		if err != nil || !strings.Contains(string(text[:min(len(text), 400)]), map[string]string{"mm": "millimet", "in": "inch"}[unit]) {
			t.Errorf("%s: no comment names the unit (%v)", a.File, err)
		}
	}
	colours := map[int]string{}
	for _, l := range a.Layers {
		if l.Name == "0" {
			continue
		}
		if other, taken := colours[l.Color]; taken {
			t.Errorf("%s: layers %s and %s have the same colour", a.File, l.Name, other)
		}
		colours[l.Color] = l.Name
	}
}

// TestDXF: every file of every sample, both versions, both units, as ezdxf and
// dxf-parser read it, is the panel of the report to a micrometre.
func TestDXF(t *testing.T) {
	samples(t, []string{"mm", "in"}, func(t *testing.T, job, version, unit string) {
		dir, r := build(t, job)
		scale, drawn := 1.0, geom.Millimetre
		if unit == "in" {
			scale, drawn = 25.4, geom.Inch
		}
		want := map[string][]entity{}
		for _, p := range r.Parts {
			panel := panelOf(p, r.mm())
			want[filepath.Join(dir, p.Files.Inside)] = expected(panel, geom.Inside, drawn)
			if p.Files.Outside != "" {
				want[filepath.Join(dir, p.Files.Outside)] = expected(panel, geom.Outside, drawn)
			}
		}
		files := glob(t, dir, ".dxf")
		if len(files) != len(want) {
			t.Errorf("%d files, the report names %d", len(files), len(want))
		}
		for _, a := range audit(t, files) {
			checkHeader(t, a, version, unit)
			if err := compare(want[a.File], a.Entities, scale); err != nil {
				t.Errorf("ezdxf, %s: %v", a.File, err)
			}
		}
		for _, a := range lines[audited](t, strings.Join(files, "\n"), "node", "dxf_loops.mjs") {
			if err := compare(want[a.File], a.Entities, scale); err != nil {
				t.Errorf("dxf-parser, %s: %v", a.File, err)
			}
		}
	})
}

// richPanel has what the boxes of the samples do not: arcs, circles, holes,
// drills, an odd outline, pockets of one depth on both faces.
func richPanel() geom.Panel {
	outline := geom.RoundedRectangle(0, 0, 320, 140, 12)
	return geom.Panel{
		Outline: outline, Thickness: 18,
		Holes: []geom.Loop{geom.RoundedRectangle(120, 80, 200, 110, 15), geom.Circle(geom.Point{X: 60, Y: 100}, 8)},
		Pockets: []geom.Pocket{
			{Kind: geom.Drill, Depth: 18, Outline: geom.Circle(geom.Point{X: 37, Y: 37}, 2.5)},
			{Kind: geom.Drill, Face: geom.Outside, Depth: 9, Outline: geom.Circle(geom.Point{X: 69, Y: 37}, 2.5)},
			{Kind: geom.Groove, Depth: 5.985, Outline: geom.RoundedRectangle(20, 10, 300, 16.35, 3.175)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: 5.985, Outline: geom.Rectangle(0, 20, 10, 120)},
			{Kind: geom.Cutout, Depth: 18, Outline: geom.Loop{{Point: geom.Point{X: 220, Y: 80}, Bulge: -0.5}, {Point: geom.Point{X: 260, Y: 80}}, {Point: geom.Point{X: 240, Y: 110}, Bulge: 0.3}}},
			{Kind: geom.Dado, Depth: 3, Outline: geom.Rectangle(0, 60, 320, 70)},
		},
	}
}

// TestDXFOfAnyPanel does the same for a panel with every kind of shape.
func TestDXFOfAnyPanel(t *testing.T) {
	p := richPanel()
	for _, v := range p.Check() {
		t.Fatalf("the panel itself: %s", v.Describe(p, geom.Millimetre))
	}
	for version, name := range map[dxf.Version]string{dxf.R2000: "R2000", dxf.R12: "R12"} {
		for _, unit := range []geom.Unit{geom.Millimetre, geom.Inch} {
			for _, face := range []geom.Face{geom.Inside, geom.Outside} {
				t.Run(fmt.Sprint(name, unit, face), func(t *testing.T) {
					file := filepath.Join(t.TempDir(), "panel.dxf")
					f, err := os.Create(file)
					if err != nil {
						t.Fatal(err)
					}
					d := router.Draw(router.Part{Name: "rich", Quantity: 2, Stock: "birch", Panel: p}, face, router.Options{Version: version, Unit: unit})
					if _, err := d.WriteTo(f); err != nil {
						t.Fatal(err)
					}
					if err := f.Close(); err != nil {
						t.Fatal(err)
					}
					want := expected(p, face, unit)
					for _, a := range audit(t, []string{file}) {
						checkHeader(t, a, name, unit.String())
						if err := compare(want, a.Entities, unit.MM()); err != nil {
							t.Errorf("ezdxf: %v", err)
						}
					}
					for _, a := range lines[audited](t, file, "node", "dxf_loops.mjs") {
						if err := compare(want, a.Entities, unit.MM()); err != nil {
							t.Errorf("dxf-parser: %v", err)
						}
					}
				})
			}
		}
	}
}

// TestCompareFinds: the comparison sees a cut moved by 2 micrometres, one
// missing, one doubled, one left open and one on another layer.
func TestCompareFinds(t *testing.T) {
	want := expected(richPanel(), geom.Inside, geom.Millimetre)
	if err := compare(want, want, 1); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(list []entity) []entity{
		"moved": func(l []entity) []entity {
			l[1].Points = slices.Clone(l[1].Points)
			l[1].Points[2][0] += 2 * micrometre
			return l
		},
		"missing": func(l []entity) []entity { return l[1:] },
		"doubled": func(l []entity) []entity { return append(l, l[0]) },
		"open":    func(l []entity) []entity { l[1].Closed = false; return l },
		"layer":   func(l []entity) []entity { l[1].Layer += "X"; return l },
		"radius":  func(l []entity) []entity { l[0].Radius += 2 * micrometre; return l },
	} {
		if compare(want, spoil(slices.Clone(want)), 1) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}
