package packet

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// A drawn is a drawing of the packet, with what it is of, and the parts and letters of a family.
type drawn struct {
	drawing.Drawing
	of     string
	scale  float64
	family *family
}

// drawnOf are the drawings of all parts of a job, what they show enlarged, and its corners.
func drawnOf(b batch.Batch) (list []drawn) {
	m := maker{Book: book(b, "", func(drawing.Page) {}), batch: b, unit: b.Units}
	details := &paper.Details{Number: m.asSet}
	for _, f := range m.families(batch.Merged(b)) {
		s := m.sectioned(f, details)
		for _, v := range m.block(s, 0).views {
			list = append(list, drawn{v.Drawing, f.part().Name, v.Scale, &f})
		}
	}
	for _, d := range details.List() {
		list = append(list, drawn{Drawing: d.Drawing, of: "detail " + d.Name, scale: d.Scale})
	}
	for _, group := range m.alike() {
		for _, high := range []float64{m.Whole() / 3, m.Whole()} {
			for _, d := range m.detailed(group[0], high) {
				list = append(list, drawn{Drawing: d.Drawing, of: group[0].Spec.Name + ", " + names(d.what),
					scale: slices.Min(d.scales)})
			}
		}
	}
	return list
}

// anyJobs calls for the samples, and for so many random jobs that come to a batch.
func anyJobs(t *testing.T, n int, do func(name string, b batch.Batch)) {
	t.Helper()
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		do(filepath.Base(file), read(t, file, text))
	}
	randomJobs(t, n, do)
}

// randomJobs calls for those of so many random jobs that come to a batch.
func randomJobs(t *testing.T, n int, do func(name string, b batch.Batch)) {
	t.Helper()
	for seed := range uint64(n) {
		j, problems := job.Read("random.yaml", strings.NewReader(jobtest.Text(seed)))
		if problems.Failed() {
			continue
		}
		b, found := batch.Make(t.Context(), j)
		if !slices.ContainsFunc(found, func(p batch.Problem) bool { return p.IsError() }) {
			do(fmt.Sprintf("seed %d", seed), b)
		}
	}
}

// clipped is how much of a line from a to b lies in a box, as a part of it, found by halving:
// nothing of the drawing's own code.
func clipped(a, b geom.Point, box geom.Rect) bool {
	if about := geom.Around(a, b); about.Max.X <= box.Min.X || about.Min.X >= box.Max.X ||
		about.Max.Y <= box.Min.Y || about.Min.Y >= box.Max.Y {
		return false
	}
	inside := func(p geom.Point) bool {
		return p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y
	}
	middle := a.Middle(b)
	if inside(a) || inside(b) || inside(middle) {
		return true
	}
	return a.To(b) > 0.01 && (clipped(a, middle, box) || clipped(middle, b, box))
}

// faults are what a drawing must not have: a text that leaves it, runs into another or into a
// line, or is too small; a line of another width than the three that there are.
func faults(d drawing.Drawing) (list []string) {
	list = collisions(d)
	for _, w := range d.Texts {
		if high := w.Size * 0.72; high < 2.5-1e-9 || w.Value && high < 3.5-1e-9 {
			list = append(list, fmt.Sprintf("%q is %.2f mm high", w.String, high))
		}
		box, off := w.Box(), geom.Point{X: reading, Y: reading}
		box = geom.Rect{Min: box.Min.Add(off), Max: box.Max.Sub(off)}
		for _, s := range d.Shapes {
			if s.Pen.Width > 0 && crossed(s, box) {
				list = append(list, fmt.Sprintf("%q at %.1f touches a line of %g mm from %.1f", w.String, w.At,
					s.Pen.Width, s.Paths[0][0].Point))
			}
		}
	}
	for _, s := range d.Shapes {
		switch s.Pen.Width {
		case 0, 0.18, 0.25, 0.5:
		default:
			list = append(list, fmt.Sprintf("a line is %g mm wide", s.Pen.Width))
		}
		if s.Pen.Width > 0 && s.Pen.Ink != 1 {
			list = append(list, fmt.Sprintf("a line has ink %g", s.Pen.Ink))
		}
	}
	return list
}

