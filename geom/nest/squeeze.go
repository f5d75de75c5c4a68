package nest

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"
)

const (
	// maxSqueezed are the pieces that are squeezed onto one sheet.
	maxSqueezed = 1000
	// maxTrail holds the memory of one beam search to some 100 MB.
	maxTrail = 1 << 22
)

// squeeze saves a sheet of a free layout, or a piece that has none, by laying the two
// emptiest sheets, or the emptiest and what is left, on one.
func (w *work) squeeze(best result, enough float64, ration int64, seed uint64) result {
	if !w.uses(squeezing) {
		return best
	}
	for w.rules.Method == Free && ration > 0 && len(best.list) > 0 && (best.left > 0 || best.cost > enough*(1+1e-9)) {
		list := slices.Clone(best.list)
		slices.SortStableFunc(list, func(a, b full) int { // what costs nothing last
			x, y := min(w.sizes[a.size].price, 1e-9), min(w.sizes[b.size].price, 1e-9)
			return cmp.Or(-cmp.Compare(x, y), cmp.Compare(a.area, b.area))
		})
		demand := make([]int, len(w.kinds))
		onto, merged := list[0].size, 1
		switch {
		case best.left > 0:
			copy(demand, w.demand)
			for _, f := range list[1:] {
				for _, p := range f.spots {
					demand[p.kind]--
				}
			}
		case len(list) > 1:
			merged = 2
			if z := list[1].size; w.sizes[z].area > w.sizes[onto].area {
				onto = z
			}
			for _, f := range list[:2] {
				for _, p := range f.spots {
					demand[p.kind]++
				}
			}
		}
		one, spent, ok := w.onto(onto, demand, ration, seed)
		ration -= spent
		if !ok {
			break
		}
		var now result
		for _, f := range append(list[merged:], one) {
			now.add(f, w.sizes[f.size])
		}
		if now.left = 0; best.left == 0 && now.cost >= best.cost*(1-1e-9) {
			break
		}
		best = now
	}
	return best
}

// onto lays pieces on one sheet of a size by beams of growing width, and reports how 
// work it was. Of the units that succeed in a round the first counts, whichever was the
// quickest.
func (w *work) onto(n int, demand []int, ration int64, seed uint64) (one full, spent int64, ok bool) {
	z := w.sizes[n]
	if z.w > math.MaxInt64/z.h {
		return one, 0, false
	}
	total, area := 0, int64(0)
	for i, k := range w.kinds {
		if total += demand[i]; demand[i] == 0 {
			continue
		}
		if !k.only.has(n) || !k.fits(z) || total > maxSqueezed || int64(demand[i]) > (z.w*z.h-area)/k.w/k.h {
			return one, 0, false
		}
		area += int64(demand[i]) * k.w * k.h
	}
	for beam := 16; spent < ration && beam*total <= maxTrail && !w.stop.Load(); beam *= 2 {
		var first atomic.Int32
		first.Store(units)
		var found [units][]spot
		var work [units]int64
		var cut [units]bool
		parallel(units, func(u int) {
			t := newTight(w.kinds, demand, z, u%2 == 1, guideOf(u, uint64(beam), seed))
			t.stop = func() bool { return w.stop.Load() || int(first.Load()) < u }
			spots, ok := t.run(beam, (ration-spent)/units)
			if work[u], cut[u] = t.work, t.cut; !ok {
				return
			}
			found[u] = spots
			for {
				if v := first.Load(); v <= int32(u) || first.CompareAndSwap(v, int32(u)) {
					break
				}
			}
		})
		if u := int(first.Load()); u < units {
			one = full{size: n, spots: found[u]}
			for _, p := range one.spots {
				one.area += w.area[p.kind]
			}
			return one, spent + work[u], true
		}
		for _, v := range work {
			spent += v
		}
		if cut == [units]bool{} {
			break // a wider beam sees nothing more
		}
	}
	return one, spent, false
}

// guideOf is what a unit is guided by: half of them always alike, half by chance.
func guideOf(u int, beam, seed uint64) guide {
	g := guide{mid: 1000, ledge: 500, waste: 2000}
	if u >= units/2 {
		rnd := rand.New(rand.NewPCG(seed*units+uint64(u), beam))
		g.root = rnd.Int64N(1000)
		g.mid = rnd.Int64N(1000 - g.root)
		g.area = 1000 - g.root - g.mid
		g.ledge = 200 + rnd.Int64N(1000)
		g.chance, g.lot = 300, rnd.Uint64()
	}
	return g
}
