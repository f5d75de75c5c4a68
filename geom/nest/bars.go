package nest

import (
	"cmp"
	"math"
	"slices"
)

// bars bounds the number of sheets by cutting pieces and sheets into bars of no width:
// the least number of sheets' lengths in which bars as long as the pieces are wide can
// be put beside each other, a linear program with a knapsack for its columns
// (G. Scheithauer, 1999; from memory). Its values are made whole numbers and the
// knapsack is solved for them again, so that rounding errors are not in the answer.
// Turned pieces count by the way in which they are smaller, at the end.
func (t *task) bars(z size, across bool, rounds int) int {
	var items []item
	for i, k := range t.kinds {
		if k.turn && k.w != k.h {
			return 0
		}
		long, wide := k.h, k.w
		if across {
			long, wide = k.w, k.h
		}
		items = append(items, item{length: long, most: t.demand[i], need: float64(wide) * float64(t.demand[i])})
	}
	whole, wide := z.h, z.w
	if across {
		whole, wide = z.w, z.h
	}
	p := &program{demand: make([]float64, len(items)), stop: t.stop}
	for i, it := range items {
		if it.length > whole {
			return 0
		}
		p.demand[i] = it.need / float64(wide)
		p.columns = append(p.columns, column{at: []int{i}, n: []int{min(it.most, int(whole/it.length))}, price: 1})
	}
	p.solve()
	best, ration := 0, maxNodes
	for ration > 0 && rounds > 0 && !t.stop.Load() {
		rounds--
		// Values as whole numbers, and the most that goes into a bar.
		const scale = 1 << 30
		for i := range items {
			items[i].value = int64(max(p.y[i], 0) * scale)
		}
		most, take, nodes := knapsack(items, whole, ration)
		ration -= nodes
		if most <= 0 {
			return best
		}
		sum := 0.0
		for i, it := range items {
			sum += float64(p.demand[i] * float64(it.value))
		}
		best = max(best, int(math.Ceil(sum/float64(most)-1e-6)))
		if float64(most) <= scale*(1+1e-7) {
			return best
		}
		p.columns = append(p.columns, columnOf(1, take))
		p.optimize()
	}
	return best
}

// columnOf is a column of so many of each.
func columnOf(price float64, counts []int) column {
	c := column{price: price}
	for i, n := range counts {
		if n > 0 {
			c.at, c.n = append(c.at, i), append(c.n, n)
		}
	}
	return c
}

// item is what goes into a knapsack.
type item struct {
	length int64
	most   int
	need   float64
	value  int64
}

// knapsack is the most value that goes into a length, and how many of each item: exact,
// by branch and bound in the order of value for length; with more nodes than a ration, no
// less than that.
func knapsack(items []item, whole int64, ration int) (best int64, take []int, nodes int) {
	var order []int
	for i, it := range items {
		if it.value > 0 && it.length <= whole {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := items[a], items[b]
		return cmp.Compare(float64(y.value)/float64(y.length), float64(x.value)/float64(x.length))
	})
	now := make([]int, len(items))
	take = make([]int, len(items))
	var visit func(k int, left, value int64)
	visit = func(k int, left, value int64) {
		if nodes++; value > best {
			best = value
			copy(take, now)
		}
		if k == len(order) || nodes > ration {
			return
		}
		it := items[order[k]]
		// No more than if the rest were of this value for its length.
		if bound := value + int64(float64(it.value)/float64(it.length)*float64(left)*(1+1e-12)); bound <= best {
			return
		}
		for n := min(int64(it.most), left/it.length); n >= 0 && nodes <= ration; n-- {
			now[order[k]] = int(n)
			visit(k+1, left-n*it.length, value+n*it.value)
		}
		now[order[k]] = 0
	}
	visit(0, whole, 0)
	if nodes > ration {
		// Not proven: the bound of the first item stands for the best.
		it := items[order[0]]
		best = int64(float64(it.value) / float64(it.length) * float64(whole) * (1 + 1e-12))
	}
	return best, take, nodes
}

// maxNodes are those of all knapsacks of a bound.
const maxNodes = 2_000_000
