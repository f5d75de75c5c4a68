package nest

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"
)

// size is a sheet's in a search, with the kerf added.
type size struct {
	w, h  int64
	area  float64 // of the largest
	price float64
	stock int // how many there are
	shelf bool
}

// endless is a stock that is never used up.
const endless = math.MaxInt32

// task is what a search is given.
type task struct {
	kinds   []kind
	demand  []int
	sizes   []size
	area    []float64 // of each kind, of the largest sheet's
	rules   Rules
	stop    *atomic.Bool // set when the search is to end
	without Strategy     // is left out
}

// stock is how many sheets there are of each size.
func (t *task) stock() []int {
	list := make([]int, len(t.sizes))
	for i, z := range t.sizes {
		list[i] = z.stock
	}
	return list
}

// full is a sheet with pieces in a search.
type full struct {
	size  int
	spots []spot
	area  float64 // that they cover, of the largest sheet's
}

// result is a layout in a search.
type result struct {
	list []full
	left int // pieces without a sheet
	cost float64
	even float64 // sum of squares of what is covered: more is better, for waste together is an offcut
}

// search looks for layouts of one task. It is rationed by work, never by time, so that
// the same seed gives the same layout on any machine.
type search struct {
	*task
	f     *filler
	rnd   *rand.Rand
	like  taste
	fond  []float64 // of each size, how much it is preferred
	drop  bool      // the next sheets are filled piece by piece: free ones without regard to cuts
	aside bool      // and from the left, else from below
	most  int64
	// metered says that the steps of linear programs are of the ration. They are not where programs are a small part of
	// a search.
	metered bool
}

func newSearch(t *task, seed uint64) *search {
	long := int64(0)
	for _, z := range t.sizes {
		long = max(long, z.w, z.h)
	}
	return &search{task: t, f: newFiller(t, long), rnd: rand.New(rand.NewPCG(seed, 0x6e657374)), fond: make([]float64, len(t.sizes))}
}

// spent reports whether the ration is used up, or the search is to end.
func (s *search) spent() bool { return s.f.work >= s.most || s.stop.Load() }

// one is a sheet filled with what is left.
func (s *search) one(n int) (out full) {
	s.fillSheet(&out, n)
	return out
}

// fillSheet fills a sheet with what is left.
func (s *search) fillSheet(out *full, n int) {
	z := s.sizes[n]
	s.f.placed = s.f.placed[:0]
	hidden := s.hide(n)
	if s.drop {
		s.byPiece(z)
	} else {
		s.cutUp(z, n)
	}
	for _, h := range hidden {
		s.f.left[h.kind] = h.n
	}
	out.size, out.spots, out.area = n, append(out.spots[:0], s.f.placed...), 0
	s.f.work += 200 + 40*int64(len(out.spots))
	for _, p := range out.spots {
		out.area += s.task.area[p.kind]
	}
}

// byPiece fills a sheet piece by piece, from below or from the left.
func (s *search) byPiece(z size) {
	turn := func() { s.f.ways[0], s.f.ways[1] = s.f.ways[1], s.f.ways[0] }
	if s.aside {
		turn()
		z.w, z.h = z.h, z.w
	}
	if s.rules.Method == Free {
		s.f.drop(z.w, z.h, s.like, s.rnd.Float64)
	} else {
		s.f.corner(area{0, 0, z.w, z.h}, s.like, s.rnd.Float64)
	}
	if s.aside {
		turn()
		for i, p := range s.f.placed {
			s.f.placed[i].x, s.f.placed[i].y = p.y, p.x
		}
	}
}

// cutUp fills a sheet of a size for cuts from edge to edge. Of more stages than two, one strip may come out as wide as
// the sheet, with nothing in it that is: then its first cuts run across it, and it is filled in two.
func (s *search) cutUp(z size, n int) {
	whole, ways := area{0, 0, z.w, z.h}, s.rules.First.allows()
	s.f.fill(whole, ways, s.rules.Stages, 0)
	few := s.rules.First == FirstAny || s.rules.Stages <= 2 || len(s.f.placed) == 0
	if few || s.sawn(full{size: n, spots: s.f.placed}) {
		return
	}
	for _, p := range s.f.placed {
		s.f.left[p.kind]++
	}
	s.f.placed = s.f.placed[:0]
	s.f.fill(whole, ways, 2, 0)
}

// held is how many of a kind are kept from a sheet.
type held struct{ kind, n int }

// hide keeps kinds from a sheet of a size that they may not lie on.
func (s *search) hide(size int) (list []held) {
	for i, k := range s.kinds {
		if !k.only.has(size) && s.f.left[i] > 0 {
			list = append(list, held{i, s.f.left[i]})
			s.f.left[i] = 0
		}
	}
	return list
}

// next fills a sheet of the size that suits best: an offcut while there is one that
// holds anything, then the size of the most value for its price.
func (s *search) next(stock []int) (best full, ok bool) {
	most := 0.0
	for n, z := range s.sizes {
		if stock[n] == 0 || ok && s.sizes[best.size].shelf && !z.shelf {
			continue
		}
		f := s.one(n)
		worth := 0.0
		for _, p := range f.spots {
			worth += s.f.value[p.kind]
			s.f.left[p.kind]++
		}
		if z.shelf {
			worth /= z.area
		} else {
			worth *= s.fond[n] / z.price
		}
		if worth > most {
			best, most, ok = f, worth, true
		}
	}
	for _, p := range best.spots {
		s.f.left[p.kind]--
	}
	return best, ok
}

