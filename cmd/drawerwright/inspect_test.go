package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const sewing = "../../samples/log/sewing-box.yaml"

// filledForm writes the empty form of a job and fills it in: the rows named as read, all others with what is right;
// those read as "-" are left out.
func filledForm(t *testing.T, job string, read map[string]string) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "first.csv")
	said := ran(t, 0, "inspect", job, "--form", path)
	if !strings.Contains(said, "readings to take. Let the cutter stop") {
		t.Error(said)
	}
	empty, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(empty).ReadAll()
	empty.Close()
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	w := csv.NewWriter(&out)
	for i, r := range rows {
		v, given := read[r[1]]
		switch {
		case i > 0 && !given:
			r[5] = r[2]
		case v != "-" && given:
			r[5] = v
		}
		w.Write(r)
	}
	w.Flush()
	if err := os.WriteFile(path, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// moves are the lines of a screen that say what to move.
func moves(screen string) (list []string) {
	for _, line := range strings.Split(screen, "\n") {
		if strings.HasPrefix(line, "  move ") {
			list = append(list, line)
		}
	}
	return list
}

// TestInspectSaysWhatAdjustSays: of the same readings the first box and the test cut have the same moves, in the same
// words, and put the same lines into a log.
func TestInspectSaysWhatAdjustSays(t *testing.T) {
	form := filledForm(t, sewing, map[string]string{"from the end to a dado": "6.30", "thickness of a tongue": "6.31",
		"depth of a dado": "6.05", "length of a tongue": "6.06", "box front tongue clearance in its dado": "0.07",
		"box front recess at the side ends (proud below 0)": "0.50"})
	logs := [2]string{filepath.Join(t.TempDir(), "a.csv"), filepath.Join(t.TempDir(), "b.csv")}
	box := ran(t, 1, "inspect", sewing, form, "--log", logs[0], "--date", "2026-05-08")
	cut := ran(t, 0, "adjust", sewing, "slot=6.35", "edge=6.30", "depth=6.05", "tongue=6.31", "tongue-length=6.06",
		"front-length=307.88", "clearance=0.07", "recess=0.5", "width=320", "width=320",
		"--log", logs[1], "--date", "2026-05-08")
	if got, want := moves(box), moves(cut); len(want) != 1 || strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("inspect says %q, adjust %q", got, want)
	}
	if !strings.HasPrefix(box, "! First box of spools: it is not right, cut no other: 4 readings are out of limits: ") {
		t.Error(box)
	}
	var text [2]string
	for i, log := range logs {
		data, err := os.ReadFile(log)
		if err != nil {
			t.Fatal(err)
		}
		text[i] = string(data)
	}
	if text[0] != text[1] || strings.Count(text[0], "2026-05-08") < 4 ||
		!strings.Contains(text[0], "fence,6.06,6.3,mm,moved") {
		t.Errorf("%q, and %q by adjust", text[0], text[1])
	}
}

