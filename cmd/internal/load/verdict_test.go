package load_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/fit"
)

// read works a job out.
func read(text string) load.Loaded {
	return load.Read("job.yaml", strings.NewReader(text), load.Beside("job.yaml"))
}

// TestOneVerdict: of random jobs each measure that likely leaves its limits is a warning,
// and no measure within them is; report and cut list have the verdict of each drawer in
// the same words, and every warning.
func TestOneVerdict(t *testing.T) {
	built, outs, within := 0, 0, 0
	for seed := range uint64(40) {
		l := read(jobtest.Text(seed))
		if l.Job == nil || l.Failed() {
			continue
		}
		built++
		r := record.Make(l.Batch, l.Plan, l.Warnings)
		var list bytes.Buffer
		present.PartsText(&list, record.Keep(r)) // into memory: it cannot fail
		text := jobtest.Unfolded(list.Bytes())
		type about struct{ drawer, code, part string }
		warned := make(map[about]int)
		for _, w := range l.Warnings {
			warned[about{w.Drawer, w.Code, w.Part}]++
		}
		for i, d := range l.Batch.Drawers {
			said := d.Outcome.String()
			if r.Drawers[i].Summary != said || !strings.Contains(text, ": "+said+"\n") {
				t.Fatalf("seed %d: %s is %q, the report says %q, the cut list\n%s", seed, d.Spec.Name,
					said, r.Drawers[i].Summary, text)
			}
			out := make(map[about]int)
			for _, m := range d.Outcome.Measures {
				key := about{d.Spec.Name, string(m.Code), string(m.Part)}
				if m.Code == "bottom-clearance-depth" { // told of with the other one, where one slack would mend both
					key.code = "bottom-clearance"
					if m.OutOfLimits() && warned[about{d.Spec.Name, string(m.Code), string(m.Part)}] > 0 {
						key.code = string(m.Code)
					}
				}
				// A width that box and slide limit is told of once, as the slide's.
				if slide := (about{d.Spec.Name, "slide-clearance", ""}); m.Code == "outside-width" && warned[key] == 0 &&
					warned[slide] > 0 {
					key = slide
				}
				if !m.OutOfLimits() {
					within++
					continue
				}
				outs++
				if out[key]++; warned[key] == 0 {
					t.Errorf("seed %d: nothing is said of %v, %v: %s, %v", seed, key, [2]float64{m.Min, m.Max}, m.Verdict, m.Right)
				}
			}
			for key, n := range warned {
				if key.drawer != d.Spec.Name || key.code == "bottom-clearance" || out[key] >= n {
					continue
				}
				for _, m := range d.Outcome.Measures {
					if string(m.Code) == key.code && string(m.Part) == key.part {
						t.Errorf("seed %d: %v is warned of %d times, and %d are out", seed, key, n, out[key])
						break
					}
				}
			}
		}
		for _, line := range slices.Concat(present.Gathered(l.Warnings, geom.LevelWarning), present.Gathered(l.Warnings, geom.LevelNote)) {
			if !strings.Contains(text, line+"\n") {
				t.Errorf("seed %d: the cut list does not say %q", seed, line)
			}
		}
	}
	if built < 10 || outs == 0 || within == 0 {
		t.Errorf("%d jobs, %d measures out, %d within", built, outs, within)
	}
}

// TestNarrowWindow: that a slide takes less than boxes differ by is said exactly where
// the odds say so: where more than 0.27 % are beyond, and by how much the boxes differ.
func TestNarrowWindow(t *testing.T) {
	said := 0
	for _, minus := range []string{"0.3", "0.5", "0.6", "0.7", "1", "2"} {
		for _, length := range []string{"0.05", "0.2", "0.3", "0.6"} {
			l := read(`units: mm
stock: {ply: {thickness: [12, 12.05]}, thin: {thickness: [5.9, 5.95]}}
cutter: {kind: saw, width: 6.3}
accuracy: {length: ` + length + `}
openings: {hole: {width: 500, height: 150, depth: 450, cabinet: frameless, fronts: none}}
slides: {own: {kind: wooden-runner, clearance-minus: ` + minus + `}}
drawers:
  - {name: one, opening: hole, slide: own, sides: ply, bottom: thin}
`)
			if l.Failed() {
				t.Fatal(l.Problems)
			}
			var m fit.SimulatedMeasure
			for _, one := range l.Batch.Drawers[0].Outcome.Measures {
				if one.Code == fit.SlideClearance {
					m = one
				}
			}
			narrow := false
			for _, p := range l.Problems {
				if string(p.Code) == string(fit.SlideClearance) {
					narrow = strings.Contains(p.Message, "boxes differ by") && strings.Contains(p.Message, m.Right.String()) && p.Line == 8
				}
			}
			// The draws that a bin of the range holds are not told apart.
			if p := m.Right.Fraction; narrow && p > 0.9985 || !narrow && p < 0.9972 {
				t.Errorf("minus %s, length %s: %g of the boxes, said: %t", minus, length, p, narrow)
			}
			if narrow {
				said++
			}
		}
	}
	if said == 0 || said == 24 {
		t.Errorf("said %d times", said)
	}
}

// TestVerdictOn: the answer on a job counts kinds and boxes, names the drawer that fits least,
// and says what to watch of it.
func TestVerdictOn(t *testing.T) {
	const job = "units: mm\nstock: {a: {thickness: [12, 12.1]}, b: {thickness: [6, 6.1]}}\n" +
		"cutter: {kind: saw, width: 6.3}\ndrawers:\n" +
		"  - {name: top, count: 2, outside: 400 x 120 x 450, sides: a, bottom: b}\n"
	const deep = "  - {name: deep, outside: 400 x 220 x 450, sides: a, bottom: b"
	for text, want := range map[string]struct {
		fits        bool
		says, watch string
	}{
		job:                {true, "Fits: 1 kind of drawer; ", "Watch: outside depth (length of the sides, +-0.30 mm)."},
		job + deep + "}\n": {true, "Fits: 2 kinds of drawer; ", "Watch: outside depth"},
		job + deep + ", cutter: {kind: saw, width: 6.6}}\n": {false, "Does not fit: do not cut from this yet; 1 of 2 kinds of drawer; deep is loose (box front tongue clearance in its dado): ",
			"Watch: box front tongue clearance in its dado ("},
	} {
		l := read(text)
		if l.Failed() {
			t.Fatal(l.Problems)
		}
		v := record.VerdictOn(l.Batch)
		if v.Fits != want.fits || !strings.HasPrefix(v.Text, want.says) || !strings.HasPrefix(v.Watch, want.watch) {
			t.Errorf("%t: %s %s, want %s", v.Fits, v.Text, v.Watch, want.says)
		}
	}
}
