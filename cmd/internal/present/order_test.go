package present

import (
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestOrderOfWork: boards are measured between the limits that the forecast reckons with, a part is marked as it comes
// off, has its label when it is cut, and that comes off before glue; no setting is named before all are said to be made
// twice;
// hand work has no cutter to change.
func TestOrderOfWork(t *testing.T) {
	r := record.Keep(record.Report{Units: "mm", CutList: []record.CutGroup{{Stock: "birch", Thickness: 12.15},
		{Stock: "oak", Thickness: 20}}})
	boards := []record.Board{{Stock: "birch", Mean: 12.15, Min: 12.1, Max: 12.2}}
	two := SetupSheet{Machines: []Machine{{Machine: "saw", Settings: []Setting{{}, {}}}}}
	one := SetupSheet{Machines: []Machine{{Machine: "saw", Settings: []Setting{{}}}}}
	list := OrderOfWork(r, two, boards)
	at := func(what string) int {
		return slices.IndexFunc(list, func(s string) bool { return strings.Contains(s, what) })
	}
	order := []int{at("12.10 to 12.20 mm (birch), 20 mm (oak)"),
		at("in pencil on the inside face; its label after its last cut"), at("made twice"), at("setting 1"),
		at("setting 2"), at("Take labels off; glue")}
	if order[0] != 0 || !slices.IsSorted(order) {
		t.Errorf("%v: %q", order, list)
	}
	for what, times := range map[string]int{"FIRST box": 1, "label": 2, "setting 1": 1} {
		if n := strings.Count(strings.Join(list, " "), what); n != times {
			t.Errorf("%q %d times: %q", what, n, list)
		}
	}
	if said := strings.Join(OrderOfWork(r, one, boards), " "); strings.Contains(said, "twice") {
		t.Errorf("of one setting: %s", said)
	}
	for machine, said := range map[string]string{"saw": "Table saw: change the cutter, ",
		"hand": "Hand work: set gauge and plow plane, "} {
		one.Machines[0].Machine = machine
		if list := OrderOfWork(r, one, boards); !slices.ContainsFunc(list, func(s string) bool {
			return strings.HasPrefix(s, said)
		}) {
			t.Errorf("of a %s: %q", machine, list)
		}
	}
}

// TestOrderOfParts: parts of a stock that no sheet gives are sawn to size, or cut out of their blanks by the router,
// beside sheets or alone; each stock is in one of the steps.
func TestOrderOfParts(t *testing.T) {
	blank := &[2]record.Length{412, 202}
	oak, ash := record.CutGroup{Stock: "oak", Blank: blank}, record.CutGroup{Stock: "ash"}
	ply := record.CutGroup{Stock: "ply"}
	work := SetupSheet{Machines: []Machine{{Machine: "router", Files: []Cutting{{}}}}}
	sheets := []record.SheetStock{{Stock: "ply", Routed: true, Sheets: []record.LaidSheet{{Count: 1}}}}
	const all = "Cut the parts to length and width by the cut list."
	for _, c := range []struct {
		cuts   []record.CutGroup
		sheets []record.SheetStock
		want   []string
		never  string
	}{
		{[]record.CutGroup{ash}, nil, []string{all}, "blanks"},
		{[]record.CutGroup{oak}, nil, []string{"Cut blanks for the router by the cut list, larger than the parts: oak.",
			"CNC router, blanks of oak: cut the drawings"}, "Cut the parts"},
		{[]record.CutGroup{oak, ply}, sheets, []string{
			"Cut blanks for the router by the cut list, larger than the parts: oak.", "run cards: ply 1.",
			"CNC router, blanks of oak: cut the drawings"}, "Cut the parts"},
		{[]record.CutGroup{ash, ply}, sheets, []string{"Cut the parts of ash to length and width by the cut list.",
			"run cards: ply 1."}, "blanks"},
		{[]record.CutGroup{oak, ash}, nil, []string{"Cut the parts of ash to", "larger than the parts: oak."},
			"oak and ash"},
		{[]record.CutGroup{ply}, sheets, []string{"run cards: ply 1."}, "by the cut list"},
	} {
		r := record.Keep(record.Report{Units: "mm", CutList: c.cuts, Sheets: c.sheets})
		said := strings.Join(OrderOfWork(r, work, nil), " ")
		for _, want := range c.want {
			if strings.Count(said, want) != 1 {
				t.Errorf("%q is not there once: %s", want, said)
			}
		}
		if strings.Contains(said, c.never) {
			t.Errorf("%q is there: %s", c.never, said)
		}
	}
}