// TestInspectLogs: a right box goes into the log behind what is there; one that is not read whole adds nothing, nor
// does a form with a mistake, nor one that a log with a mistake would take.
func TestInspectLogs(t *testing.T) {
	shop := filepath.Join(t.TempDir(), "shop.csv")
	const head = "date,machine,cutter,what,aimed,measured,units,then\n"
	holds := func(want string) {
		t.Helper()
		if got, _ := os.ReadFile(shop); string(got) != want {
			t.Errorf("the log is %q, not %q", got, want)
		}
	}
	log := func(code int, form string) string {
		t.Helper()
		return ran(t, code, "inspect", bench, form, "--log", shop, "--date", "2026-03-02")
	}
	for read, want := range map[string]string{
		"-":  "nothing is out of its limits so far; of 23 readings these are still to be taken: height.\nbench-wide: Nothing",
		"14": `first.csv:21: column 6, reading: "14" for the height is too far from "140.00"`,
	} {
		code := map[bool]int{true: 0, false: 1}[read == "-"]
		if said := log(code, filledForm(t, bench, map[string]string{"height": read})); !strings.Contains(said, want) {
			t.Error(said)
		}
	}
	holds("")
	right := filledForm(t, bench, map[string]string{"width of a dado": "6.38"})
	const lines = "2026-03-02,saw,,cutter,6.35,6.38,mm,kept\n2026-03-02,saw,,fence,6.1,6.1,mm,kept\n" +
		"2026-03-02,saw,,height,6.1,6.1,mm,kept\n2026-03-02,saw,,length,447.8,447.8,mm,kept\n"
	const said = "First box of bench-wide: it is right; leave all as it is, and cut the rest.\n4 lines added to "
	if text := log(0, right); !strings.HasPrefix(text, said) {
		t.Error(text)
	}
	holds(strings.ReplaceAll(head+lines, "\n", "\r\n"))
	if text := log(0, right); !strings.Contains(text, "has these readings of this day already") {
		t.Error(text)
	}
	holds(strings.ReplaceAll(head+lines, "\n", "\r\n"))
	if err := os.WriteFile(shop, []byte(head+"2026-03-02,saw,,fence,6.1,6.12,feet,kept\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if said := log(1, right); !strings.Contains(said, `shop.csv:2: column 7, units: "feet" is no unit`) {
		t.Error(said)
	}
	holds(head + "2026-03-02,saw,,fence,6.1,6.12,feet,kept\n")
}

// TestInspectInInches: a form of a job in inches has its numbers in inches, and takes fractions and millimeters.
func TestInspectInInches(t *testing.T) {
	const chest = "../../samples/inch-chest.yaml"
	rows, err := os.ReadFile(filledForm(t, chest, nil))
	if err != nil || !strings.Contains(string(rows), ",width front,17.625,") {
		t.Fatalf("%s %v", rows, err)
	}
	form := filledForm(t, chest, map[string]string{"width front": "17 41/64", "width back": "447.6 mm"})
	said := ran(t, 0, "inspect", chest, form)
	if !strings.Contains(said, "it is right") || !strings.Contains(said, "17.641") {
		t.Error(said)
	}
}

// TestInspectRefuses: what does not go together is refused, and a form of another state of the job.
func TestInspectRefuses(t *testing.T) {
	form := filledForm(t, bench, nil)
	for args, want := range map[string]string{
		"": "give the job and the form", "x.csv y.csv": "give the job and the form", "x.csv --form y.csv": "give the job alone",
		"--form y.csv --log l.csv": "give the job alone", "x.csv --drawer a": "names its drawers",
		"x.csv --date 2026-03-02": "give both", "--form y.csv --drawer none": "the job has bench-wide, bench-narrow",
	} {
		if said := ran(t, 2, append([]string{"inspect", bench}, strings.Fields(args)...)...); !strings.Contains(said, want) {
			t.Errorf("%q: %s", args, said)
		}
	}
	if said := ran(t, 1, "inspect", bench, "none.csv"); !strings.Contains(said, "--form none.csv writes an empty one") {
		t.Error(said)
	}
	if said := ran(t, 1, "inspect", bench, "--form", form); !strings.Contains(said, form) {
		t.Error(said)
	}
	text, err := os.ReadFile(form)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(form, []byte(strings.Replace(string(text), "6.29", "6.28", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	said := ran(t, 1, "inspect", bench, form, "--json")
	if !strings.Contains(said, `"line": 2`) || !strings.Contains(said, `column 4, least: \"6.28\" is not what the job has now`) {
		t.Error(said)
	}
}

// TestInspectSample: of the sample's first box the fence stands 0.12 mm too far out, and one move of it is asked for.
func TestInspectSample(t *testing.T) {
	said := ran(t, 1, "inspect", sewing, "../../samples/log/first-box.csv")
	for _, want := range []string{"4 readings are out of limits",
		"\n  move the fence toward the cutter by 0.12 mm, from 6.18 mm to 6.06 mm.",
		"the same setting moves it", "diagonals apart                                        0.50      0.00 to 1.00  right\n"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
}
