package geom

import "testing"

// TestInchesOfASentence: the inches of a sentence are all fractions, or all decimals, those of sentences within it too;
// bounds are rounded to their inner side either way, and whole inches and millimeters are as they are.
func TestInchesOfASentence(t *testing.T) {
	in := func(n float64) Millimeters { return Millimeters(n * InchMM) }
	half, odd, five := in(0.5), in(0.322), in(5)
	for _, c := range []struct {
		s      Sentence
		inches string
	}{
		{Sentencef("%s beside %s", half, in(17.625)), "1/2 in beside 17 5/8 in"},
		{Sentencef("%s beside %s of %s", half, odd, five), "0.500 in beside 0.322 in of 5 in"},
		{Sentencef("a: %s", Sentencef("%s and %s", half, Caliper(odd))), "a: 0.500 in and 0.322 in"},
		{Sentencef("%s: %s", half, Sentencef("%s", odd)), "0.500 in: 0.322 in"},
		// 5/64 in is 0.078125 in, on the grid of thousandths 0.078 and 0.079.
		{Sentencef("%s, %s, %s", AtLeast(in(5.0/64)), AtMost(in(5.0/64)), half), "0.079 in, 0.078 in, 0.500 in"},
		{Sentencef("%s, %s, %s", AtLeast(in(0.25)), AtMost(in(0.25)), half), "1/4 in, 1/4 in, 1/2 in"},
		{Sentencef("%s, %s, %s", AtLeast(in(0.25)), AtMost(in(0.25)), odd), "0.250 in, 0.250 in, 0.322 in"},
		{Sentencef("%s pieces of %s", Count(3), half), "3 pieces of 1/2 in"},
	} {
		if got := c.s.In(Inch); got != c.inches {
			t.Errorf("%q, not %q", got, c.inches)
		}
	}
	if got := Sentencef("%s beside %s", half, odd).In(Millimeter); got != "12.7 mm beside 8.18 mm" {
		t.Errorf("%q", got)
	}
	if got := Sentencef("%s beside %s", half, five).decimals(Inch); got != "0.500 in beside 5 in" {
		t.Errorf("%q", got)
	}
}
