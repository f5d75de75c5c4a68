package nest

import (
	"math/rand/v2"
	"testing"
)

// bulky are pieces of which some are long, some wide, and few go on a sheet of 1,000 by 1,000.
func bulky(seed uint64) (pieces []Piece) {
	rnd := rand.New(rand.NewPCG(seed, 1))
	for n := range 40 {
		x, y := 1+rnd.Int64N(500), 1+rnd.Int64N(500)
		switch n % 3 {
		case 0:
			x += 400
		case 1:
			y += 400
		}
		pieces = append(pieces, Piece{Length: x, Width: y, Count: 1})
	}
	return pieces
}

// TestFewer: what other searches lay on a sheet more goes on as many as the bound says. The last two take a sheet more
// where sheets are filled from below alone, and where values of pieces are even.
func TestFewer(t *testing.T) {
	t.Parallel()
	sheets := []Sheet{{Length: 1000, Width: 1000}}
	for _, c := range []struct {
		seed   uint64
		turn   bool
		rules  Rules
		effort int
		want   int
	}{
		{16, false, Rules{Kerf: 2}, 30, 8}, {18, false, Rules{Kerf: 2, Stages: 3}, 30, 7},
		{16, false, Rules{Kerf: 2, Method: Free}, 30, 8},
		{54, false, Rules{Kerf: 2, Method: Free}, 4, 6}, {3, true, Rules{Kerf: 2, Method: Free}, 10, 6},
	} {
		pieces := bulky(c.seed)
		for i := range pieces {
			pieces[i].MayRotate = c.turn
		}
		l := lay(t, pieces, sheets, c.rules, c.effort)
		if err := Check(l, pieces, sheets, c.rules); err != nil || l.Count != c.want || !l.Optimal() {
			t.Errorf("%d, %v: %d sheets of %d, at least %d, %v", c.seed, c.rules, l.Count, c.want, l.MinSheets, err)
		}
	}
}

// TestFewerStops: a search for fewer sheets that is to end gives what it was given.
func TestFewerStops(t *testing.T) {
	t.Parallel()
	w := begin(bulky(16), []Sheet{{Length: 1000, Width: 1000}}, nil, Rules{Kerf: 2})
	s := newSearch(&w.task, 1)
	s.most = 1 << 40
	from := s.pack(w.demand, w.stock(), 0, 2)
	w.stop.Store(true)
	before := s.f.work
	if got, _ := s.fewer(from, 1); got.cost != from.cost || s.f.work > before+100_000 {
		t.Errorf("%v sheets of %v after %d", got.cost, from.cost, s.f.work-before)
	}
}
