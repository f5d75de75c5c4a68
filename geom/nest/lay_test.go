package nest

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func lay(t interface{ Fatal(...any) }, pieces []Piece, sheets []Sheet, r Rules, effort int) Layout {
	l, err := Lay(context.Background(), pieces, sheets, r, Options{Effort: effort})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestAnyLayout: whatever is asked, the layout is one, is never better than the bound,
// and leaves pieces out only where sheets are short or too small.
func TestAnyLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scale := rapid.SampledFrom([]int64{1, 1, 97, 10_007}).Draw(t, "scale")
		length := func(low, high int64, name string) int64 { return rapid.Int64Range(low*scale, high*scale).Draw(t, name) }
		var pieces []Piece
		for i := range rapid.IntRange(1, 12).Draw(t, "kinds") {
			pieces = append(pieces, Piece{Name: fmt.Sprint("p", i), Length: length(1, 60, "length"), Width: length(1, 60, "width"),
				Count: rapid.IntRange(0, 5).Draw(t, "count"), MayRotate: rapid.Bool().Draw(t, "turn")})
		}
		var sheets []Sheet
		short := true
		for i := range rapid.IntRange(1, 3).Draw(t, "sheets") {
			s := Sheet{Name: fmt.Sprint("s", i), Length: length(20, 100, "long"), Width: length(20, 100, "wide"),
				Price: float64(rapid.IntRange(0, 3).Draw(t, "price")), Count: rapid.IntRange(0, 3).Draw(t, "stock"), Offcut: rapid.Bool().Draw(t, "offcut")}
			s.Trim = Trim{rapid.Int64Range(0, 3).Draw(t, "left"), rapid.Int64Range(0, 3).Draw(t, "right"), 1, 0}
			short = short && (s.Count > 0 || s.Offcut)
			sheets = append(sheets, s)
		}
		r := Rules{Method: rapid.SampledFrom([]Method{Guillotine, Free}).Draw(t, "way"), Kerf: length(0, 4, "kerf")}
		if r.Method == Guillotine {
			r.Stages = rapid.SampledFrom([]int{0, 2, 3, 4}).Draw(t, "stages")
			r.First = rapid.SampledFrom([]First{FirstAny, FirstAlongX, FirstAlongY}).Draw(t, "first")
		}
		l := lay(t, pieces, sheets, r, 3)
		if err := Check(l, pieces, sheets, r); err != nil {
			t.Fatal(err)
		}
		if l.Cost < l.LowerBound*(1-1e-9) || l.Count < l.MinSheets {
			t.Fatalf("cost %g and %d sheets, at least %g and %d\n%+v\n%+v\n%+v", l.Cost, l.Count,
				l.LowerBound, l.MinSheets, l, pieces, sheets)
		}
		for i, n := range l.Remaining {
			fits := false
			for _, s := range sheets {
				x, y := s.Length-s.Trim.Left-s.Trim.Right, s.Width-s.Trim.Bottom-s.Trim.Top
				p := pieces[i]
				fits = fits || s.Count == 0 && !s.Offcut && (p.Length <= x && p.Width <= y || p.MayRotate && p.Width <= x && p.Length <= y)
			}
			if n > 0 && fits {
				t.Fatalf("%d of %s are left, which fit", n, pieces[i].Name)
			}
		}
		if again := lay(t, pieces, sheets, r, 3); fmt.Sprint(again) != fmt.Sprint(l) {
			t.Fatal("the same job is laid out in another way")
		}
	})
}

// TestCheckFinds: planted faults are found.
func TestCheckFinds(t *testing.T) {
	pieces := []Piece{{Name: "a", Length: 40, Width: 20, Count: 2}, {Name: "b", Length: 20, Width: 40, Count: 2, MayRotate: true}}
	sheets := []Sheet{{Name: "s", Length: 70, Width: 70, Trim: Trim{2, 2, 2, 2}, Count: 1}}
	// A pinwheel, which no cut from edge to edge takes apart.
	pinwheel := Layout{Sheets: []LaidSheet{{0, []Placement{{0, 2, 2, false}, {1, 45, 2, false}, {0, 25, 45, false}, {1, 2, 25, false}}}}, Remaining: []int{0, 0}}
	for name, c := range map[string]struct {
		spoil func(*Layout)
		rules Rules
		said  string
	}{
		"none":     {func(*Layout) {}, Rules{Method: Free, Kerf: 3}, ""},
		"pinwheel": {func(*Layout) {}, Rules{Kerf: 3}, "no cut from edge to edge"},
		"kerf":     {func(*Layout) {}, Rules{Method: Free, Kerf: 4}, "nearer than the kerf"},
		"trim":     {func(l *Layout) { l.Sheets[0].Placements[0].X = 1 }, Rules{Method: Free, Kerf: 3}, "leaves the sheet"},
		"turned":   {func(l *Layout) { l.Sheets[0].Placements[0].Rotated = true }, Rules{Method: Free, Kerf: 3}, "is turned"},
		"missing":  {func(l *Layout) { l.Sheets[0].Placements = l.Sheets[0].Placements[1:] }, Rules{Method: Free, Kerf: 3}, "1 are laid and 0 left of 2"},
		"twice the sheet": {func(l *Layout) {
			l.Sheets = append(l.Sheets, LaidSheet{0, l.Sheets[0].Placements[:1]})
			l.Remaining[0] = -1
		}, Rules{Method: Free, Kerf: 3}, "3 are laid"},
		"stock": {func(l *Layout) {
			l.Sheets = []LaidSheet{{0, l.Sheets[0].Placements[:2]}, {0, l.Sheets[0].Placements[2:]}}
		}, Rules{Method: Free, Kerf: 3}, "of which there are 1"},
		"empty": {func(l *Layout) { l.Sheets = append(l.Sheets, LaidSheet{}) }, Rules{Method: Free, Kerf: 3}, "has no pieces"},
	} {
		l := Layout{Sheets: []LaidSheet{{0, append([]Placement{}, pinwheel.Sheets[0].Placements...)}}, Remaining: []int{0, 0}}
		c.spoil(&l)
		err := Check(l, pieces, sheets, c.rules)
		if c.said == "" && err != nil || c.said != "" && (err == nil || !strings.Contains(err.Error(), c.said)) {
			t.Errorf("%s: %v", name, err)
		}
	}
	// Two strips of two stacks of two: three stages.
	four := []Piece{{Name: "c", Length: 10, Width: 10, Count: 3}, {Name: "d", Length: 10, Width: 20, Count: 2}}
	three := Layout{Sheets: []LaidSheet{{0, []Placement{{0, 0, 0, false}, {0, 0, 10, false}, {1, 10, 0, false}, {0, 0, 20, false}, {1, 10, 20, false}}}}, Remaining: []int{0, 0}}
	board := []Sheet{{Length: 20, Width: 40}}
	if err := Check(three, four, board, Rules{Stages: 2}); err != nil {
		t.Error(err)
	}
	three.Sheets[0].Placements[4] = Placement{1, 10, 25, false}
	if err := Check(three, four, []Sheet{{Length: 20, Width: 45}}, Rules{Stages: 2}); err != nil {
		t.Error(err)
	}
}

