package nest

import (
	"cmp"
	"slices"
)

// packs bounds the number of sheets of one size by the linear program over all groups of pieces that go on a
// sheet, none of a kind more often than it is wanted (D. Pisinger, M. Sigurd, 2007). Groups that are not
// proven to go on none are taken to do so. The values of the program are made whole numbers before it is
// proven that no group is worth more than a part of all pieces, so that rounding errors are not in the answer.
type packs struct {
	*packing
	measures []measure
	besides  map[group]kindSet // kinds that go on a sheet with one or two
	p        *program
	ration   int64
}

func newPacks(t *task, ration int64) *packs {
	z := t.sizes[0]
	return &packs{packing: newPacking(t, z), measures: t.measures(z), besides: make(map[group]kindSet), ration: ration}
}

// packs is the number of sheets that a task of one size needs at least: known to be at least so many, and at
// most as many as there are of known, a layout.
func (t *task) packs(least int, known []full, ration int64) int {
	pieces := 0
	for _, n := range t.demand {
		pieces += n
	}
	if least < 1 || least >= len(known) || len(t.kinds) > maxOfGroups || pieces > maxTogether*len(known) {
		return least
	}
	b := newPacks(t, ration)
	b.p = &program{demand: make([]float64, len(t.demand)), stop: t.stop}
	for i, n := range t.demand {
		b.p.demand[i] = float64(n)
		b.add([]int{i})
	}
	for _, f := range known {
		var list []int
		for _, s := range f.spots {
			list = append(list, s.kind)
		}
		b.add(list)
	}
	b.p.solve()
	for least < len(known) && b.more(least) {
		least++
	}
	return least
}

// over reports whether the bound is to end.
func (b *packs) over() bool { return b.spent > b.ration || b.stop.Load() }

// add adds a column of some kinds to the program.
func (b *packs) add(list []int) {
	counts := make([]int, len(b.kinds))
	for _, k := range list {
		counts[k]++
	}
	b.p.columns = append(b.p.columns, columnOf(1, counts))
}

// beside are the kinds that go on a sheet with a group.
func (b *packs) beside(g group) kindSet {
	s, known := b.besides[g]
	if !known {
		s = newKindSet(len(b.kinds))
		for k := range b.kinds {
			if b.together(g.with(k)) != never {
				s.add(k)
			}
		}
		b.besides[g] = s
	}
	return s
}

// maxAtOnce is how many groups of which none has a kind of another are looked for with the same values.
const maxAtOnce = 12

// more proves that pieces need more than so many sheets, if it can.
func (b *packs) more(sheets int) bool {
	values := make([]int64, len(b.kinds))
	for !b.over() {
		b.p.optimize()
		b.spent += b.p.work
		b.p.work = 0
		if b.p.cost() <= float64(sheets)+1e-6 {
			return false // whatever other groups there are
		}
		sum := int64(0)
		for i, n := range b.demand {
			values[i] = int64(max(0, min(b.p.y[i], 1)) * unit)
			sum += values[i] * int64(n)
		}
		// Where no group is worth more than most, so many sheets are worth less than all pieces.
		most := (sum - 1) / int64(sheets)
		for n := range maxAtOnce {
			c := b.choose(values, most)
			if len(c.found) == 0 {
				if n == 0 {
					return c.whole
				}
				break
			}
			for _, list := range c.found {
				b.add(b.filled(list))
			}
			for _, k := range c.found[len(c.found)-1] {
				values[k] = 0
			}
		}
	}
	return false
}

// filled is a group with what goes beside it.
func (b *packs) filled(list []int) []int {
	if len(list) >= maxTogether || b.together(groupOf(list...)) != fits {
		return list
	}
	left, open := slices.Clone(b.demand), newKindSet(len(b.kinds))
	var order []int
	for k := range b.kinds {
		open.add(k)
		order = append(order, k)
	}
	take := func(n int) {
		left[list[n]]--
		for _, k := range list[:n] {
			open.keep(b.beside(groupOf(k, list[n])))
		}
	}
	for n := range list {
		take(n)
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(b.p.y[j], b.p.y[i]), cmp.Compare(b.area[j], b.area[i]))
	})
	for _, k := range order {
		for left[k] > 0 && open.has(k) && len(list) < maxTogether && b.together(groupOf(list...).with(k)) == fits {
			list = append(list, k)
			take(len(list) - 1)
		}
	}
	return list
}
