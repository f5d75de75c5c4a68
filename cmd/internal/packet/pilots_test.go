package packet

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/geom/joinery"
)

// TestPilotHolesStayInside: in every sample the pilot holes in the backs of drawer fronts end before their faces by a
// fifth of the thickness at least; the page says how deep they may be, and the table has the distances of every front
// that screws meet.
func TestPilotHolesStayInside(t *testing.T) {
	backs := 0
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		var pages []drawing.Page
		m := maker{Book: book(b, "", func(p drawing.Page) { pages = append(pages, p) }), batch: b, unit: b.Units}
		m.Columns(slideColumns, m.pilots)
		m.Close()
		said := make(map[string]bool) // word by word: cells have several lines
		for _, p := range pages {
			for _, w := range p.Texts {
				for _, word := range strings.Fields(w.String) {
					said[word] = true
				}
			}
		}
		for _, k := range m.pilotBacks() {
			backs++
			if k.deep <= 0 || k.deep > 0.8*k.thick {
				t.Errorf("%s: number %d is bored %.2f deep into %.2f", file, k.number, k.deep, k.thick)
			}
			row := m.pilotTable([]pilotBack{k}).Rows[0]
			for _, cell := range row[1:3] {
				if slices.ContainsFunc(strings.Fields(cell.Text), func(word string) bool { return !said[word] }) {
					t.Errorf("%s: number %d: %q is not in the table", file, k.number, cell.Text)
				}
			}
		}
	}
	if backs < 10 {
		t.Errorf("only %d backs", backs)
	}
}

// pilotsFrom are the distances that the table is to have of a drawer: from the left edge of its front's back, which is
// the right one from before, and from its lower edge, to where the box front has holes, whose x runs from the right;
// those behind handles are wider than 15 mm, those for screws narrower.
func pilotsFrom(m maker, d batch.Drawer) (across, up string) {
	var xs, ys []float64
	front, box := d.Spec.DrawerFront, partOf(d, joinery.Front)
	stand := box.Placements[0].Origin
	for _, k := range box.Panel.Pockets {
		if at, r, round := k.Outline.AsCircle(); round && r < 7.5 && k.Through(box.Panel.Thickness) {
			xs = append(xs, front.Width-front.OverhangLeft-(stand.X-at.X))
			ys = append(ys, stand.Z+at.Y+front.OverhangBelow)
		}
	}
	printed := func(list []float64) string {
		slices.Sort(list)
		var texts []string
		for _, v := range list {
			texts = append(texts, words.Place(v, m.unit))
		}
		return strings.Join(slices.Compact(texts), ", ")
	}
	return printed(xs), printed(ys)
}

// TestPilotsOfEveryDrawer: in every sample the table has one row for each drawer with a drawer front, which says where
// the holes of its own box are behind its own front: boards of one number differ in that. The screws stand in rows one
// over the other, so that the distances say where each is.
func TestPilotsOfEveryDrawer(t *testing.T) {
	drawers, differing := 0, 0
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		m := maker{batch: b, unit: b.Units}
		list := m.pilotBacks()
		rows := m.pilotTable(list).Rows
		of, numbers := make(map[string][]string), make(map[string]bool)
		for i, row := range rows {
			if numbers[row[0].Text] {
				differing++
			}
			numbers[row[0].Text] = true
			if len(list[i].Holes) != len(list[i].Across)*len(list[i].Up) {
				t.Errorf("%s: number %s has %d holes at %v, %v", file, row[0].Text, len(list[i].Holes), list[i].Across,
					list[i].Up)
			}
			for _, d := range strings.Split(row[3].Text, ", ") {
				of[d] = append(of[d], fmt.Sprintf("no. %s: %s; %s", row[0].Text, row[1].Text, row[2].Text))
			}
		}
		for _, d := range b.Drawers {
			if d.Spec.DrawerFront == nil {
				continue
			}
			drawers++
			across, up := pilotsFrom(m, d)
			want := fmt.Sprintf("no. %d: %s; %s", partOf(d, joinery.DrawerFrontRole).Number, across, up)
			if got := of[d.Spec.Name]; len(got) != 1 || got[0] != want {
				t.Errorf("%s: %s is bored %q, its box asks for %q", file, d.Spec.Name, got, want)
			}
		}
	}
	if drawers < 15 || differing < 4 {
		t.Errorf("only %d drawers, %d backs of a number that another has", drawers, differing)
	}
}

// TestPilotsOfEqualFronts: the drawer fronts of the alcove are alike in all rows of a cabinet. The box of the middle
// row is 12 higher, its holes at 52.19 and 128.06 instead of 49.19 and 119.06; all stand 10 over their front's lower
// edge, but the lowest, 22.
func TestPilotsOfEqualFronts(t *testing.T) {
	const file = "../../../samples/alcove-cabinets.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b := read(t, file, text)
	m := maker{batch: b, unit: b.Units}
	want := map[string]string{
		"window-1": "59.19, 129.06", "window-2": "62.19, 138.06", "window-3": "71.19, 141.06",
		"door-1": "59.19, 129.06", "door-2": "62.19, 138.06", "door-3": "71.19, 141.06",
	}
	rows := m.pilotTable(m.pilotBacks()).Rows
	for _, row := range rows {
		if row[2].Text != want[row[3].Text] {
			t.Errorf("%s is bored at %q, not at %q", row[3].Text, row[2].Text, want[row[3].Text])
		}
	}
	if len(rows) != len(want) {
		t.Errorf("%d rows", len(rows))
	}
}

// TestPilotsWithoutOpening: a drawer front of a box that is for no opening has its pilot holes too.
func TestPilotsWithoutOpening(t *testing.T) {
	m, pages := chapterOf(t, `job: Loose
units: mm
stock:
  birch: {thickness: [12.21, 12.16]}
  ply: {thickness: 5.9}
cutter: {kind: saw, width: 6.3}
drawers:
  - {name: loose, outside: 400 x 150 x 450, sides: birch, bottom: ply, drawer-front: {stock: birch, width: 440, height: 190, overhang-left: 15, overhang-below: 20}}
`, maker.openings)
	across, up := pilotsFrom(m, m.batch.Drawers[0])
	for _, text := range []string{across, up} {
		if text == "" || !slices.ContainsFunc(pages, func(p drawing.Page) bool {
			return slices.ContainsFunc(p.Texts, func(w drawing.Text) bool { return w.String == text })
		}) {
			t.Errorf("%q is not in the table", text)
		}
	}
}

// TestStop: what a stop is set to is not deeper than what it may be: 14.325 mm is 14 mm, or 9/16 in.
func TestStop(t *testing.T) {
	if got := (maker{}).stop(14.325); got != "14 mm" {
		t.Error(got)
	}
	if got := (maker{unit: 1}).stop(14.325); got != "9/16 in" {
		t.Error(got)
	}
}
