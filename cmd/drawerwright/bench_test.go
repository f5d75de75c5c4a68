package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
)

// ran runs the program and wants it to end with a code.
func ran(t *testing.T, want int, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if got := run(t.Context(), args, streams{in: strings.NewReader(""), out: &out, err: &errs}); got != want {
		t.Fatalf("%v ends with %d, not %d: %s%s", args, got, want, out.String(), errs.String())
	}
	return out.String() + errs.String()
}

// What goes to the bench works for every sample, as text and as JSON, twice alike.
func TestBenchCommandsOnSamples(t *testing.T) {
	jobs, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatal(jobs, err)
	}
	for _, job := range jobs {
		file, err := os.ReadFile(job)
		if err != nil {
			t.Fatal(err)
		}
		for _, args := range [][]string{{"fit", job}, {"setup", job}, {"adjust", job, "depth=6", "slot=6.4"}} {
			if strings.Contains(string(file), "units: in") {
				for i := range args {
					args[i] = strings.NewReplacer("depth=6", "depth=0.24", "slot=6.4", "slot=0.252").Replace(args[i])
				}
			}
			text := ran(t, 0, args...)
			if again := ran(t, 0, args...); again != text {
				t.Errorf("%v prints another text the second time", args)
			}
			var v map[string]any
			if err := json.Unmarshal([]byte(ranOut(t, append(args, "--json")...)), &v); err != nil {
				t.Errorf("%v --json: %v", args, err)
			}
		}
	}
}

// ranOut is what a run prints on standard output.
func ranOut(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if got := run(t.Context(), args, streams{in: strings.NewReader(""), out: &out, err: &errs}); got != 0 {
		t.Fatalf("%v ends with %d: %s%s", args, got, out.String(), errs.String())
	}
	return out.String()
}

const bench = "../../samples/bench-drawers.yaml"

// Readings of a fence 0.2 too far, with front and sides of 12.20: back to 6.10.
func TestAdjustSays(t *testing.T) {
	text := ran(t, 0, "adjust", bench, "slot=6.35", "edge=6.3", "tongue=6.3", "depth=6.1", "tongue-length=6.1", "recess=0.4", "clearance=0.05", "front-thickness=12.2", "sides-thickness=12.2", "front-length=447.8", "width=460")
	for _, want := range []string{"move the fence toward the cutter by 0.2 mm, from 6.3 mm to 6.1 mm.", "leave the cutter's height", "recessed", "tight"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q:\n%s", want, text)
		}
	}
	for _, c := range []struct{ args, want string }{
		{"edge=6.5 tongue=6.1", "contradict each other: edge, tongue"},
		{"slot=6.35", "the fence"},
		{"edge=6.5", "measure slot, clearance and depth first.\n" +
			"Next: measure, and drawerwright adjust ../../samples/bench-drawers.yaml edge=6.5 slot=... clearance=... depth=..."},
		{"edge=6.5", "leave the fence for now: box front tongue clearance in its dado cannot be told yet."},
		{"slot=6.42", "measure, and give adjust these readings too\n" +
			"  reading  what and where                                       with                   before you move\n" +
			"  edge     from the end of a side to the near wall of its dado  caliper, outside jaws  the fence\n" +
			"  depth    depth of a dado, from the face to its floor          caliper, depth rod     the cutter's height\n"},
		{"slot=6.40 edge=6.30 tongue=6.3 depth=6.3", "leave the cutter's height for now: one reading alone can be a slip."},
		{"slot=6.35 edge=6.1 tongue=6.1 depth=6.1 tongue-length=6.1", "LEAVE IT: the test cut is right.\nFronts and backs still to be cut: 447.79 mm long."},
		// Play and width are known to be right or not where they have been read.
		{"slot=6.35", "not known yet"},
		{"slot=6.42 edge=6.3", "once more, at another place: width of a dado"},
		{"slot=6.40 edge=6.12 tongue=6.12 depth=6.12", "LEAVE IT: all that these readings say is within its limits.\n"},
		// Of a cutter 0.4 too wide no fence makes a right corner: it is said, and nothing moved.
		{"slot=6.75 edge=6.1 tongue=6.1 depth=6.1 tongue-length=6.1 clearance=0.65 recess=0", "what to do\n  the cutter cuts 6.74 mm wide, and the job says 6.35 mm; a slot of 6.29 to 6.44 mm is right: set it anew, or write what it cuts into the job, as --write does.\n  leave the fence: moved, it would put more out than it puts right.\n"},
		{"slot=6.35 edge=6.1 tongue=6.1 depth=6.1 tongue-length=6.1 front-length=447.8 width=463", "The reading width, 463.00 mm, does not agree with the others, which together say"},
		{"diagonals=681,679", "first diagonal is 2 mm longer"},
		{"diagonals=680,680", "square within"},
	} {
		if text := ran(t, 0, append([]string{"adjust", bench}, strings.Fields(c.args)...)...); !strings.Contains(text, c.want) {
			t.Errorf("%s does not say %q:\n%s", c.args, c.want, text)
		}
	}
	for _, c := range []struct{ args, want string }{
		{"nose=3", "has no reading"}, {"slots=6.4", "did you mean `slot`?"}, {"slot=63", "too far from it"}, {"slot", "write a reading and its value"}, {"slot=wide", "slot=wide"}, {"coupon-12=6", "coupon-1 to coupon-9"},
		{"fits=0", "1 to 9"}, {"diagonals=680", "with a comma"}, {"slot=6.4 --drawer nobody", "the job has bench-wide, bench-narrow"}, {"slot=6.4 --keep", "give both"},
	} {
		if text := ran(t, 2, append([]string{"adjust", bench}, strings.Fields(c.args)...)...); !strings.Contains(text, c.want) {
			t.Errorf("%s does not say %q:\n%s", c.args, c.want, text)
		}
	}
}

