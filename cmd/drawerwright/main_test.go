package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// call runs the command as a person would, in a folder of its own.
func call(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(context.Background(), args, streams{strings.NewReader(stdin), &out, &errs})
	return code, out.String(), errs.String()
}

// inTemp moves the test into an empty folder and gives the samples' folder.
func inTemp(t *testing.T) (samples string) {
	t.Helper()
	samples, err := filepath.Abs("../../samples")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	return samples
}

func TestExitCodes(t *testing.T) {
	samples := inTemp(t)
	bench := filepath.Join(samples, "bench-drawers.yaml")
	if err := os.WriteFile("bad.yaml", []byte("units: mm\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		args []string
		code int
		said string // somewhere on either stream
	}{
		"help":                  {[]string{"--help"}, exitDone, "drawerwright build"},
		"no words":              {nil, exitDone, "Usage:"},
		"unknown command":       {[]string{"biuld"}, exitUsage, "build"},
		"unknown flag":          {[]string{"check", bench, "--jsn"}, exitUsage, "--jsn"},
		"no job":                {[]string{"build"}, exitUsage, "give the job file"},
		"two jobs":              {[]string{"check", "a", "b"}, exitUsage, "one job file at a time"},
		"job not there":         {[]string{"check", "nowhere.yaml"}, exitJob, "nowhere.yaml"},
		"job is a folder":       {[]string{"check", "."}, exitJob, "is a folder"},
		"bad job":               {[]string{"build", "bad.yaml"}, exitJob, "bad.yaml:1:"},
		"good job":              {[]string{"check", bench}, exitDone, "2 kinds of drawer, 6 boxes"},
		"view of no file":       {[]string{"view", "nowhere.txt"}, exitJob, "nowhere.txt"},
		"view of a stream":      {[]string{"view", "-"}, exitUsage, "job file"},
		"view of a folder":      {[]string{"view", "."}, exitJob, "regular"},
		"view at no port":       {[]string{"view", bench, "--port", "99999"}, exitUsage, "port"},
		"bad date":              {[]string{"build", bench, "--date", "31.3.2026"}, exitUsage, "YYYY-MM-DD"},
		"bad stl":               {[]string{"build", bench, "--stl", "step"}, exitUsage, "ascii"},
		"both forms":            {[]string{"parts", bench, "--csv", "--json"}, exitUsage, "csv"},
		"output is this folder": {[]string{"build", bench, "-o", "."}, exitJob, "is the current folder"},
		"output has no name":    {[]string{"build", bench, "-o", ""}, exitUsage, "-o out"},
		"escape in a name":      {[]string{"check", "q\x1b[31m.yaml"}, exitJob, "q?[31m.yaml"},
		"schema":                {[]string{"schema"}, exitDone, "2020-12"},
		"completion":            {[]string{"completion", "fish"}, exitDone, "drawerwright"},
		"completion of what":    {[]string{"completion", "tcsh"}, exitUsage, "tcsh"},
		"version flag":          {[]string{"--version"}, exitDone, "report format 6"},
		"help command":          {[]string{"help", "build"}, exitDone, "whole or not at all"},
		"starter to stdout":     {[]string{"init", "-", "--yes"}, exitDone, "units: mm"},
		"json, no file":         {[]string{"check", "--json", "nowhere.yaml"}, exitJob, `"ok": false`},
		"json, bad job":         {[]string{"parts", "--json", "bad.yaml"}, exitJob, `"line": 1`},
		"json, bad folder":      {[]string{"build", "--json", bench, "-o", "."}, exitJob, `"code": "folder"`},
		"version":               {[]string{"version"}, exitDone, "report format 6"},
		"licenses":              {[]string{"version", "--licenses"}, exitDone, "the drawerwright authors"},
		"units":                 {[]string{"init", "--units", "cm"}, exitUsage, "cm"},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := call(t, "", c.args...)
			if code != c.code || !strings.Contains(out+errs, c.said) {
				t.Errorf("exit %d, want %d with %q:\n%s%s", code, c.code, c.said, out, errs)
			}
			if (code == exitDone || strings.Contains(name, "json,")) != (out != "") || strings.Contains(name, "json,") && errs != "" {
				t.Errorf("exit %d with standard output %q, standard error %q", code, out, errs)
			}
			if strings.Contains(out+errs, "\x1b[") {
				t.Error("color on a stream that is no terminal")
			}
		})
	}
}