// crossed reports whether a line of a shape runs through a box.
func crossed(s drawing.Shape, box geom.Rect) bool {
	for _, p := range s.Paths {
		ring := geom.Loop(p).Flatten(0.02)
		for i := range ring {
			if (i+1 < len(ring) || s.Closed) && clipped(ring[i], ring[(i+1)%len(ring)], box) {
				return true
			}
		}
	}
	return false
}

// TestDrawingsAreClear: in no drawing of a part, of samples and of random jobs, does a word
// touch another, a line or the edge; letters and lines have the sizes of a workshop drawing.
func TestDrawingsAreClear(t *testing.T) {
	views, figures := 0, 0
	anyJobs(t, geomtest.Cases(40, 400), func(name string, b batch.Batch) {
		for _, d := range drawnOf(b) {
			if views++; d.scale <= 0 || d.Width > 180+1e-9 && b.Paper.Size != "A3" && b.Paper.Size != "Letter" {
				t.Errorf("%s, %s: scale %g, %g mm wide", name, d.of, d.scale, d.Width)
			}
			for _, w := range d.Texts {
				if w.Value {
					figures++
				}
			}
			for _, f := range faults(d.Drawing) {
				t.Errorf("%s, %s: %s", name, d.of, f)
			}
		}
	})
	if views < 100 || figures < 1000 {
		t.Errorf("only %d views with %d figures", views, figures)
	}
}

// TestDrawingFaults: what the test above looks for is found.
func TestDrawingFaults(t *testing.T) {
	sound := drawing.Drawing{Width: 100, Height: 50}
	sound.Line(drawing.Thin, geom.Point{X: 5, Y: 5}, geom.Point{X: 95, Y: 5})
	sound.Write(drawing.Text{String: "12.21", At: geom.Point{X: 10, Y: 10}, Size: drawing.Capitals(3.5), Value: true})
	if got := faults(sound); len(got) > 0 {
		t.Fatalf("nothing is wrong: %q", got)
	}
	line := func(pen drawing.Pen, x0, y0, x1, y1 float64) func(*drawing.Drawing) {
		return func(d *drawing.Drawing) { d.Line(pen, geom.Point{X: x0, Y: y0}, geom.Point{X: x1, Y: y1}) }
	}
	word := func(x, y, high float64) func(*drawing.Drawing) {
		return func(d *drawing.Drawing) { d.Words(x, y, drawing.Capitals(high), drawing.Regular, "dado") }
	}
	circle := geom.Circle(geom.Point{X: 15, Y: 22}, 10)
	for what, harm := range map[string]func(d *drawing.Drawing){
		"a line through a figure":   line(drawing.Thin, 0, 11.5, 90, 12),
		"a steep line through it":   line(drawing.Thin, 15, 0, 15.1, 40),
		"a circle through it":       func(d *drawing.Drawing) { d.Loops(drawing.Thin, 0, circle) },
		"a line of another width":   line(drawing.Medium, 5, 40, 9, 40),
		"a gray line":               line(drawing.Pen{Width: 0.25, Ink: 0.5}, 5, 40, 9, 40),
		"a figure of 3.4 mm":        func(d *drawing.Drawing) { d.Texts[0].Size = drawing.Capitals(3.4) },
		"a word of 2.4 mm":          word(10, 30, 2.4),
		"a word beyond the edge":    word(95, 30, 3),
		"a word in another's place": word(12, 11, 3),
	} {
		d := drawing.Drawing{Width: sound.Width, Height: sound.Height}
		d.Add(sound, geom.Point{}, 1)
		if harm(&d); len(faults(d)) != 1 {
			t.Errorf("%s: %q", what, faults(d))
		}
	}
}
