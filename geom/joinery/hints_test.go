package joinery

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
)

// asks are the problems whose hint may name no change, with the reason.
var asks = map[string]string{
	"back-setup":        "says how it is done: nothing is wrong",
	"rabbet-passes":     "says how it is done: nothing is wrong",
	"rabbet-setup":      "says how it is done where lengths cannot be made alike",
	"bottom-setup":      "says how it is done where the groove has to stand there, as slides ask",
	"groove-setup":      "says how it is done: nothing is wrong",
	"pull-by-hand":      "says how it is done: the machine cannot",
	"groove-shows":      "a saw cannot stop a groove: plugs, or another tool",
	"groove-ends":       "where neither bit nor depth lets it stop",
	"proportions":       "only who wrote the size knows whether it was meant",
	"divider-room":      "where dividers go is the maker's wish",
	"handle":            "where a handle goes is the maker's wish",
	"pull":              "where a pull goes, and what it meets, is the maker's wish",
	"drawer-front":      "where a front goes is the maker's wish",
	"notch":             "the slide maker's sheet says it",
	"hook":              "the slide maker's sheet says it",
	"side-thickness":    "another slide, where no thinner sides make a box",
	"recess-under":      "another slide, where no groove stands as high",
	"sheet":             "what sheets a shop buys",
	"solid-grain":       "only who sees the boards knows the grain",
	"recess":            "sorting or sanding boards: the readings are as they are",
	"outside-depth":     "planing, where no fence makes box front and back flush",
	"tongue-clearance":  "sorting boards, where readings differ by more than the usual clearance",
	"back-clearance":    "sorting boards, where readings differ by more than the usual clearance",
	"divider-clearance": "sorting boards, where readings differ by more than the usual clearance",
	"groove-clearance":  "sorting boards, where readings differ by more than the usual clearance",
	"cutter-narrow":     "sorting boards, where readings differ by more than the usual clearance",
	"bottom-movement":   "another wood, where it moves by more than any groove holds",
	"fasteners":         "pilot holes, or another corner: a board is as thick as it is",
	"thin-web":          "thicker boards, where no depth leaves enough and holds",
	"ring":              "a shape that crosses itself: sizes far from any drawer's",
	"room":              "a box in an opening has its size from there",
	"finger-width":      "a box in an opening has its size from there",
	"bottom-clearance":  "thicker boards, where grooves are too shallow for any clearance",
	"applied":           "gluing, where boards are as thick as they are",
}

// TestHintsHold: whoever does what a hint says, with the numbers as printed, is rid of
// the complaint, and nothing comes that was not there and is not announced.
func TestHintsHold(t *testing.T) {
	followed, asked := make(map[string]int), make(map[string]int)
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		if rapid.Bool().Draw(t, "fitted") {
			anyFittings(t, &s)
		}
		s.Units = rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "units")
		_, before := Build(s)
		for _, p := range before {
			if advice(p) == "" || fact(p) == "" {
				t.Fatalf("%s has no words: %q, %q", p.Code, fact(p), advice(p))
			}
			checkMeasured(t, p)
			if len(p.Remedies) == 0 {
				asked[string(p.Code)]++
				if asks[string(p.Code)] == "" {
					t.Fatalf("%q\n%q names no change that was tried", fact(p), advice(p))
				}
			}
			for _, r := range p.Remedies {
				ends := r.Ends()
				within := slices.Clone(ends[0]) // somewhere between them
				for i, c := range r.Changes {
					if !math.IsInf(c.Max, 1) && c.Min > 0 {
						within[i] = c.Min + rapid.Float64Range(0, 1).Draw(t, "share")*(c.Max-c.Min)
					}
				}
				for _, lengths := range append(ends, within) {
					for i, c := range r.Changes {
						if c.Word == "" && c.Count == 0 && (c.Min > c.Max || i < len(ends) && asPrinted(s, c.Min) != c.Min) {
							t.Fatalf("%q: %g to %g is not what is printed", remedy(r), c.Min, c.Max)
						}
					}
					followed[string(p.Code)]++
					_, after := Build(Follow(s, r, lengths))
					if geom.Topics(after)[p.Topic()] >= geom.Topics(before)[p.Topic()] {
						t.Fatalf("%q\n%q\nfollowed with %v does not end it", fact(p), advice(p), lengths)
					}
					for _, q := range after {
						if geom.Topics(after)[q.Topic()] > geom.Topics(before)[q.Topic()] && !slices.ContainsFunc(r.Then, func(o geom.Diagnosis) bool { return o.Topic() == q.Topic() }) {
							t.Fatalf("%q\n%q\nfollowed with %v leads into %q: %q", fact(p), advice(p),
								lengths, q.Code, fact(q))
						}
					}
				}
			}
		}
	})
	for _, code := range []string{"bottom", "groove-clearance", "bottom-clearance", "tongue-clearance", "recess", "cutter-height", "back-setback", "divider-clearance", "finger-width"} {
		if followed[code] == 0 {
			t.Errorf("no hint of %s was followed", code)
		}
	}
	t.Logf("followed %v\nasked %v", followed, asked)
}

// unmeasured are codes of which there is a diagnosis that compares no two numbers, or more
// than two.
var unmeasured = map[geom.Code]bool{"finger-width": true, "drawer-front": true, "handle": true, "pull": true, "pull-by-hand": true, "hook": true, "glue-space": true,
	"groove-shows": true, "bottom-fit": true, "bottom-movement": true, "solid-grain": true, "sheet": true, "ring": true, "inside": true}

// checkMeasured holds a diagnosis to its numbers: what is measured misses the limit, and its
// code is one of those that measure nothing where it has none.
func checkMeasured(t *rapid.T, d geom.Diagnosis) {
	if d.Measured == nil && d.Limit == nil {
		if !unmeasured[d.Code] {
			t.Fatalf("%s: nothing was measured: %s", d.Code, fact(d))
		}
		return
	}
	measured, limit := d.Measured.(geom.Millimeters), d.Limit.(geom.Millimeters)
	if off := math.Abs(float64(measured - limit)); off <= settle && d.Code != "bottom" && d.Code != "bottom-clearance" {
		t.Fatalf("%s: %g is measured, and the limit is %g: %s", d.Code, float64(measured), float64(limit), fact(d))
	}
}

// asPrinted is a length as a reader of its text has it.
func asPrinted(s Spec, mm float64) float64 {
	if math.IsInf(mm, 1) {
		return mm
	}
	l, err := geom.ParseLength(geom.LengthOf(mm).Text(s.Units), s.Units)
	if err != nil {
		return math.NaN()
	}
	return l.MM()
}