// TestTooNear: the sweep finds what a look at all pairs does.
func TestTooNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kerf := rapid.Int64Range(0, 3).Draw(t, "kerf")
		var boxes []box
		for range rapid.IntRange(0, 8).Draw(t, "boxes") {
			x, y := rapid.Int64Range(0, 30).Draw(t, "x"), rapid.Int64Range(0, 30).Draw(t, "y")
			boxes = append(boxes, box{x, y, x + rapid.Int64Range(1, 9).Draw(t, "w"), y + rapid.Int64Range(1, 9).Draw(t, "h")})
		}
		pair := func(a, b box) bool {
			return a.x0 < b.x1+kerf && b.x0 < a.x1+kerf && a.y0 < b.y1+kerf && b.y0 < a.y1+kerf
		}
		any := false
		for i, a := range boxes {
			for _, b := range boxes[:i] {
				any = any || pair(a, b)
			}
		}
		i, j, near := tooNear(boxes, kerf)
		if near != any || near && (i == j || !pair(boxes[i], boxes[j])) {
			t.Fatalf("%v, %d and %d, of %v: %v", near, i, j, boxes, any)
		}
	})
}

// TestStopped: a search that has to end at once still lays everything out, and says
// that it was stopped.
func TestStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var pieces []Piece
	for i := range 40 {
		pieces = append(pieces, Piece{Name: fmt.Sprint(i), Length: int64(200 + 7*i), Width: int64(300 - 5*i), Count: 3})
	}
	sheets := []Sheet{{Name: "s", Length: 1000, Width: 700}}
	l, err := Lay(ctx, pieces, sheets, Rules{Kerf: 3}, Options{Effort: 1_000_000})
	if err != nil {
		t.Fatal(err)
	}
	if err := Check(l, pieces, sheets, Rules{Kerf: 3}); err != nil || l.Completed && !l.Optimal() {
		t.Errorf("%v, %d sheets, whole: %v", err, l.Count, l.Completed)
	}
}

// TestExact: pieces fit to the unit, however coarse the grid is on which they are weighed.
func TestExact(t *testing.T) {
	for long, want := range map[int64]int{100_000_000 / 7: 1, 100_000_000/7 + 1: 2} {
		for _, r := range []Rules{{}, {Stages: 2}, {Method: Free}} {
			l := lay(t, []Piece{{Name: "p", Length: long, Width: 100, Count: 7}}, []Sheet{{Length: 100_000_000, Width: 100}}, r, 5)
			if err := Check(l, []Piece{{Length: long, Width: 100, Count: 7}}, []Sheet{{Length: 100_000_000, Width: 100}}, r); err != nil || l.Count != want || !l.Optimal() {
				t.Errorf("%d: %d sheets, at least %d, %v", long, l.Count, l.MinSheets, err)
			}
		}
	}
}

// TestOptimal: what can be worked out by hand.
func TestOptimal(t *testing.T) {
	// Eight quarters fill two sheets, with a kerf only where there is room for it.
	quarters := []Piece{{Name: "q", Length: 48, Width: 48, Count: 8}}
	for kerf, want := range map[int64]int{0: 2, 4: 2, 5: 8} {
		l := lay(t, quarters, []Sheet{{Name: "s", Length: 100, Width: 100}}, Rules{Kerf: kerf}, 10)
		if l.Count != want || kerf < 5 && !l.Optimal() {
			t.Errorf("kerf %d: %d sheets, at least %d", kerf, l.Count, l.MinSheets)
		}
	}
	// An offcut is used first and costs nothing.
	l := lay(t, quarters, []Sheet{{Name: "s", Length: 100, Width: 100, Price: 7}, {Name: "o", Length: 100, Width: 50, Offcut: true, Count: 2}}, Rules{}, 10)
	if l.Count != 1 || l.Cost != 7 || len(l.Sheets) != 3 || !l.Optimal() {
		t.Errorf("%+v", l)
	}
	// Of two sizes the one that costs less for what is needed.
	l = lay(t, quarters, []Sheet{{Name: "s", Length: 100, Width: 100, Price: 10}, {Name: "l", Length: 200, Width: 200, Price: 15}}, Rules{}, 10)
	if l.Cost != 15 {
		t.Errorf("cost %g", l.Cost)
	}
}
