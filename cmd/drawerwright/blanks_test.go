package main

import (
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestBlanksOfRouter, by hand. A part that a router cuts out of a piece of its own has a bit of 6 and 0.05 about it:
// 620 x 90 comes out of 632.10 x 102.10. One that is turned over has holes of 6 with 3 of wood on both sides beyond
// that bit at each end, 18.05, up to 19. Rough boards are 50 and 6 more than that, up to whole 5; wood without boards
// is bought by the area of the blanks; sheets give parts without one.
func TestBlanksOfRouter(t *testing.T) {
	inTemp(t)
	const job = `units: mm
stock:
  beech: {thickness: [14.2, 14.1, 14.25], boards: {width: 140, price: 1500}, grain: length}
  ply: {thickness: [6.0, 6.1]SHEET}
cutter: {kind: router, bits: {six: {diameter: 6, reach: 26}}}
drawers:
  - {name: b, outside: 760 x 90 x 620, sides: beech, bottom: ply}
`
	for _, sheet := range []string{"", ", sheet: 1220 x 2440"} {
		if err := os.WriteFile("b.yaml", []byte(strings.Replace(job, "SHEET", sheet, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		code, out, errs := call(t, "", "parts", "b.yaml", "--json")
		r, err := record.Read([]byte(out))
		if code != exitDone || err != nil {
			t.Fatal(code, err, errs)
		}
		blanks, first := make(map[string][2]record.Length), make(map[string]record.CutGroup)
		for _, g := range r.CutList {
			first[g.Parts[0]] = g
			if g.Blank != nil {
				blanks[g.Parts[0]] = *g.Blank
			}
		}
		front, bottom := first["b-box-front"], first["b-bottom"]
		is(t, "side", blanks["b-side"][0], 632.1)
		is(t, "side's width", blanks["b-side"][1], 102.1)
		is(t, "front", blanks["b-box-front"][0], front.Length+2*19)
		is(t, "front's width", blanks["b-box-front"][1], 102.1)
		for _, p := range r.Lumber[0].Parts {
			if p.Parts[0] == "b-side" {
				is(t, "rough side", p.Length, 685) // 682.1
			} else {
				is(t, "rough front", p.Length, 835) // 745.8 + 38 + 50 = 833.8
			}
			is(t, "rough width", p.Width, 110) // 108.1
		}
		area := func(length, width record.Length) float64 { return float64(length*width) / 1e6 }
		want := area(bottom.Length, bottom.Width)
		if sheet == "" {
			want = area(bottom.Length+2*6.05, bottom.Width+2*6.05)
			is(t, "bottom", blanks["b-bottom"][0], bottom.Length+2*6.05)
		} else if bottom.Blank != nil {
			t.Errorf("the sheet gives the bottom, and its blank is %v", *bottom.Blank)
		}
		for _, m := range r.Material {
			if m.Stock == "ply" {
				is(t, "area of ply", float64(m.Area)/1e6, want)
			}
		}
		said := strings.Join(strings.Fields(ran(t, 0, "parts", "b.yaml")), " ")
		if !strings.Contains(said, "Cut blanks of at least these sizes in mm; the router cuts the parts out of them: "+
			"no. 1: 632.10 x 102.10") {
			t.Errorf("the cut list says nothing of blanks: %s", said)
		}
	}
}
