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
		var said []string
		for _, line := range lines { // the words of a long name stand on a line of their own
			if file, ok := strings.CutPrefix(line, "  "); ok && !strings.HasPrefix(file, " ") {
				said = append(said, strings.Fields(file)[0])
			}
		}
		if code != exitDone || lines[1] != "look first at" || len(said) != 3 {
			t.Fatalf("%d, %s%s", code, out, errs)
		}
		for i, file := range []string{"packet.pdf", "boxes.html", third} {
			if _, err := os.Stat(said[i]); err != nil || said[i] != filepath.Join(name, filepath.FromSlash(file)) {
				t.Errorf("%s: the build names %s, not %s: %v", name, said[i], file, err)
			}
		}
		last := lines[len(lines)-1]
		next, typed, _ := strings.Cut(last, "drawerwright ")
		if !strings.HasPrefix(next, "next: cut a test piece") || typed == "" {
			t.Fatalf("%s: the next step: %s", name, last)
		}
		if code, _, errs := call(t, "", append(strings.Fields(typed), "slot=6.4")...); code != exitDone {
			t.Errorf("%s: %s", last, errs)
		}
	}
}

// TestNextCommandCanBeTyped: a job's name with a space is quoted, and standard input has none.
func TestNextCommandCanBeTyped(t *testing.T) {
	for job, want := range map[string]string{"a b.yaml": " drawerwright adjust \"a b.yaml\"\n", "-": " drawerwright adjust JOB\n"} {
		if out := lookFirst(loaded{}.Batch, "out", job); !strings.HasSuffix(out, want) {
			t.Errorf("%q: %s", job, out)
		}
	}
}
