package nest

import (
	"testing"

	"pgregory.net/rapid"
)

// TestTighterIsNoBetter: with the same effort, however small, a free layout leaves no more pieces and costs no more
// than one for cuts from edge to edge, and one whose pieces may turn than one of pieces as they lie.
func TestTighterIsNoBetter(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Int64Range(20, 400).Draw(t, "w"), rapid.Int64Range(20, 400).Draw(t, "h")
		sheets := []Sheet{{Length: w, Width: h, Count: rapid.IntRange(0, 3).Draw(t, "stock")}}
		var pieces []Piece
		for range rapid.IntRange(1, 4).Draw(t, "cut apart") {
			pieces = append(pieces, cutApart(t, w, h, 4)...)
		}
		kerf, effort := rapid.Int64Range(0, 1).Draw(t, "kerf"), rapid.IntRange(1, 2).Draw(t, "effort")
		var of [2][2]Layout
		for turn := range 2 {
			for i := range pieces {
				pieces[i].MayRotate = turn == 1 && i%3 > 0
			}
			for _, m := range []Method{Guillotine, Free} {
				r := Rules{Method: m, Kerf: kerf}
				of[turn][m] = lay(t, pieces, sheets, r, effort)
				if err := Check(of[turn][m], pieces, sheets, r); err != nil {
					t.Fatal(err)
				}
			}
		}
		for turn := range 2 {
			if better(of[turn][Guillotine], of[turn][Free]) {
				t.Errorf("turned %d: guillotine %+v, free %+v", turn, of[turn][Guillotine], of[turn][Free])
			}
		}
		for m := range 2 {
			if better(of[0][m], of[1][m]) {
				t.Errorf("%v: as they lie %+v, turned %+v", Method(m), of[0][m], of[1][m])
			}
		}
	})
}