// The copy holds the measured values, what was there otherwise, and is a job; nothing
// is written over a file that is there.
func TestAdjustWrites(t *testing.T) {
	dir := t.TempDir()
	next := filepath.Join(dir, "next.yaml")
	readings := []string{"slot=6.40", "edge=6.3", "tongue=6.3", "depth=6.0", "tongue-length=6.0", "sides-thickness=12.2", "front-thickness=12.2"}
	ran(t, 0, append(append([]string{"adjust", bench}, readings...), "--write", next, "--keep")...)
	data, err := os.ReadFile(next)
	if err != nil {
		t.Fatal(err)
	}
	old, err := os.ReadFile(bench)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, want := range []string{"width: 6.4 mm}   # a dado stack", "joinery: {fence-distance: 6.3 mm, cutter-height: 6 mm}\n", "birch: {thickness: [12.16 mm, 12.24 mm], sheet"} {
		if !strings.Contains(text, want) {
			t.Errorf("the copy does not hold %q:\n%s", want, text)
		}
	}
	if got, want := strings.Count(text, "\n"), strings.Count(string(old), "\n")+1; got != want {
		t.Errorf("the copy has %d lines, not %d", got, want)
	}
	ran(t, 0, "check", next)
	ran(t, 1, append(append([]string{"adjust", bench}, readings...), "--write", next)...)
	if again, err := os.ReadFile(next); err != nil || string(again) != text {
		t.Error("the file that was there was changed", err)
	}
	ran(t, 1, "adjust", bench, "edge=6.5", "tongue=6.1", "--write", filepath.Join(dir, "none.yaml"))
	if _, err := os.Stat(filepath.Join(dir, "none.yaml")); err == nil {
		t.Error("readings that contradict each other were written")
	}
}

// TestAdjustWritesOneJob: while the fence is still to be measured, the copy has the distance
// that goes with the cutter as measured, so that check has nothing new to say of it; what it
// says of a cutter that no setting makes good is said at once; and so is the next command.
func TestAdjustWritesOneJob(t *testing.T) {
	dir := t.TempDir()
	for i, c := range []struct{ readings, holds, says, next string }{
		{"slot=6.42", "joinery: {fence-distance: 6.12 mm}", "", "slot=6.42 edge=... depth=..."},
		{"slot=6.42 edge=6.25 tongue=6.25 depth=6.05 recess=0.3",
			"joinery: {fence-distance: 6.15 mm, cutter-height: 6.05 mm}", "", "recess=0.3 slot=... recess=..."},
		{"slot=6.5 edge=6.25", "joinery: {fence-distance: 6.17 mm}",
			"the bottom has 0.59 mm", "slot=6.5 edge=6.25 tongue=... depth=..."},
	} {
		next := filepath.Join(dir, fmt.Sprintf("next-%d.yaml", i))
		text := ran(t, 0, append(strings.Fields("adjust "+bench+" "+c.readings), "--write", next)...)
		data, err := os.ReadFile(next)
		if err != nil || !strings.Contains(string(data), c.holds) {
			t.Errorf("%s: the copy does not hold %q: %v\n%s", c.readings, c.holds, err, data)
		}
		said := "Next: measure, and drawerwright adjust " + next + " " + strings.Fields(c.readings)[0]
		if !strings.Contains(text, said) || !strings.Contains(text, c.next) {
			t.Errorf("%s: the next command is not said:\n%s", c.readings, text)
		}
		l, err := loadJob(next, streams{})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range l.Problems {
			if c.says == "" || !strings.Contains(text, p.Message) {
				t.Errorf("%s: check says of the copy what adjust did not: %s\n%s", c.readings, p.Message, text)
			}
		}
		if !strings.Contains(text, c.says) {
			t.Errorf("%s: it does not say %q:\n%s", c.readings, c.says, text)
		}
	}
}

