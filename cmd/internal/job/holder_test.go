package job

import (
	"bytes"
	"strings"
	"testing"
)

// first is the first text of which a reader has nothing to mend.
func first(t *testing.T, texts [][]byte, err error) string {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range texts {
		if _, problems := Read("job.yaml", bytes.NewReader(text)); !problems.Failed() {
			return string(text)
		}
	}
	t.Fatalf("none of %d texts has no mistake, the first one is\n%s", len(texts), texts[0])
	return ""
}

// holds expects pieces of a text.
func holds(t *testing.T, text string, pieces ...string) {
	t.Helper()
	for _, p := range pieces {
		if !strings.Contains(text, p) {
			t.Errorf("there is no %q in\n%s", p, text)
		}
	}
}

// TestSized: the way in which a drawer has its size changes in the line in which it stood, what
// belongs to the other way goes, and the box stays about as large.
func TestSized(t *testing.T) {
	texts, err := Sized([]byte(formFile), Files(nil), ByOpening, "drawers", "0")
	text := first(t, texts, err)
	// 400 and twice 12.7 beside, 100 with 10 above and below, 450 with 20 behind.
	for _, want := range []string{"    opening: opening\n", "    slide: side-mount",
		"{width: 425.4, height: 120, depth: 470, cabinet: frameless, fronts: none}"} {
		if !strings.Contains(text, want) {
			t.Errorf("there is no %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, "outside") {
		t.Errorf("the size stays:\n%s", text)
	}
	job, _ := Read("job.yaml", strings.NewReader(text))
	if d := job.Drawers[0]; d.Width < 398 || d.Width > 400 || d.Height != 100 || d.Depth != 450 {
		t.Errorf("the box is %g x %g x %g", d.Width, d.Height, d.Depth)
	}
	text = strings.Replace(text, "opening: opening", "rows: 1\n    opening: opening", 1)
	texts, err = Sized([]byte(text), Files(nil), BySize, "drawers", "0")
	back := first(t, texts, err)
	if strings.Contains(back, "slide") || strings.Contains(back, "rows") || !strings.Contains(back, "    outside: ") {
		t.Errorf("back by size:\n%s", back)
	}
	for _, c := range []struct {
		by, path string
	}{{"both", "drawers/0"}, {BySize, "drawers/7"}, {BySize, "stock/birch"}} {
		if texts, err := Sized([]byte(formFile), Files(nil), c.by, strings.Split(c.path, "/")...); err == nil {
			t.Errorf("%v: %q", c, texts)
		}
	}
}

// TestSizedWithFront: a drawer front keeps its size where no opening gives it, and loses it where
// one does.
func TestSizedWithFront(t *testing.T) {
	opening := "opening: base\n    slide: side-mount\n    drawer-front: {stock: birch}"
	file := strings.Replace(formFile, "outside: 400 x 100 x 450", opening, 1) +
		"openings: {base: {width: 500, height: 160, depth: 520, cabinet: frameless, fronts: overlay}}\n"
	texts, err := Sized([]byte(file), Files(nil), BySize, "drawers", "0")
	text := first(t, texts, err)
	if !strings.Contains(text, "drawer-front: {stock: birch, width: ") || !strings.Contains(text, "overhang-below: ") {
		t.Fatalf("by size:\n%s", text)
	}
	texts, err = Sized([]byte(text), Files(nil), ByOpening, "drawers", "0")
	holds(t, first(t, texts, err), "drawer-front: {stock: birch}", "opening: base")
}

// TestMade: what is made for a field is like what stands there, and the field has its name.
func TestMade(t *testing.T) {
	texts, err := Made([]byte(formFile), Files(nil), "oak", "drawers", "0", "sides")
	holds(t, first(t, texts, err), "oak: {thickness: [12.21, 12.16], sheet: 1525 x 1525}", "sides: oak")
	texts, err = Sized([]byte(formFile), Files(nil), ByOpening, "drawers", "0")
	text := first(t, texts, err)
	texts, err = Made([]byte(text), Files(nil), "", "drawers", "0", "opening")
	text = first(t, texts, err)
	holds(t, text, "opening 2: {width: 425.4", "    opening: opening 2")
	texts, err = Made([]byte(text), Files(nil), "quiet", "drawers", "0", "slide")
	holds(t, first(t, texts, err), "slides: {quiet: {kind: side-mount}}", "slide: quiet")
	for _, c := range []struct{ name, path string }{
		{"birch", "drawers/0/sides"}, {"x", "drawers/0/joint"}, {"x", "drawers/0"},
	} {
		if texts, err := Made([]byte(formFile), Files(nil), c.name, strings.Split(c.path, "/")...); err == nil {
			t.Errorf("%v: %q", c, texts)
		}
	}
}

// TestRespell: a key changes alone.
func TestRespell(t *testing.T) {
	got, err := Respell([]byte(formFile), "width", "drawers", "0", "outside")
	if want := strings.Replace(formFile, "outside:", "width:", 1); err != nil || string(got) != want {
		t.Errorf("%v:\n%s", err, got)
	}
	for _, path := range []string{"drawers/0", "drawers/0/nothing"} {
		if got, err := Respell([]byte(formFile), "x", strings.Split(path, "/")...); err == nil {
			t.Errorf("%s:\n%s", path, got)
		}
	}
}

// TestReadingsOf: 12.21 and 12.16 have the mean 12.185 and lie 0.05 apart; half a sixteenth is 1/32.
func TestReadingsOf(t *testing.T) {
	for text, want := range map[string]string{
		"units: mm\nstock: {a: {thickness: [12.21, 12.16]}}":     "2 readings: mean 12.19 mm, spread 0.05 mm",
		"units: in\nstock: {a: {thickness: [1/2, 17/32, 1/2]}}":  "3 readings: mean 0.510 in, spread 0.031 in",
		"units: mm\nstock: {a: {thickness: [1/2 in, 12.7, 12]}}": "3 readings: mean 12.47 mm, spread 0.70 mm",
		"units: mm\nstock: {a: {thickness: 12}}":                 "",
		"units: mm\nstock: {a: {thickness: [12, twelve]}}":       "",
		"stock: {a: {thickness: [12, 13]}}":                      "",
	} {
		if got := ReadingsOf(Outlined([]byte(text)).Root)["a"]; got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}
