package nest

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
)

// stoppable are pieces of many kinds, none like another.
func stoppable(kinds int) (pieces []Piece, sheets []Sheet) {
	random := rand.New(rand.NewPCG(1, 2))
	for range kinds {
		pieces = append(pieces, Piece{Length: 150 + random.Int64N(950), Width: 80 + random.Int64N(520), Count: 3})
	}
	return pieces, []Sheet{{Length: 2440, Width: 1220}}
}

// TestStops: a search that is to end does little more, in whichever of its parts it is: a program makes
// no further step, a table is filled no further, and kinds that have no layout yet get one soon.
func TestStops(t *testing.T) {
	pieces, sheets := stoppable(400)
	w := begin(pieces, sheets, nil, Rules{Method: Guillotine})
	whole := newSearch(&w.task, 1)
	whole.windows()
	w.stop.Store(true)
	soon := newSearch(&w.task, 1)
	if got := soon.windows(); got.left > 0 || soon.f.work > whole.f.work/5 {
		t.Errorf("a first layout at once takes %d, a good one %d; it leaves %d", soon.f.work, whole.f.work, got.left)
	}
	few := begin(pieces[:60], sheets, nil, Rules{Method: Guillotine})
	s := newSearch(&few.task, 1)
	p := &program{stop: few.stop, columns: s.singles().columns}
	for _, n := range few.demand {
		p.demand = append(p.demand, float64(n))
	}
	p.solve()
	// Two of kinds that are alone on a sheet now would save.
	for i := range len(p.demand) - 1 {
		p.columns = append(p.columns, column{at: []int{i, i + 1}, n: []int{p.columns[i].n[0], p.columns[i+1].n[0]}, price: 1})
	}
	basis := slices.Clone(p.basis)
	few.stop.Store(true)
	if p.optimize(); !slices.Equal(p.basis, basis) {
		t.Error("a program that is stopped goes on")
	}
	g := newGrid(&few.task, 0, false)
	values := make([]int64, len(few.kinds))
	for i := range values {
		values[i] = int64(i + 1)
	}
	if v := g.fill(values, few.stop); v != 0 {
		t.Errorf("a table that is stopped is filled to %d", v)
	}
	few.stop.Store(false)
	if p.optimize(); slices.Equal(p.basis, basis) {
		t.Error("the program has nothing to do")
	}
	if v := g.fill(values, few.stop); v == 0 {
		t.Error("the table has nothing to hold")
	}
}

// TestStoppedAtOnce: of a search that is stopped before it begins there is a layout of all pieces.
func TestStoppedAtOnce(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	for _, kinds := range []int{60, 400} {
		pieces, sheets := stoppable(kinds)
		l, err := Lay(ctx, pieces, sheets, Rules{Method: Guillotine}, Options{})
		laid := 0
		for _, s := range l.Sheets {
			laid += len(s.Placements)
		}
		if err != nil || l.Completed || laid != 3*kinds {
			t.Errorf("%d kinds: %v, completed %v, %d pieces laid", kinds, err, l.Completed, laid)
		}
	}
}
