package outside

import (
	"fmt"
	"os"
	"testing"
)

// laidOut is what dxf_sheets.py tells of a sheet.
type laidOut struct {
	Dir, Sheet                  string
	Parts, Faces, Layers, Holes int
	Worst, Nearest              float64
	Faults                      []string
}

// TestSheetDrawings: what is cut on a sheet is what the drawings of its parts say, in the
// places that the report gives, on the right face, with holes that the sheet can be turned
// over on.
func TestSheetDrawings(t *testing.T) {
	dirs := []string{}
	for _, sample := range []string{"bench-drawers", "router-boxes", "inch-chest", "no-flip", "kitchen-bank", "dresser"} {
		job, err := os.ReadFile("../../samples/" + sample + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		dir, _ := build(t, string(job))
		dirs = append(dirs, dir)
	}
	sheets, turned := 0, 0
	for _, s := range lines[laidOut](t, "", python, append([]string{"dxf_sheets.py"}, dirs...)...) {
		for _, f := range s.Faults {
			t.Errorf("%s, %s: %s", s.Dir, s.Sheet, f)
		}
		sheets++
		if s.Holes > 0 {
			turned++
		}
	}
	if sheets < 8 || turned < 2 {
		t.Errorf("%d sheets were read, %d with registration holes", sheets, turned)
	}
	// A planted fault is found.
	for _, s := range lines[laidOut](t, "", python, append([]string{"dxf_sheets.py", "--shift", "0.05"}, dirs[:2]...)...) {
		if len(s.Faults) == 0 {
			t.Errorf("%s: parts that are 0.05 mm off are not found", fmt.Sprint(s.Sheet))
		}
	}
}
