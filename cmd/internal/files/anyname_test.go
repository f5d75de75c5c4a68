package files_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/nest"
)

// wildWords are words of names: wide ones, numbers and units, words of the packet, letters of other scripts and marks.
var wildWords = []string{"WWWWWWWWWWWWWWWW", "MMM", "iiii", "wide", "windows", "a", "12", "mm", "6.35", "1a1", "in", "0",
	"width", "page 2", "of 3", "1 of 2", "left-side", "box-front", "bottom", "Setting 1", "Parts", "Opening", "Boxes", "x",
	"drawer", "spacer of 3 mm", "for", "all", "sides", "(2)", "a (b)", "step", "and 4 more", "fence", "code A1B2",
	"no.", "one", "-", "+", "_", "through", "L1", "W", "1.", "Fits", "Cuts of", "sheet A1", "2 sheets", "pieces",
	"Löwe", "e\u0301a\u0308", "Щука", "Ωμέγα", "ארון", "خزانة", "抽屉", "𝔘𝔫", "Not on this machine", "hole", "cut", "no sheet", "2 sheets of", "drawings", "May not fit", "8 passes",
	"wide-drawers-under-the-windows-of-halls"}

// wildName draws a name, of up to the longest, that ends in a number of its own; now and then one that a job file may
// not hold.
func wildName(t *rapid.T, label, signs string, number int) string {
	sign := rapid.SampledFrom([]string{" ", " ", "-", ".", "_", ""}).Draw(t, label+": between words")
	name := strings.Join(rapid.SliceOfN(rapid.SampledFrom(wildWords), 1, 8).Draw(t, label), sign)
	if rapid.IntRange(0, 3).Draw(t, label+": letters") == 0 {
		name = rapid.StringOfN(rapid.RuneFrom([]rune("abcWM019 -_.+()"+signs)), 1, 40, -1).Draw(t, label)
	}
	if rapid.IntRange(0, 60).Draw(t, label+": any") == 60 {
		return name
	}
	name = strings.TrimLeftFunc(name, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	letters := []rune(strings.Join(strings.Fields(name), " "))
	most := rapid.SampledFrom([]int{38, 34, 20}).Draw(t, label+": length") // rows add to it
	return string(letters[:min(len(letters), most)]) + fmt.Sprintf("%02d", number)
}

// wildJob draws a job whose names are wild; all else in it can be built.
func wildJob(t *rapid.T) string {
	word := func(name string, words ...string) string { return rapid.SampledFrom(words).Draw(t, name) }
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	n := 9
	named := func(label, signs string) string {
		n++
		return "'" + strings.ReplaceAll(wildName(t, label, signs, n), "'", "''") + "'"
	}
	inches := rapid.Bool().Draw(t, "inches")
	mm := func(v float64) string {
		if inches {
			return fmt.Sprintf("%.3f", v/25.4)
		}
		return fmt.Sprintf("%.2f", v)
	}
	say("job: %s\n", named("title", "'"))
	say("units: %s\npaper: {size: %s}\n", map[bool]string{false: "mm", true: "in"}[inches], word("paper", "A4", "Letter"))
	walls, thin, face := named("stock of sides", "/"), named("stock of bottoms", "/"), named("stock of faces", "/")
	same := func(v float64) string { return fmt.Sprintf("[%[1]s, %[1]s, %[1]s]", mm(v)) }
	say("stock:\n  %s: {thickness: %s, sheet: %s x %s}\n  %s: {thickness: %s}\n  %s: {thickness: %s}\n", walls,
		same(12), mm(2400), mm(1200), thin, same(6), face, same(18))
	switch word("machine", "saw", "router", "hand") {
	case "saw":
		say("cutter: {kind: saw, width: %s}\n", mm(6.2))
	case "router":
		say("cutter: {kind: router, bits: {%s: {diameter: %s}, %s: {diameter: %s}}}\n", named("bit", "/'"), mm(6),
			named("bit 2", "/'"), mm(3))
	default:
		say("cutter: {kind: hand, width: %s}\n", mm(6))
	}
	var openings, drawers []string
	slide := named("slide", "")
	for range rapid.IntRange(1, 3).Draw(t, "drawers") {
		one := "name: " + named("drawer", "")
		if rapid.Bool().Draw(t, "in an opening") {
			opening := named("opening", "")
			openings = append(openings, fmt.Sprintf("  %s: {width: %s, height: %s, depth: %s, "+
				"cabinet: frameless, fronts: overlay}\n", opening, mm(500), mm(600), mm(500)))
			one += fmt.Sprintf(", opening: %s, slide: %s, rows: %d, drawer-front: {stock: %s, handles: knob}", opening,
				word("slide", "side-mount", "wooden-runner", slide), rapid.IntRange(1, 3).Draw(t, "rows"), face)
		} else {
			one += fmt.Sprintf(", outside: %s x %s x %s, count: %d", mm(400), mm(100), mm(300),
				rapid.IntRange(1, 3).Draw(t, "count"))
		}
		drawers = append(drawers, fmt.Sprintf("  - {%s, sides: %s, bottom: %s}\n", one, walls, thin))
	}
	if len(openings) > 0 {
		say("openings:\n%s", strings.Join(openings, ""))
		if strings.Contains(strings.Join(drawers, ""), "slide: "+slide) {
			say("slides:\n  %s: {kind: side-mount, clearance: %s, load: 30 kg}\n", slide, mm(12.7))
		}
	}
	say("drawers:\n%s", strings.Join(drawers, ""))
	return b.String()
}

// TestAnyNameIsProven: whatever drawers, openings, slides, boards and bits are called, a job is built and its files are
// sound, what people read of them too; or it is refused with a place and a way out.
func TestAnyNameIsProven(t *testing.T) {
	built, refused := 0, 0
	most := geomtest.Cases(20, 1000)
	rapid.Check(t, func(t *rapid.T) {
		if built >= most {
			return
		}
		text := wildJob(t)
		l := load.Read("job.yaml", strings.NewReader(text), nil)
		if l.Failed() {
			refused++
			for _, p := range l.Problems {
				if p.IsError() && (p.Line == 0 || p.Message == "" || p.Hint == "") {
					t.Fatalf("refused without a place, a reason or a way out: %v\n%s", p, text)
				}
			}
			return
		}
		plan, err := sheets.Of(t.Context(), l.Batch, nil, sheets.Search{Options: nest.Options{Effort: 1}})
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		to := &folder{files: map[string][]byte{}}
		err = files.Write(t.Context(), l.Batch, to, files.Options{Plan: plan, Date: "2026-01-02", Warnings: l.Warnings})
		if err != nil {
			t.Fatalf("%v\n%s%s", err, faults(err), text)
		}
		built++
	})
	t.Logf("%d built, %d refused", built, refused)
	if built == 0 || refused == 0 {
		t.Errorf("%d jobs were built, %d refused", built, refused)
	}
}

// faults are those that a proof found, a line each.
func faults(err error) string {
	var b strings.Builder
	var unproven *files.Unproven
	if errors.As(err, &unproven) {
		for _, c := range unproven.Checked {
			for _, f := range c.Faults {
				fmt.Fprintf(&b, "%s: %s: %s\n", f.Place(), f.Part, f.Message)
			}
		}
	}
	return b.String()
}
