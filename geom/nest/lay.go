package nest

import (
	"cmp"
	"context"
	"math"
	"runtime"
	"slices"
	"sync/atomic"

	"golang.org/x/sync/errgroup"
)

// Options of a search.
type Options struct {
	// Effort is how long to search, in millions of weighed cells, each about a thousandth
	// of a second of one processor; 0 stands for DefaultEffort. The same effort and seed
	// give the same layout on any machine.
	Effort int
	Seed   uint64
	// Progress, if there is one, gets the best layout so far.
	Progress func(Progress)
	// Without is a strategy that a measurement leaves out.
	Without Strategy
}

// Progress of a search.
type Progress struct {
	Cost, LowerBound float64
	Sheets           int
	Done             float64 // of the effort
}

// cutsShare and maxCutsShare are how much of an effort the bound by cuts takes beside the
// search, in its own cells, which take longer: more for those who search longer.
const cutsShare, maxCutsShare = 1_500, 2_000_000

// roundingShare is how much of an effort layouts take that are rounded from the ways to fill a sheet that the bound
// met: of short searches more, for they have found less.
func roundingShare(effort int64) int64 { return (effort + min(3*effort, 600)) * 1_000_000 }

// repackingShare is how much of an effort it takes to look for a sheet less, of short searches more as well.
func repackingShare(effort int64) int64 { return min(10*effort, effort/4+1950) * 1_000_000 }

// DefaultEffort takes a second or two, and some more where the best is not proven.
const DefaultEffort = 1500

const (
	// units are searches that go on beside each other between two exchanges, on however
	// many processors there are.
	units  = 4
	rounds = 6
	// manyKinds is from where on sheets are filled from some of the kinds at a time, and
	// linear programs are left out.
	manyKinds = 300
	// maxChance is how much smaller fractions may be taken for when dives differ.
	maxChance = 0.6
)

// Lay lays pieces out on sheets. A context that ends stops the search: the layout is the
// best so far. The error is a geom.Diagnosis.
func Lay(ctx context.Context, pieces []Piece, sheets []Sheet, r Rules, o Options) (Layout, error) {
	if err := checked(pieces, sheets, r); err != nil {
		return Layout{}, err
	}
	whole, err := joinSets(pieces, r)
	if err != nil {
		return Layout{}, err
	}
	out, err := matched(ctx, whole.pieces, sheets, whole.rules, o)
	if err != nil {
		return Layout{}, err
	}
	for i := range out.Sheets {
		tidy(&out.Sheets[i], whole.pieces, sheets[out.Sheets[i].Sheet], whole.rules)
	}
	whole.spread(&out)
	return out, nil
}

// lay lays the pieces out.
func (w *work) lay(ctx context.Context, o Options) Layout {
	w.without = o.Without
	w.stop.Store(ctx.Err() != nil) // which AfterFunc does a moment later
	defer context.AfterFunc(ctx, func() { w.stop.Store(true) })()
	least := w.least()
	out := Layout{Remaining: make([]int, len(w.unfit)), LowerBound: float64(least * w.price)}
	copy(out.Remaining, w.unfit)
	if len(w.kinds) == 0 {
		out.Completed = true
		return out
	}
	effort := int64(o.Effort)
	if effort == 0 {
		effort = DefaultEffort
	}
	best, whole := w.search(ctx, effort*1_000_000, least, o)
	open := func() bool { return best.left == 0 && best.cost > least*(1+1e-9) } // between the bound and what was found
	if len(w.kinds) <= manyKinds && open() && ctx.Err() == nil {
		bound, met := 0.0, []full(nil)
		if w.uses(programs) {
			bound, met = w.program(best.cost, effort*min(effort*cutsShare, maxCutsShare))
		}
		if w.rules.Method == Guillotine { // free layouts may do with less
			least = max(least, bound)
			out.LowerBound = least * w.price
		}
		if open() && w.uses(groups) {
			least = max(least, w.grouped(best, met, least, effort))
			out.LowerBound = least * w.price
		}
		if open() && met != nil && w.uses(rounding) {
			best = w.rounded(met, best, least, roundingShare(effort), o.Seed)
		}
		if len(best.list) > 0 && (open() || best.left > 0) && w.uses(repacking) {
			best = w.fewer(best, least, repackingShare(effort), o.Seed)
		}
	}
	out.Completed = whole
	w.gather(&best)
	w.finish(&out, best)
	if out.MinSheets = w.fewest(least); best.left > 0 {
		out.LowerBound, out.MinSheets = 0, 0 // they are of all pieces
	}
	return out
}

// work is a task with what leads back from its kinds and sizes.
type work struct {
	task
	pieces [][]member // of each kind
	sheets []int      // of each size
	unfit  []int      // of each piece, how many fit no sheet
	price  float64    // of 1 in the task
	trim   []Trim
}

// member is a piece of a kind; turned, it lies as the kind does when it is turned.
type member struct {
	piece  int
	turned bool
	count  int
}

