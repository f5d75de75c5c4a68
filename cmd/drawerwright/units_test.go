package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Words of quantities that a shop of the other unit does not use. A number or a fraction
// stands before them, or a bracket or the end of a head; "g" alone also names a cut in the
// packet, which is why a number has to stand before it.
var (
	metricWords = regexp.MustCompile(`(\d +|[(>,] ?)(mm2?|cm|m2|m|kg|g|grams?|grammes|N/mm2|kg/m3|[GM]Pa|meters?)\b|\b(mm2?|m2|kg|N/mm2)\b`)
	inchWords   = regexp.MustCompile(`\d +(in|inch|inches|ft|oz|lb|psi)\b|\b(sq ft|sq in|oz|lb|psi|inches)\b`)
)

// handJob is an inch job of hand tools with all that is bought and cut beside boxes.
const handJob = `units: in
job: By hand
stock:
  maple: {thickness: [0.5, 0.502], sheet: 96 x 48, grain: length, price: 92, material: plywood, edge-banding: {thickness: 0.02, price: 0.3}}
  quarter: {thickness: 0.236, sheet: 48 x 96, material: plywood}
  hb: {thickness: 1/8, kerf: 0.006}
cutter: {kind: hand, width: 0.25}
templates: {stock: hb}
drawers:
  - {name: a, outside: 18 x 5 x 18, sides: maple, bottom: quarter, load: 20 lb}
  - {name: b, outside: 18 x 5 x 18, joint: butt, sides: maple, bottom: quarter, joinery: {bottom-fit: applied}, load: 40 lb}
  - {name: c, outside: 18 x 5 x 18, joint: butt, fasteners: dowels, sides: maple, bottom: quarter}
`

// commandTexts keeps what commands print of jobs.
var commandTexts = map[[2]string][2]string{}

// saidOf is what a command prints of a job, run once for all tests.
func saidOf(t *testing.T, job, command string) (out, errs string) {
	t.Helper()
	key := [2]string{job, command}
	if _, done := commandTexts[key]; !done {
		status, out, errs := call(t, job, command, "-")
		if status != exitDone {
			t.Fatalf("%s: %s\n%s", command, errs, job)
		}
		commandTexts[key] = [2]string{out, errs}
	}
	return commandTexts[key][0], commandTexts[key][1]
}

// TestUnitsOfTheShop: whatever a job of inches prints has no metric unit, and one of
// millimeters none of inches. What is allowed: sizes that the job file itself names in the
// other unit stand in excerpts of it.
func TestUnitsOfTheShop(t *testing.T) {
	files, _ := filepath.Glob("../../samples/*.yaml")
	jobs := map[string]string{"hand": handJob}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(f)] = string(data)
	}
	t.Chdir("../../samples") // with their files of slides
	inches := 0
	for name, job := range jobs {
		other := inchWords
		if regexp.MustCompile(`(?m)^units: in`).MatchString(job) {
			other = metricWords
			inches++
		}
		scan := func(what, text string) {
			for _, line := range strings.Split(text, "\n") {
				if found := other.FindString(line); found != "" && !strings.Contains(job, strings.TrimSpace(line)) {
					t.Errorf("%s, %s has %q: %.160s", name, what, found, line)
				}
			}
		}
		for _, command := range []string{"check", "parts", "setup", "sheets", "fit"} {
			out, errs := saidOf(t, job, command)
			scan(command, out)
			if command == "check" {
				scan(command, errs)
			}
		}
		dir := filepath.Join(t.TempDir(), "out")
		if status, _, errs := call(t, job, "build", "-", "-o", dir, "--no-proof"); status != 0 {
			t.Fatalf("%s: %s", name, errs)
		}
		for _, file := range []string{"parts.txt", "tables/buy.csv"} {
			data, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				t.Fatal(err)
			}
			scan(file, string(data))
		}
	}
	if inches < 3 {
		t.Errorf("%d jobs of inches", inches)
	}
	// The scan finds what it is for.
	for text, other := range map[string]*regexp.Regexp{"narrower than 150 mm,": metricWords, "stress N/mm2": metricWords, "10  g": regexp.MustCompile(`\d +g\b`), "glue for 0.05 m2": metricWords, "3/4 in": inchWords} {
		if !other.MatchString(text) {
			t.Errorf("nothing found in %q", text)
		}
	}
}

// TestPlainRanges: no output of a sample has a range whose ends print alike or reversed, a
// negative zero, or one piece in the plural.
func TestPlainRanges(t *testing.T) {
	files, _ := filepath.Glob("../../samples/*.yaml")
	jobs := map[string]string{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(f)] = string(data)
	}
	t.Chdir("../../samples") // with their files of slides
	span := regexp.MustCompile(`(-?\d+\.\d+) to (-?\d+\.\d+)`)
	wrong := regexp.MustCompile(`(^|[^\d.])-0(\.0+)?($|[^\d.])|(^|\s)1 (pieces|sheets|boxes|holes|cuts|passes|drawers|parts|spacers|settings)\b`)
	for name, job := range jobs {
		for _, command := range []string{"check", "parts", "setup", "sheets", "fit"} {
			out, errs := saidOf(t, job, command)
			for _, m := range span.FindAllStringSubmatch(out+errs, -1) {
				if a, b := m[1], m[2]; a == b || number(t, a) > number(t, b) {
					t.Errorf("%s %s: %q", command, name, m[0])
				}
			}
			for _, line := range strings.Split(out+errs, "\n") {
				if found := wrong.FindString(line); found != "" {
					t.Errorf("%s %s: %q in %.160s", command, name, found, line)
				}
			}
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
