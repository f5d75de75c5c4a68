package nest

import (
	"context"
	"math/rand/v2"
	"testing"
)

// TestRolls: a worked example of cutting stock, rolls 100 wide (V. Chvátal, Linear Programming, 1983,
// chapter 13; from memory): fractions of patterns cost 452.25, whole ones 453.
func TestRolls(t *testing.T) {
	t.Parallel()
	var pieces []Piece
	for _, p := range [][2]int64{{45, 97}, {36, 610}, {31, 395}, {14, 211}} {
		pieces = append(pieces, Piece{Length: p[0], Width: 1, Count: int(p[1])})
	}
	l, err := Lay(context.Background(), pieces, []Sheet{{Length: 100, Width: 1}}, Rules{}, Options{Effort: 100})
	if err != nil || l.Count != 453 || !l.Optimal() {
		t.Errorf("%d rolls, at least %d, %v", l.Count, l.MinSheets, err)
	}
}

// TestManyOfEach: some sheets, each cut apart without waste and wanted many times, are found again.
func TestManyOfEach(t *testing.T) {
	t.Parallel()
	const length, width, times = 200, 100, 30
	rnd := rand.New(rand.NewPCG(1, 2))
	var pieces []Piece
	var split func(w, h int64, cuts int)
	split = func(w, h int64, cuts int) {
		if cuts == 0 {
			pieces = append(pieces, Piece{Length: w, Width: h, Count: times})
			return
		}
		if at := 0.25 + 0.5*rnd.Float64(); w > h {
			x := int64(at * float64(w))
			split(x, h, cuts-1)
			split(w-x, h, cuts-1)
		} else {
			y := int64(at * float64(h))
			split(w, y, cuts-1)
			split(w, h-y, cuts-1)
		}
	}
	const sheets = 4
	for range sheets {
		split(length, width, 3)
	}
	l, err := Lay(context.Background(), pieces, []Sheet{{Length: length, Width: width}}, Rules{}, Options{Effort: 300})
	if err != nil || l.Count > sheets*times {
		t.Errorf("%d sheets of %d, %v", l.Count, sheets*times, err)
	}
}

// TestSizes: pieces that go on one of several sizes alone need sheets of it, whatever others cost.
func TestSizes(t *testing.T) {
	t.Parallel()
	pieces := []Piece{{Length: 1225, Width: 620, Count: 3}, {Length: 600, Width: 300, Count: 2}}
	sheets := []Sheet{{Length: 2440, Width: 1220, Price: 60}, {Length: 1220, Width: 610, Price: 10}}
	for _, way := range []Method{Guillotine, Free} {
		l, err := Lay(context.Background(), pieces, sheets, Rules{Method: way}, Options{Effort: 100})
		if err != nil || l.Cost != 180 || !l.Optimal() {
			t.Errorf("%s: costs %v, at least %v, %v", way, l.Cost, l.LowerBound, err)
		}
	}
}
