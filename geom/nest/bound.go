package nest

import (
	"fmt"
	"math"
	"slices"
)

// least is what no layout of a task can cost less than: by area, and by what has to be bought.
func (t *task) least() float64 {
	bought := t.bought()
	if len(bought) == 0 {
		return 0
	}
	all, shelf := 0.0, 0.0
	for i, n := range t.demand {
		all += float64(t.area[i] * float64(n))
	}
	for _, z := range t.sizes {
		if z.shelf {
			shelf += float64(z.area * float64(z.stock))
		}
	}
	must, _ := t.within(bought)
	return max(cover(must.sizes, all-shelf), must.bare())
}

// bought are the sizes that are no offcuts.
func (t *task) bought() (sizes []int) {
	for n, z := range t.sizes {
		if !z.shelf {
			sizes = append(sizes, n)
		}
	}
	return sizes
}

// within is the part of a task that can lie on some sizes alone, and the places of its kinds in the task.
func (t *task) within(sizes []int) (part *task, kinds []int) {
	part = &task{rules: t.rules, stop: t.stop, without: t.without}
	for _, n := range sizes {
		part.sizes = append(part.sizes, t.sizes[n])
	}
	for i, k := range t.kinds {
		only := sizeSet(0)
		alone := true
		for _, n := range t.choices(i) {
			at := slices.Index(sizes, n)
			alone = alone && at >= 0
			only |= 1 << max(at, 0)
		}
		if !alone {
			continue
		}
		if k.only != 0 {
			k.only = only
		}
		part.kinds, part.demand, part.area = append(part.kinds, k), append(part.demand, t.demand[i]), append(part.area, t.area[i])
		kinds = append(kinds, i)
	}
	return part, kinds
}

// choices are the sizes on which a kind may lie.
func (t *task) choices(kind int) (list []int) {
	k := t.kinds[kind]
	for n, z := range t.sizes {
		if k.only.has(n) && k.fits(z) {
			list = append(list, n)
		}
	}
	return list
}

// bare is least without offcuts. What goes on some of several sizes alone needs these.
func (t *task) bare() float64 {
	total := 0.0
	for i, n := range t.demand {
		total += float64(t.area[i] * float64(n))
	}
	best := cover(t.sizes, total)
	if len(t.sizes) == 1 {
		z := t.sizes[0]
		sheets := t.dual(z)
		if len(t.kinds) <= manyKinds && t.uses(bars) {
			sheets = max(sheets, t.bars(z, false, 200), t.bars(z, true, 200))
		}
		return max(best, float64(sheets)*z.price)
	}
	tried := make(map[string]bool)
	for i := range t.kinds {
		few := t.choices(i)
		if name := fmt.Sprint(few); len(few) < len(t.sizes) && !tried[name] {
			tried[name] = true
			part, _ := t.within(few)
			best = max(best, part.bare())
		}
	}
	return best
}

// maxCovers is how many sheets of one size cover tries beside others.
const maxCovers = 300

// cover is the least cost of sheets that have an area together, as many of each size as
// there are, or where there are not enough, as if there were.
func cover(sizes []size, total float64) float64 {
	if total <= 1e-9 {
		return 0
	}
	per := math.Inf(1)
	for _, z := range sizes {
		per = min(per, z.price/z.area)
	}
	if len(sizes) > 3 || total/sizes[0].area > maxCovers && len(sizes) > 1 {
		return total * per
	}
	if best := covered(sizes, total); !math.IsInf(best, 1) {
		return best
	}
	return total * per
}

func covered(sizes []size, total float64) float64 {
	if total <= 1e-9 {
		return 0
	}
	z := sizes[0]
	if len(sizes) == 1 {
		if n := ceiling(total / z.area); n <= z.stock {
			return float64(n) * z.price
		}
		return math.Inf(1)
	}
	best := math.Inf(1)
	for n := 0; n <= z.stock; n++ {
		rest := total - float64(float64(n)*z.area)
		best = min(best, float64(float64(n)*z.price)+covered(sizes[1:], rest))
		if rest <= 1e-9 {
			break
		}
	}
	return best
}

// fewest is what a least cost means in sheets.
func (t *task) fewest(least float64) int {
	most := 0.0
	for _, z := range t.sizes {
		if !z.shelf {
			most = max(most, z.price)
		}
	}
	if most == 0 {
		return 0
	}
	return ceiling(least / most)
}

// ceiling rounds a bound up; what rounding errors may have added does not count.
func ceiling(v float64) int { return int(math.Ceil(v - 1e-6)) }

