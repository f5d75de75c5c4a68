package packet

import (
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestFormHasALineForEachBox: the bench sample has 2 and 4 boxes of 298 x 90 x 500 and 460 x 140 x 500 mm; each
// has a line with what is right, and the job's limits of 0.8 mm in width, the same either way. Their diagonal over
// the ends of the sides is the root of 460 x 460 + 500 x 500, 679.41 mm.
func TestFormHasALineForEachBox(t *testing.T) {
	text, err := os.ReadFile("../../../samples/bench-drawers.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, pages := chapterOf(t, string(text), maker.travelers)
	found := make(map[string]int)
	for _, p := range pages {
		for _, w := range p.Texts {
			found[w.String]++
		}
		for _, said := range collisions(p.Drawing) {
			t.Error(said)
		}
	}
	for said, want := range map[string]int{"1 of 2": 1, "2 of 2": 1, "4 of 4": 1, "bench-narrow": 4, "bench-wide": 2,
		"460": 2, "298": 4, "140": 2, "679.41": 2, "±0.80": 6, "±1.00": 6, "1.00": 6} {
		if found[said] != want {
			t.Errorf("%q stands %d times, should %d times", said, found[said], want)
		}
	}
}

// TestAround: limits that are as far off either way are said once, others by how far each is.
func TestAround(t *testing.T) {
	for want, limits := range map[string][2]record.Length{"±0.80": {459.2, 460.8}, "-1.60\n+0.00": {458.4, 460},
		"±0.019": {459.5, 460.5}} { // half a millimeter is 0.0197 in
		m := maker{unit: geom.Millimeter}
		if want == "±0.019" {
			m.unit = geom.Inch
		}
		if got := m.around(460, limits); got != want {
			t.Errorf("%v around 460: %q, want %q", limits, strings.ReplaceAll(got, "\n", " "), want)
		}
	}
}

// TestFormHasTheLimitsOfEverySize: whatever its corner, a box has limits beside its width, depth, height and diagonal
// on the form.
func TestFormHasTheLimitsOfEverySize(t *testing.T) {
	joints := make(map[joinery.Joint]bool)
	for _, k := range packets(t) {
		m := maker{batch: k.batch, report: k.report, unit: k.batch.Units}
		for _, d := range k.batch.Drawers {
			joints[d.Spec.Joint] = true
			right := m.right(d)
			for i, column := range formColumns()[1:] {
				if column.Given && column.Head != "most apart" && !strings.Contains(right[i], "\n") {
					t.Errorf("%s, %s: no limits of the %s: %q", k.file, d.Spec.Name, column.Head, right[i])
				}
			}
		}
	}
	if len(joints) < 4 {
		t.Errorf("only these corners are in samples: %v", joints)
	}
}
