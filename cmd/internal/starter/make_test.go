package starter

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"

	"pgregory.net/rapid"
)

// read reads a job that was made, and wants nothing to be warned of.
func read(t rapid.TB, a Answers, text string) load.Loaded {
	l := load.Read("", strings.NewReader(text), noFiles)
	l.Lay(context.Background(), nil, sheets.Search{})
	if p := l.Problems.First(geom.LevelWarning); p != nil {
		t.Fatalf("%q: %s (%s)\n%s", a, p.Message, p.Hint, text)
	}
	return l
}

// TestUsual: what is usual goes together on every machine, on every slide and in both units,
// as a plain dado-rabbet box where a machine with a fence makes it.
func TestUsual(t *testing.T) {
	for _, unit := range fields[Units].words {
		for _, machine := range fields[Machine].words {
			for _, on := range append(slides(), Box) {
				a := Answers{Units: unit, Machine: machine, Measured: Opening, Slide: on, Count: "3"}
				if on == Box {
					a[Measured], a[Slide] = Box, ""
				}
				a = a.Filled()
				text, wrong := Make(a)
				if wrong != nil {
					t.Errorf("%q: %s", a, wrong)
					continue
				}
				l := read(t, a, text)
				if d := l.Job.Drawers[0]; d.Count != 3 || string(d.Cutter.Kind) != machine || l.Job.Units != a.unit() {
					t.Errorf("%q: %d boxes for a %s", a, d.Count, d.Cutter.Kind)
				}
				if joinery.CutterKind(machine).Fenced() && strings.Contains(text, "joint:") {
					t.Errorf("%q: another joint:\n%s", a, text)
				}
			}
		}
	}
}

// TestMended: what the file has instead where a plain box would not do.
func TestMended(t *testing.T) {
	for name, c := range map[string]struct {
		sides, bottom, machine, cutter, slide string
		says                                  []string
	}{
		"a fence a little further in":  {"12.0, 12.0", "5.8, 5.8", "saw", "6.35", "", []string{"joinery: {fence-distance: 6.05}"}},
		"thick boards, narrow dado":    {"18.0, 18.1", "6.0, 6.1", "saw", "6.35", "", []string{"joint: rabbet"}},
		"one blade":                    {"12.0, 12.0", "6.0, 6.1", "saw", "3.2", "", []string{"joint: rabbet", "groove-cutter: 3.2"}},
		"a stack wider than the ply":   {"16.0, 16.0", "5.2, 5.3", "saw", "8.25", "", []string{"groove-cutter: 3.2"}},
		"a bit wider than the ply":     {"12.0, 12.0", "3.1, 3.2", "router", "6", "", []string{"second: {diameter: 3}"}},
		"an iron wider than the ply":   {"12.0, 12.0", "3.1, 3.2", "hand", "6", "", []string{"bottom-fit: applied"}},
		"a bottom as high as slides":   {"14.0, 14.1", "6.0, 6.1", "router", "6", "undermount", []string{"bottom-height: 13"}},
		"a bottom above hooks":         {"14.0, 14.1", "11.9, 12.0", "router", "6", "undermount", []string{"bottom-height: 30"}},
		"runners fitted to the box":    {"12.0, 12.1", "5.8, 5.9", "saw", "6.3", "wooden-runner", []string{"slide: fitted"}},
		"parts longer than any sheets": {"12.0, 12.1", "5.8, 5.9", "router", "6", "long", []string{"A usual sheet is too small"}},
	} {
		a := Answers{Units: "mm", Measured: Opening, Sides: c.sides, Bottom: c.bottom, Machine: c.machine, Cutter: c.cutter, Slide: c.slide}
		if c.slide == "" {
			a[Measured] = Box
		}
		if c.slide == "long" {
			a[Slide], a[Measured], a[Size] = "", Box, "600 x 100 x 2600"
		}
		a = a.Filled()
		text, wrong := Make(a)
		if wrong != nil {
			t.Errorf("%s: %s", name, wrong)
			continue
		}
		read(t, a, text)
		for _, s := range c.says {
			if !strings.Contains(text, s) {
				t.Errorf("%s: nothing of %q:\n%s", name, s, text)
			}
		}
	}
}

// TestRefused: answers that no joint makes right are refused with the field that would end it.
// A job that can be built all the same comes with it.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		a     Answers
		field Field
		says  string
		built bool
	}{
		{Answers{Size: "900 x 150 x 545"}, Slide, "rack", true},
		{Answers{Size: "564 x 150 x 200"}, Slide, "deep", false},
		{Answers{SlideLength: "600"}, SlideLength, "deep", false},
		{Answers{Size: "564 x 610 x 570"}, Rows, "above each other", true},
		{Answers{Slide: "undermount", Machine: "hand", Cutter: "6", Bottom: "5.2, 5.3"}, Bottom, "loose", true},
	} {
		a := c.a.Filled()
		text, wrong := Make(a)
		said := wrong != nil && wrong.Field == c.field && strings.Contains(wrong.String(), c.says)
		if !said || (text != "") != c.built {
			t.Errorf("%q: %+v; a job: %t", a, wrong, text != "")
		}
	}
}

