package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"drawerwright/cmd/internal/present"
)

// wideScreen is how many columns and lines the screen of tests has.
const wideScreen = 100_000

// TestMain gives tests a screen on which nothing is wrapped or cut off, so that what they look
// for stands on one line; those of screens set their own.
func TestMain(m *testing.M) {
	for _, name := range []string{"COLUMNS", "LINES"} {
		if err := os.Setenv(name, strconv.Itoa(wideScreen)); err != nil {
			panic(err)
		}
	}
	if at := os.Getenv(commandAlone); at != "" {
		alone(at)
	}
	os.Exit(m.Run())
}

// ofJob are the commands that print of a job, and of its folder.
var ofJob = []string{"check JOB", "parts JOB", "parts JOB --all", "fit JOB", "fit JOB --all", "setup JOB", "setup JOB --all",
	"sheets JOB", "sheets JOB --all", "adjust JOB READING", "coupon JOB", "coupon JOB --all", "build JOB -o out", "prove out", "prove out --all"}

// readings are one of a test cut for each sample.
var readings = map[string]string{"bench-drawers": "slot=6.40", "inch-chest": "slot=0.250", "hand-cut": "slot=6.20",
	"router-boxes": "slot=6.40"}

// TestScreens: what each command prints on a terminal of 80 columns is as it was, for a saw's
// job, one in inches, one from an opening and a router's; no line is longer, but for paths; and
// without --all it is no more than a screen. After a change that is meant: -update.
func TestScreens(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/golden")
	if err != nil {
		t.Fatal(err)
	}
	samples := inTemp(t)
	t.Setenv("COLUMNS", "80")
	t.Setenv("LINES", "24")
	for job, reading := range readings {
		data, err := os.ReadFile(filepath.Join(samples, job+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(job+".yaml", data, 0o644); err != nil {
			t.Fatal(err)
		}
		var all strings.Builder
		for _, c := range ofJob {
			c = strings.NewReplacer("JOB", job+".yaml", "READING", reading).Replace(c)
			all.WriteString(screenOf(t, c))
		}
		kept(t, filepath.Join(golden, "screen-"+job+".txt"), all.String())
	}
}

// TestHelpScreens: the same of the help of all commands, of lists without drawers, and of a
// first job.
func TestHelpScreens(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/golden")
	if err != nil {
		t.Fatal(err)
	}
	inTemp(t)
	t.Setenv("COLUMNS", "80")
	t.Setenv("LINES", "24")
	list := "kind,name,length,width,count\nsheet,birch,2440,1220,\npart,side,500,140,12\npart,front,450,140,12\n"
	if err := os.WriteFile("list.csv", []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	commands := []string{"--help", "init job.yaml", "init job.yaml --yes", "layout list.csv", "layout list.csv --all",
		"explain", "explain joint"}
	for _, c := range newRoot(streams{}).Commands() {
		commands = append(commands, c.Name()+" --help")
	}
	for _, c := range commands {
		all.WriteString(screenOf(t, c))
	}
	kept(t, filepath.Join(golden, "screen-help.txt"), all.String())
	screenOf(t, "version")
}

// screenOf is what a command prints, standard output before standard error, below its line.
func screenOf(t *testing.T, command string) string {
	t.Helper()
	t.Setenv("LINES", strconv.Itoa(present.UsualSize.Height))
	_, out, errs := call(t, "", strings.Fields(command)...)
	for _, line := range strings.Split(out+errs, "\n") {
		if tooWide(line) {
			t.Errorf("%s: %d columns: %s", command, utf8.RuneCountInString(line), line)
		}
	}
	whole := strings.Contains(command, "--all") || strings.HasSuffix(command, "--help") || strings.HasPrefix(command, "explain")
	if n := strings.Count(out, "\n"); !whole && n >= present.UsualSize.Height {
		t.Errorf("%s: %d lines:\n%s", command, n, out)
	}
	return fmt.Sprintf("$ drawerwright %s\n%s%s\n", command, out, errs)
}

// tooWide reports whether a line has more than 80 columns for another reason than a path in it.
func tooWide(line string) bool {
	n := utf8.RuneCountInString(line)
	for _, word := range strings.Fields(line) {
		if strings.Contains(word, "/") && utf8.RuneCountInString(word) > 40 {
			return false
		}
	}
	return n > 80
}

// kept compares a text with a golden file.
func kept(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got == string(want) {
		return
	}
	a, b := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Fatalf("%s, line %d: %q, not %q: if that is meant, run with -update and read the diff",
				filepath.Base(file), i+1, a[i], b[i])
		}
	}
	t.Fatalf("%s has %d lines, not %d", filepath.Base(file), len(b), len(a))
}
