package nest

import (
	"math"
	"slices"
)

const (
	// atOnce is how many sheets are repacked at once, at most, againAtOnce how often before others are.
	atOnce, againAtOnce = 3, 4
	// patience is after how many repackings that gained nothing what has no sheet grows in weight, by growth.
	patience, growth = 200, 1.05
	// thorough is how many of ten times sheets are filled strip by strip where they might be piece by piece.
	thorough = 3
	// turns are those of searching and of rounding what it met.
	turns = 2
	// maxMet are the ways to fill a sheet that each unit keeps in mind.
	maxMet = 3000
)

// fewer looks for a layout with a sheet less than there is. It takes the emptiest one away, and lays the pieces of a
// few others, with those that have no sheet, on these few anew, again and again, so that less and less is left over.
// What stays over grows in weight until a place is found for it (after O. Faroe, D. Pisinger, M. Zachariasen, 2003,
// guided local search, and L. Wei, W. Oon, W. Zhu, A. Lim, 2011, a goal-driven approach; from memory).
type fewer struct {
	*search
	list   []full
	over   []int        // of each kind, how many have no sheet
	weight []float64    // of one of each kind
	all    [2][]variant // ways of all kinds; the filler has those of the pool alone
	met    *pool        // ways to fill a sheet that layouts may be rounded from

	chosen    []int // sheets that are repacked
	pool      []int // of each kind, how many there are for them
	kinds     []int // of which there are any
	left      []int // of each kind, after the best try
	now, best []full
}

// fewer lays out on fewer sheets, by turns searching for places and rounding from the ways to fill a sheet that the
// search met (M. Monaci, P. Toth, 2006, by a set covering; from memory).
func (w *work) fewer(best result, enough float64, ration int64, seed uint64) result {
	for turn := range uint64(turns) {
		results, met := make([]result, units), make([][]full, units)
		parallel(units, func(u int) {
			s := newSearch(&w.task, ((seed+2)*turns+turn)*units+uint64(u))
			s.most = ration / turns / units
			results[u], met[u] = s.fewer(best, enough)
		})
		for _, r := range results {
			if r.better(best) {
				best = r
			}
		}
		if best.left > 0 || best.cost <= enough*(1+1e-9) || w.stop.Load() {
			break
		}
		if !w.uses(again) {
			continue
		}
		best = w.rounded(slices.Concat(met...), best, enough, ration/turns/2, seed+1+turn)
	}
	return best
}

// fewer takes one sheet after the other away, while there is a way to do without.
func (s *search) fewer(best result, enough float64) (result, []full) {
	met := &pool{known: make(map[string]bool)}
	for !s.spent() && (best.left > 0 || best.cost > enough*(1+1e-9)) {
		f := s.without(best, met)
		if f == nil || !f.place() {
			break
		}
		best = result{}
		for _, l := range f.list {
			if len(l.spots) > 0 {
				best.add(l, s.sizes[l.size])
			}
		}
		best.left = 0
	}
	return best, met.sheets
}

// without is a layout without its emptiest sheet; where pieces are left, they have none as it is. It is nil where
// there is no sheet that could go.
func (s *search) without(from result, met *pool) *fewer {
	f := &fewer{search: s, over: slices.Clone(s.demand), weight: slices.Clone(s.task.area), met: met, all: s.f.ways,
		pool: make([]int, len(s.kinds)), left: make([]int, len(s.kinds)), now: make([]full, atOnce), best: make([]full, atOnce)}
	emptiest, least := -1, math.Inf(1)
	for i, l := range from.list {
		if z := s.sizes[l.size]; from.left == 0 && z.price > 0 && l.area/z.area < least {
			emptiest, least = i, l.area/z.area
		}
	}
	if from.left == 0 && emptiest < 0 || len(from.list) < 2 {
		return nil
	}
	for i, l := range from.list {
		if i == emptiest {
			continue
		}
		for _, p := range l.spots {
			f.over[p.kind]--
		}
		l.spots = slices.Clone(l.spots) // which are written over
		f.list = append(f.list, l)
	}
	return f
}

