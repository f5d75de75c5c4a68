package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestBuildEndsWithWhatIsNext: a build names three of its files, which are there, and a
// command, which can be called; on a router one of the files is the legend of its drawings.
func TestBuildEndsWithWhatIsNext(t *testing.T) {
	samples := inTemp(t)
	for name, third := range map[string]string{"bench-drawers": "parts.txt", "router-boxes": "router/layers.csv"} {
		job := filepath.Join(samples, name+".yaml")
		code, out, errs := call(t, "", "build", job, "-o", name, "--no-proof")
		answer, out, _ := strings.Cut(out, "\n\n")
		if !strings.HasPrefix(answer, "Fits: ") {
			t.Errorf("%s begins with %s", name, answer)
		}
		lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
		if code != exitDone || len(lines) != 6 || lines[1] != "look first at" {
			t.Fatalf("%d, %s%s", code, out, errs)
		}
		for i, file := range []string{"packet.pdf", "boxes.html", third} {
			said := strings.Fields(lines[2+i])[0]
			if _, err := os.Stat(said); err != nil || said != filepath.Join(name, filepath.FromSlash(file)) {
				t.Errorf("%s: the build names %s, not %s: %v", name, said, file, err)
			}
		}
		words := strings.Fields(lines[5])
		if len(words) != 4 || words[0] != "next:" || words[1] != "drawerwright" {
			t.Fatalf("%s: the next command: %s", name, lines[5])
		}
		if code, _, errs := call(t, "", words[2:]...); code != exitDone {
			t.Errorf("%s: %s", lines[5], errs)
		}
	}
}

// TestNextCommandCanBeTyped: a job's name with a space is quoted, and standard input has none.
func TestNextCommandCanBeTyped(t *testing.T) {
	for job, want := range map[string]string{"a b.yaml": "next: drawerwright setup \"a b.yaml\"\n", "-": "next: drawerwright setup JOB\n"} {
		if out := lookFirst(loaded{}.Batch, "out", job); !strings.HasSuffix(out, want) {
			t.Errorf("%q: %s", job, out)
		}
	}
}