// begin makes a task of pieces and sheets, those that match on what they are given: only[i]
// are the sheets that piece i may come from.
func begin(pieces []Piece, sheets []Sheet, only []sizeSet, r Rules) *work {
	w := &work{task: task{rules: r, stop: new(atomic.Bool)}, unfit: make([]int, len(pieces))}
	largest := w.addSheets(sheets)
	at := make(map[kind]int)
	for i, p := range pieces {
		if p.Count == 0 {
			continue
		}
		k := kind{w: p.Length + r.Kerf, h: p.Width + r.Kerf, turn: p.MayRotate}
		turned := p.MayRotate && k.w < k.h
		if turned {
			k.w, k.h = k.h, k.w
		}
		if only != nil && only[i] != 0 {
			for n, sheet := range w.sheets { // in the order of sizes
				if only[i].has(sheet) {
					k.only |= 1 << n
				}
			}
		}
		if !slices.ContainsFunc(w.sizes, func(z size) bool { return k.fits(z) }) {
			w.unfit[i] = p.Count
			continue
		}
		n, known := at[k]
		if !known {
			n = len(w.kinds)
			at[k] = n
			w.kinds, w.demand, w.pieces = append(w.kinds, k), append(w.demand, 0), append(w.pieces, nil)
			w.area = append(w.area, float64(float64(k.w)*float64(k.h))/largest)
		}
		w.demand[n] += p.Count
		w.pieces[n] = append(w.pieces[n], member{i, turned, p.Count})
	}
	return w
}

// room is what trims leave of a sheet.
func (s Sheet) room() (length, width int64) {
	return s.Length - s.Trim.Left - s.Trim.Right, s.Width - s.Trim.Bottom - s.Trim.Top
}

// roomArea is the area of what trims leave of a sheet.
func (s Sheet) roomArea() float64 {
	x, y := s.room()
	return float64(x) * float64(y)
}

// inTurn is the order in which sheets are used: offcuts first, the smallest of each first.
func inTurn(sheets []Sheet) []int {
	order := make([]int, len(sheets))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := sheets[a], sheets[b]
		if x.Offcut != y.Offcut {
			if x.Offcut {
				return -1
			}
			return 1
		}
		return cmp.Compare(x.roomArea(), y.roomArea())
	})
	return order
}

// addSheets adds sizes in the order in which they are used, with prices and areas beside
// the largest, whose area it gives. Where no sheet has a price, the area is it.
func (w *work) addSheets(sheets []Sheet) (largest float64) {
	bare := !slices.ContainsFunc(sheets, func(s Sheet) bool { return s.Price > 0 && !s.Offcut })
	order := inTurn(sheets)
	for _, i := range order {
		largest = max(largest, sheets[i].roomArea())
		if s := sheets[i]; !s.Offcut {
			w.price = max(w.price, s.Price)
		}
	}
	if bare {
		w.price = 1
	}
	for _, i := range order {
		s := sheets[i]
		x, y := s.room()
		z := size{w: x + w.rules.Kerf, h: y + w.rules.Kerf, price: s.Price / w.price, stock: s.Count, shelf: s.Offcut}
		switch {
		case s.Offcut:
			z.price = 0
		case bare:
			z.price = s.roomArea() / largest
		}
		if z.stock == 0 {
			if z.stock = endless; s.Offcut {
				z.stock = 1
			}
		}
		z.area = float64(float64(z.w)*float64(z.h)) / largest
		w.sizes, w.sheets, w.trim = append(w.sizes, z), append(w.sheets, i), append(w.trim, s.Trim)
	}
	return largest
}

func (k kind) fits(z size) bool {
	return k.w <= z.w && k.h <= z.h || k.turn && k.h <= z.w && k.w <= z.h
}

// search runs units beside each other, which all go on from the best layout after each
// round; it is false where it was stopped.
func (w *work) search(ctx context.Context, ration int64, enough float64, o Options) (result, bool) {
	list := make([]*search, units)
	for u := range list {
		list[u] = newSearch(&w.task, o.Seed*units+uint64(u))
	}
	best := result{left: math.MaxInt}
	each := ration / units
	for round := range rounds {
		results := make([]result, units)
		parallel(units, func(u int) {
			list[u].most = each * int64(round+1) / rounds
			results[u] = list[u].improved(best, u, round, enough)
		})
		for _, r := range results {
			if r.list != nil && (best.list == nil || r.better(best)) {
				best = r
			}
		}
		if round == 0 {
			best = w.squeeze(best, enough, ration/8, o.Seed)
		}
		if o.Progress != nil {
			o.Progress(Progress{Cost: best.cost * w.price, LowerBound: enough * w.price,
				Sheets: len(best.list), Done: float64(round+1) / rounds})
		}
		if best.left == 0 && best.cost <= enough*(1+1e-9) {
			return best, true
		}
		if w.stop.Load() || ctx.Err() != nil {
			return best, false
		}
	}
	rest := ration
	for _, s := range list {
		rest -= s.f.work
	}
	best = w.squeeze(best, enough, rest, o.Seed)
	return best, !w.stop.Load()
}