// TestEveryCommandHasAnExample, so that --help always shows one.
func TestEveryCommandHasAnExample(t *testing.T) {
	for _, c := range newRoot(streams{}).Commands() {
		if c.Name() != "help" && !strings.Contains(c.Example, "drawerwright") {
			t.Errorf("%s has no worked example", c.Name())
		}
	}
}

// tree reads a folder: names below it, with slashes, and contents.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		all[filepath.ToSlash(path[len(dir)+1:])] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestSamplesBuild: every sample and the first jobs in both units build without a warning, with every
// file that the report names. What build says of its drawings, in the report and before it
// writes them, is what prove says of them on disk; and prove writes nothing. The starters
// give the same bytes each time, over an old folder too; that samples do is shown by other
// processors (.ci/check).
func TestSamplesBuild(t *testing.T) {
	samples := inTemp(t)
	jobs, err := filepath.Glob(filepath.Join(samples, "*.yaml"))
	if err != nil || len(jobs) < 3 {
		t.Fatalf("%d samples, %v", len(jobs), err)
	}
	for _, units := range []string{"mm", "in"} {
		name := "starter-" + units + ".yaml"
		if code, _, errs := call(t, "", "init", name, "--units", units, "--yes"); code != exitDone {
			t.Fatalf("init: %s", errs)
		}
		if code, _, _ := call(t, "", "init", name, "--units", units, "--yes"); code != exitJob {
			t.Error("init overwrites a file")
		}
		jobs = append(jobs, name)
	}
	for _, job := range jobs {
		t.Run(filepath.Base(job), func(t *testing.T) {
			folders := []string{"a"}
			if strings.HasPrefix(job, "starter") {
				folders = []string{"a", "b", "a"}
			}
			for _, dir := range folders {
				if code, _, errs := call(t, "", "build", job, "-o", dir); code != exitDone {
					t.Fatalf("exit %d: %s", code, errs)
				}
			}
			a := tree(t, "a")
			if len(folders) > 1 && !reflect.DeepEqual(a, tree(t, "b")) {
				t.Error("the files differ from one build to the next")
			}
			r, err := record.Read([]byte(a["report.json"]))
			if err != nil {
				t.Fatal(err)
			}
			provenAsBuilt(t, "a", r)
			if !reflect.DeepEqual(a, tree(t, "a")) {
				t.Error("prove writes")
			}
			// Report, cut list thrice, what to buy, packet, pages for a screen and for a phone, manifest; GLB.
			named := 9 + len(r.Drawers) + len(r.Cabinets)
			for _, d := range r.Drawers {
				named += len(d.Pictures) + len(d.Solids)
				if d.Step != "" {
					named++
				}
			}
			if record.Keep(r).ForRouter() {
				named++ // the legend of layers
			}
			if len(r.Cabinets) > 0 {
				named++ // the table of slide lines
			}
			for _, c := range r.Cabinets {
				named += len(c.Files)
			}
			prints := make(map[string]bool) // which templates share
			for _, p := range r.Templates {
				for _, f := range p.Files {
					if prints[f] {
						continue
					}
					prints[f] = true
					named++
					if _, ok := a[f]; !ok {
						t.Errorf("the report names %s, which is not there", f)
					}
				}
			}
			for _, k := range r.Sheets {
				for _, one := range k.Sheets {
					for _, f := range one.Files {
						named++
						if _, ok := a[f]; !ok {
							t.Errorf("the report names %s, which is not there", f)
						}
					}
				}
			}
			if len(r.Sheets) > 0 {
				named += len([]string{"tables/layout.csv", "tables/cuts.csv"})
			}
			for _, p := range r.Parts {
				for _, f := range []string{p.Files.Inside, p.Files.Outside, p.Files.STL, p.Files.Step} {
					if f != "" {
						named++
						if _, ok := a[f]; !ok {
							t.Errorf("the report names %s, which is not there", f)
						}
					}
				}
			}
			if named != len(a) {
				t.Errorf("%d files, the report accounts for %d", len(a), named)
			}
			rows, err := csv.NewReader(strings.NewReader(a["tables/parts.csv"])).ReadAll()
			if err != nil || len(rows) != 1+len(r.Parts) {
				t.Errorf("cut list of %d rows for %d parts, %v", len(rows), len(r.Parts), err)
			}
			os.RemoveAll("a")
			os.RemoveAll("b")
		})
	}
}

