package nest

import (
	"math"
	"slices"
)

// cuts bounds the number of sheets from which pieces are cut from edge to edge: the
// linear program over all such ways to fill a sheet, whether or not they hold more of a
// piece than is wanted, its columns found by dynamic programming over the sums of sides
// (P. C. Gilmore, R. E. Gomory, 1965; J. E. Beasley, 1985; from memory). The values of
// the program are made whole numbers before the sheet of most value is looked for, so
// that any rounding errors make the bound weaker and never wrong (A. A. Farley, 1990).
// It ends when the bound is as good as the best layout, or its ration is spent.
func (t *task) cuts(z size, known int, ration int64) int {
	g := newGrid(t, z)
	if g == nil || g.work() > ration {
		return 0
	}
	// The program begins with columns that a search finds, which is soon done.
	z.stock = endless
	s := newSearch(&task{kinds: t.kinds, demand: t.demand, sizes: []size{z}, area: t.area, rules: t.rules, stop: t.stop}, 0)
	s.most = ration / 4
	p := s.generate(s.singles(), t.demand, 200)
	best := 0
	values := make([]int64, len(t.kinds))
	for ; best < known && ration >= g.work(); ration -= g.work() {
		const scale = 1 << 30
		sum := 0.0
		for i, n := range t.demand {
			values[i] = int64(max(p.y[i], 0) / z.price * scale)
			sum += float64(float64(values[i]) * float64(n))
		}
		most := g.fill(values)
		if most <= 0 {
			return best
		}
		best = max(best, ceiling(sum/float64(most)))
		if float64(most) <= scale*(1+1e-7) {
			return best
		}
		count := make([]int, len(t.kinds))
		g.count(len(g.x)-1, len(g.y)-1, count)
		p.columns = append(p.columns, columnOf(z.price, count))
		p.optimize()
	}
	return best
}

// grid is the table of the dynamic program: at each of the places to which sides add up,
// along and across, the most value of what lies below and before.
type grid struct {
	kinds []kind
	x, y  []int64 // places, the last one the sheet's end
	value []int64
	how   []int32 // above 0 cut at x[how], below at y[-how], or left or down; 0 a piece
	piece []int32 // 1 + kind, where it is one
}

// maxPlaces is how many places one direction may have. Where there would be more, all
// lengths are rounded down to steps, of which the sheet has so many: what went on it
// still does, so that the bound only gets weaker.
const maxPlaces, coarse = 900, 700

func newGrid(t *task, z size) *grid {
	g := &grid{kinds: slices.Clone(t.kinds)}
	if !g.lay(z.w, z.h) {
		step := (max(z.w, z.h) + coarse - 1) / coarse
		for i, k := range g.kinds {
			if g.kinds[i].w, g.kinds[i].h = k.w/step, k.h/step; min(k.w, k.h) < step {
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

// fill finds the most value of pieces on the sheet.
func (g *grid) fill(values []int64) int64 {
	nx, ny := len(g.x), len(g.y)
	g.setPieces(values)
	restX, restY := rests(g.x), rests(g.y)
	for j := 1; j < ny; j++ {
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
		if v == 0 {
			continue
		}
		one := g.kinds[k]
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

// count counts the pieces of the best filling up to a place.
func (g *grid) count(i, j int, n []int) {
	for i > 0 && j > 0 {
		at := j*len(g.x) + i
		rest := func(list []int64, v int64) int {
			k, exact := slices.BinarySearch(list, v)
			if !exact {
				k--
			}
			return k
		}
		switch how := g.how[at]; {
		case how == left:
			i--
		case how == down:
			j--
		case how > 0:
			g.count(int(how), j, n)
			i = rest(g.x, g.x[i]-g.x[how])
		case how < 0:
			g.count(i, int(-how), n)
			j = rest(g.y, g.y[j]-g.y[-how])
		default:
			if k := g.piece[at]; k > 0 {
				n[k-1]++
			}
			return
		}
	}
}
