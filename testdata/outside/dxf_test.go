package outside

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/export/layer"
	"drawerwright/geom"
)

// entity is a polyline or circle as an outside reader sees it.
type entity struct {
	Layer, Type string
	Closed      bool
	Points      [][3]float64 // x, y, bulge
	Center      [2]float64
	Radius      float64
	Heights     [3]float64 // least, greatest, thickness
}

// audited is what  reports of a file.
type audited struct {
	File, Version  string
	Insunits       *int
	Measurement    *int
	Errors, Fixes  int
	Log            []string
	Extmin, Extmax []float64
	Layers         []struct {
		Name  string
		Color int
	}
	Entities []entity
}

// micrometer is the tolerance of re-read geometry, in millimeters.
const micrometer = 1e-3

var audits onces[[]audited]

// audit opens files with ezdxf, once for all tests; any error, fix or line in its
// log fails.
func audit(t *testing.T, files []string) []audited {
	t.Helper()
	list, err := audits.get(strings.Join(files, "\n"), func() ([]audited, error) {
		return decode[audited]("", python, append([]string{"dxf_audit.py"}, files...)...)
	})
	if err != nil {
		t.Error(err)
	}
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

// ofBlank tells the blank itself and the datum from what else is on BLANK.
func ofBlank(e entity) bool {
	return e.Layer == "BLANK" && e.Type != "CIRCLE" && (!e.Closed || len(e.Points) == 4)
}

// checkBlank: the blank is as large as the report says, the part in its middle, and a cross
// stands at 0, 0.
func checkBlank(list []entity, scale float64, length, width float64, blank [2]float64, routed bool) error {
	crossing, rectangles := 0, 0
	for _, e := range list {
		if !ofBlank(e) {
			continue
		}
		x0, y0, x1, y1 := boxOf(e)
		x0, y0, x1, y1 = x0*scale, y0*scale, x1*scale, y1*scale
		switch {
		case !e.Closed:
			if crossing++; math.Abs(x0+x1) > micrometer || math.Abs(y0+y1) > micrometer {
				return fmt.Errorf("a line of the datum from %g, %g to %g, %g", x0, y0, x1, y1)
			}
		default:
			rectangles++
			dx, dy := (blank[0]-length)/2, (blank[1]-width)/2
			for i, d := range [4]float64{x0 + dx, y0 + dy, x1 - length - dx, y1 - width - dy} {
				if math.Abs(d) > 0.02 { // the report rounds
					return fmt.Errorf("side %d of the blank is %.3f mm off", i, d)
				}
			}
		}
	}
	if crossing != 2 || (rectangles == 1) != routed {
		return fmt.Errorf("%d lines of the datum, %d blanks", crossing, rectangles)
	}
	return nil
}

// checkHeader judges what a file states of itself: its version, its unit, and how
// far it extends.
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
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, e := range a.Entities {
		x0, y0, x1, y1 := boxOf(e)
		low, high = [2]float64{min(low[0], x0), min(low[1], y0)}, [2]float64{max(high[0], x1), max(high[1], y1)}
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, e := range a.Entities {
		least = min(least, e.Heights[0], e.Heights[0]+e.Heights[2])
		most = max(most, e.Heights[1], e.Heights[1]+e.Heights[2])
	}
	if len(a.Extmin) != 3 || len(a.Extmax) != 3 || math.Abs(a.Extmin[2]-least) > 1e-5 || math.Abs(a.Extmax[2]-most) > 1e-5 {
		t.Errorf("%s: $EXTMIN %v, $EXTMAX %v; drawn is from z = %g to %g", a.File, a.Extmin, a.Extmax, least, most)
	}
	for k := range 2 {
		if len(a.Extmin) < 2 || len(a.Extmax) < 2 || math.Abs(a.Extmin[k]-low[k]) > 1e-5 || math.Abs(a.Extmax[k]-high[k]) > 1e-5 {
			t.Errorf("%s: $EXTMIN %v, $EXTMAX %v; drawn is %v to %v", a.File, a.Extmin, a.Extmax, low, high)
			break
		}
	}
	for _, l := range a.Layers {
		what := operationOf(l.Name)
		if what == "0" {
			continue
		}
		other, taken := operations.LoadOrStore(l.Color, what)
		color, known := colors.LoadOrStore(what, l.Color)
		if taken && other != what || known && color != l.Color {
			t.Errorf("%s: layer %s has color %d, as %v, and %s %v elsewhere", a.File, l.Name, l.Color,
				other, what, color)
		}
	}
}

// colors of operations, and operations of colors, are the same in all files.
var colors, operations sync.Map

// operationOf is the operation in a layer's name by whatever pattern, or the name of one
// that is not cut.
func operationOf(layer string) string {
	for _, o := range []string{"REGISTER", "DRILL", "MORTISE", "DADO", "GROOVE", "RABBET", "CUTOUT", "PROFILE", "SLOT",
		"ENGRAVE"} {
		if strings.Contains(layer, o) {
			return o
		}
	}
	return layer
}

// rank is an operation's place in the order of cutting.
func rank(layer string) int {
	order := []string{"REGISTER", "DRILL", "MORTISE", "DADO GROOVE RABBET", "FLANK", "ENGRAVE", "CUTOUT",
		"PROFILE", "SLOT", "OUTLINE", "BLANK", "SCALE", "LABEL"}
	for i, words := range order {
		if slices.Contains(strings.Fields(words), strings.Split(layer, "_")[0]) {
			return i
		}
	}
	return -1
}

// checkOrder: entities stand in the order of cutting, and the legend lists their
// layers in that order with as many cuts as there are.
func checkOrder(a audited, legend []legendRow) error {
	counts := map[string]int{}
	var order []string
	last := 0
	for _, e := range a.Entities {
		r := rank(e.Layer)
		if r < last {
			return fmt.Errorf("%s comes too late, or is not known", e.Layer)
		}
		last = r
		if counts[e.Layer]++; counts[e.Layer] == 1 && r <= rank("SLOT") {
			order = append(order, e.Layer)
		}
	}
	if len(order) != len(legend) {
		return fmt.Errorf("layers %q, and %d in the legend", order, len(legend))
	}
	for i, l := range legend {
		if l.Layer != order[i] || l.Cuts != counts[l.Layer] {
			return fmt.Errorf("the legend has %d cuts on %s; drawn are %d on %s", l.Cuts, l.Layer,
				counts[order[i]], order[i])
		}
	}
	return nil
}

// TestDXF: every file of every sample, both versions, both units, and of jobs that
// have what the samples do not, as ezdxf and dxf-parser read it, is the panel of
// the report to a micrometer, drawn by the rules.
func TestDXF(t *testing.T) {
	samples(t, []string{"mm", "in"}, func(t *testing.T, job, version, unit string) {
		checkDrawings(t, job, version, unit)
	})
	extras(t, func(t *testing.T, job extraJob, version, unit string) {
		r := checkDrawings(t, job.text, version, unit)
		checkBits(t, r, job.bits)
	})
}

// checkDrawings builds a job and judges its drawings.
func checkDrawings(t *testing.T, job, version, unit string) report {
	t.Helper()
	dir, r := build(t, job)
	asked, tabbed := tabsOf(job)
	drawn := geom.Millimeter
	if unit == "in" {
		drawn = geom.Inch
	}
	want, legend, of := map[string][]entity{}, map[string][]legendRow{}, map[string]int{}
	other := map[string]bool{} // drawings of which no more is known than what is read
	for _, folder := range []string{"cabinet", "templates", "router/sheets"} {
		list, err := filepath.Glob(filepath.Join(dir, folder, "*.dxf"))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range list {
			other[f] = true
		}
	}
	for _, l := range r.Layers {
		file := filepath.Join(dir, l.File)
		legend[file] = append(legend[file], l)
	}
	for i, p := range r.Parts {
		if !r.plain(p) { // both readers must find the same in it
			for _, name := range []string{p.Files.Inside, p.Files.Outside} {
				if name != "" {
					of[filepath.Join(dir, name)] = i
					other[filepath.Join(dir, name)] = true
				}
			}
			continue
		}
		s := r.sheet(p, drawn)
		for face, name := range map[geom.Face]string{geom.Inside: p.Files.Inside, geom.Outside: p.Files.Outside} {
			if (name != "") != (s.CutOn(face) || face == s.last()) {
				t.Errorf("%s: its drawing of the %s face is %q", p.Name, face, name)
			}
			if name == "" {
				continue
			}
			list, err := s.drawing(face)
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			want[filepath.Join(dir, name)] = list
			of[filepath.Join(dir, name)] = i
		}
		if beyond, _ := s.beyond(); r.Faces[i].Part != p.Name || r.Faces[i].Flipped != (p.Files.Inside != "" && p.Files.Outside != "") || math.Abs(r.Faces[i].Beyond*r.mm()-beyond) > micrometer {
			t.Errorf("%s: it runs %.4f mm past its edges; of its faces the report says %+v", p.Name, beyond, r.Faces[i])
		}
	}
	r.heightsOf(t, dir, drawn.MM())
	files := glob(t, dir, ".dxf")
	if len(files) != len(want)+len(other) {
		t.Errorf("%d files, the report names %d", len(files), len(want)+len(other))
	}
	holes := map[string][]entity{}
	tabs := 0
	for _, a := range audit(t, files) {
		checkHeader(t, a, version, unit)
		if other[a.File] {
			for _, e := range a.Entities {
				want[a.File] = append(want[a.File], scaled(e, drawn.MM()))
			}
			if err := checkOrder(a, legend[a.File]); err != nil && len(legend[a.File]) > 0 {
				t.Errorf("%s: %v", a.File, err)
			}
			continue
		}
		found, rest := registered(a.Entities, drawn.MM())
		holes[a.File] = found
		if p := r.Parts[of[a.File]]; tabbed {
			s := r.sheet(p, drawn)
			var slots []entity
			if slots, rest = slotsIn(rest, drawn.MM()); len(slots) > 0 {
				tabs++
				if err := r.checkTabs(slots, p, s, asked); err != nil || math.Abs(s.skin-asked.height) > micrometer {
					t.Errorf("%s: the outline leaves %.3f mm, asked for tabs of %.3f: %v", a.File,
						s.skin, asked.height, err)
				}
			}
		}
		if err := compare(want[a.File], rest, drawn.MM()); err != nil {
			t.Errorf("ezdxf, %s: %v", a.File, err)
		}
		if err := checkOrder(a, legend[a.File]); err != nil {
			t.Errorf("%s: %v", a.File, err)
		}
		i := of[a.File]
		p, blank := r.Parts[i], r.Faces[i].Blank
		if err := checkBlank(a.Entities, drawn.MM(), p.Length*r.mm(), p.Width*r.mm(), [2]float64{blank[0] * r.mm(), blank[1] * r.mm()}, r.machine(p) == "router"); err != nil {
			t.Errorf("%s: %v", a.File, err)
		}
	}
	for _, a := range lines[audited](t, strings.Join(files, "\n"), "node", "dxf_loops.mjs") {
		if other[a.File] {
			var labels []entity
			for _, e := range want[a.File] {
				if e.Layer == layer.Label {
					labels = append(labels, e)
				}
			}
			list := slices.DeleteFunc(slices.Clone(want[a.File]), func(e entity) bool { return e.Layer == layer.Label })
			// The words of a template are scored.
			scored := slices.ContainsFunc(list, func(e entity) bool { return strings.HasPrefix(e.Layer, "ENGRAVE") })
			if err := compare(list, a.Entities, drawn.MM()); err != nil || len(labels) == 0 && !scored {
				t.Errorf("dxf-parser, %s: %d labels, %v", a.File, len(labels), err)
			}
			continue
		}
		found, rest := registered(a.Entities, drawn.MM())
		if tabbed {
			_, rest = slotsIn(rest, drawn.MM())
		}
		if err := compare(want[a.File], rest, drawn.MM()); err != nil {
			t.Errorf("dxf-parser, %s: %v", a.File, err)
		}
		if err := compare(holes[a.File], found, 1); err != nil {
			t.Errorf("dxf-parser and ezdxf, %s: %v", a.File, err)
		}
	}
	for file, found := range holes {
		p := r.Parts[of[file]]
		if other[file] {
			continue
		}
		in, out := filepath.Join(dir, p.Files.Inside), filepath.Join(dir, p.Files.Outside)
		switch {
		case p.Files.Inside == "" || p.Files.Outside == "" || r.machine(p) != "router":
			if len(found) > 0 {
				t.Errorf("%s: registration holes in a part that is not turned over on a router", file)
			}
		case file == in:
			all := want[in]
			for _, e := range want[out] {
				all = append(all, r.sheet(p, drawn).onFace(geom.Outside, e)) // turned back
			}
			if err := checkRegister(found, holes[out], all, p.Length*r.mm(), p.Width*r.mm()); err != nil {
				t.Errorf("%s: %v", file, err)
			}
		}
	}
	if tabbed && tabs == 0 {
		t.Error("no part has tabs")
	}
	return r
}

// scaled is an entity in millimeters.
func scaled(e entity, mm float64) entity {
	e.Center[0], e.Center[1], e.Radius = e.Center[0]*mm, e.Center[1]*mm, e.Radius*mm
	e.Points = slices.Clone(e.Points)
	for i := range e.Points {
		e.Points[i][0] *= mm
		e.Points[i][1] *= mm
	}
	return e
}

// plain reports whether a part is of those whose drawings are worked out here once
// more, from the report: rectangles with rectangular pockets of the drawers in which
// it is known which part goes into which pocket, which are not cut out from the outside
// for the number there.
func (r report) plain(p part) bool {
	return r.classic(r.drawer(p.Drawer)) && (p.Engraved == nil || p.Files.Inside != "" || len(p.Operations) > 0)
}

// checkBits: every pocket is cut with the widest bit that gets into it.
func checkBits(t *testing.T, r report, bits []float64) {
	t.Helper()
	for _, p := range r.Parts {
		if !r.plain(p) {
			continue
		}
		s := r.sheet(p, geom.Millimeter)
		for _, k := range s.Pockets {
			widest := 0.0
			for _, b := range bits {
				if x0, y0, x1, y1, ok := s.pastEdges(k, b); ok && min(x1-x0, y1-y0) >= b-touching {
					widest = max(widest, b)
				}
			}
			if e, err := s.oneOf(k); len(bits) > 0 && (err != nil || s.bits(e.Layer)[0] != widest) {
				t.Errorf("%s: %s is cut with a bit of %v mm, %v is the widest that gets in (%v)", p.Name,
					e.Layer, s.bits(e.Layer), widest, err)
			}
		}
	}
}

// TestCompareFinds: the comparison sees a cut moved by 2 micrometers, one
// missing, one doubled, one left open and one on another layer; a center line
// closed or moved.
func TestCompareFinds(t *testing.T) {
	s := sheet{Panel: richPanel(), routing: routing{Overcut: 1, Relief: "dogbone", ExactSlots: "centerline"},
		bits: func(string) []float64 { return []float64{5} }}
	want, err := s.drawing(geom.Inside)
	if err != nil {
		t.Fatal(err)
	}
	if err := compare(want, want, 1); err != nil {
		t.Fatal(err)
	}
	line := slices.IndexFunc(want, func(e entity) bool { return !e.Closed })
	move := func(l []entity, i int) []entity {
		l[i].Points = slices.Clone(l[i].Points)
		l[i].Points[len(l[i].Points)-1][0] += 2 * micrometer
		return l
	}
	for name, spoil := range map[string]func(list []entity) []entity{
		"moved":       func(l []entity) []entity { return move(l, 1) },
		"line moved":  func(l []entity) []entity { return move(l, line) },
		"line closed": func(l []entity) []entity { l[line].Closed = true; return l },
		"missing":     func(l []entity) []entity { return l[1:] },
		"doubled":     func(l []entity) []entity { return append(l, l[0]) },
		"open":        func(l []entity) []entity { l[1].Closed = false; return l },
		"layer":       func(l []entity) []entity { l[1].Layer += "X"; return l },
		"radius":      func(l []entity) []entity { l[0].Radius += 2 * micrometer; return l },
	} {
		if compare(want, spoil(slices.Clone(want)), 1) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}