// pack lays demands out on a stock of sheets, again and again with other values, and
// gives the best; it ends early at a cost that is good enough.
func (s *search) pack(demand, stock []int, enough float64, passes int) (best result) {
	value := make([]float64, len(s.kinds))
	slant := 0.1 + float64(0.8*s.rnd.Float64())
	for i, a := range s.task.area {
		value[i] = a * bent(a, slant)
	}
	total := 0
	for _, n := range demand {
		total += n
	}
	have := make([]int, len(stock))
	best.left = -1
	for pass := 0; pass < passes && (best.left < 0 || !s.spent()); pass++ {
		copy(s.f.left, demand)
		copy(s.f.value, value)
		copy(have, stock)
		s.f.work += int64(20*len(value) + 500)
		s.drop = s.rules.Method == Free && s.rnd.IntN(2) == 0 && s.uses(fromBelow)
		s.like = taste{width: s.rnd.Float64(), level: s.rnd.Float64(), noise: 0.3 * s.rnd.Float64()}
		for n := range s.fond {
			if s.fond[n] = 1; pass > 0 && len(s.fond) > 1 {
				s.fond[n] += 0.4 * (s.rnd.Float64() - 0.5)
			}
		}
		now := result{left: total}
		for now.left > 0 {
			f, ok := s.next(have)
			if !ok {
				break
			}
			have[f.size]--
			now.add(f, s.sizes[f.size])
			if s.uses(learning) {
				s.learn(value, f)
			}
			if best.left == 0 && now.left > 0 && now.cost >= best.cost && s.sizes[f.size].price > 0 {
				break // it will be no better; but values have learned
			}
		}
		if best.left < 0 || now.left <= best.left && now.better(best) {
			best = now
		}
		if best.left == 0 && best.cost <= enough {
			break
		}
	}
	return best
}

// learn raises the value of what goes onto badly used sheets, for the next pass (after
// G. Belov, G. Scheithauer, sequential value correction, 2007; from memory).
func (s *search) learn(value []float64, f full) {
	used := max(f.area/s.sizes[f.size].area, 0.05)
	step := 0.3 + float64(0.4*s.rnd.Float64())
	bend := s.rnd.Float64()
	for _, p := range f.spots {
		i := p.kind
		w := step / float64(s.demand[i]+1)
		a := s.task.area[i]
		value[i] = float64(value[i]*(1-w)) + float64(w*a*bent(a, 0.2))/(used*(1-bend+float64(bend*used)))
	}
}

// bent is from 1 to the fourth root of an area, which makes large pieces worth a little
// more than their area. Roots are the same on all processors, powers are not.
func bent(a, by float64) float64 { return 1 - by + float64(by*math.Sqrt(math.Sqrt(a))) }

func (r *result) add(f full, z size) {
	r.list = append(r.list, f)
	r.left -= len(f.spots)
	r.cost += z.price
	r.even += float64(f.area * f.area)
}

// better reports  has fewer pieces left, costs less, or wastes more in one place.
func (r result) better(than result) bool {
	switch {
	case r.left != than.left:
		return r.left < than.left
	case math.Abs(r.cost-than.cost) > 1e-9*max(r.cost, than.cost):
		return r.cost < than.cost
	}
	return r.even > than.even
}

// mend takes some sheets of a layout apart and lays their pieces out anew, again and
// again until the ration is spent or the layout is good enough.
func (s *search) mend(best result, enough float64) result {
	for !s.spent() && len(best.list) > 1 && best.cost > enough {
		n := min(2+s.rnd.IntN(4), len(best.list))
		order := s.rnd.Perm(len(best.list))
		if s.rnd.IntN(3) > 0 { // the emptiest is among them more often than not
			e := 0
			for i := range best.list {
				if best.list[i].area < best.list[e].area {
					e = i
				}
			}
			k := slices.Index(order, e)
			order[0], order[k] = order[k], order[0]
		}
		demand, stock := make([]int, len(s.kinds)), s.stock()
		var old, rest result
		for i, k := range order {
			f := best.list[k]
			if i >= n {
				rest.add(f, s.sizes[f.size])
				if stock[f.size] != endless {
					stock[f.size]--
				}
				continue
			}
			old.add(f, s.sizes[f.size])
			for _, p := range f.spots {
				demand[p.kind]++
			}
		}
		old.left = 0
		now := s.part(demand, func(t *search, demand []int) result { return t.pack(demand, stock, 0, 6) })
		if now.left == 0 && !old.better(now) {
			for _, f := range now.list {
				rest.add(f, s.sizes[f.size])
			}
			rest.left = best.left
			best = rest
		}
	}
	return best
}

// part lets a search of some of the kinds alone work: those of which anything is wanted.
func (s *search) part(demand []int, work func(*search, []int) result) result {
	t := &task{sizes: s.sizes, rules: s.rules, stop: s.stop, without: s.task.without}
	var back, wanted []int
	for i, n := range demand {
		if n > 0 {
			back, wanted = append(back, i), append(wanted, n)
			t.kinds, t.demand, t.area = append(t.kinds, s.kinds[i]), append(t.demand,
				s.demand[i]), append(t.area, s.task.area[i])
		}
	}
	inner := newSearch(t, 0)
	inner.rnd, inner.most = s.rnd, s.most-s.f.work
	r := work(inner, wanted)
	s.f.work += inner.f.work + int64(300*len(back)+len(demand)+2000)
	for _, f := range r.list {
		for i := range f.spots {
			f.spots[i].kind = back[f.spots[i].kind]
		}
	}
	return r
}
