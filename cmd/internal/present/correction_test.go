package present_test

import (
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
)

// TestWhatToMove: what stands beside readings at each kind of machine. A fence further away leaves more wood before a
// dado, a cutter or a depth stop deeper makes a deeper cut, a bit that the program takes for wider cuts its slots
// narrower, and a zero higher cuts less deep.
func TestWhatToMove(t *testing.T) {
	none := [2]string{}
	fence, gauge := [2]string{"fence closer", "fence away"}, [2]string{"gauge narrower", "gauge wider"}
	cutter, stop := [2]string{"cutter lower", "cutter higher"}, [2]string{"stop less deep", "stop deeper"}
	thick, zero := [2]string{"thinner cutter", "thicker cutter"}, [2]string{"zero higher", "zero lower"}
	diameter := [2]string{"diameter up", "diameter down"}
	for file, want := range map[string]map[string][2]string{
		"bench-drawers": {"width of a dado": thick, "from the end to a dado": fence, "depth of a dado": cutter,
			"thickness of a tongue": fence, "length of a tongue": cutter, "width of a groove": thick,
			"depth of a groove": cutter, "length of the sides": none},
		"hand-cut": {"width of a dado": none, "from the end to a dado": gauge, "depth of a dado": stop,
			"thickness of a tongue": gauge, "length of a tongue": stop, "width of a groove": none},
		"tool-chest": {"width of a dado": diameter, "from the end to a dado": none, "depth of a dado": zero,
			"depth of a rabbet for a tongue": zero, "length of a tongue": none,
			"clearance of a finger in its notch": none},
	} {
		name := "../../../samples/" + file + ".yaml"
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		j, problems := job.Read(name, strings.NewReader(string(text)), job.Files(load.Beside(name)))
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := batch.Make(t.Context(), j)
		got := make(map[string][2]string)
		for _, m := range present.SetupsOf(record.WorkOf(b)).Machines {
			all := m.Checks
			for _, s := range m.Settings {
				all = append(all, s.Checks...)
			}
			for _, c := range all {
				got[c.What] = [2]string{c.IfMore, c.IfLess}
			}
		}
		for what, words := range want {
			if is, listed := got[what]; !listed || is != words {
				t.Errorf("%s, %s: %q is printed, %v, not %q", file, what, is, listed, words)
			}
		}
	}
}

// TestDiameterIsExplained: a router's table says which diameter it means; a saw's has none.
func TestDiameterIsExplained(t *testing.T) {
	for machine, said := range map[joinery.CutterKind]bool{joinery.Router: true, joinery.Saw: false} {
		if text := present.Corrected(machine, nil); strings.Contains(text, "diameter") != said {
			t.Errorf("%s: %s", machine, text)
		}
	}
}
