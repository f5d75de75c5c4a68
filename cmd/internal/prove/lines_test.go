package prove_test

import (
	"math"
	"slices"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestLines: slots drawn as the way of the bit's middle are open, and are held
// against the job like others.
func TestLines(t *testing.T) {
	const layer = "DADO_INSIDE_LINE_6-10MM" // at 6.1 + 6.35 / 2 from the end
	for name, c := range map[string]struct {
		harm func(*drawing) int
		code string
		also []string
	}{
		"as drawn": {harm: func(*drawing) int { return 0 }},
		"closed": {harm: func(d *drawing) int {
			e := d.first(layer)
			d.reshape(e, [][2]float64{{9.275, -1}, {9.275, 141}})
			return e.line()
		}, code: "closed", also: []string{"missing"}},
		"moved": {harm: func(d *drawing) int {
			e := d.first(layer)
			e.points(moved(0.1, 0))
			return e.line()
		}, code: "moved"},
		"too short": {harm: func(d *drawing) int { // its round end lies within the panel
			e := d.first(layer)
			e.points(func(x, y float64) (float64, float64) { return x, max(4, y) })
			return e.line()
		}, code: "moved"},
		"doubled": {harm: func(d *drawing) int {
			e := d.first(layer)
			return d.insert(e, d.tagsOf(e)) + 2*(e.to-e.from)
		}, code: "doubled", also: []string{"count", "extra"}},
	} {
		t.Run(name, func(t *testing.T) {
			f := build(t, jobOf(sameBit, "router: {exact-slots: centerline}\ndxf: {files: \"{part}\"}"))
			d := drawn(t, f.files[sideIn])
			line := c.harm(d)
			f.files[sideIn] = d.data()
			p := f.proof(t, prove.Options{})
			if c.code == "" {
				if p.Verdict != record.Goes {
					t.Errorf("%s, %+v", p.Verdict, p.Faults)
				}
				return
			}
			found, codes := false, []string{}
			for _, v := range p.Faults {
				codes = append(codes, v.Code)
				found = found || v.Code == c.code && v.File == sideIn && v.Line == line
			}
			slices.Sort(codes)
			want := append([]string{c.code}, c.also...)
			slices.Sort(want)
			if codes = slices.Compact(codes); !found || !slices.Equal(codes, want) {
				t.Errorf("%q on line %d, want %q: %+v", codes, line, want, p.Faults)
			}
		})
	}
}

// TestIslandStays: a bit led round a square of 40 leaves what it does not reach: it
// takes a ring, square inside and with rounded corners outside.
func TestIslandStays(t *testing.T) {
	f := build(t, jobOf(sameBit, "router: {exact-slots: centerline}\ndxf: {files: \"{part}\"}"))
	d := drawn(t, f.files[sideIn])
	e := d.first("DADO_INSIDE_LINE_6-10MM")
	tags := d.tagsOf(e)
	line := d.insert(e, tags)
	d.reshape(d.first("DADO_INSIDE_LINE_6-10MM"), [][2]float64{{200, 50}, {240, 50}, {240, 90}, {200, 90}, {200, 50}})
	d.first("DADO_INSIDE_LINE_6-10MM").open()
	f.files[sideIn] = d.data()
	const r = 6.35 / 2
	want := (40+2*r)*(40+2*r) - (4-math.Pi)*r*r - (40-2*r)*(40-2*r)
	found := false
	for _, c := range f.proof(t, prove.Options{Detail: true}).Cuts {
		if c.File == sideIn && c.Line == line {
			found = true
			if math.Abs(c.Swept-want) > 1e-3 || math.Abs(c.Reached-want) > 1e-3 {
				t.Errorf("swept %.4f mm2, reached %.4f, want %.4f", c.Swept, c.Reached, want)
			}
		}
	}
	if !found {
		t.Error("it is not cut")
	}
}
