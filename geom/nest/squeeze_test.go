package nest

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"testing"
)

// cutUp cuts a rectangle into at least so many pieces by cuts from edge to edge, and into
// pinwheels, which no such cut takes apart.
func cutUp(rnd *rand.Rand, w, h int64, least int) [][2]int64 {
	list := [][2]int64{{w, h}}
	for len(list) < least {
		n := 0
		for range 3 { // the largest of three
			if k := rnd.IntN(len(list)); list[k][0]*list[k][1] > list[n][0]*list[n][1] {
				n = k
			}
		}
		w, h := list[n][0], list[n][1]
		switch wheel := rnd.IntN(3) == 0; {
		case wheel && min(w, h) > 4:
			x := 1 + rnd.Int64N(w-3)
			u := x + 1 + rnd.Int64N(w-x-1)
			y := 1 + rnd.Int64N(h-3)
			v := y + 1 + rnd.Int64N(h-y-1)
			list[n] = [2]int64{u, y}
			list = append(list, [2]int64{w - u, v}, [2]int64{w - x, h - v}, [2]int64{x, h - y}, [2]int64{u - x, v - y})
		case w >= h && w > 1:
			x := 1 + rnd.Int64N(w-1)
			list[n] = [2]int64{x, h}
			list = append(list, [2]int64{w - x, h})
		case h > 1:
			y := 1 + rnd.Int64N(h-1)
			list[n] = [2]int64{w, y}
			list = append(list, [2]int64{w, h - y})
		}
	}
	rnd.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

// TestNoWaste: what was cut from one sheet goes onto one sheet again, with a kerf too, and
// in the same way on one processor as on many.
func TestNoWaste(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 1))
	r := Rules{Method: Free, Kerf: 3}
	for n := range 9 {
		const cell, effort = 1009, 80
		turn := n%3 == 2
		sheets := []Sheet{{Name: "s", Length: 40*cell - r.Kerf, Width: 30*cell - r.Kerf, Price: 1}}
		var pieces []Piece
		for i, z := range cutUp(rnd, 40, 30, 12+n%6) {
			if turn && rnd.IntN(2) == 0 {
				z[0], z[1] = z[1], z[0]
			}
			pieces = append(pieces, Piece{Name: fmt.Sprint(i), Length: z[0]*cell - r.Kerf, Width: z[1]*cell - r.Kerf, Count: 1, MayRotate: turn})
		}
		l := lay(t, pieces, sheets, r, effort)
		if err := Check(l, pieces, sheets, r); err != nil {
			t.Fatal(err)
		}
		if l.Count != 1 || !l.Optimal() {
			t.Errorf("%d: %d pieces, turned: %v: on %d sheets", n, len(pieces), turn, l.Count)
		}
		before := runtime.GOMAXPROCS(1)
		again := lay(t, pieces, sheets, r, effort)
		runtime.GOMAXPROCS(before)
		if fmt.Sprint(again) != fmt.Sprint(l) {
			t.Errorf("%d: another layout on one processor", n)
		}
		// With a stock of one sheet none is left, and with too little room some are.
		sheets[0].Count = 1
		if l := lay(t, pieces, sheets, r, effort); len(l.Sheets) != 1 || l.Count != 1 || Check(l, pieces, sheets, r) != nil || l.MinSheets != 1 {
			t.Errorf("%d: %d sheets in stock, at least %d", n, l.Count, l.MinSheets)
		}
		sheets[0].Length--
		if l := lay(t, pieces, sheets, r, 4); Check(l, pieces, sheets, r) != nil || fmt.Sprint(l.Remaining) == fmt.Sprint(make([]int, len(pieces))) {
			t.Errorf("%d: no piece is left, but there is no room for all", n)
		}
	}
}
