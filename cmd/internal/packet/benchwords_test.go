package packet

import (
	"regexp"
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// workshop is the text of the workshop sample's packet, a line each, and the cautions before its setups.
func workshop(t *testing.T) (text string, warned []drawing.Text) {
	t.Helper()
	before := false
	for _, p := range layOut(t, "../../../samples/workshop-bench.yaml", date, nil).pages {
		for i, w := range p.Texts {
			text += w.String + "\n"
			switch {
			case w.String == "Before you begin":
				before = i == 0 || p.Texts[i-1].String != "Pages"
			case w.String == "Setups":
				before = false
			case before && p.Texts[i-1].String == "!":
				warned = append(warned, w)
			}
		}
	}
	return text, warned
}

// TestFormKeepsSlides: wooden runners in openings of 480 and 481.2 take boxes from 2 x 0.75 + 0.5 less to 2 x 0.75
// less, 478 to 478.5 and 479.2 to 479.7. Boxes are made 478.24 and 479.45 wide, and the job's 0.8 mm would be too much.
func TestFormKeepsSlides(t *testing.T) {
	text, _ := workshop(t)
	for said, want := range map[string]int{"-0.24": 4, "+0.26": 4, "±0.25": 3, "±0.80": 2} {
		if n := strings.Count(text, "\n"+said+"\n"); n != want {
			t.Errorf("%q stands %d times, not %d", said, n, want)
		}
	}
}

// TestSetupsOfSides: the workshop's sides lie at the fence with their rear ends for the backs' dados, 15 from them, and
// with their front ends for those of the box fronts, in words and in the picture; a test piece has limits of its ends
// pushed together; of 21 parts with grooves those of a drawer are ticked together.
func TestSetupsOfSides(t *testing.T) {
	text, _ := workshop(t)
	for said, want := range map[string]int{"\nREAR end\n": 1, "\nFRONT end\n": 1,
		"1 x left-2-side-left, 1 x left-2-side-right, 1 x left-2-box-front\n": 1,
		"flush within 0.25 mm, shoulders open at most 0.25 mm":                1, "buried in the fence": 0} {
		if n := strings.Count(text, said); n != want {
			t.Errorf("%q stands %d times, not %d", said, n, want)
		}
	}
}

// TestCautionsAreLarge: what can hurt before any work begins is said in letters as large as those of all text.
func TestCautionsAreLarge(t *testing.T) {
	_, warned := workshop(t)
	for _, w := range warned {
		if w.Size < 3.3 {
			t.Errorf("%g mm: %s", w.Size, w.String)
		}
	}
	if len(warned) < 7 {
		t.Errorf("%d cautions", len(warned))
	}
}

// TestTickedPiecesEndPlainly: what stands behind a box to tick ends without a comma: the pieces of the next drawer
// stand behind the next box.
func TestTickedPiecesEndPlainly(t *testing.T) {
	text, _ := workshop(t)
	ended, lines, drawer := 0, strings.Split(text, "\n"), regexp.MustCompile(`^\d+ x ([a-z]+-\d)-`)
	for i, next := range lines[1:] {
		of, other := drawer.FindStringSubmatch(lines[i]), drawer.FindStringSubmatch(next)
		if of == nil || other == nil || of[1] == other[1] {
			continue
		}
		if ended++; strings.HasSuffix(lines[i], ",") {
			t.Errorf("a comma stands before another box to tick: %q", lines[i])
		}
	}
	if ended < 15 {
		t.Errorf("%d lines of pieces", ended)
	}
}