// maxThresholds is from how many lengths of pieces the thresholds of dual feasible functions are
// made, fewThresholds the same where there are very many kinds.
const maxThresholds, fewThresholds = 40, 6

// products gives each product of two dual feasible functions, one for each direction: sizes of kinds of
// which no sheet holds more than one by one (S. P. Fekete, J. Schepers, 2001; from memory). A piece that
// may be turned counts by the way in which it is smaller; on a square sheet, where the product of the two
// the other way round is one too, by the mean of both (F. Clautiaux, A. Jouglet, J. El Hayek, 2007).
func (t *task) products(z size, most int, do func(of func(kind) float64)) {
	var ws, hs []int64
	turns := false
	for _, k := range t.kinds {
		ws, hs = append(ws, k.w), append(hs, k.h)
		if k.turn {
			turns = true
			ws, hs = append(ws, k.h), append(hs, k.w)
		}
	}
	out := func(f function) bool { return !t.uses(f.strategy()) }
	fs, gs := slices.DeleteFunc(functions(ws, z.w, most), out), slices.DeleteFunc(functions(hs, z.h, most), out)
	both := turns && z.w == z.h && t.uses(means)
	for _, f := range fs {
		for _, g := range gs {
			do(func(k kind) float64 {
				v := float64(f.of(k.w) * g.of(k.h))
				switch {
				case both:
					v = (v + float64(f.of(k.h)*g.of(k.w))) / 2
				case k.turn:
					v = min(v, float64(f.of(k.h)*g.of(k.w)))
				}
				return v
			})
		}
	}
}

// dual is the best bound on the number of sheets from products of dual feasible functions.
func (t *task) dual(z size) int {
	most := maxThresholds
	if len(t.kinds) > manyKinds {
		most = fewThresholds
	}
	best := 0
	t.products(z, most, func(of func(kind) float64) {
		sum := 0.0
		for i, k := range t.kinds {
			sum += float64(of(k) * float64(t.demand[i]))
		}
		best = max(best, ceiling(sum))
	})
	return best
}

// function is a dual feasible one: lengths whose sum is at most the whole have values
// whose sum is at most 1.
type function struct {
	whole, at int64
	steps     int64 // over 0: u(k), which rounds to steps; below 0: the maximal one of at
}

// functions are the identity, those with thresholds at lengths, and those of few steps.
func functions(lengths []int64, whole int64, most int) []function {
	lengths = slices.Clone(lengths)
	slices.Sort(lengths)
	lengths = slices.Compact(lengths)
	var at []int64
	for _, l := range lengths {
		if l <= whole/2 {
			at = append(at, l)
		} else if whole-l < whole/2 {
			at = append(at, whole-l+1) // from where on they go beside no such piece
		}
	}
	slices.Sort(at)
	at = slices.Compact(at)
	if len(at) > most {
		thin := make([]int64, most)
		for i := range thin {
			thin[i] = at[i*len(at)/most]
		}
		at = thin
	}
	list := []function{{whole: whole}}
	for _, a := range at {
		if a > 0 && 2*a <= whole {
			list = append(list, function{whole: whole, at: a}, function{whole: whole, at: a, steps: -1})
		}
	}
	for k := int64(1); k <= 12; k++ {
		list = append(list, function{whole: whole, steps: k})
	}
	return list
}

// strategy is what kind of function it is; the identity is of none.
func (f function) strategy() Strategy {
	switch {
	case f.steps > 0:
		return steps
	case f.steps < 0:
		return counting
	case f.at > 0:
		return thresholds
	}
	return "identity"
}

func (f function) of(l int64) float64 {
	switch {
	case l > f.whole:
		return 2 // it does not fit that way at all
	case f.steps > 0: // u(k): x (k + 1) whole keeps its value, else it is rounded down
		if n := l * (f.steps + 1); n%f.whole == 0 {
			return float64(l) / float64(f.whole)
		} else {
			return float64(n/f.whole) / float64(f.steps)
		}
	case f.steps < 0 && f.at > 0: // counts how many of a length at go in
		most := f.whole / f.at
		switch {
		case 2*l > f.whole:
			return 1 - float64((f.whole-l)/f.at)/float64(most)
		case l >= f.at:
			return float64(l/f.at) / float64(most)
		}
		return 0
	case f.at > 0: // small lengths are nothing, those beside which only small ones go are all
		switch {
		case l > f.whole-f.at:
			return 1
		case l < f.at:
			return 0
		}
	}
	return float64(l) / float64(f.whole)
}
