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
	p := &program{demand: make([]float64, len(demand)), columns: slices.Clone(l.columns), stop: s.stop}
	for i, n := range demand {
		p.demand[i] = float64(n)
	}
	p.solve()
	s.count(p)
	s.price(p, l, demand, rounds)
	return p
}

// count adds what a program has taken to the work of the search, where that is of its ration.
func (s *search) count(p *program) {
	if s.metered {
		s.f.work += p.work
	}
	p.work = 0
}

// price adds to a program, and to its pool, ways to fill a sheet that lower its value.
func (s *search) price(p *program, l *pool, demand []int, rounds int) {
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
					p.columns = append(p.columns, l.columns[len(l.columns)-1])
					found = true
				}
			}
		}
		if dry++; found {
			dry = 0
			p.optimize()
			s.count(p)
		}
	}
}

// dive lays out by linear programs: what comes in whole sheets is taken, and of the rest
// the largest fraction, until nothing is wanted or it cannot be better than what there is.
func (s *search) dive(l *pool, best result, enough, chance float64) result {
	now := partial{search: s, demand: slices.Clone(s.demand), stock: s.stock()}
	now.keepFew(best.list)
	for !s.spent() {
		s.f.work += int64(20*len(now.demand) + 500)
		if now.wanted() == 0 {
			now.laid.left = 0
			if now.laid.better(best) {
				return now.laid
			}
			return best
		}
		p := s.generate(l, now.demand, 20)
		if s.atLeast(now.laid.cost+p.cost()) >= best.cost*(1-1e-9) {
			return best
		}
		if whole, ok := now.packed(); ok && whole.better(best) {
			if best = whole; best.cost <= enough {
				return best
			}
		}
		if !now.takeRounded(l, p, chance) {
			return best
		}
	}
	return best
}

// partial is a layout that grows sheet by sheet, and what it still has to hold.
type partial struct {
	*search
	demand, stock []int
	laid          result
}

// wanted is how many pieces have no sheet yet.
func (d *partial) wanted() (sum int) {
	for _, n := range d.demand {
		sum += n
	}
	return sum
}

// take adds a filled sheet without the pieces that are wanted no more.
func (d *partial) take(f full) {
	g := full{size: f.size}
	for _, q := range f.spots {
		if d.demand[q.kind] > 0 {
			d.demand[q.kind]--
			g.spots = append(g.spots, q)
			g.area += d.task.area[q.kind]
		}
	}
	d.laid.add(g, d.sizes[g.size])
}

// keepFew takes, as they are filled, the sheets of which there are few.
func (d *partial) keepFew(list []full) {
	for _, f := range list {
		if d.sizes[f.size].stock != endless {
			d.take(f)
			d.stock[f.size] = 0
		}
	}
}

// packed is the layout with all that is wanted packed onto further sheets; ok is false
// where some finds none.
func (d *partial) packed() (whole result, ok bool) {
	rest := d.pack(d.demand, d.stock, 0, 6)
	if rest.left != 0 {
		return result{}, false
	}
	for _, f := range slices.Concat(d.laid.list, rest.list) {
		whole.add(f, d.sizes[f.size])
	}
	whole.left = 0
	return whole, true
}

// takeRounded takes each column as often as the program's solution has it whole, or else
// the one of the largest fraction; it is false where there is none.
func (d *partial) takeRounded(l *pool, p *program, chance float64) bool {
	most, at, whole := 0.0, -1, false
	for i, c := range p.basis {
		if c < 0 {
			continue
		}
		for n := int(p.x[i] + 1e-6); n > 0; n-- {
			d.take(l.sheets[c])
			whole = true
		}
		if x := p.x[i] * (1 - float64(chance*d.rnd.Float64())); x > most {
			most, at = x, c
		}
	}
	if whole {
		return true
	}
	if at < 0 {
		return false
	}
	d.take(l.sheets[at])
	return true
}

// atLeast rounds a cost up to what whole sheets can cost, where all cost the same.
func (t *task) atLeast(cost float64) float64 {
	price := -1.0
	for _, z := range t.sizes {
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
