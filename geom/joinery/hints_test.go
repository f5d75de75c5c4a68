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
	"insert-cells":      "how many cells is the maker's wish",
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
	h := hints{followed: make(map[string]int), asked: make(map[string]int)}
	rapid.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		if rapid.Bool().Draw(t, "fitted") {
			anyFittings(t, &s)
		}
		s.Units = rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "units")
		h.hold(t, s, func() float64 { return rapid.Float64Range(0, 1).Draw(t, "share") })
	})
	t.Logf("followed %v\nasked %v", h.followed, h.asked)
}

// TestHintsOfEachHold: so do the hints of what shops run into most.
func TestHintsOfEachHold(t *testing.T) {
	boards := func(sides, bottom Stock, change func(*Spec)) Spec {
		s := saw(460, 140, 500, 6.35, sides, bottom)
		change(&s)
		return s
	}
	ply, thin := sheet("ply", 12.2), sheet("thin", 5.9)
	for code, s := range map[string]Spec{
		"bottom":           boards(ply, sheet("between", 6.5), func(*Spec) {}),
		"groove-clearance": boards(ply, sheet("uneven", 5.9, 6.34), func(*Spec) {}),
		"bottom-clearance": boards(ply, thin, func(s *Spec) { s.BottomClearance = 4 }),
		"tongue-clearance": boards(ply, thin, func(s *Spec) { s.Cutter.Width = 6.6 }),
		"cutter-narrow":    boards(sheet("thick", 13), thin, func(*Spec) {}),
		"recess":           boards(ply, thin, func(s *Spec) { s.FenceDistance = 5.5 }),
		"cutter-height":    boards(ply, thin, func(s *Spec) { s.CutterHeight = 11.5 }),
		"back-setback":     boards(ply, thin, func(s *Spec) { s.BackJoint, s.BackSetback = Housed, 3 }),
		"finger-width":     boards(ply, thin, func(s *Spec) { s.Joint, s.FingerWidth = BoxJoint, 9 }),
		"divider-clearance": boards(ply, thin, func(s *Spec) {
			s.Dividers = []Divider{{Stock: sheet("seven", 7), Direction: Across, Count: 2}}
		}),
		"folder-height": boards(ply, thin, func(s *Spec) {
			s.Dividers = []Divider{{Stock: sheet("rails", 3.2), Direction: Along, Count: 1,
				Folders: Folders{Width: 250, Below: 130, Above: 20}}}
		}),
		"folder-rails": boards(ply, thin, func(s *Spec) {
			s.Dividers = []Divider{{Stock: thin, Direction: Along, Count: 1,
				Folders: Folders{Width: 250, Below: 60, Above: 20}}}
		}),
		"insert-height": boards(ply, thin, func(s *Spec) {
			s.Insert = &Insert{Stock: thin, Columns: make([]float64, 2), Rows: make([]float64, 2), Height: 139, WallClearance: 2}
		}),
		"insert-room": boards(ply, thin, func(s *Spec) {
			s.Insert = &Insert{Stock: thin, Columns: []float64{140, 150, 130}, Rows: make([]float64, 2), ContentsClearance: 10, WallClearance: 2}
		}),
	} {
		h := hints{followed: make(map[string]int), asked: make(map[string]int)}
		h.hold(t, s, func() float64 { return 0.5 })
		if h.followed[code] == 0 {
			t.Errorf("no hint of %s was followed, of %v", code, h.followed)
		}
	}
}

// TestHintBetweenItsEnds: fingers of a width between two that are right may have other rows, of which
// one ends in the bottom's groove: five of 20 in walls of 100, under a groove from 20 on.
func TestHintBetweenItsEnds(t *testing.T) {
	s := saw(400, 100, 450, 6.01, sheet("ply", 12), sheet("thin", 5.8))
	s.Cutter.Kind, s.Joint, s.FingerWidth, s.BottomHeight = Router, BoxJoint, 7.64, 20
	h := hints{followed: make(map[string]int), asked: make(map[string]int)}
	for share := 0.05; share < 1; share += 0.05 {
		h.hold(t, s, func() float64 { return share })
	}
	if h.followed["finger-width"] == 0 {
		t.Errorf("followed are %v", h.followed)
	}
}

// hints counts what was followed, and hints that name no change, by codes.
type hints struct{ followed, asked map[string]int }

// hold follows the hints on a drawer, at the ends of their ranges and at a share of each.
func (h hints) hold(t failing, s Spec, share func() float64) {
	t.Helper()
	_, before := Build(s)
	for _, p := range before {
		if advice(p) == "" || fact(p) == "" {
			t.Fatalf("%s has no words: %q, %q", p.Code, fact(p), advice(p))
		}
		checkMeasured(t, p)
		if len(p.Remedies) == 0 {
			h.asked[string(p.Code)]++
			if asks[string(p.Code)] == "" {
				t.Fatalf("%q\n%q names no change that was tried", fact(p), advice(p))
			}
		}
		for _, r := range p.Remedies {
			ends := r.Ends()
			within := slices.Clone(ends[0]) // somewhere between them
			for i, c := range r.Changes {
				if !math.IsInf(c.Max, 1) && c.Min > 0 {
					within[i] = c.Min + share()*(c.Max-c.Min)
				}
			}
			for _, lengths := range append(ends, within) {
				for i, c := range r.Changes {
					if c.Word == "" && c.Count == 0 && (c.Min > c.Max || i < len(ends) && asPrinted(s, c.Min) != c.Min) {
						t.Fatalf("%q: %g to %g is not what is printed", remedy(r), c.Min, c.Max)
					}
				}
				h.followed[string(p.Code)]++
				followed(t, s, before, p, r, lengths)
			}
		}
	}
}

// failing is what a test fails by.
type failing interface {
	Helper()
	Fatalf(string, ...any)
}

// followed works a drawer out with a remedy's changes.
func followed(t failing, s Spec, before []geom.Diagnosis, p geom.Diagnosis, r geom.Remedy, lengths []float64) {
	t.Helper()
	_, after := Build(Follow(s, r, lengths))
	if geom.Topics(after)[p.Topic()] >= geom.Topics(before)[p.Topic()] {
		t.Fatalf("%q\n%q\nfollowed with %v does not end it", fact(p), advice(p), lengths)
	}
	for _, q := range after {
		announced := func(o geom.Diagnosis) bool { return o.Topic() == q.Topic() }
		if geom.Topics(after)[q.Topic()] > geom.Topics(before)[q.Topic()] && !slices.ContainsFunc(r.Then, announced) {
			t.Fatalf("%q\n%q\nfollowed with %v leads into %q: %q", fact(p), advice(p), lengths, q.Code, fact(q))
		}
	}
}

// unmeasured are codes of which there is a diagnosis that compares no two numbers, or more
// than two.
var unmeasured = map[geom.Code]bool{"finger-width": true, "drawer-front": true, "handle": true, "pull": true, "pull-by-hand": true, "hook": true, "glue-space": true,
	"groove-shows": true, "bottom-fit": true, "bottom-movement": true, "solid-grain": true, "sheet": true, "ring": true, "inside": true}

// checkMeasured holds a diagnosis to its numbers: what is measured misses the limit, and its
// code is one of those that measure nothing where it has none.
func checkMeasured(t failing, d geom.Diagnosis) {
	t.Helper()
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