// place looks for places until nothing is over; it is false where the ration does not last.
func (f *fewer) place() bool {
	f.f.ways = [2][]variant{}
	defer func() { f.f.ways = f.all }()
	clear(f.f.left)
	for dry := 0; !f.spent(); dry++ {
		missing := 0.0
		for i, n := range f.over {
			missing += float64(float64(n) * f.weight[i])
		}
		if missing == 0 {
			return true
		}
		if dry == patience {
			dry = 0
			for i, n := range f.over {
				if n > 0 && f.uses(growing) {
					f.weight[i] *= growth
				}
			}
			continue
		}
		f.choose()
		if v := f.repack(); v <= missing {
			f.keep()
			if v < missing {
				dry = 0
			}
		}
	}
	return false
}

// choose chooses some sheets, whose pieces are the pool, with those that are over.
func (f *fewer) choose() {
	f.chosen = f.chosen[:0]
	for m := min(1+f.rnd.IntN(atOnce), len(f.list)); len(f.chosen) < m; {
		if k := f.rnd.IntN(len(f.list)); !slices.Contains(f.chosen, k) {
			f.chosen = append(f.chosen, k)
		}
	}
	copy(f.pool, f.over)
	for _, k := range f.chosen {
		for _, p := range f.list[k].spots {
			f.pool[p.kind]++
		}
	}
	f.kinds = f.kinds[:0]
	for i, n := range f.pool {
		if n > 0 {
			f.kinds = append(f.kinds, i)
		}
	}
	for w, list := range f.all {
		f.f.ways[w] = f.f.ways[w][:0]
		for _, v := range list {
			if f.pool[v.kind] > 0 {
				f.f.ways[w] = append(f.f.ways[w], v)
			}
		}
	}
	f.f.work += int64(1000 + 8*len(f.pool))
}

// repack fills the chosen sheets from the pool some times. Its answer is the weight of what is over after the best try.
func (f *fewer) repack() float64 {
	least := math.Inf(1)
	for try := 0; try < againAtOnce && least > 0; try++ {
		anyCuts := f.rules.Stages == 0 && f.rules.First == FirstAny
		f.drop = f.rules.Method == Free || anyCuts && (f.rnd.IntN(10) >= thorough || !f.uses(strips))
		f.aside = f.rnd.IntN(2) == 0 && f.uses(aside)
		slant, uneven := 0.8*f.rnd.Float64(), 0.8*f.rnd.Float64()
		if !f.uses(unevenly) {
			uneven = 0
		}
		for _, i := range f.kinds {
			f.f.left[i] = f.pool[i]
			f.f.value[i] = f.weight[i] * bent(f.task.area[i], slant) * (1 + float64(uneven*f.rnd.Float64()))
		}
		f.like = taste{width: f.rnd.Float64(), level: f.rnd.Float64(), noise: 0.5 * f.rnd.Float64(), cross: f.rnd.Float64()}
		for n, k := range f.chosen {
			f.fillSheet(&f.now[n], f.list[k].size)
		}
		v := 0.0
		for _, i := range f.kinds {
			v += float64(float64(f.f.left[i]) * f.weight[i])
		}
		if v <= least {
			least = v
			f.now, f.best = f.best, f.now
			for _, i := range f.kinds {
				f.left[i] = f.f.left[i]
			}
		}
	}
	for _, i := range f.kinds {
		f.f.left[i] = 0
	}
	return least
}

// keep puts the best try in the place of the chosen sheets.
func (f *fewer) keep() {
	for n, k := range f.chosen {
		if g := f.best[n]; len(f.met.sheets) < maxMet && len(g.spots) > 0 {
			g.spots = slices.Clone(g.spots)
			f.met.add(f.search, g)
		}
		f.list[k], f.best[n] = f.best[n], f.list[k]
	}
	for _, i := range f.kinds {
		f.over[i] = f.left[i]
	}
}