// TestAnyAnswers: whatever is answered, the job that is made checks without a warning and says
// what was answered; what is refused is one of three things that no joint changes.
func TestAnyAnswers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAnswers(t)
		slide := a.slide()
		thick := slide.Kind == opening.Undermount
		for f := range Fields {
			if wrong := a.Wrong(f); wrong != "" {
				if thick && f == Sides && strings.Contains(wrong, "do not go beside this slide") {
					return
				}
				t.Fatalf("%q: %s", a, wrong)
			}
		}
		text, wrong := Make(a)
		if wrong != nil {
			racks := slide.Pair() && strings.Contains(wrong.Message, "rack")
			iron := a[Machine] == string(joinery.Hand) && slide.BottomRecess > 0 && strings.Contains(wrong.Hint, "iron")
			if !racks && !iron {
				t.Fatalf("%q: %s", a, wrong)
			}
			return
		}
		l := read(t, a, text)
		d := l.Job.Drawers[0]
		if string(d.Cutter.Kind) != a[Machine] || fmt.Sprint(d.Count) != a[Count] || d.Sides.Thickness.Min < 9-0.2 {
			t.Fatalf("%q is another job:\n%s", a, text)
		}
		for _, answer := range []string{a[Sides], a[Bottom], a[Cutter]} {
			if !strings.Contains(text, answer) {
				t.Fatalf("nothing of %q:\n%s", answer, text)
			}
		}
		for i, line := range strings.Split(text, "\n") {
			if len(line) > 110 {
				t.Fatalf("line %d is too long to read: %s", i+1, line)
			}
		}
	})
}

// drawAnswers draws what a shop could answer: boards of 9 to 19 mm, bottoms of 3 to 12 mm,
// cutters as they are sold or shimmed to half the boards.
func drawAnswers(t *rapid.T) Answers {
	a := Answers{}
	for _, f := range []Field{Units, Measured, Machine} {
		a[f] = rapid.SampledFrom(fields[f].words).Draw(t, fields[f].flag)
	}
	length := func(low, high int, name string) float64 {
		return float64(rapid.IntRange(low, high).Draw(t, name)) / 100
	}
	say := func(mm float64) string {
		if a[Units] == "in" {
			return fmt.Sprintf("%.3f", mm/geom.InchMM)
		}
		return fmt.Sprintf("%.2f", mm)
	}
	readings := func(mm float64) string {
		list := []string{say(mm)}
		for range rapid.IntRange(1, 3).Draw(t, "more readings") {
			list = append(list, say(mm+length(-10, 10, "reading")))
		}
		return strings.Join(list, ", ")
	}
	sides := length(900, 1900, "sides")
	a[Sides], a[Bottom] = readings(sides), readings(length(300, 1200, "bottom"))
	half := sides/2 + 0.25
	cutters := map[string][]float64{"saw": {3.2, 6.35, 8, half, half}, "router-table": {6, 6.35, 8, 9.5, half},
		"hand": {3.2, 5, 6}, "router": {3.175, 4, 6, 6.35, 8}}
	a[Cutter] = say(rapid.SampledFrom(cutters[a[Machine]]).Draw(t, "cutter"))
	if a[Measured] == Opening {
		a[Slide] = rapid.SampledFrom(slides()).Draw(t, "slide")
	}
	size := []string{say(length(25000, 70000, "width")), say(length(9000, 24000, "height")), say(length(30000, 60000, "depth"))}
	a[Size] = strings.Join(size, " x ")
	a[Count] = fmt.Sprint(rapid.IntRange(1, 6).Draw(t, "count"))
	return a
}

// TestFlagsAreNamed: every field has a question and a flag.
func TestFlagsAreNamed(t *testing.T) {
	for f := range Fields {
		if fields[f].question < 1 || fields[f].flag == "" || slices.Contains(fields[f].words, "") {
			t.Errorf("field %d: %+v", f, fields[f])
		}
	}
}

// TestSlideByItsLength: a slide of a length that was asked for is called by its kind and that, so that
// messages name it.
func TestSlideByItsLength(t *testing.T) {
	for length, end := range map[string]string{"18": "18", "17 3/4": "17-3-4", `16"`: "16"} {
		text, wrong := Make(Answers{Units: "in", SlideLength: length}.Filled())
		own, used := "\n  side-mount-"+end+": {kind: side-mount,", "slide: side-mount-"+end+"\n"
		if wrong != nil || !strings.Contains(text, own) || !strings.Contains(text, used) {
			t.Errorf("%s: %v\n%s", length, wrong, text)
		}
	}
}
