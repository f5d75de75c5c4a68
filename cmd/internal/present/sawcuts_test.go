package present

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// ripsAndCrosscuts are cuts of one board with the sled between two rips at 90.
var ripsAndCrosscuts = []record.SawCut{
	{Kind: "fence cut", Setting: 90, SettingChanged: true},
	{Kind: "fence cut", Setting: 90},
	{Kind: "sled cut", Trim: true, Setting: 5, Remainder: &record.Workpiece{}},
	{Kind: "sled cut", Setting: 500, SettingChanged: true},
	{Kind: "fence cut", Setting: 90, SettingChanged: true, SetAsCut: 2},
	{Kind: "hand-held", Setting: 700},
	{Kind: "fence cut", Setting: 90},
	{Kind: "sled cut", Setting: 500},
}

// TestStraightFirst: where an edge is cleaned up along the fence, the one against it has to be straight; no sled asks
// for that.
func TestStraightFirst(t *testing.T) {
	for kind, want := range map[string]bool{fenceCut: true, sledCut: false} {
		said := strings.Join(settingNotes(record.SheetStock{Cuts: []record.SawCut{{Kind: kind, Trim: true}}}, true,
			geom.Millimeter), " ")
		if strings.Contains(said, "Joint a rough or bowed edge") != want || !strings.Contains(said, "A clean-up cut") {
			t.Errorf("%s: %s", kind, said)
		}
	}
}

// TestThinStrips: no strip is sent between fence and blade where no push stick goes; what is cleaned up is none.
func TestThinStrips(t *testing.T) {
	for _, c := range []struct {
		cut  record.SawCut
		want bool
	}{
		{record.SawCut{Kind: fenceCut, Setting: 29}, true}, {record.SawCut{Kind: fenceCut, Setting: 30}, false},
		{record.SawCut{Kind: fenceCut, Setting: 5, Trim: true}, false},
		{record.SawCut{Kind: sledCut, Setting: 8}, false},
	} {
		said := strings.Join(CutNotes(record.SheetStock{Cuts: []record.SawCut{c.cut}}, geom.Millimeter), " ")
		if strings.Contains(said, "beside a strip narrower than 30 mm: cut it off on the far side") != c.want {
			t.Errorf("%+v: %s", c.cut, said)
		}
	}
}

// TestShortAtSled: a board with less than a third of the cut at the sled's fence is clamped, divided either way.
func TestShortAtSled(t *testing.T) {
	board := func(long, wide record.Length) *record.Workpiece { return &record.Workpiece{Length: long, Width: wide} }
	for _, c := range []struct {
		of, left *record.Workpiece
		want     bool
	}{
		{board(150, 470), board(80, 470), true}, {board(160, 470), board(80, 470), false},
		{board(470, 150), board(470, 80), true}, {board(470, 150), board(300, 150), false},
	} {
		one := record.SawCut{Kind: sledCut, Setting: 60, Workpiece: *c.of, Remainder: c.left}
		rows := CutTable([]record.SawCut{one}, geom.Millimeter).Texts()
		said := strings.Join(CutNotes(record.SheetStock{Cuts: []record.SawCut{one}}, geom.Millimeter), " ")
		row, note := strings.Contains(fmt.Sprint(rows), "clamp it there"), strings.Contains(said, "turns as it is cut")
		if row != c.want || note != c.want {
			t.Errorf("%v to %v: %v; %s", *c.of, *c.left, rows, said)
		}
	}
}

