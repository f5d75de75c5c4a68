package nest

import (
	"math"
	"slices"
	"sync/atomic"
)

// cuts bounds the cost of sheets from which pieces are cut from edge to edge: the
// linear program over all such ways to fill a sheet, whether or not they hold more of a
// piece than is wanted, its columns found by dynamic programming over the sums of sides
// (P. C. Gilmore, R. E. Gomory, 1965; J. E. Beasley, 1985; from memory). The values of
// the program are made whole numbers before the sheet of most value is looked for, so
// that any rounding errors make the bound weaker and never wrong (A. A. Farley, 1990).
// It ends when the bound is as good as the best layout, or its ration is spent. Sheets
// are taken as if there were no end of them. The ways to fill one that it met are what
// layouts can be rounded from.
func (t *task) cuts(known float64, ration int64) (least float64, met []full) {
	endlessly := &task{kinds: t.kinds, demand: t.demand, area: t.area, rules: t.rules, stop: t.stop, without: t.without}
	var list []pricer
	round := int64(0) // what filling a sheet of each size takes
	for n, z := range t.sizes {
		z.stock = endless
		endlessly.sizes = append(endlessly.sizes, z)
		p := newPricer(t, n)
		if p == nil || z.price == 0 {
			return 0, nil
		}
		list, round = append(list, *p), round+p.work()
	}
	// The program begins with columns that a search finds, which is soon done.
	s := newSearch(endlessly, 0)
	s.most = ration / 4
	found := s.singles()
	if found == nil || round > ration {
		return 0, nil
	}
	p := s.generate(found, t.demand, 200)
	values := make([]int64, len(t.kinds))
	for ; least < known*(1-1e-9) && ration >= round && !t.stop.Load(); ration -= round {
		const scale = 1 << 30
		sum, over := 0.0, 0.0
		for i, n := range t.demand {
			values[i] = int64(max(p.y[i], 0) * scale)
			sum += float64(float64(values[i]) * float64(n))
		}
		for n, z := range t.sizes {
			most := float64(list[n].rough.fill(values, t.stop)) / z.price
			if t.stop.Load() { // it may have been filled in part
				return least, found.sheets
			}
			if over = max(over, most); most <= scale*(1+1e-7) {
				continue
			}
			p.columns = append(p.columns, columnOf(z.price, list[n].rough.counts()))
			if f := list[n].filled(t, values); len(f.spots) > 0 && t.sawn(f) {
				found.add(s, f)
			}
		}
		if over <= 0 {
			break
		}
		if least = max(least, t.atLeast(sum/over)); over <= scale*(1+1e-7) {
			break
		}
		p.optimize()
		s.count(p)
		s.price(p, found, t.demand, 4)
	}
	return least, found.sheets
}

// pricer looks for the sheet of a size that has the most value.
type pricer struct {
	size int
	// In rough, lengths may be rounded down, so that no sheet has more value; in exact up, so that what is
	// laid out can be cut. They are one where nothing is rounded; exact is nil where it is too coarse.
	rough, exact *grid
}

func newPricer(t *task, n int) *pricer {
	p := &pricer{size: n, rough: newGrid(t, n, false)}
	if p.rough == nil {
		return nil
	}
	if p.exact = p.rough; p.rough.step > 1 {
		p.exact = newGrid(t, n, true)
	}
	return p
}

// work is what pricing takes, about.
func (p *pricer) work() int64 {
	if p.exact == nil || p.exact == p.rough {
		return p.rough.work()
	}
	return p.rough.work() + p.exact.work()
}

// filled is a sheet of much value that can be cut; rough is filled already.
func (p *pricer) filled(t *task, values []int64) full {
	f := full{size: p.size}
	if p.exact == nil {
		return f
	}
	if p.exact != p.rough {
		p.exact.fill(values, t.stop)
		if t.stop.Load() { // it may have been filled in part
			return f
		}
	}
	f.spots = p.exact.spots(len(p.exact.x)-1, len(p.exact.y)-1, 0, 0, nil)
	for _, q := range f.spots {
		f.area += t.area[q.kind]
	}
	return f
}

