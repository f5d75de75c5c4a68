package packet

import (
	"fmt"
	"os"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
)

// chapterOf lays out one chapter of a job.
func chapterOf(t *testing.T, text string, chapter func(m maker)) (maker, []drawing.Page) {
	t.Helper()
	b := read(t, "", []byte(text))
	r := record.MakeKept(b, sheets.Plan{}, nil)
	var pages []drawing.Page
	m := maker{Book: book(b, "", func(p drawing.Page) { pages = append(pages, p) }), batch: b, report: r, unit: b.Units}
	chapter(m)
	m.Close()
	return m, pages
}

// values are the numbers of dimensions of pages.
func values(pages []drawing.Page) map[string]bool {
	list := make(map[string]bool)
	for _, p := range pages {
		for _, t := range p.Texts {
			if t.Value {
				list[t.String] = true
			}
		}
	}
	return list
}

// TestSlidesAreDrawn: the numbers on the drawing of a cabinet's side are the slide lines of the
// report and the first holes of the built-in slide, 37 and a pitch of 32 further; the line on the
// box is as far over its lower edge as slide line and box stand apart. Screws stand 40 from the
// inside faces of the sides: on the back of a drawer front F wide that stands out by o beyond its
// box's left, W wide with sides of T, they are F - o - T - 40 and F - o - W + T + 40 from its edge.
func TestSlidesAreDrawn(t *testing.T) {
	m, pages := chapterOf(t, fmt.Sprintf(inOpening, "overlay", ", drawer-front: {stock: birch}"), maker.openings)
	found := values(pages)
	want := []float64{37, 37 + 32}
	for _, row := range m.report.Cabinets[0].Rows {
		want = append(want, row.SlideLine.MM(), row.SlideLine.MM()-row.BoxBottom.MM())
	}
	d := m.batch.Drawers[0]
	front, thick := d.Spec.DrawerFront, d.Spec.Sides.Thickness.Mean
	right := front.Width - front.OverhangLeft // of the box's left side, from behind
	want = append(want, right-thick-40, right-d.Outside.Width+thick+40)
	for _, mm := range want {
		if text := m.caliper(mm); !found[text] {
			t.Errorf("%s is not on the drawings: %v", text, found)
		}
	}
	for _, p := range pages {
		for _, said := range collisions(p.Drawing) {
			t.Error(said)
		}
	}
}

// TestBoxLinesOfEveryRow: in every sample the line on the boxes of an opening, which is drawn and said once, is that of
// each of its rows, as it is printed: as far over the box's lower edge as slide line and box stand apart.
func TestBoxLinesOfEveryRow(t *testing.T) {
	boxes := 0
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		m := maker{batch: b, report: record.MakeKept(b, sheets.Plan{}, nil), unit: b.Units}
		for _, c := range m.report.Cabinets {
			line, ok := boxLine(m.bankOf(c), c)
			if !ok {
				continue
			}
			for _, row := range c.Rows {
				boxes++
				if own := row.SlideLine.MM() - row.BoxBottom.MM(); m.caliper(own) != m.caliper(line) {
					t.Errorf("%s: the line on %s is at %s, that of %s at %s", file, row.Drawer, m.caliper(own), c.Name,
						m.caliper(line))
				}
			}
		}
	}
	if boxes < 10 {
		t.Errorf("only %d boxes", boxes)
	}
}

// TestElevation: a board of 545 x 702 is drawn at 1:10 in a room of 100 x 130 mm and at 1:5 in one of
// 140 x 170, in a tight book at the usual scale below; with its numbers it is no larger than its room, and the hole is
// where it is said to be.
func TestElevation(t *testing.T) {
	e := paper.Elevation{Width: 545, Height: 702, Across: []drawing.Mark{{At: 37, Text: "37"}},
		Up: []drawing.Mark{{At: 45, Text: "45.00"}}, Holes: []geom.Loop{geom.Circle(geom.Point{X: 37, Y: 45}, 2.5)}}
	for _, c := range []struct {
		room  geom.Point
		scale float64
	}{{geom.Point{X: 100, Y: 130}, 0.1}, {geom.Point{X: 140, Y: 170}, 0.2}} {
		book := paper.Book{Size: paper.Size{Width: c.room.X}}
		book.Size.Width += c.room.X - book.Width() // its margins
		d, scale := book.Elevation(e, c.room.Y)
		if scale != c.scale || d.Width > c.room.X || d.Height > c.room.Y {
			t.Errorf("in %v it is drawn at %g, %.1f x %.1f mm", c.room, scale, d.Width, d.Height)
		}
		book.Tight = true
		if _, tight := book.Elevation(e, c.room.Y); tight != scale/2 {
			t.Errorf("in %v of a tight book it is drawn at %g", c.room, tight)
		}
		var board, hole geom.Rect
		for _, s := range d.Shapes {
			switch r := geom.Loop(s.Paths[0]).Bounds(); {
			case s.Fill == drawing.White:
				hole = r
			case s.Pen.Width == drawing.Thick.Width:
				board = r
			}
		}
		if at := hole.Center().Sub(board.Min); at.To(geom.Point{X: 37 * scale, Y: 45 * scale}) > 1e-9 {
			t.Errorf("at %g the hole is at %v", scale, at)
		}
	}
}
