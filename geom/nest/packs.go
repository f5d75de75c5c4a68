package nest

import (
	"cmp"
	"math"
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
	center   measure // the best of them
	ration   int64
}

func newPacks(t *task, ration int64) *packs {
	list := t.measures(t.sizes[0])
	return &packs{packing: newPacking(t, t.sizes[0]), measures: list, center: list[0], besides: make(map[group]kindSet), ration: ration}
}

// packs is the number of sheets that a task of one size needs at least: known to be at least so many, and at
// most so many. The program begins with sheets that are met.
func (t *task) packs(least, most int, met []full, ration int64) int {
	pieces := 0
	for _, n := range t.demand {
		pieces += n
	}
	if least < 1 || least >= most || len(t.kinds) > maxOfGroups || pieces > maxTogether*most {
		return least
	}
	b := newPacks(t, ration)
	b.p = &program{demand: make([]float64, len(t.demand)), stop: t.stop}
	for i, n := range t.demand {
		b.p.demand[i] = float64(n)
		b.add([]int{i})
	}
	for _, f := range met {
		var list []int
		for _, s := range f.spots {
			list = append(list, s.kind)
		}
		b.add(list)
	}
	b.p.solve()
	for least < most && b.more(least) {
		least++
	}
	return least
}

// over reports whether the bound is to end.
func (b *packs) over() bool { return b.spent > b.ration || b.stop.Load() }

// add adds a column of some kinds to the program, none more often than it is wanted.
func (b *packs) add(list []int) {
	counts := make([]int, len(b.kinds))
	for _, k := range list {
		counts[k] = min(counts[k]+1, b.demand[k])
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

// maxAtOnce is how many groups of which none has a kind of another are looked for with the same values, maxFurther
// how many nodes the search for each but the first has, which proves nothing.
const maxAtOnce, maxFurther = 12, 2000

// more proves that pieces need more than so many sheets, if it can.
func (b *packs) more(sheets int) bool {
	values := make([]int64, len(b.kinds))
	for !b.over() {
		b.p.optimize()
		b.spent += b.p.work / 5
		b.p.work = 0
		if b.p.cost() <= float64(sheets)+1e-6 {
			return false // whatever other groups there are
		}
		sum := b.between(values, sheets)
		// Where no group is worth more than most, so many sheets are worth less than all pieces.
		most := (sum - 1) / int64(sheets)
		for n := range maxAtOnce {
			nodes := maxFurther
			if n == 0 {
				nodes = math.MaxInt
			}
			c := b.choose(values, most, nodes)
			if len(c.found) == 0 {
				if n == 0 {
					return c.whole
				}
				break
			}
			for _, list := range c.found[max(0, len(c.found)-2):] { // the last are worth most
				b.add(b.filled(list))
			}
			for _, k := range c.found[len(c.found)-1] {
				values[k] = 0
			}
		}
	}
	return false
}

// between makes whole numbers of values that are between those of the program and those of the best measure, by
// which no group is worth more than one sheet: halfway as far as their sum allows. They change less from step to
// step (P. Wentges, 1997), and a group that is worth more than its part of them lowers the program's cost too.
func (b *packs) between(values []int64, sheets int) (sum int64) {
	low := 0.0
	for i, n := range b.demand {
		low += float64(float64(b.center[i]) / unit * float64(n))
	}
	part, over := 0.0, b.p.cost()-float64(sheets)
	if low < float64(sheets) {
		part = 0.5 * over / (b.p.cost() - low)
	}
	for i, n := range b.demand {
		v := int64(float64(b.p.y[i]*unit*(1-part)) + float64(part*float64(b.center[i])))
		values[i] = max(0, min(v, unit))
		sum += values[i] * int64(n)
	}
	return sum
}

// maxMisses is how many kinds are tried in vain to fill a sheet.
const maxMisses = 8

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
	misses := 0
	for _, k := range order {
		for left[k] > 0 && open.has(k) && len(list) < maxTogether && misses < maxMisses {
			if b.together(groupOf(list...).with(k)) != fits {
				misses++
				break
			}
			list = append(list, k)
			take(len(list) - 1)
		}
	}
	return list
}
