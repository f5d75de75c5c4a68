package main

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write what the golden files should hold")

// TestGolden: the files that other programs read do not change unnoticed. After
// a change that is meant: go test ./cmd/drawerwright -update, and read the diff.
func TestGolden(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/golden")
	if err != nil {
		t.Fatal(err)
	}
	samples := inTemp(t)
	if code, _, errs := call(t, "", "build", filepath.Join(samples, "bench-drawers.yaml"), "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
	for _, name := range []string{"report.json", "parts.csv", "parts.txt", "router/bench-drawers_bench-wide-front_12-20mm_2x_mm.outside.dxf", "router/bench-drawers_bench-wide-side_12-20mm_4x_mm.inside.dxf"} {
		got, err := os.ReadFile(filepath.Join("out", name))
		if err != nil {
			t.Fatal(err)
		}
		kept := filepath.Join(golden, filepath.Base(name))
		if *update {
			if err := os.WriteFile(kept, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(kept)
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != string(want) {
			t.Errorf("%s is not what %s holds: if that is meant, run with -update and read the diff", name, kept)
		}
	}
}
