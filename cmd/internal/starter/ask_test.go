package starter

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// TestAsk answers all six questions, two of them wrong at first.
func TestAsk(t *testing.T) {
	var out bytes.Buffer
	text, err := Ask(strings.NewReader("i\n\n22 3/16 x 6\n 22 3/16 x 6 x 21 in\nside\n.474\n0.474,0.470\n\nsaw\n1/4\n3\n"), &out, Answers{})
	if err != nil {
		t.Fatal(err, out.String())
	}
	for _, s := range []string{"units: in", "width: 22 3/16 in, height: 6 in, depth: 21 in", "thickness: [0.474, 0.470]", "[0.228, 0.230]", "count: 3"} {
		if !strings.Contains(text, s) {
			t.Errorf("nothing of %q:\n%s", s, text)
		}
	}
	for _, s := range []string{"! 3 numbers are needed", "! one reading", "mm, in [mm]: ",
		"2a. What did", "2b. The opening", "3. What", "5b. How wide", "6. How many openings", "boards: 0.480, 0.478", "[22 3/16 x 6 x 21]: "} {
		if !strings.Contains(out.String(), s) {
			t.Errorf("%q is not asked:\n%s", s, out.String())
		}
	}
	for _, line := range strings.Split(out.String(), "\n") {
		if len(line) > 120 {
			t.Errorf("%d columns: %s", len(line), line)
		}
	}
}

// TestAskGiven asks for what is not given alone, and of a box for no slide.
func TestAskGiven(t *testing.T) {
	var out bytes.Buffer
	a := Answers{Units: "mm", Measured: Box, Size: "400 x 120 x 450", Sides: "12, 12.1", Bottom: "5.8, 5.8", Machine: "saw"}
	if _, err := Ask(strings.NewReader("\n\n"), &out, a); err != nil || strings.Count(out.String(), "?") != 2 {
		t.Errorf("%v:\n%s", err, out.String())
	}
}

// TestAskAgain: answers that do not go together are asked for again, or kept.
func TestAskAgain(t *testing.T) {
	wide := Answers{Size: "900 x 150 x 545"}.Filled()
	var out bytes.Buffer
	text, err := Ask(strings.NewReader("center\nkeep\n"), &out, wide)
	if err != nil || !strings.Contains(text, "width: 900") || !strings.Contains(out.String(), "rack") {
		t.Errorf("kept: %v\n%s%s", err, out.String(), text)
	}
	text, err = Ask(strings.NewReader("none\n"), &out, wide)
	if err != nil || !strings.Contains(text, "slide: none") && !strings.Contains(text, "kind: none") {
		t.Errorf("changed: %v\n%s%s", err, out.String(), text)
	}
}

// TestAskEnds: without an answer, or with one that is too long to be read, there is no job.
func TestAskEnds(t *testing.T) {
	for _, in := range []string{"", "mm", "mm\nopening\n", "mm\nhole\n", strings.Repeat("m", 1<<20)} {
		text, err := Ask(strings.NewReader(in), &bytes.Buffer{}, Answers{})
		if text != "" || !errors.Is(err, ErrEnded) {
			t.Errorf("%.20q: %v, %q", in, err, text)
		}
	}
}

// Units are taken as people call them, and lengths with fractions are taken for inches until
// somebody says otherwise.
func TestUnitsAsCalled(t *testing.T) {
	for called, want := range map[string]string{"inches": "in", "Inch": "in", "millimeters": "mm", "m": "mm", "i": "in"} {
		if got := Units.Full(called); got != want {
			t.Errorf("%s is %s", called, got)
		}
	}
	for size, want := range map[string]string{"22 3/16 x 6 x 21": "in", "564 x 150 x 545": "mm", "22 1/2 mm x 5 x 6 mm": "mm",
		"22½ x 6 x 21": "in"} {
		if got := (Answers{Size: size}).Filled()[Units]; got != want {
			t.Errorf("%s is in %s", size, got)
		}
	}
	text, wrong := Make(Answers{Size: "22 3/16 x 6 x 21"}.Filled())
	if wrong != nil || !strings.Contains(text, "units: in") || !strings.Contains(text, "frame-overhang") ||
		!strings.Contains(text, "drawer-front: {stock") {
		t.Errorf("%v\n%s", wrong, text)
	}
}