// TestSetFor: a setting after the sled was on the saw is never called as before; it names the cut to check it with.
func TestSetFor(t *testing.T) {
	rows := CutTable(ripsAndCrosscuts, geom.Millimeter).Texts()
	var got []string
	for _, r := range rows {
		got = append(got, r[1])
	}
	want := []string{"90.00", "as before", "takes 5.00", "500.00", "again 90.00", "cut at 700.00", "still 90.00",
		"still 500.00"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	goes := make(map[string][]int)
	for i, r := range rows {
		away, _, _ := strings.Cut(r[len(r)-1], ";")
		goes[away] = append(goes[away], i+1)
	}
	fence, sled := goes["first move the fence aside"], goes["first take the sled off"]
	if !slices.Equal(fence, []int{3, 8}) || !slices.Equal(sled, []int{5}) {
		t.Errorf("the fence is moved away before cuts %v, the sled before %v", fence, sled)
	}
	if last := rows[4][len(rows[4])-1]; !strings.Contains(last, "check with a piece of cut 2") {
		t.Errorf("what is set again is not checked: %q", last)
	}
}

// TestCutGroups: cuts of one setting stand below it in their order, and a setting that was lost since is a group anew.
// Before the sled comes on the fence goes, each time that it was set.
func TestCutGroups(t *testing.T) {
	var got []string
	for _, g := range CutGroups(ripsAndCrosscuts, geom.Millimeter) {
		said := g.Set + ":"
		for _, r := range g.Texts() {
			said += " " + r[0]
		}
		got = append(got, said)
	}
	want := []string{"Fence 90.00 mm: 1 2", "Clean-up on the sled, 5.00 mm off; first move the fence aside: 3", "Sled stop 500.00 mm: 4",
		"Fence again 90.00 mm: check with a piece of cut 2; first take the sled off: 5",
		"Cut along a guide at 700.00 mm: 6", "Fence still 90.00 mm: 7",
		"Sled stop still 500.00 mm; first move the fence aside: 8"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestRulesWithTheirCuts: the rules that stand before the cuts of a stock are those of the kinds of cuts that are in
// it, and no others.
func TestRulesWithTheirCuts(t *testing.T) {
	of := map[string]string{"fence cut": "A fence cut runs along", "sled cut": "A sled cut is made",
		"hand-held": "a track saw"}
	for kind := range of {
		stock := record.SheetStock{RipCapacity: 760, SledCapacity: 610, MaxStop: 900, Cuts: []record.SawCut{{Kind: kind, Trim: true,
			Setting: 90}}}
		said := strings.Join(CutNotes(stock, geom.Millimeter), "\n")
		reach := strings.Contains(said, "opens to 760 mm, a sled that takes 610 mm, a stop as far as 900 mm")
		if reach != (kind != "hand-held") {
			t.Errorf("of a %s: what the saw takes: %t\n%s", kind, reach, said)
		}
		if runs := strings.Contains(said, "that edge runs along the fence or"); runs != (kind != "hand-held") {
			t.Errorf("of a %s: what a trimmed edge lies at: %t\n%s", kind, runs, said)
		}
		for k, rule := range of {
			if has := strings.Contains(said, rule); has != (k == kind) {
				t.Errorf("of a %s: the rule of a %s is there: %t\n%s", kind, k, has, said)
			}
		}
		if guard := strings.Contains(said, "Guard and riving knife on"); guard != (kind != "hand-held") {
			t.Errorf("of a %s: guard and riving knife: %t", kind, guard)
		}
	}
}

// TestRowOfCuts: what stays of several cuts in a row is that after the last of them, and is told so.
func TestRowOfCuts(t *testing.T) {
	cut := func(n string, left record.Length) record.SawCut {
		name := "1A" + n + " side"
		gives := record.Workpiece{Name: name, Short: name, Length: 95, Width: 467, Piece: true}
		return record.SawCut{Kind: sledCut, Setting: 95, Workpiece: record.Workpiece{Name: "1A", Length: 900,
			Width: 467}, Yields: &gives, Remainder: &record.Workpiece{Name: "1A", Length: left, Width: 467}}
	}
	rows := CutGroups([]record.SawCut{cut("1", 801.8), cut("2", 703.6)}, geom.Millimeter)[0].Texts()
	if len(rows) != 1 || rows[0][0] != "1-2" || rows[0][3] != "last: 703.60" {
		t.Errorf("%q", rows)
	}
	rows = CutGroups([]record.SawCut{cut("1", 801.8)}, geom.Millimeter)[0].Texts()
	if len(rows) != 1 || rows[0][3] != "801.80" {
		t.Errorf("%q", rows)
	}
}

// TestWholeAtTheFence: a board as large as a sheet asks for tables beside the saw, a strip does not.
func TestWholeAtTheFence(t *testing.T) {
	for length, want := range map[record.Length]bool{1220: true, 1200: false} {
		cut := record.SawCut{Kind: fenceCut, Setting: 90, Workpiece: record.Workpiece{Length: 600, Width: length}}
		said := strings.Join(CutNotes(record.SheetStock{Cuts: []record.SawCut{cut}}, geom.Millimeter), " ")
		if strings.Contains(said, "A whole sheet takes tables") != want {
			t.Errorf("%g: %s", length.MM(), said)
		}
	}
}

// TestShave: a cut beside which nothing stays says how little it takes, and how it is made.
func TestShave(t *testing.T) {
	c := record.SawCut{Kind: "sled cut", Workpiece: record.Workpiece{Name: "1a", Length: 467.3, Width: 95},
		Yields: &record.Workpiece{Name: "1a1", Length: 466.09, Width: 95, Piece: true}}
	if got := restOf(c, geom.Millimeter); got != "shave 1.21" {
		t.Error(got)
	}
	if row := CutTable([]record.SawCut{c}, geom.Millimeter).Texts()[0]; !slices.Contains(row, "shave 1.21") {
		t.Error(row)
	}
	dust := record.SawCut{Kind: "sled cut", Trim: true, Setting: 2, Remainder: c.Yields}
	trim := dust
	trim.Yields = &record.Workpiece{Name: "trim"}
	whole := c
	whole.Remainder = c.Yields
	for _, k := range []struct {
		cut  record.SawCut
		want bool
	}{{c, true}, {dust, true}, {trim, false}, {whole, false}} {
		said := strings.Join(CutNotes(record.SheetStock{Cuts: []record.SawCut{k.cut}}, geom.Millimeter), " ")
		if strings.Contains(said, "A shave takes off less than the blade is wide") != k.want {
			t.Errorf("%+v: %s", k.cut, said)
		}
	}
}

// TestOffcutsAreHeld: what one holds at a cut is told by its size, also where it is kept as it is.
func TestOffcutsAreHeld(t *testing.T) {
	cut := record.SawCut{Kind: "fence cut", Setting: 90, Workpiece: record.Workpiece{Name: "1a", Length: 600, Width: 400},
		Yields:    &record.Workpiece{Name: "1b side", Length: 600, Width: 90, Piece: true},
		Remainder: &record.Workpiece{Name: "1a", Length: 600, Width: 306.8, Offcut: true}}
	rows := CutGroups([]record.SawCut{cut}, geom.Millimeter)[0].Texts()
	if rest := rows[0][3]; !strings.HasPrefix(rest, "offcut, 306.8") {
		t.Errorf("the rest is %q", rest)
	}
}

// TestRowsOfPieces: pieces of one part that come off one board are one row, by the names on the picture; clean-up cuts
// of strips that follow each other are one too. Another part, board or caution begins a row.
func TestRowsOfPieces(t *testing.T) {
	piece := func(board, mark, part string) record.SawCut {
		return record.SawCut{Kind: sledCut, Setting: 500, Count: 1, Workpiece: record.Workpiece{Name: "strip " + board + " for x"},
			Yields: &record.Workpiece{Short: mark + " " + part, Piece: true}}
	}
	clean := func(board string) record.SawCut {
		return record.SawCut{Kind: sledCut, Trim: true, Setting: 5, Count: 1, Workpiece: record.Workpiece{Name: "strip " + board + " for x"},
			Yields: &record.Workpiece{Name: "trim"}, Remainder: &record.Workpiece{}}
	}
	heavy := piece("1B", "1B3", "no. 2")
	heavy.NeedsHelper = true
	cuts := []record.SawCut{clean("1A"), clean("1B"), clean("1D"), piece("1A", "1A1", "no. 1"), piece("1A", "1A2", "no. 1"),
		piece("1A", "1A3", "no. 2"), piece("1B", "1B1", "no. 2"), piece("1B", "1B2", "no. 2"), heavy}
	var got []string
	for _, g := range CutGroups(cuts, geom.Millimeter) {
		for _, r := range g.Texts() {
			got = append(got, strings.Join(r[:3], ", "))
		}
	}
	want := []string{"1-2, 1A to 1B, left edge", "3, 1D, left edge", "4-5, 1A, 1A1 to 1A2 no. 1", "6, 1A, 1A3 no. 2",
		"7-8, 1B, 1B1 to 1B2 no. 2", "9, 1B, 1B3 no. 2"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestHoldDown: what is shorter than 50 mm at a stop, and a guide on a board narrower than 150 mm, have a note
// each; what is larger has none.
func TestHoldDown(t *testing.T) {
	of := func(kind string, setting, wide record.Length) record.SheetStock {
		return record.SheetStock{Kerf: 3.2, Cuts: []record.SawCut{{Kind: kind, Setting: setting,
			Workpiece: record.Workpiece{Length: 800, Width: wide},
			Yields:    &record.Workpiece{Length: setting, Width: wide},
			Remainder: &record.Workpiece{Length: 800 - setting, Width: wide}}}}
	}
	for _, c := range []struct {
		stock record.SheetStock
		says  string
		said  bool
	}{
		{of(sledCut, 49, 300), "hold-down", true}, {of(sledCut, 51, 300), "hold-down", false},
		{of(handHeld, 400, 149), "lay scrap", true}, {of(handHeld, 400, 151), "lay scrap", false},
	} {
		c.stock.Cuts = append(c.stock.Cuts, record.SawCut{Kind: fenceCut, Setting: 200, Yields: &record.Workpiece{},
			Remainder: &record.Workpiece{}, Workpiece: record.Workpiece{Length: 800, Width: 500}})
		notes, row := strings.Join(CutNotes(c.stock, geom.Millimeter), " "), inHand(c.stock.Cuts[0])
		if strings.Contains(notes, c.says) != c.said || (len(row) > 0) != (c.said && c.stock.Cuts[0].Kind == sledCut) {
			t.Errorf("%+v: %q, %q", c.stock.Cuts[0], row, notes)
		}
	}
}

// TestOffcutsAsBoards: where an offcut is cut it is said which of its edges are relied on; of a whole sheet, and of an
// offcut that stays on the shelf, nothing is.
func TestOffcutsAsBoards(t *testing.T) {
	for want, sizes := range map[bool][]record.SheetSize{
		true: {{Used: 1}, {Offcut: true, Used: 1}}, false: {{Used: 1}, {Offcut: true}}} {
		said := strings.Join(CutNotes(record.SheetStock{Sizes: sizes}, geom.Millimeter), " ")
		if strings.Contains(said, "Of an offcut the lower and left edges") != want {
			t.Errorf("%+v: %s", sizes, said)
		}
	}
}
