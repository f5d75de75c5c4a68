package outside

import (
	"bytes"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

// drawnPart is a view of a side with everything that a drawing of a part has: cuts on both
// faces, a hole, sections, and what they show enlarged over it; without its words.
func drawnPart() drawing.Drawing {
	side := geom.Panel{
		Outline: geom.Rectangle(0, 0, 420, 160), Thickness: 12,
		Pockets: []geom.Pocket{
			{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(6, 0, 12.3, 160)},
			{Kind: geom.Groove, Depth: 6, Outline: geom.Rectangle(0, 10, 420, 16.3)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: 6, Outline: geom.Rectangle(410, 0, 420, 160)},
			{Kind: geom.Drill, Depth: 12, Outline: geom.Circle(geom.Point{X: 210, Y: 80}, 10)},
		},
	}
	details := &paper.Details{Number: strconvNumber}
	part := paper.Part{Panel: side, Names: []string{"a", "b", "c", "1"}}.Sectioned(details)
	v := part.Face(geom.Inside, paper.Frame{Width: 180, Height: 120, Most: 240, Least: 0.2}, strconvNumber)
	all := drawing.Drawing{Width: v.Width, Height: v.Height}
	all.Add(v.Drawing, geom.Point{}, 1)
	for _, d := range details.List() {
		low := all
		all = drawing.Drawing{Width: max(low.Width, d.Width), Height: low.Height + d.Height}
		all.Add(low, geom.Point{}, 1)
		all.Add(d.Drawing, geom.Point{Y: low.Height}, 1)
	}
	all.Texts = nil
	return all
}

func strconvNumber(mm float64) string { return strconv.FormatFloat(mm, 'f', -1, 64) }

// printed is a drawing on a page, as a printer without colors gets it.
func printed(t *testing.T, d drawing.Drawing, dots int) *image.Gray {
	t.Helper()
	var out bytes.Buffer
	page := func(yield func(drawing.Page) bool) { yield(drawing.Page{Drawing: d}) }
	if err := drawing.WritePDF(&out, drawing.Info{Title: "lines"}, page); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "lines")
	if err := os.WriteFile(name+".pdf", out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	run(t, "pdftoppm", "-r", fmt.Sprint(dots), "-gray", "-png", "-singlefile", name+".pdf", name)
	return gray(t, name+".png")
}

// straight is a line of a drawing that runs level or upright, or at 45 degrees.
type straight struct {
	from, to geom.Point
	width    float64
}

// straights are the undashed lines of a drawing of 3 mm and more.
func straights(d drawing.Drawing) (list []straight) {
	for _, s := range d.Shapes {
		if s.Pen.Width == 0 || len(s.Pen.Dash) > 0 {
			continue
		}
		for _, p := range s.Paths {
			for i := range p {
				if i+1 == len(p) && !s.Closed {
					break
				}
				a, b := p[i], p[(i+1)%len(p)]
				if a.Bulge == 0 && a.To(b.Point) >= 3 {
					list = append(list, straight{a.Point, b.Point, s.Pen.Width})
				}
			}
		}
	}
	return list
}

// crossings are what is dark on short ways across a line, at places along it: how wide, in mm,
// and the darkest dot of 255.
func (s straight) crossings(g *image.Gray, high float64, dots int) (wide []float64, darkest []int) {
	const half, step = 0.7, 0.01 // mm to either side, from sample to sample
	along := s.to.Sub(s.from).Unit()
	across := geom.Point{X: -along.Y, Y: along.X}
	for part := 0.1; part < 0.95; part += 0.05 {
		at := s.from.Lerp(s.to, part)
		sum, least := 0.0, 255
		for off := -half; off <= half; off += step {
			q := at.Along(across, off)
			v := int(g.GrayAt(int(q.X/25.4*float64(dots)), int((high-q.Y)/25.4*float64(dots))).Y)
			sum += float64(255-v) / 255 * step
			least = min(least, v)
		}
		wide, darkest = append(wide, sum), append(darkest, least)
	}
	return wide, darkest
}

// TestLinesAsPrinted: poppler prints the lines of a drawing of a part 0.5, 0.25 and 0.18 mm
// wide, as drawn; and from a gray printer of 200 dots an inch none of them is faint.
func TestLinesAsPrinted(t *testing.T) {
	const fine, coarse = 1270, 200 // dots an inch
	const within = 0.03            // mm, more than a dot of the finer
	d := drawnPart()
	close, far := printed(t, d, fine), printed(t, d, coarse)
	seen, beside := make(map[float64]int), 0
	for _, s := range straights(d) {
		wide, _ := s.crossings(close, d.Height, fine)
		switch got := slices.Min(wide); {
		case got > s.width+within:
			beside++ // others lie next to it for its whole length
			continue
		case got < s.width-within:
			t.Errorf("%v to %v is %.2f mm wide on paper, %g in the drawing", s.from, s.to, got, s.width)
		}
		seen[s.width]++
		_, darkest := s.crossings(far, d.Height, coarse)
		slices.Sort(darkest)
		if worst := darkest[len(darkest)-1]; worst > faint {
			t.Errorf("%v to %v, %g mm wide, is no darker than %d of 255 somewhere", s.from, s.to, s.width, worst)
		}
	}
	for _, w := range []float64{0.5, 0.25, 0.18} {
		if seen[w] < 4 {
			t.Errorf("only %d lines of %g mm", seen[w], w)
		}
	}
	if all := seen[0.5] + seen[0.25] + seen[0.18]; len(seen) != 3 || beside > all/10 {
		t.Errorf("lines of %v, and %d beside others", seen, beside)
	}
}

// faint is a gray that a line of 0.18 mm does not get lighter than anywhere at 200 dots an inch:
// 1.4 dots, which cover three quarters of one wherever they lie.
const faint = 160