// program is cuts of what has to be bought.
func (w *work) program(known float64, ration int64) (least float64, met []full) {
	bought := w.bought()
	must, kinds := w.within(bought)
	if len(must.kinds) == 0 {
		return 0, nil
	}
	least, met = must.cuts(known, ration)
	for i := range met {
		met[i].size = bought[met[i].size]
		for n := range met[i].spots {
			met[i].spots[n].kind = kinds[met[i].spots[n].kind]
		}
	}
	return least, met
}

// groupsShare and maxGroupsShare are how much of an effort the bound by groups takes, in steps.
const groupsShare, maxGroupsShare = 1_250_000, 300_000_000

// grouped is packs of what has to be bought, where that is of one size: the cost that they mean.
func (w *work) grouped(known result, met []full, least float64, effort int64) float64 {
	bought := w.bought()
	must, kinds := w.within(bought)
	if len(bought) != 1 || len(kinds) == 0 || must.sizes[0].price == 0 {
		return least
	}
	var list []full
	for _, f := range slices.Concat(known.list, met) {
		if f.size != bought[0] {
			continue
		}
		g := full{}
		for _, s := range f.spots {
			if s.kind = slices.Index(kinds, s.kind); s.kind >= 0 {
				g.spots = append(g.spots, s)
			}
		}
		list = append(list, g)
	}
	price := must.sizes[0].price
	sheets := must.packs(ceiling(least/price), ceiling(known.cost/price), list, min(effort*groupsShare, maxGroupsShare))
	return max(least, price*float64(sheets))
}

// rounded is the best of layouts that are rounded from linear programs over ways to fill a sheet.
func (w *work) rounded(met []full, best result, enough float64, ration int64, seed uint64) result {
	results := make([]result, units)
	parallel(units, func(u int) {
		s := newSearch(&w.task, (seed+1)*units+uint64(u))
		s.most, s.metered = ration/units, true
		results[u] = best
		l := s.singles()
		if l == nil {
			return
		}
		for _, f := range met {
			if s.sizes[f.size].stock == endless {
				l.add(s, f)
			}
		}
		for chance := 0.0; !s.spent() && results[u].cost > enough*(1+1e-9); chance = maxChance {
			results[u] = s.dive(l, results[u], enough, chance)
		}
	})
	for _, r := range results {
		if r.better(best) {
			best = r
		}
	}
	return best
}

// improved is what a unit makes of the best layout in a round: the first round packs a
// layout, or one unit lays windows of very many kinds; in the second every other unit
// dives; and all mend what holds all pieces.
func (s *search) improved(best result, unit, round int, enough float64) result {
	few := len(s.kinds) <= manyKinds
	switch {
	case round == 0 && few:
		best = s.pack(s.demand, s.stock(), enough, 8)
	case round == 0 && unit == 0:
		best = s.windows()
	case round == 1 && few:
		if l := s.singles(); l != nil && unit%2 == 0 && s.uses(diving) {
			for _, f := range best.list {
				if s.sizes[f.size].stock == endless {
					l.add(s, f)
				}
			}
			best = s.dive(l, best, enough, 0)
		}
	}
	if best.left == 0 && s.uses(mending) {
		best = s.mend(best, enough)
	}
	return best
}

// parallel does n things on all processors; none depends on another.
func parallel(n int, do func(i int)) {
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range n {
		g.Go(func() error {
			do(i)
			return nil
		})
	}
	_ = g.Wait() // no call gives an error
}

// finish puts pieces for kinds and sheets for sizes.
func (w *work) finish(out *Layout, r result) {
	next := make([]int, len(w.kinds)) // member
	used := make([]int, len(w.kinds)) // of it
	// Offcuts first, the fullest sheet of a size before the others.
	slices.SortStableFunc(r.list, func(a, b full) int {
		if a.size != b.size {
			return a.size - b.size
		}
		return cmp.Compare(b.area, a.area)
	})
	for _, f := range r.list {
		t := w.trim[f.size]
		laid := LaidSheet{Sheet: w.sheets[f.size]}
		for _, p := range f.spots {
			for used[p.kind] == w.pieces[p.kind][next[p.kind]].count {
				next[p.kind]++
				used[p.kind] = 0
			}
			m := w.pieces[p.kind][next[p.kind]]
			used[p.kind]++
			laid.Placements = append(laid.Placements, Placement{Piece: m.piece, X: p.x + t.Left, Y: p.y + t.Bottom, Rotated: p.turned != m.turned})
		}
		out.Sheets = append(out.Sheets, laid)
		if z := w.sizes[f.size]; !z.shelf {
			out.Count++
			out.Cost += float64(z.price * w.price)
		}
	}
	for k := range w.kinds {
		for n := next[k]; n < len(w.pieces[k]); n++ {
			m := w.pieces[k][n]
			out.Remaining[m.piece] += m.count - used[k]
			used[k] = 0
		}
	}
}
