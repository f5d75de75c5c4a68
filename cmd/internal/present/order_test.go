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
