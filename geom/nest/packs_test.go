package nest

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// pinwheel are pieces of a sheet that is cut apart at random, some of it into five that no cuts from edge to
// edge take apart.
func pinwheel(t *rapid.T, w, h int64, depth int) []Piece {
	if min(w, h) < 3 || rapid.IntRange(0, 2).Draw(t, "whole") == 0 {
		return cutApart(t, w, h, depth)
	}
	x0 := rapid.Int64Range(1, w-2).Draw(t, "x0")
	x1 := rapid.Int64Range(x0+1, w-1).Draw(t, "x1")
	y0 := rapid.Int64Range(1, h-2).Draw(t, "y0")
	y1 := rapid.Int64Range(y0+1, h-1).Draw(t, "y1")
	var list []Piece
	for _, e := range []extent{{x1, y0}, {w - x1, y1}, {w - x0, h - y1}, {x0, h - y0}, {x1 - x0, y1 - y0}} {
		list = append(list, cutApart(t, e.w, e.h, depth-1)...)
	}
	return list
}

// TestPacks: pieces that sheets were cut into need no more than these, whichever are left out, however they lie
// and however soon the bound ends.
func TestPacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Int64Range(5, 40).Draw(t, "w"), rapid.Int64Range(5, 40).Draw(t, "h")
		r := Rules{Method: rapid.SampledFrom([]Method{Guillotine, Free}).Draw(t, "method")}
		turn := rapid.Bool().Draw(t, "turn")
		if rapid.Bool().Draw(t, "square") {
			h = w
		}
		var pieces []Piece
		sheets := rapid.IntRange(1, 5).Draw(t, "sheets")
		for range sheets {
			list := cutApart(t, w, h, 2)
			if r.Method == Free {
				list = pinwheel(t, w, h, 1)
			}
			for _, p := range list {
				if rapid.IntRange(0, 7).Draw(t, "left out") == 0 {
					continue
				}
				p.MayRotate = turn && rapid.IntRange(0, 3).Draw(t, "stays") > 0
				if p.MayRotate && rapid.Bool().Draw(t, "turned") {
					p.Length, p.Width = p.Width, p.Length
				}
				pieces = append(pieces, p)
			}
		}
		k := begin(pieces, []Sheet{{Length: w, Width: h}}, nil, r)
		if n := k.dual(k.sizes[0]); n > sheets {
			t.Fatalf("dual feasible functions ask for %d of %d: %v", n, sheets, pieces)
		}
		if n := k.packs(1, len(pieces), nil, rapid.SampledFrom([]int64{2000, 100_000, 10_000_000}).Draw(t, "ration")); n > sheets {
			t.Fatalf("groups ask for %d of %d: %v", n, sheets, pieces)
		}
	})
}

// TestTogether: a group goes on a sheet just when one of all ways to lay its pieces there does, of guillotine
// layouts one that saws take apart.
func TestTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Int64Range(2, 5).Draw(t, "w"), rapid.Int64Range(2, 5).Draw(t, "h")
		turn := rapid.Bool().Draw(t, "turn")
		var pieces []Piece
		if list := pinwheel(t, w, h, 0); len(list) == 5 {
			pieces = list
		}
		for range rapid.IntRange(1, 6).Draw(t, "pieces") - len(pieces) {
			pieces = append(pieces, Piece{Length: rapid.Int64Range(1, w).Draw(t, "length"), Width: rapid.Int64Range(1, h).Draw(t, "width"), Count: 1})
		}
		for i := range pieces {
			pieces[i].MayRotate = turn
		}
		for _, m := range []Method{Guillotine, Free} {
			k := begin(pieces, []Sheet{{Length: w, Width: h}}, nil, Rules{Method: m})
			var g group
			var kinds []kind
			for i, n := range k.demand {
				for range n {
					g, kinds = g.with(i), append(kinds, k.kinds[i])
				}
			}
			want := never
			if anyLayout(k.sizes[0], kinds, nil, m == Guillotine) {
				want = fits
			}
			for _, ration := range []int{maxPlaced, 2, 3, 5} {
				p := newPacking(&k.task, k.sizes[0])
				p.most = ration
				if got := p.together(g); got != want && (got != unknown || ration == maxPlaced) {
					t.Fatalf("%s: %v on %d x %d is %d, should be %d", m, kinds, w, h, got, want)
				}
			}
		}
	})
}

// anyLayout tries all places of some kinds on a sheet.
func anyLayout(z size, kinds []kind, laid []box, sawn bool) bool {
	if len(laid) == len(kinds) {
		if !sawn {
			return true
		}
		_, ok := takeApart(CutTree{Length: z.w, Width: z.h, Piece: -1}, laid, Rules{})
		return ok
	}
	for _, e := range kinds[len(laid)].ways() {
		for x := int64(0); x+e.w <= z.w; x++ {
			for y := int64(0); y+e.h <= z.h; y++ {
				b := box{x, y, x + e.w, y + e.h}
				over := func(o box) bool { return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 }
				if !slices.ContainsFunc(laid, over) && anyLayout(z, kinds, append(slices.Clone(laid), b), sawn) {
					return true
				}
			}
		}
	}
	return false
}

// TestChoose: what goes on a sheet and is worth most is found.
func TestChoose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Int64Range(3, 12).Draw(t, "w"), rapid.Int64Range(3, 12).Draw(t, "h")
		var pieces []Piece
		for range rapid.IntRange(1, 7).Draw(t, "pieces") {
			pieces = append(pieces, Piece{Length: rapid.Int64Range(1, w).Draw(t, "length"), Width: rapid.Int64Range(1, h).Draw(t, "width"), Count: 1})
		}
		k := begin(pieces, []Sheet{{Length: w, Width: h}}, nil, Rules{Method: rapid.SampledFrom([]Method{Guillotine, Free}).Draw(t, "method")})
		b := newPacks(&k.task, 1<<40)
		var values, each []int64
		var all []int
		for i, n := range k.demand {
			values = append(values, rapid.Int64Range(0, unit).Draw(t, "value"))
			for range n {
				all, each = append(all, i), append(each, values[i])
			}
		}
		best := int64(0)
		for members := range uint(1) << len(all) {
			value := int64(0)
			for i, v := range each {
				value += v * int64(members>>i&1)
			}
			if members > 0 && value > best && b.together(groupOf(all...).only(members)) == fits {
				best = value
			}
		}
		if c := b.choose(values, best, math.MaxInt); len(c.found) > 0 || !c.whole {
			t.Fatalf("%v are worth more than %d", c.found, best)
		}
		for _, b.ration = range []int64{b.ration, 500, 100, 20} {
			b.spent = 0
			if c := b.choose(values, best-1, math.MaxInt); best > 0 && len(c.found) == 0 && c.whole {
				t.Fatalf("none is worth %d", best)
			}
		}
	})
}
