package paper

import (
	"fmt"
	"testing"

	"drawerwright/export/drawing"
)

// pictured is a step with so many words and a picture as high as given, none for 0.
func pictured(number, words int, high float64) (s Step) {
	s.Number = number
	for range words {
		s.Words += "glue "
	}
	if high > 0 {
		s.Picture = drawing.Drawing{Width: 40, Height: high}
	}
	return s
}

// stepsOn lays steps out on an empty page, and gives the signs of steps with where they stand, and how far down
// they go.
func stepsOn(t *testing.T, list []Step) (at map[string]drawing.Text, down float64) {
	t.Helper()
	at = make(map[string]drawing.Text)
	b := &Book{Size: A4, Out: func(drawing.Page) {}}
	b.Page()
	top := b.cursor
	b.Steps(list)
	down = top - b.cursor
	for _, w := range b.page.Texts {
		for _, s := range list {
			if w.String == s.sign() {
				if _, twice := at[w.String]; twice {
					t.Errorf("%q stands twice", w.String)
				}
				at[w.String] = w
			}
		}
	}
	if len(at) != len(list) {
		t.Errorf("%d of %d steps are on the page", len(at), len(list))
	}
	return at, down
}

// TestStepsAreAsLowAsCanBe: three pictures with few words stand in a line; of two whose first has many words each
// has a line of its own, with its words beside it, where they take fewer lines; a step without a picture that
// follows a single picture stands beside it.
func TestStepsAreAsLowAsCanBe(t *testing.T) {
	at, _ := stepsOn(t, []Step{pictured(1, 5, 30), pictured(2, 5, 30), pictured(3, 5, 30)})
	if at["1."].At.Y != at["2."].At.Y || at["2."].At.Y != at["3."].At.Y {
		t.Errorf("three pictures are not in a line: %v", at)
	}
	at, down := stepsOn(t, []Step{pictured(1, 60, 30), pictured(2, 5, 30), pictured(3, 5, 0)})
	if at["1."].At.X < 70 || at["2."].At.Y > at["1."].At.Y-30 {
		t.Errorf("many words are not beside their picture: %v", at)
	}
	if at["3."].At.X != at["2."].At.X || at["3."].At.Y > at["2."].At.Y {
		t.Errorf("the last step is not below the words of the second: %v", at)
	}
	if want := 2 * (30 + stepGap); fmt.Sprintf("%.1f", down) != fmt.Sprintf("%.1f", want) {
		t.Errorf("they take %.1f mm, should take %.1f", down, want)
	}
}
