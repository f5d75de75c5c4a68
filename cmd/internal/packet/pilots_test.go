package packet

import (
	"os"
	"testing"

	"drawerwright/export/drawing"
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
		said := make(map[string]bool)
		for _, p := range pages {
			for _, w := range p.Texts {
				said[w.String] = true
			}
		}
		for _, k := range m.pilotBacks() {
			backs++
			if k.deep <= 0 || k.deep > 0.8*k.thick {
				t.Errorf("%s: number %d is bored %.2f deep into %.2f", file, k.number, k.deep, k.thick)
			}
			row := m.pilotTable([]pilotBack{k}).Rows[0]
			for _, cell := range row[1:3] {
				if !said[cell.Text] {
					t.Errorf("%s: number %d: %q is not in the table", file, k.number, cell.Text)
				}
			}
		}
	}
	if backs < 10 {
		t.Errorf("only %d backs", backs)
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
