package present

import (
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestCite: the sources of a sheet are numbered from 1 without gaps, every one is named by a caution, and a caution
// names the text that it named before; the sheets after it have all of them.
func TestCite(t *testing.T) {
	for range 2 {
		for kind, want := range map[joinery.CutterKind]int{joinery.Saw: 4, joinery.RouterTable: 2, joinery.Router: 2,
			joinery.Hand: 1} {
			s := SetupSheet{General: general, Machines: []Machine{{Machine: string(kind), Cautions: ofMachine[kind]}}}
			s.cite()
			named := make(map[int]bool)
			check := func(got, before []Caution) {
				for i, c := range got {
					if named[c.Source] = true; c.Source == 0 != (before[i].Source == 0) ||
						c.Source > 0 && s.Sources[c.Source-1] != sources[before[i].Source-1] {
						t.Errorf("%s: %q names %d, before it was %d", kind, c.Text, c.Source, before[i].Source)
					}
				}
			}
			check(s.General, general)
			check(s.Machines[0].Cautions, ofMachine[kind])
			delete(named, 0)
			if len(s.Sources) != want || len(named) != want {
				t.Errorf("%s: %d sources, %d are named, want %d", kind, len(s.Sources), len(named), want)
			}
		}
	}
}

// TestTestPiece: a test piece at a fence is as long as a fence guides, and has a groove where the boxes have.
func TestTestPiece(t *testing.T) {
	along := []Setting{{Cuts: []CutStep{{Work: "along"}}}}
	for _, k := range []struct {
		machine Machine
		u       geom.Unit
		says    string
		groove  bool
	}{
		{Machine{Machine: "saw", Settings: along}, geom.Millimeter, "at least 300 mm long", true},
		{Machine{Machine: "router-table"}, geom.Inch, "at least 12 in long", false},
		{Machine{Machine: "router"}, geom.Millimeter, "another as that of a box front", false},
	} {
		said := TestPiece(k.machine, k.u)
		if !strings.Contains(said, k.says) || strings.Contains(said, "groove") != k.groove {
			t.Errorf("%s: %s", k.machine.Machine, said)
		}
	}
}

// TestWaysOut: what would end a warning stays with it, of several drawers too.
func TestWaysOut(t *testing.T) {
	list := warnings("a", "b", "c")
	got := fmt.Sprint(Remarks(list, geom.LevelWarning))
	if want := "[{a, b, c: too deep write `depth: 400`}]"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// warnings say the same of some drawers.
func warnings(drawers ...string) (list []record.Warning) {
	for _, d := range drawers {
		list = append(list, record.Warning{Level: geom.LevelWarning.String(), Drawer: d, Message: "too deep",
			Hint: "write `depth: 400`"})
	}
	return list
}

// TestOnPaper: what a hint writes into the job is on paper as the job takes it, and all else of a hint.
func TestOnPaper(t *testing.T) {
	for hint, want := range map[string]string{
		"write `cutter: {groove-cutter: 3.18 mm}`: then more": `write "cutter: {groove-cutter: 3.18 mm}": then more`,
		"choose thinner box-fronts":                           "choose thinner box-fronts",
		"write `bottom-fit: slide-in`":                        `write "bottom-fit: slide-in"`,
	} {
		if got := OnPaper(hint); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
