package nest

import (
	"math"
	"sync/atomic"
	"testing"

	"pgregory.net/rapid"
)

// TestProgram: the fractions cover the demand, no column is worth more than it costs, and
// both values are the same: the answer is the best there is (duality).
func TestProgram(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &program{stop: new(atomic.Bool)}
		for i := range rapid.IntRange(1, 12).Draw(t, "kinds") {
			p.demand = append(p.demand, float64(rapid.IntRange(1, 30).Draw(t, "demand")))
			p.columns = append(p.columns, column{at: []int{i}, n: []int{rapid.IntRange(1, 4).Draw(t, "n")}, price: 1})
		}
		for range rapid.IntRange(0, 30).Draw(t, "columns") {
			c := column{price: rapid.SampledFrom([]float64{1, 0.7}).Draw(t, "price")}
			for i := range p.demand {
				if n := rapid.IntRange(-3, 3).Draw(t, "n"); n > 0 {
					c.at, c.n = append(c.at, i), append(c.n, n)
				}
			}
			if len(c.at) > 0 {
				p.columns = append(p.columns, c)
			}
		}
		p.solve()
		covered, value := make([]float64, len(p.demand)), 0.0
		for i, c := range p.basis {
			if p.x[i] < -1e-6 {
				t.Fatalf("a fraction of %g", p.x[i])
			}
			if c < 0 {
				continue
			}
			for j, k := range p.columns[c].at {
				covered[k] += p.x[i] * float64(p.columns[c].n[j])
			}
		}
		for k, n := range p.demand {
			if covered[k] < n-1e-6 {
				t.Fatalf("%g of %g are covered", covered[k], n)
			}
			if p.y[k] < -1e-6 {
				t.Fatalf("one is worth %g", p.y[k])
			}
			value += n * p.y[k]
		}
		for c := range p.columns {
			if p.worth(c) > p.columns[c].price+1e-6 {
				t.Fatalf("a column of %g costs %g", p.worth(c), p.columns[c].price)
			}
		}
		if math.Abs(value-p.cost()) > 1e-6 {
			t.Fatalf("it costs %g and is worth %g", p.cost(), value)
		}
	})
}

// TestKnapsack: it holds as much as the best of all ways.
func TestKnapsack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(1, 60).Draw(t, "whole")
		var items []item
		for range rapid.IntRange(1, 5).Draw(t, "items") {
			items = append(items, item{length: rapid.Int64Range(1, 40).Draw(t, "length"), most: rapid.IntRange(1, 4).Draw(t, "most"), value: rapid.Int64Range(0, 50).Draw(t, "value")})
		}
		best := make([]int64, whole+1)
		for _, it := range items {
			for range it.most {
				for c := whole; c >= it.length; c-- {
					best[c] = max(best[c], best[c-it.length]+it.value)
				}
			}
		}
		got, take, _ := knapsack(items, whole, maxNodes)
		sum, long := int64(0), int64(0)
		for i, n := range take {
			sum += int64(n) * items[i].value
			long += int64(n) * items[i].length
		}
		if got != best[whole] || sum != got || long > whole {
			t.Fatalf("%d, should be %d; taken %d in %d", got, best[whole], sum, long)
		}
	})
}

// TestBoundsOfCuts: pieces that a random sheet is cut into, edge to edge, need no more
// than that one, nor do several such need more than their number.
func TestBoundsOfCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Int64Range(20, 90).Draw(t, "w"), rapid.Int64Range(20, 90).Draw(t, "h")
		sheets := rapid.IntRange(1, 3).Draw(t, "sheets")
		var pieces []Piece
		for range sheets {
			pieces = append(pieces, cutApart(t, w, h, 3)...)
		}
		k := begin(pieces, []Sheet{{Length: w, Width: h}}, nil, Rules{})
		z := k.sizes[0]
		if n := k.dual(z); n > sheets {
			t.Fatalf("dual feasible functions ask for %d of %d", n, sheets)
		}
		for _, across := range []bool{false, true} {
			if n := k.bars(z, across, 100); n > sheets {
				t.Fatalf("bars ask for %d of %d", n, sheets)
			}
		}
		if n, _ := k.cuts(math.Inf(1), 100_000_000); n > float64(sheets) || n < 1 {
			t.Fatalf("cuts ask for %v of %d", n, sheets)
		}
		// The area is that of the sheets: no bound may be less than their number.
		if n := ceiling(k.least() / z.price); n != sheets {
			t.Fatalf("%d of %d", n, sheets)
		}
	})
}

// cutApart are the pieces of a sheet that is cut from edge to edge at random.
func cutApart(t *rapid.T, w, h int64, depth int) []Piece {
	if at := rapid.Int64Range(-w/2, w+h).Draw(t, "at"); depth > 0 && at > 0 && at < w {
		return append(cutApart(t, at, h, depth-1), cutApart(t, w-at, h, depth-1)...)
	} else if at -= w; depth > 0 && at > 0 && at < h {
		return append(cutApart(t, w, at, depth-1), cutApart(t, w, h-at, depth-1)...)
	}
	return []Piece{{Length: w, Width: h, Count: 1}}
}

// TestBoundsOfSizes: pieces that sheets of several sizes are cut into need no more than these, whichever of
// them are offcuts; lengths that are too many to be exact change nothing of that, and every way to fill
// a sheet that the bound met can be cut.
func TestBoundsOfSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.SampledFrom([]int64{60, 50_000}).Draw(t, "most")
		var sheets []Sheet
		var pieces []Piece
		cost := 0.0
		for i := range rapid.IntRange(1, 3).Draw(t, "sizes") {
			s := Sheet{Length: rapid.Int64Range(most/3, most).Draw(t, "w"), Width: rapid.Int64Range(most/3, most).Draw(t, "h"),
				Price: float64(rapid.IntRange(1, 60).Draw(t, "price")), Offcut: i > 0 && rapid.IntRange(0, 3).Draw(t, "offcut") == 0}
			if s.Count = rapid.IntRange(1, 3).Draw(t, "cut"); !s.Offcut {
				cost += s.Price * float64(s.Count)
			}
			for range s.Count {
				pieces = append(pieces, cutApart(t, s.Length, s.Width, 3)...)
			}
			sheets = append(sheets, s)
		}
		k := begin(pieces, sheets, nil, Rules{})
		least, met := k.program(math.Inf(1), 30_000_000)
		if bare := k.least(); max(least, bare)*k.price > cost*(1+1e-9) {
			t.Fatalf("the program asks for %g, the rest for %g of %g", least*k.price, bare*k.price, cost)
		}
		for _, f := range met {
			z := k.sizes[f.size]
			for i, a := range k.boxes(f) {
				if a.x0 < 0 || a.y0 < 0 || a.x1 > z.w || a.y1 > z.h {
					t.Fatalf("%+v is beyond a sheet of %d x %d", a, z.w, z.h)
				}
				for _, b := range k.boxes(f)[:i] {
					if a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 {
						t.Fatalf("%+v lies on %+v", a, b)
					}
				}
			}
		}
	})
}