func TestCouponCommand(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "coupon")
	const router = "../../samples/router-boxes.yaml"
	text := ran(t, 0, "coupon", router, "-o", dir)
	files, err := filepath.Glob(filepath.Join(dir, "*.dxf"))
	if err != nil || len(files) != 1 || !strings.Contains(text, files[0]) {
		t.Errorf("files %v, %v:\n%s", files, err, text)
	}
	ran(t, 1, "coupon", router, "-o", dir) // never over a file that is there
	ran(t, 1, "coupon", bench, "-o", dir)  // a saw has no drawing
	if text := ran(t, 0, "coupon", bench); !strings.Contains(text, "shims") {
		t.Errorf("a saw's steps have no shims:\n%s", text)
	}
}

// TestOneSettingIsThePrintedOne: what is said of one setting is of those that the sheet has,
// and a yes only where boxes come out right.
func TestOneSettingIsThePrintedOne(t *testing.T) {
	const job = `units: mm
stock: {ply: {thickness: [12, 12.04]}, thin: {thickness: [5.95, 6]}}
cutter: {kind: saw, width: %s}
drawers:
  - {name: a, outside: 400 x 120 x 450, sides: ply, bottom: thin%s}
  - {name: b, outside: 400 x 150 x 450, sides: ply, bottom: thin}
`
	const second = ", joinery: {fence-distance: 6.1}"
	for _, c := range [][3]string{
		{"6.3", "", "Yes: one fence distance, 6.01 mm, and one cutter height, 6.01 mm, serve both drawers: "},
		{"6.6", "", "The job has one, and not all boxes come out right with it: " +
			"one fence distance, 6.01 mm, and one cutter height, 6.01 mm, are those of both drawers; see the verdicts above. "},
		{"6.3", second, "Not as the job stands, but one fence distance, 6.06 mm, and one cutter height, 6.01 mm would serve both drawers: "},
	} {
		_, out, errs := call(t, fmt.Sprintf(job, c[0], c[1]), "setup", "-", "--all")
		if said := strings.Join(strings.Fields(out), " "); !strings.Contains(said, "One setting for everything? "+c[2]) {
			t.Errorf("cutter %s%s: no %q in\n%s%s", c[0], c[1], c[2], out, errs)
		}
	}
}

// TestAnswerCountsSettings: one setting for everything is a yes only where no other follows, and a sheet names fingers,
// pulls, holes and grooves only where it has such cuts.
func TestAnswerCountsSettings(t *testing.T) {
	yes, no := 0, 0
	samples, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(samples) == 0 {
		t.Fatal("no samples", err)
	}
	for _, file := range samples {
		var sheet present.SetupSheet
		if err := json.Unmarshal([]byte(ran(t, 0, "setup", file, "--json")), &sheet); err != nil {
			t.Fatal(err)
		}
		for _, m := range sheet.Machines {
			n := max(len(m.Settings), 1)
			switch said := m.OneSetup.Text; {
			case strings.HasPrefix(said, "Yes: "):
				if yes++; n != 1 {
					t.Errorf("%s: %d settings follow %q", file, n, said)
				}
			case strings.HasPrefix(said, "No: "):
				if no++; n < 2 || !strings.HasPrefix(said, fmt.Sprintf("No: %d settings follow. ", n)) {
					t.Errorf("%s: %d settings follow %q", file, n, said)
				}
			}
			made := make(map[string]bool)
			for _, s := range m.Settings {
				for _, c := range s.Cuts {
					made[c.Kind] = true
				}
			}
			for _, c := range m.Separate {
				made[c.Kind] = true
			}
			for _, kind := range []string{"fingers", "grooves", "pulls", "holes", "notches"} {
				if said := m.OneSetup.Text + " " + m.Order; strings.Contains(said, kind) && !made[kind] {
					t.Errorf("%s has no %s: %q", file, kind, said)
				}
			}
		}
	}
	if yes < 3 || no < 2 {
		t.Errorf("%d yes, %d no", yes, no)
	}
}

func TestSetupSays(t *testing.T) {
	text := strings.Join(strings.Fields(ran(t, 0, "setup", bench, "--all")), " ") // lines break anywhere
	for _, want := range []string{"Yes: one fence distance, 6.10 mm, and one cutter height, 6.10 mm, serve both drawers", "stood on both ends in turn", "29 CFR 1910.213", "all box fronts and backs (12)"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q:\n%s", want, text)
		}
	}
	job, err := os.ReadFile(bench)
	if err != nil {
		t.Fatal(err)
	}
	_, text, _ = call(t,
		strings.Replace(string(job), "kind: saw, width", "kind: router-table, diameter", 1), "setup", "-", "--all")
	if !strings.Contains(text, "Raise the bit in steps: 3.05, 6.10 mm") {
		t.Errorf("no passes:\n%s", text)
	}
}
