package nest

import (
	"cmp"
	"slices"
)

const (
	// gathered are the sheets, the emptiest first, of which the waste is gathered.
	gathered = 12
	// hardly is waste, as a part of a sheet, that makes no offcut.
	hardly = 0.02
	// narrowing are the steps in which the least end of a sheet that takes all its
	// pieces is looked for.
	narrowing = 9
	// gatherWork is what one try may take.
	gatherWork = 3_000_000
)

// gather lays the pieces of the emptiest sheets out anew, each at one end of its sheet or
// along one side, so that what is left of it is one large rectangle.
func (w *work) gather(r *result) {
	order := make([]int, len(r.list))
	for i := range order {
		order[i] = i
	}
	fill := func(i int) float64 { return r.list[i].area / w.sizes[r.list[i].size].area }
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(fill(i), fill(j)) })
	order = slices.DeleteFunc(order[:min(gathered, len(order))], func(i int) bool { return fill(i) > 1-hardly })
	parallel(len(order), func(n int) {
		f := &r.list[order[n]]
		if g, better := w.gatheredOn(*f, uint64(n)); better {
			*f = g
		}
	})
}

// gatheredOn is a sheet with its pieces at one end or along one side, if that leaves
// more in one rectangle.
func (w *work) gatheredOn(f full, seed uint64) (full, bool) {
	z := w.sizes[f.size]
	reach := func(f full) (x, y int64) {
		for _, b := range w.boxes(f) {
			x, y = max(x, b.x1), max(y, b.y1)
		}
		return x, y
	}
	rest := func(f full) float64 { // the largest rectangle of waste
		if w.rules.Method == Guillotine {
			r := Rules{Stages: w.rules.Stages, First: w.rules.First}
			b, _ := takeApart(CutTree{Length: z.w, Width: z.h, Piece: -1}, w.boxes(f), r)
			return largest(b)
		}
		x, y := reach(f)
		return max(float64(z.w-x)*float64(z.h), float64(z.w)*float64(z.h-y))
	}
	best, most, found := f, rest(f), false
	demand := make([]int, len(w.kinds))
	for _, p := range f.spots {
		demand[p.kind]++
	}
	s := newSearch(&w.task, seed)
	for way := range 2 {
		low, high := int64(0), [...]int64{z.w, z.h}[way]
		low = int64(float64(high) * f.area / z.area)
		for range narrowing {
			middle := (low + high) / 2
			part := z
			part.stock, part.shelf, part.price = 1, false, 1
			if way == 0 {
				part.w = middle
			} else {
				part.h = middle
			}
			part.area = z.area * float64(middle) / float64([...]int64{z.w, z.h}[way])
			inner := *s
			inner.task = s.task.on(part)
			inner.fond = []float64{1}
			got := inner.part(demand, func(t *search, wanted []int) result {
				t.most = gatherWork
				return t.pack(wanted, []int{1}, 1, 8)
			})
			if got.left > 0 || len(got.list) == 0 {
				low = middle
				continue
			}
			g := got.list[0]
			g.size = f.size
			x, y := reach(g)
			if high = x; way == 1 {
				high = y
			}
			if r := rest(g); r > most {
				best, most, found = g, r, true
			}
		}
	}
	return best, found
}

// on is the task with sheets of one size.
func (t *task) on(z size) *task {
	part := *t
	part.sizes = []size{z}
	return &part
}

// boxes are what the pieces of a sheet cover, kerfs included.
func (t *task) boxes(f full) []box {
	list := make([]box, len(f.spots))
	for i, p := range f.spots {
		k := t.kinds[p.kind]
		if p.turned {
			k.w, k.h = k.h, k.w
		}
		list[i] = box{p.x, p.y, p.x + k.w, p.y + k.h}
	}
	return list
}