// sawn reports whether the cuts of a filled sheet begin as the rules say, and have no more stages than they allow.
func (t *task) sawn(f full) bool {
	if t.rules.Stages == 0 && t.rules.First == FirstAny {
		return true
	}
	z, boxes := t.sizes[f.size], t.boxes(f)
	for i := range boxes { // as they are without kerfs
		boxes[i].x1, boxes[i].y1 = boxes[i].x1-t.rules.Kerf, boxes[i].y1-t.rules.Kerf
	}
	_, ok := takeApart(CutTree{Length: z.w - t.rules.Kerf, Width: z.h - t.rules.Kerf, Piece: -1}, boxes, t.rules)
	return ok
}

// grid is the table of the dynamic program: at each of the places to which sides add up,
// along and across, the most value of what lies below and before.
type grid struct {
	kinds []kind  // those that do not go on the sheet have no size
	step  int64   // of the lengths of kinds and places, 1 where they are exact
	x, y  []int64 // places, the last one the sheet's end
	value []int64
	how   []int32 // above 0 cut at x[how], below at y[-how], or left or down; 0 a piece
	piece []int32 // 1 + kind, where it is one
}

// maxPlaces is how many places one direction may have. Where there would be more, all
// lengths are rounded down to steps, of which the sheet has so many: what went on it
// still does, so that the bound only gets weaker.
const maxPlaces, coarse = 900, 700

// Rounded up, kinds take more than they need, and what is laid out is true.
func newGrid(t *task, n int, up bool) *grid {
	z := t.sizes[n]
	g := &grid{kinds: slices.Clone(t.kinds), step: 1}
	for i := range g.kinds {
		if !slices.Contains(t.choices(i), n) {
			g.kinds[i] = kind{}
		}
	}
	if !g.lay(z.w, z.h) {
		step, add := (max(z.w, z.h)+coarse-1)/coarse, int64(0)
		if g.step = step; up {
			add = step - 1
		}
		for i, k := range g.kinds {
			if k.w == 0 {
				continue
			}
			if g.kinds[i].w, g.kinds[i].h = (k.w+add)/step, (k.h+add)/step; min(k.w, k.h) < step {
				return nil
			}
		}
		if !g.lay(z.w/step, z.h/step) {
			return nil
		}
	}
	g.value = make([]int64, len(g.x)*len(g.y))
	g.how = make([]int32, len(g.value))
	g.piece = make([]int32, len(g.value))
	return g
}

// lay finds the places; it is false where there are too many.
func (g *grid) lay(w, h int64) bool {
	var ws, hs []int64
	for _, k := range g.kinds {
		if k.w == 0 {
			continue
		}
		ws, hs = append(ws, k.w), append(hs, k.h)
		if k.turn {
			ws, hs = append(ws, k.h), append(hs, k.w)
		}
	}
	g.x, g.y = places(ws, w), places(hs, h)
	return g.x != nil && g.y != nil
}

// places are the sums of sides up to a length, and the length; nil where there are too
// many.
func places(sides []int64, whole int64) []int64 {
	slices.Sort(sides)
	sides = slices.Compact(sides)
	list := []int64{0}
	seen := map[int64]bool{0: true}
	for i := 0; i < len(list); i++ {
		for _, s := range sides {
			if v := list[i] + s; v <= whole && !seen[v] {
				seen[v] = true
				if list = append(list, v); len(list) > maxPlaces {
					return nil
				}
			}
		}
	}
	slices.Sort(list)
	if list[len(list)-1] != whole {
		list = append(list, whole)
	}
	return list
}

// work is what a filling takes, about.
func (g *grid) work() int64 {
	x, y := int64(len(g.x)), int64(len(g.y))
	return x * y * (x + y) / 4
}

