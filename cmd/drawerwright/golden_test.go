package main

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
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
	for _, name := range []string{"report.json", "tables/parts.csv", "parts.txt", "drawings/bench-drawers_bench-wide-box-front_12-20mm_2x_mm.outside.dxf", "drawings/bench-drawers_bench-wide-side_12-20mm_4x_mm.inside.dxf"} {
		got, err := os.ReadFile(filepath.Join("out", name))
		if err != nil {
			t.Fatal(err)
		}
		sameAsKept(t, name, got, filepath.Join(golden, filepath.Base(name)))
	}
}

// sameAsKept compares what was made with a golden file, or writes that.
func sameAsKept(t *testing.T, name string, got []byte, kept string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(kept, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(kept)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Errorf("%s is not what %s holds: if that is meant, run with -update and read the diff", name, kept)
	}
}

// TestGoldenFolders: each sample writes the files that are listed, and no more. Exploded boxes and
// pictures in dots come only where they are asked for, these beside each of the others.
func TestGoldenFolders(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/golden/folders")
	if err != nil {
		t.Fatal(err)
	}
	samples := inTemp(t)
	jobs, err := filepath.Glob(filepath.Join(samples, "*.yaml"))
	if err != nil || len(jobs) < 10 {
		t.Fatal(jobs, err)
	}
	for _, job := range jobs {
		name := strings.TrimSuffix(filepath.Base(job), ".yaml")
		files := builtFiles(t, job)
		sameAsKept(t, name, []byte(strings.Join(files, "\n")+"\n"), filepath.Join(golden, name+".txt"))
	}
	bench := filepath.Join(samples, "bench-drawers.yaml")
	want := builtFiles(t, bench)
	for _, box := range []string{"bench-narrow", "bench-wide"} {
		want = append(want, "3d/"+box+"/exploded.stl", "pictures/"+box+"-corner.svg", "pictures/"+box+"-exploded.svg")
	}
	for _, file := range slices.Clone(want) {
		if base, is := strings.CutSuffix(file, ".svg"); is {
			want = append(want, base+".png")
		}
	}
	slices.Sort(want)
	if files := builtFiles(t, bench, "--png", "--exploded"); !slices.Equal(files, want) {
		t.Errorf("with --png and --exploded %v, want %v", files, want)
	}
}

// builtFiles are the files that a build of a job writes, sorted, without its own list of them.
func builtFiles(t *testing.T, job string, more ...string) (files []string) {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "out")
	if code, _, errs := call(t, "", append([]string{"build", job, "-o", dir, "--no-proof"}, more...)...); code != exitDone {
		t.Fatal(errs)
	}
	for name := range tree(t, dir) {
		if !strings.HasPrefix(name, ".") {
			files = append(files, name)
		}
	}
	slices.Sort(files)
	return files
}
