package geom

import "testing"

// TestStep: lengths a step apart print apart, those a fifth of one apart print alike.
func TestStep(t *testing.T) {
	for _, u := range []Unit{Millimeter, Inch} {
		at := 10 * u.MM()
		if a, b := LengthOf(at).Fixed(u), LengthOf(at+u.Step()).Fixed(u); a == b {
			t.Errorf("%s: %s a step on is %s", u, a, b)
		}
		if a, b := LengthOf(at).Fixed(u), LengthOf(at+u.Step()/5).Fixed(u); a != b {
			t.Errorf("%s: %s a fifth of a step on is %s", u, a, b)
		}
	}
}
