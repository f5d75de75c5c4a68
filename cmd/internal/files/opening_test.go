package files

import (
	"os"
	"path/filepath"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/geom"
	"drawerwright/preview/scene"
)

// TestSamplesOpen: no box of a sample overlaps, closed or in any step of opening it.
func TestSamplesOpen(t *testing.T) {
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) == 0 {
		t.Fatal(samples, err)
	}
	for _, name := range samples {
		in, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		j, problems := job.Read(name, in, job.Files(load.Beside(name)))
		in.Close()
		if problems.Failed() {
			t.Fatal(problems)
		}
		b, _ := batch.Make(t.Context(), j)
		for _, d := range b.Drawers {
			s, err := scene.Make(sceneOf(d), geom.FineGrid(2000))
			if err != nil {
				t.Fatal(err)
			}
			for n := range 8*len(s.Boxes[0].Opening) + 1 {
				steps := float64(n) / 8
				if list := s.OverlapsAt(0, steps); len(list) > 0 {
					t.Errorf("%s, %s, after %.2f steps: %s from %v to %v", filepath.Base(name),
						d.Spec.Name, steps, list[0].Name, list[0].Low, list[0].High)
					break
				}
			}
		}
	}
}