// TestBench pins the first sample by hand: sides of 500 x 140 from birch of
// (12.21 + 12.16 + 12.24) / 3 = 12.2033; with h = f = T/2 the front is
// 460 - 2 T + 2 h = 460 - 12.2033 = 447.7967 long and the bottom, 2 mm less,
// 445.7967 by 500 - 4 f + 2 h - 2 = 498 - 12.2033 = 485.7967.
func TestBench(t *testing.T) {
	samples := inTemp(t)
	code, out, errs := call(t, "", "parts", "--json", filepath.Join(samples, "bench-drawers.yaml"))
	if code != exitDone {
		t.Fatal(errs)
	}
	r, err := record.Read([]byte(out))
	if err != nil {
		t.Fatal(err)
	}
	type size struct {
		quantity                 int
		length, width, thickness float64
	}
	want := map[string]size{
		"bench-wide-side":      {4, 500, 140, 12.203333},
		"bench-wide-box-front": {2, 447.796667, 140, 12.203333},
		"bench-wide-back":      {2, 447.796667, 140, 12.203333},
		"bench-wide-bottom":    {2, 445.796667, 485.796667, 5.91}, // (5.92 + 5.86 + 5.95) / 3
		// 298 - 12.2033 and so on.
		"bench-narrow-side":      {8, 500, 90, 12.203333},
		"bench-narrow-box-front": {4, 285.796667, 90, 12.203333},
		"bench-narrow-back":      {4, 285.796667, 90, 12.203333},
		"bench-narrow-bottom":    {4, 283.796667, 485.796667, 5.91},
	}
	if len(r.Parts) != len(want) {
		t.Errorf("%d parts", len(r.Parts))
	}
	for _, p := range r.Parts {
		if got := (size{p.Quantity, p.Length.MM(), p.Width.MM(), p.Thickness.MM()}); got != want[p.Name] {
			t.Errorf("%s: %v, want %v", p.Name, got, want[p.Name])
		}
	}
	// Birch: 4 x 500 x 140 + 4 x 447.7967 x 140 + 8 x 500 x 90 + 8 x 285.7967 x 90
	// = 1 096 540 mm2; hardboard: (2 x 445.7967 + 4 x 283.7967) x 485.7967
	// = 984 603 mm2. Either is less than one sheet.
	if want := []record.Stock{{Stock: "birch", Pieces: 24, Area: 1_096_500, Sheets: 1, Cost: 58}, {Stock: "hardboard", Pieces: 6, Area: 984_600, Sheets: 1, Cost: 21}}; !slices.Equal(r.Material, want) {
		t.Errorf("material %+v, want %+v", r.Material, want)
	}
	if len(r.Setups) != 1 || r.Setups[0].FenceDistance != 6.101667 || r.Setups[0].CutterHeight != 6.101667 {
		t.Errorf("one setting should serve all: %+v", r.Setups)
	}
}

