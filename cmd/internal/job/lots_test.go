package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// measuredSheets is a job from four sheets of two readings each, with parts of each kind from them.
const measuredSheets = `units: mm
stock:
  ply: {thickness: [12.0, 12.1, 12.4, 12.5, 12.1, 12.2, 12.4, 12.4], sheet: 1525 x 1525, readings-per-sheet: 2}
  hard: {thickness: [6, 6.1]}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: other, outside: 460 x 140 x 500, sides: hard, bottom: hard}
  - name: box
    count: 5
    outside: 460 x 140 x 500
    sides: ply
    back: ply
    bottom: hard
    dividers: [{stock: ply, direction: across, height: 60, at: [100]}]
    drawer-front: {stock: ply, width: 480, height: 160, overhang-left: 10, overhang-below: 10}
`

// TestReadingsPerSheet: sheets have the readings in their order, and mistakes are found at the entry that is wrong.
func TestReadingsPerSheet(t *testing.T) {
	j, problems := Read("job.yaml", strings.NewReader(measuredSheets))
	if problems.Failed() {
		t.Fatal(problems)
	}
	var got []string
	for _, one := range j.Sheets.Of["ply"].Measured {
		got = append(got, fmt.Sprintf("%d: %.2f", one.Number, one.Thickness.Mean))
	}
	if want := []string{"1: 12.05", "2: 12.45", "3: 12.15", "4: 12.40"}; !slices.Equal(got, want) ||
		j.Sheets.Of["ply"].Sizes[0].Count != 4 {
		t.Errorf("%q, %+v", got, j.Sheets.Of["ply"].Sizes)
	}
	for _, m := range []mistake{
		{"not as many of each", "sheet: 2", "sheet: 3", []string{"3:110 out-of-range"}},
		{"one sheet", "sheet: 2", "sheet: 8", []string{"3:110 out-of-range"}},
		{"none of each", "sheet: 2", "sheet: 0", []string{"3:110 out-of-range"}},
		{"a count beside", "sheet: 2}", "sheet: 2, count: 4}", []string{"3:120 no-effect"}},
		{"other sizes", "sheet: 2}", "sheet: 2, other-sheets: {a: {sheet: 700 x 700}}}", []string{"3:127 no-effect"}},
		{"no size of sheets", "sheet: 1525 x 1525, ", "", []string{"3:90 no-effect"}},
	} {
		_, problems := Read("job.yaml", strings.NewReader(strings.Replace(measuredSheets, m.from, m.to, 1)))
		var got []string
		for _, p := range problems {
			if p.IsError() {
				got = append(got, fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.Code))
			}
		}
		if !slices.Equal(got, m.want) {
			t.Errorf("%s: %q", m.name, got)
		}
	}
}

// TestInsertInLots: so are the strips of an insert.
func TestInsertInLots(t *testing.T) {
	text := strings.NewReplacer("dividers: [{stock: ply, direction: across, height: 60, at: [100]}]",
		"insert: {stock: ply, columns: 2, rows: 2}", "sides: ply", "sides: hard", "back: ply", "back: hard",
		"drawer-front: {stock: ply", "drawer-front: {stock: hard").Replace(measuredSheets)
	j, problems := Read("job.yaml", strings.NewReader(text))
	if problems.Failed() || !j.Uses(1, "ply") || j.Uses(0, "ply") {
		t.Fatal(problems, "or its stock is not used")
	}
	lots, problems := j.InLots(Sorted{Lots: map[string][][]int{"ply": {{2, 0}, {3}}}, Shares: []Share{{Entry: 0, Count: 1},
		{Entry: 1, Count: 5, Of: map[string]int{"ply": 1}}}})
	if problems.Failed() || lots.Drawers[1].Insert.Stock.Name != "ply B" {
		t.Errorf("%v, %+v", problems, lots.Drawers[1].Insert)
	}
}

// TestInLots: the boxes of a lot are of its stock in every part, under their name with its letter; readings and count
// are those of its sheets, in their order; what is not of the stock stays. Edits find the entry of the file.
func TestInLots(t *testing.T) {
	j, _ := Read("job.yaml", strings.NewReader(measuredSheets))
	s := Sorted{Lots: map[string][][]int{"ply": {{2, 0}, {3}}}, Shares: []Share{{Entry: 0, Count: 1},
		{Entry: 1, Count: 3, Of: map[string]int{"ply": 0}}, {Entry: 1, Count: 2, Of: map[string]int{"ply": 1}}}}
	lots, problems := j.InLots(s)
	if problems.Failed() {
		t.Fatal(problems)
	}
	var got []string
	for i, d := range lots.Drawers {
		said := fmt.Sprintf("%s: %d of %s, %s, %s, %s", d.Name, d.Count, d.Sides.Name, d.Front.Name, d.Back.Name,
			d.Bottom.Name)
		if d.DrawerFront != nil {
			said += ", " + d.Dividers[0].Stock.Name + ", " + d.DrawerFront.Stock.Name
		}
		got = append(got, said+" at "+strings.Join(lots.DrawerPath(i), " "))
	}
	if want := []string{"other: 1 of hard, hard, hard, hard at drawers 0",
		"box A: 3 of ply A, ply A, ply A, hard, ply A, ply A at drawers 1",
		"box B: 2 of ply B, ply B, ply B, hard, ply B, ply B at drawers 1"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	a, b := lots.Sheets.Of["ply A"], lots.Sheets.Of["ply B"]
	if a.Measured[0].Number != 3 || a.Measured[1].Number != 1 || a.Sizes[0].Count != 2 || a.LotOf != "ply" ||
		b.Measured[0].Number != 4 || len(b.Measured) != 1 {
		t.Errorf("%+v, %+v", a, b)
	}
	for i, want := range [][2]float64{{12, 12.2}, {12.4, 12.4}} {
		if got := lots.Drawers[1+i].Sides.Thickness; got.Min != want[0] || got.Max != want[1] {
			t.Errorf("%+v, not %v", got, want)
		}
	}
	// One lot has no letter, and a change of the file keeps the lots.
	one, _ := j.InLots(Sorted{Lots: map[string][][]int{"ply": {{2, 0}}},
		Shares: []Share{{Entry: 1, Count: 5, Of: map[string]int{"ply": 0}}}})
	changed, problems := one.With(Edit{Path: []string{"drawers", "1", "spares"}, Value: "2"})
	if problems.Failed() || len(changed.Drawers) != 1 || len(changed.Sheets.Of["ply"].Measured) != 2 {
		t.Fatalf("%v %+v", problems, changed)
	}
	if d := changed.Drawers[0]; d.Name != "box" || d.Sides.Name != "ply" || d.Spares != 2 {
		t.Errorf("%v %+v", problems, changed)
	}
}
