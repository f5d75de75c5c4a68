package nest

import (
	"encoding/binary"
	"math"
	"slices"
)

// pool are the ways to fill a sheet that a search has met.
type pool struct {
	columns []column
	sheets  []full
	known   map[string]bool
}

// add adds a filled sheet; it is false where its pieces are known on a sheet of its size.
func (l *pool) add(s *search, f full) bool {
	count := make(map[int]int)
	for _, p := range f.spots {
		count[p.kind]++
	}
	c := column{price: s.sizes[f.size].price}
	for k := range count {
		c.at = append(c.at, k)
	}
	slices.Sort(c.at)
	key := binary.AppendVarint(nil, int64(f.size))
	for _, k := range c.at {
		c.n = append(c.n, count[k])
		key = binary.AppendVarint(binary.AppendVarint(key, int64(k)), int64(count[k]))
	}
	if l.known[string(key)] {
		return false
	}
	l.known[string(key)] = true
	l.columns, l.sheets = append(l.columns, c), append(l.sheets, f)
	return true
}

// singles are columns of one kind each, with which programs begin; nil where a kind has
// none on a size of which there is no end.
func (s *search) singles() *pool {
	l := &pool{known: make(map[string]bool)}
	for i := range s.kinds {
		best, most := full{}, 0.0
		for n, z := range s.sizes {
			if z.stock != endless {
				continue
			}
			clear(s.f.left)
			clear(s.f.value)
			s.f.left[i], s.f.value[i] = max(1, s.demand[i]), 1
			s.drop = false
			f := s.one(n)
			if worth := float64(len(f.spots)) / z.price; worth > most {
				best, most = f, worth
			}
		}
		if most == 0 {
			return nil
		}
		l.add(s, best)
	}
	return l
}

// generate solves the linear program of a demand over the ways to fill a sheet, and
// looks for more of them that lower its value, until it finds none (P. C. Gilmore,
// R. E. Gomory, 1961).
func (s *search) generate(l *pool, demand []int, rounds int) *program {
	p := &program{demand: make([]float64, len(demand)), columns: l.columns}
	for i, n := range demand {
		p.demand[i] = float64(n)
	}
	p.solve()
	for dry := 0; rounds > 0 && dry < 3 && !s.spent(); rounds-- {
		found := false
		for try := range 8 {
			for n, z := range s.sizes {
				if z.stock != endless {
					continue
				}
				copy(s.f.left, demand)
				for i := range s.f.value {
					v := max(p.y[i], 0)
					if try > 0 {
						v = float64(v * (1 + float64(0.1*(s.rnd.Float64()-0.5)*float64(try))))
					}
					s.f.value[i] = v + float64(1e-7*s.task.area[i])
				}
				s.drop = s.rules.Method == Free && try%2 == 1
				f := s.one(n)
				worth := 0.0
				for _, q := range f.spots {
					worth += p.y[q.kind]
				}
				if worth > z.price*(1+1e-6) && l.add(s, f) {
					found = true
				}
			}
		}
		if dry++; found {
			dry = 0
			p.columns = l.columns
			p.optimise()
		}
	}
	return p
}

// dive lays out by linear programs: what comes in whole sheets is taken, and of the rest
// the largest fraction, until nothing is wanted or it cannot be better than what there is.
func (s *search) dive(l *pool, best result, enough float64) result {
	demand, stock := slices.Clone(s.demand), make([]int, len(s.sizes))
	now := result{}
	for i, z := range s.sizes {
		stock[i] = z.stock
	}
	take := func(f full) {
		g := full{size: f.size}
		for _, q := range f.spots {
			if demand[q.kind] > 0 {
				demand[q.kind]--
				g.spots = append(g.spots, q)
				g.area += s.task.area[q.kind]
			}
		}
		now.add(g, s.sizes[g.size])
	}
	for _, f := range best.list {
		if s.sizes[f.size].stock != endless { // what there are few of stays as it is
			take(f)
			stock[f.size] = 0
		}
	}
	for !s.spent() {
		wanted := 0
		for _, n := range demand {
			wanted += n
		}
		if wanted == 0 {
			now.left = 0
			if now.better(best) {
				return now
			}
			return best
		}
		p := s.generate(l, demand, 20)
		if s.atLeast(now.cost+p.cost()) >= best.cost*(1-1e-9) {
			return best
		}
		if rest := s.pack(demand, stock, 0, 6); rest.left == 0 {
			whole := result{}
			for _, f := range slices.Concat(now.list, rest.list) {
				whole.add(f, s.sizes[f.size])
			}
			if whole.left = 0; whole.better(best) {
				if best = whole; best.cost <= enough {
					return best
				}
			}
		}
		most, at, any := 0.0, -1, false
		for i, c := range p.basis {
			if c < 0 {
				continue
			}
			for n := int(p.x[i] + 1e-6); n > 0; n-- {
				take(l.sheets[c])
				any = true
			}
			if p.x[i] > most {
				most, at = p.x[i], c
			}
		}
		switch {
		case any:
		case at < 0:
			return best
		default:
			take(l.sheets[at])
		}
	}
	return best
}

// atLeast rounds a cost up to what whole sheets can cost, where all cost the same.
func (s *search) atLeast(cost float64) float64 {
	price := -1.0
	for _, z := range s.sizes {
		switch {
		case z.price == 0:
		case price < 0:
			price = z.price
		case price != z.price:
			return cost
		}
	}
	if price <= 0 {
		return cost
	}
	return price * math.Ceil(cost/price-1e-6)
}
