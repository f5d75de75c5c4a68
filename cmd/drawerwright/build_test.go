package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
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

// TestDoNotCutYet: a job of which most boxes come out wrong is written, and before all else
// terminal, list and report say not to cut from it, and what to do instead; one of which most
// come out right is not called so. The README has the words.
func TestDoNotCutYet(t *testing.T) {
	const notYet = "do not cut from this yet"
	job, about := codeBlock.FindStringSubmatch(readme(t))[1], readme(t)
	if !strings.Contains(about, notYet) || !strings.Contains(about, "fewer than 500 of 1,000") {
		t.Error("the README does not say when nothing is to be cut")
	}
	t.Chdir(t.TempDir())
	for width, cut := range map[string]bool{"6.35": true, "6.25": true, "6.2": false, "6.15": false} { // all, 988, 473 and 8 of 1,000
		text := strings.Replace(job, "width: 6.35", "width: "+width, 1)
		if err := os.WriteFile("job.yaml", []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		code, out, errs := call(t, "", "build", "job.yaml", "-o", "out")
		list, err := os.ReadFile("out/parts.txt")
		if code != exitDone || err != nil {
			t.Fatal(code, errs, err)
		}
		report, err := os.ReadFile("out/report.json")
		if err != nil {
			t.Fatal(err)
		}
		r, err := record.Read(report)
		if err != nil {
			t.Fatal(err)
		}
		var made built
		err = json.Unmarshal([]byte(ranOut(t, "build", "job.yaml", "-o", "out", "--json")), &made)
		if err != nil || made.Answer != r.Answer {
			t.Errorf("%v: %+v, and report.json %+v", err, made.Answer, r.Answer)
		}
		begins := strings.HasPrefix(out, "! Does not fit: "+notYet) &&
			strings.HasPrefix(string(list), "Does not fit: "+notYet) &&
			strings.Contains(out, "next: drawerwright check job.yaml")
		if begins == cut || strings.Contains(out+string(list)+r.Answer.Text, notYet) == cut || r.Answer.Cut != cut {
			t.Errorf("%s: %+v\n%s", width, r.Answer, out)
		}
	}
}

// TestNextCommandCanBeTyped: a job's name with a space is quoted, and standard input has none.
func TestNextCommandCanBeTyped(t *testing.T) {
	for job, want := range map[string]string{"a b.yaml": " drawerwright adjust \"a b.yaml\"\n", "-": " drawerwright adjust JOB\n"} {
		if out := nextAfter(record.Answer{Cut: true}, job); !strings.HasSuffix(out, want) {
			t.Errorf("%q: %s", job, out)
		}
	}
}
