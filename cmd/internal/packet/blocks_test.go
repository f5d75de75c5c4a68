package packet

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// TestBlocksFillPages: every block is put once, none beyond its page, and what is on a page would not have gone onto
// the one before it as well.
func TestBlocksFillPages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const whole = 250.0
		heights := rapid.SliceOfN(rapid.Float64Range(20, whole), 1, lookedOver-1).Draw(t, "heights")
		filled := []float64{0}
		put := 0
		onto := pages{
			room: func() float64 { return whole - filled[len(filled)-1] },
			turn: func() { filled = append(filled, 0) },
			put: func(b block) {
				filled[len(filled)-1] += b.height
				put++
			},
		}
		for _, h := range heights {
			onto.add(block{height: h, air: paper.AfterTable})
		}
		onto.end()
		for i, h := range filled {
			if h > whole+paper.AfterTable+overHeading {
				t.Fatalf("page %d has %.1f mm of %.1f", i+1, h, whole)
			}
			if i > 0 && filled[i-1]+h <= whole {
				t.Fatalf("pages %d and %d have %.1f and %.1f mm", i, i+1, filled[i-1], h)
			}
		}
		if put != len(heights) {
			t.Fatalf("%d of %d blocks are put", put, len(heights))
		}
	})
}

// TestNarrowBlocksArePaired: narrow ones stand two by two, as high as the higher, in the place of the first.
func TestNarrowBlocksArePaired(t *testing.T) {
	got := paired([]block{{height: 1}, {height: 2, narrow: true}, {height: 3}, {height: 4, narrow: true},
		{height: 5, narrow: true}})
	var heights []float64
	for _, b := range got {
		heights = append(heights, b.height)
	}
	if len(got) != 4 || heights[0] != 1 || heights[1] != 4 || heights[2] != 3 || heights[3] != 5 {
		t.Error(heights)
	}
}

// holedBoards are parts that have a groove and a hole, of lengths and with the hole at places.
func holedBoards(places ...[2]float64) (list []batch.Group) {
	for i, at := range places {
		p := batch.Part{Part: new(joinery.Part)}
		p.Name, p.Number = "board", i+1
		p.Panel = geom.Panel{Outline: geom.Rectangle(0, 0, at[0], 80), Thickness: 12, Pockets: []geom.Pocket{
			{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(40, 0, 46, 80)},
			{Kind: geom.Drill, Depth: 12, Outline: geom.Circle(geom.Point{X: at[1], Y: 30}, 2)},
		}}
		list = append(list, batch.Group{Parts: []*batch.Part{&p}, Quantity: 1})
	}
	return list
}

// TestFamilies: parts with the same order of places are one drawing, in which each distance that they differ in has a
// letter with its figures and no other has; a hole on the other side of the dado makes a drawing of its own.
func TestFamilies(t *testing.T) {
	m := maker{Book: &paper.Book{Size: paper.A4}}
	list := m.families(holedBoards([2]float64{300, 100}, [2]float64{350, 20}, [2]float64{400, 110}))
	var said []string
	for _, f := range list {
		said = append(said, f.numbers())
	}
	if got := strings.Join(said, "; "); got != "1, 3; 2" {
		t.Fatal(got)
	}
	f := list[0]
	if len(f.letters) != 2 || f.letters[0].name != "L" || f.letters[1].name != "L1" || f.letters[1].values[1] != 110 {
		t.Errorf("%+v", f.letters)
	}
	for at, want := range map[float64]string{0: "", 40: "", 46: "", 100: "L1", 300: "L"} {
		if got := f.letterOf(geom.Inside, geom.AlongX, at); got != want {
			t.Errorf("%g mm from the left is %q", at, got)
		}
	}
	if rows := m.holes(&f, tags(f.part().Panel)).Texts(); rows[0][4] != "L1" || rows[0][5] != "30.00" {
		t.Error(rows)
	}
	if rows := m.cuts(&f, tags(f.part().Panel)).Texts(); rows[0][4] != "40.00 to 46.00" {
		t.Error(rows)
	}
}

// TestCornersOnOnePage: the corner of a joint and its bottom stand on one page.
func TestCornersOnOnePage(t *testing.T) {
	const level = ":1: the left front corner from above, front at the foot. Lower drawing, "
	const bottom = ":1: the bottom at the box front, from the right, front at the left."
	joints := 0
	for _, k := range packets(t) {
		for i, p := range k.pages {
			words := said(p)
			if joints += strings.Count(words, level); strings.Count(words, level) != strings.Count(words, bottom) {
				t.Errorf("%s, page %d: %s", k.file, i+1, words)
			}
		}
	}
	if joints < 15 {
		t.Errorf("%d joints", joints)
	}
}

// TestDetailsAreLarge: of boards of about 12 mm, in the samples, corners are drawn at 5:1 or, where a page has no room
// for two so, 4:1; of two bottoms one stands on cleats and the other high above the edge.
func TestDetailsAreLarge(t *testing.T) {
	const most = 12.7
	corners, largest, small := 0, 0, 0
	for _, k := range packets(t) {
		m := maker{Book: book(k.batch, "", func(drawing.Page) {}), batch: k.batch, unit: k.batch.Units}
		head := m.Height(func(b *paper.Book) { b.Chapter("Corners") })
		for _, g := range m.alike() {
			if s := g[0].Spec; max(s.Sides.Thickness.Mean, s.Front.Thickness.Mean, s.Bottom.Thickness.Mean) > most {
				continue
			}
			for _, d := range m.detailed(g[0], m.Whole()-head) {
				for i, scale := range d.scales {
					if corners++; scale == 5 {
						largest++
					}
					if scale < 4 {
						small++
						t.Logf("%s, %s: %s is drawn at %g:1", k.file, g[0].Spec.Name, d.what[i], scale)
					}
				}
			}
		}
	}
	if corners < 35 || largest < 22 || small > 2 {
		t.Errorf("of %d corners %d are drawn at 5:1 and %d smaller than 4:1", corners, largest, small)
	}
}