// TestNothingHalfWritten: a job that fails leaves no folder, and a folder with a
// stranger's file is refused and kept.
func TestNothingHalfWritten(t *testing.T) {
	samples := inTemp(t)
	bench := filepath.Join(samples, "bench-drawers.yaml")
	if err := os.WriteFile("bad.yaml", []byte("units: mm\ncutter: {kind: saw}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if code, _, _ := call(t, "", "build", "bad.yaml", "-o", "out"); code != exitJob {
		t.Error("a bad job builds")
	}
	if _, err := os.Stat("out"); err == nil {
		t.Error("a bad job leaves a folder")
	}
	if code, _, errs := call(t, "", "build", bench, "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
	if err := os.WriteFile("out/notes.txt", []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	before := tree(t, "out")
	if code, _, errs := call(t, "", "build", bench, "-o", "out"); code != exitJob || !strings.Contains(errs, "notes.txt") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if _, out, _ := call(t, "", "build", "--json", bench, "-o", "out"); !strings.Contains(out, "out/notes.txt was not written by this tool") {
		t.Errorf("as JSON: %s", out)
	}
	if after := tree(t, "out"); len(after) != len(before) {
		t.Error("the refused folder was changed")
	}
	// Ctrl-C: the context is done before the first drawer.
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	var out, errs bytes.Buffer
	if code := run(stopped, []string{"build", bench, "-o", "new"}, streams{nil, &out, &errs}); code != exitJob {
		t.Errorf("exit %d after an interrupt", code)
	}
	left, err := filepath.Glob("*new*")
	if err != nil || len(left) != 0 {
		t.Errorf("an interrupt leaves %v", left)
	}
}

// full is a screen or file that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// TestFullOutput: what cannot be written is a failure, for help too.
func TestFullOutput(t *testing.T) {
	samples := inTemp(t)
	for _, args := range [][]string{{"--help"}, {"version"}, {"schema"}, {"completion", "bash"}, {"parts", filepath.Join(samples, "bench-drawers.yaml")}} {
		var errs bytes.Buffer
		if code := run(context.Background(), args, streams{strings.NewReader(""), full{}, &errs}); code != exitJob || !strings.Contains(errs.String(), "no space left") {
			t.Errorf("%s: exit %d, %s", args, code, &errs)
		}
	}
}

// TestManyWarnings: thousands are counted, not all shown, and none hides an error.
func TestManyWarnings(t *testing.T) {
	var b strings.Builder
	b.WriteString("units: mm\nstock:\n  birch: {thickness: 12}\n  ply: {thickness: 5.9, material: plywood}\ncutter: {kind: saw, width: 6.6}\ndrawers:\n")
	for i := range 300 {
		fmt.Fprintf(&b, "  - {name: d%d, outside: %d x 120 x 450, sides: birch, bottom: ply, load: 200 kg}\n", i, 600+i)
	}
	b.WriteString("  - {name: last, outside: 400 x 15 x 450, sides: birch, bottom: ply}\n")
	code, _, errs := call(t, b.String(), "check", "-")
	if code != exitJob || !strings.Contains(errs, "and at least ") || strings.Count(errs, "\n") > 500 {
		t.Errorf("exit %d with %d lines", code, strings.Count(errs, "\n"))
	}
	if !strings.Contains(errs, "check it again.\n(standard input):307:27: error: last: the height") {
		t.Errorf("begins %.100q, not with the error", errs)
	}
}

// TestStandardInput: - reads the job from there, and messages name it.
func TestStandardInput(t *testing.T) {
	if code, _, errs := call(t, "units: furlongs\n", "check", "-"); code != exitJob || !strings.Contains(errs, "standard input") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// TestMessagesHavePlaces: what joinery finds is shown at the drawer's own line.
func TestMessagesHavePlaces(t *testing.T) {
	inTemp(t)
	job := strings.Join([]string{
		"units: mm", "stock:", "  birch: {thickness: 12}", "  ply: {thickness: 5.9}", "cutter: {kind: saw, width: 6.3}", "drawers:",
		"  - {name: good, outside: 400 x 120 x 450, sides: birch, bottom: ply}",
		"  - {name: flat, outside: 400 x 15 x 450, sides: birch, bottom: ply}",
		"  - name: wide cutter",
		"    outside: 400 x 120 x 450",
		"    sides: birch",
		"    bottom: ply",
		"    cutter: {kind: saw, width: 7.5}", "",
	}, "\n")
	if err := os.WriteFile("job.yaml", []byte(job), 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, _ := call(t, "", "check", "--json", "job.yaml")
	var c checked
	if err := json.Unmarshal([]byte(out), &c); err != nil || code != exitJob || c.OK {
		t.Fatalf("exit %d, %v: %s", code, err, out)
	}
	lines := map[string]int{}
	for _, p := range c.Problems {
		lines[p.Code] = p.Line
		if p.Hint == "" || p.Column == 0 || p.File != "job.yaml" {
			t.Errorf("%+v", p)
		}
	}
	if lines["room"] != 8 || lines["cutter-wide"] != 13 {
		t.Errorf("places %v", lines)
	}
	code, _, errs := call(t, "", "check", "job.yaml")
	if code != exitJob || !strings.Contains(errs, "job.yaml:8:") || !strings.Contains(errs, "^") || !strings.Contains(errs, "hint:") {
		t.Errorf("exit %d:\n%s", code, errs)
	}
}