// fill finds the most value of pieces on the sheet; where it is stopped, of some of it.
func (g *grid) fill(values []int64, stop *atomic.Bool) int64 {
	nx, ny := len(g.x), len(g.y)
	g.setPieces(values)
	restX, restY := rests(g.x), rests(g.y)
	for j := 1; j < ny && !stop.Load(); j++ {
		row := g.value[j*nx : (j+1)*nx]
		for i := 1; i < nx; i++ {
			at := j*nx + i
			best, how := row[i], int32(0)
			if v := row[i-1]; v > best {
				best, how = v, left
			}
			if v := g.value[at-nx]; v > best {
				best, how = v, down
			}
			for c, r := range restX[i] {
				if v := row[c+1] + row[r]; v > best {
					best, how = v, int32(c+1)
				}
			}
			for c, r := range restY[j] {
				if v := g.value[(c+1)*nx+i] + g.value[int(r)*nx+i]; v > best {
					best, how = v, -int32(c+1)
				}
			}
			row[i], g.how[at] = best, how
		}
	}
	return g.value[len(g.value)-1]
}

// setPieces sets single pieces where they are just as large as a place.
func (g *grid) setPieces(values []int64) {
	nx, ny := len(g.x), len(g.y)
	clear(g.value)
	clear(g.how)
	clear(g.piece)
	for k, v := range values {
		one := g.kinds[k]
		if v == 0 || one.w == 0 {
			continue
		}
		for turned := range 2 {
			if turned == 1 {
				if !one.turn {
					break
				}
				one.w, one.h = one.h, one.w
			}
			i, _ := slices.BinarySearch(g.x, one.w)
			j, _ := slices.BinarySearch(g.y, one.h)
			if i < nx && j < ny {
				if at := j*nx + i; v > g.value[at] {
					g.value[at], g.piece[at] = v, int32(k+1)
				}
			}
		}
	}
}

// rests are for every length the places that cuts at its lower half leave of it.
func rests(lengths []int64) [][]int32 {
	list := make([][]int32, len(lengths))
	for i, length := range lengths {
		for c := 1; c <= i && 2*lengths[c] <= length; c++ {
			n, exact := slices.BinarySearch(lengths, length-lengths[c])
			if !exact {
				n-- // the last place that is not beyond
			}
			list[i] = append(list[i], int32(n))
		}
	}
	return list
}

// What is as one place before, or below.
const (
	left = math.MaxInt32
	down = math.MinInt32
)

// counts are how many of each kind the best filling has.
func (g *grid) counts() []int {
	n := make([]int, len(g.kinds))
	for _, p := range g.spots(len(g.x)-1, len(g.y)-1, 0, 0, nil) {
		n[p.kind]++
	}
	return n
}

// spots adds the pieces of the best filling up to a place, which lies at x, y.
func (g *grid) spots(i, j int, x, y int64, list []spot) []spot {
	rest := func(places []int64, v int64) int {
		k, exact := slices.BinarySearch(places, v)
		if !exact {
			k--
		}
		return k
	}
	for i > 0 && j > 0 {
		at := j*len(g.x) + i
		switch how := g.how[at]; {
		case how == left:
			i--
		case how == down:
			j--
		case how > 0:
			list = g.spots(int(how), j, x, y, list)
			i, x = rest(g.x, g.x[i]-g.x[how]), x+g.x[how]
		case how < 0:
			list = g.spots(i, int(-how), x, y, list)
			j, y = rest(g.y, g.y[j]-g.y[-how]), y+g.y[-how]
		default:
			if k := g.piece[at]; k > 0 {
				one := g.kinds[k-1]
				list = append(list, spot{kind: int(k - 1), x: x * g.step, y: y * g.step,
					turned: one.w != g.x[i] || one.h != g.y[j]})
			}
			return list
		}
	}
	return list
}
