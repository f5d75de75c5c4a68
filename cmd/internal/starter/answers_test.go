package starter

import (
	"strings"
	"testing"
)

// kitchen are answers that are right.
var kitchen = Answers{"in", Opening, "22 3/16 x 6 x 21", "side-mount", "0.474, 0.470", "0.228, 0.230", "saw", "1/4", "3"}

// TestWrongAnswers: what is wrong with an answer is said of it, and nothing of a right one.
func TestWrongAnswers(t *testing.T) {
	for f := range Fields {
		if wrong := kitchen.Wrong(f); wrong != "" {
			t.Errorf("%q: %s", kitchen[f], wrong)
		}
	}
	for _, c := range []struct {
		field        Field
		answer, says string
	}{
		{Units, "cm", "none of mm, in"},
		{Measured, "hole", "none of opening, box"},
		{Size, "22 x 6", "3 numbers are needed"},
		{Size, "22 x 6 x 21 x 4", "3 numbers are needed"},
		{Size, "22 in x 6 x 21", "after the last number only, or after each"},
		{Size, "22 x 6 x 0", "it can be"},
		{Size, "22 x six x 21", "write numbers"},
		{Size, "22,5 x 6 x 21", "decimal point"},
		{Size, "22 x 6 x 21 # no", "write numbers"},
		{Size, "22: x 6 x 21", "write numbers"},
		{Size, "- 22 x 6 x 21", "write numbers"},
		{Slide, "drawer", "none of side-mount"},
		{Sides, "0.474", "two or more"},
		{Sides, "0.474, ", "two or more"},
		{Sides, "0.47, 0.9", "not one stock"},
		{Sides, "0.47, 1/0", "not a length"},
		{Sides, "1 1/8", "two or more"},
		{Sides, "0.47,, 0.48", "this comma follows no value"},
		{Bottom, "0.228 / 0.230", "put a comma between readings"},
		{Bottom, "0.228], [0.230", "write numbers"},
		{Machine, "laser", "none of saw"},
		{Cutter, "14 ft", "it can be"},
		{Count, "0", "1 to 10000"},
		{Count, "two", "write numbers"},
		{Count, "2.5", "count"},
	} {
		a := kitchen
		a[c.field] = c.answer
		if wrong := a.Wrong(c.field); !strings.Contains(wrong, c.says) {
			t.Errorf("%q: %q, not %q", c.answer, wrong, c.says)
		}
	}
}

// TestFullWords: the beginning of a word is the word, where it begins no other.
func TestFullWords(t *testing.T) {
	for _, c := range []struct {
		field         Field
		written, word string
	}{
		{Measured, "o", "opening"}, {Slide, "Side", "side-mount"}, {Machine, "router", "router"},
		{Machine, "r", "r"}, {Machine, "router-", "router-table"}, {Units, "", ""},
	} {
		if got := c.field.Full(c.written); got != c.word {
			t.Errorf("%q is %q, not %q", c.written, got, c.word)
		}
	}
}

// TestMissing: the unit and how many are never missing, a box has no slide.
func TestMissing(t *testing.T) {
	if got := strings.Join(Answers{}.Missing(), " "); got != "--opening or --box --slide --thickness --bottom-thickness --machine --cutter" {
		t.Error(got)
	}
	box := Answers{Measured: Box, Size: "400 x 120 x 450", Sides: "12, 12", Bottom: "6, 6", Machine: "saw", Cutter: "6.3"}
	if got := box.Missing(); got != nil {
		t.Error(got)
	}
}
