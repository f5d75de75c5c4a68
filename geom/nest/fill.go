package nest

import (
	"math/bits"
	"slices"
)

// kind is a size of piece in a search: its sides have the kerf added, as has the sheet,
// so that pieces may touch.
type kind struct {
	w, h int64
	turn bool // it may lie the other way round
	only sizeSet
}

// ways are the rectangles that a kind can lie as.
func (k kind) ways() []extent {
	if k.turn && k.w != k.h {
		return []extent{{k.w, k.h}, {k.h, k.w}}
	}
	return []extent{{k.w, k.h}}
}

// sizeSet is the sizes of sheets that a kind may lie on; 0 is all.
type sizeSet uint64

func (s sizeSet) has(n int) bool { return s == 0 || s>>n&1 == 1 }

// spot is a piece on a sheet in a search.
type spot struct {
	kind   int
	x, y   int64
	turned bool
}

// variant is a kind as it may lie.
type variant struct {
	kind   int
	turned bool
	along  int64 // the side along the strip
	across int64 // the strip's height that it needs
	cells  int   // along, in cells of the grid
}

// cellsWide is how fine the grid is on which strips are weighed. Weights guide alone:
// what is placed is placed by its exact size.
const cellsWide = 400

// tries are how many strips of a sheet are tried for the best; within strips the one that looks best is taken.
const tries = 4

// filler fills sheets with pieces of the most value of those that are still wanted.
type filler struct {
	kinds   []kind
	tries   int
	ways    [2][]variant // strips that run along x, and along y, in the order of their height
	cell    int64        // size of a grid cell
	left    []int        // of each kind that may still be placed
	value   []float64    // of one of each kind
	placed  []spot
	work    int64 // cells weighed so far: what a search is rationed by
	best    []float64
	over    []float64 // best of strips on each other
	took    []bool
	lots    []lot
	lines   []line
	skyline []ledge
}

// lot is some pieces of one variant, of 1, 2, 4 ... as knapsacks take them.
type lot struct {
	variant int
	n       int
	cells   int
}

// line is what a strip of a height could hold at best.
type line struct {
	height int64
	cells  int
	value  float64
	lots   int // those that were weighed
}

// area is a rectangle on a sheet.
type area struct{ x, y, w, h int64 }

// newFiller makes one for kinds and sheets with no side longer than most.
func newFiller(t *task, most int64) *filler {
	kinds, tried := t.kinds, tries
	if !t.uses(trying) {
		tried = 1
	}
	f := &filler{kinds: kinds, tries: tried, cell: max(1, (most+cellsWide-1)/cellsWide), left: make([]int, len(kinds)), value: make([]float64, len(kinds))}
	for i, k := range kinds {
		f.ways[0] = append(f.ways[0], f.variant(i, false, k.w, k.h))
		f.ways[1] = append(f.ways[1], f.variant(i, false, k.h, k.w))
		if k.turn && k.w != k.h {
			f.ways[0] = append(f.ways[0], f.variant(i, true, k.h, k.w))
			f.ways[1] = append(f.ways[1], f.variant(i, true, k.w, k.h))
		}
	}
	for _, w := range f.ways {
		slices.SortStableFunc(w, func(a, b variant) int {
			switch {
			case a.across != b.across:
				return sign(a.across - b.across)
			default:
				return sign(b.along - a.along)
			}
		})
	}
	return f
}

func sign(v int64) int { return int(min(1, max(-1, v))) }

func (f *filler) variant(kind int, turned bool, along, across int64) variant {
	return variant{kind: kind, turned: turned, along: along, across: across, cells: f.cells(along)}
}

// cells is a length on the grid.
func (f *filler) cells(l int64) int { return int((l + f.cell/2) / f.cell) }

// start is a strip that a rectangle may be filled from.
type start struct {
	way   int // 0: it runs along x
	high  int64
	score float64 // of the strip and what may lie above it
	over  float64 // of that, what may lie above
	line  int     // that it is of
	row   []lot   // of pieces in it
}

// starts lists those of the highest scores, as far as rows of pieces tell.
func (f *filler) starts(list []start, way int, along, across int64, most int) []start {
	f.rows(way, along, across)
	if len(f.lines) == 0 {
		return list
	}
	// Strips on each other, as many as there is room for.
	high := f.cells(across)
	f.over = grow(f.over, high+1)
	clear(f.over)
	f.work += int64(len(f.lines) * high)
	for _, l := range f.lines {
		if size := max(1, l.cells); size <= high {
			below, to := f.over[:high+1-size], f.over[size:]
			to = to[:len(below)]
			for c, v := range below { // which is what this loop has made of it
				if v += l.value; v > to[c] {
					to[c] = v
				}
			}
		}
	}
	for n, l := range f.lines {
		over := f.over[max(0, high-max(1, l.cells))]
		s := start{way: way, high: l.height, score: l.value + over, over: over, line: n}
		at := len(list)
		for at > 0 && list[at-1].score < s.score {
			at--
		}
		if at >= most {
			continue
		}
		if len(list) < most {
			list = append(list, s)
		}
		copy(list[at+1:], list[at:])
		list[at] = s
	}
	for i := range list {
		if s := &list[i]; s.way == way {
			s.row = f.row(f.lines[s.line], along)
		}
	}
	return list
}

// rows weighs, for every height that a strip may have, the pieces of most value that
// stand in it in a row.
func (f *filler) rows(way int, along, across int64) {
	wide := f.cells(along)
	f.best = grow(f.best, wide+1)
	clear(f.best)
	f.lots, f.lines, f.took = f.lots[:0], f.lines[:0], f.took[:0]
	top, height := 0.0, int64(0)
	note := func() {
		if f.best[wide] > top {
			top = f.best[wide]
			f.lines = append(f.lines, line{height: height, cells: f.cells(height), value: top, lots: len(f.lots)})
		}
	}
	list := f.ways[way]
	f.work += int64(40 + len(list)) // what it takes whatever is weighed
	for i := 0; i < len(list) && list[i].across <= across; i++ {
		v := list[i]
		most := f.left[v.kind]
		if most == 0 || v.along > along {
			continue
		}
		if v.across != height {
			note()
			height = v.across
		}
		if v.cells > 0 {
			most = min(most, max(1, wide/v.cells))
		}
		worth := f.value[v.kind]
		for n := 1; most > 0; n *= 2 {
			n = min(n, most)
			most -= n
			f.lot(lot{variant: i, n: n, cells: min(n*v.cells, wide)}, float64(worth*float64(n)), wide)
		}
	}
	note()
}

// lot weighs some pieces more.
func (f *filler) lot(l lot, gain float64, wide int) {
	f.lots = append(f.lots, l)
	base := len(f.took)
	f.took = growBool(f.took, base+wide+1)
	took := f.took[base:]
	f.work += int64(8 + wide - l.cells)
	if l.cells == 0 {
		for c := range took {
			took[c] = true
			f.best[c] += gain
		}
		return
	}
	below := f.best[:wide+1-l.cells]
	to, took := f.best[l.cells:][:len(below)], took[l.cells:][:len(below)]
	for c := len(below) - 1; c >= 0; c-- {
		if w := below[c] + gain; w > to[c] {
			to[c], took[c] = w, true
		}
	}
}

// row reports how many of each variant the last rows put into a strip.
func (f *filler) row(s line, along int64) (list []lot) {
	wide := f.cells(along)
	c := wide
	for k := s.lots - 1; k >= 0; k-- {
		if f.took[k*(wide+1)+c] {
			l := f.lots[k]
			c -= l.cells
			list = append(list, l)
		}
	}
	return list
}

// fill fills a rectangle by cuts from edge to edge in so many stages, 0 for any number:
// strips, which run along one way or, with both, along the better one. Of the strips
// that look best, some are tried. Its answer is how far the strips reach across.
func (f *filler) fill(r area, ways [2]bool, stages, depth int) (reach int64) {
	most := 1
	if depth == 0 {
		most = f.tries
	}
	for r.w > 0 && r.h > 0 {
		list := make([]start, 0, tries)
		if ways[0] {
			list = f.starts(list, 0, r.w, r.h, most)
		}
		if ways[1] {
			list = f.starts(list, 1, r.h, r.w, most)
		}
		if len(list) == 0 {
			break
		}
		best, high, top := 0, int64(0), -1.0
		var kept []spot
		from := len(f.placed)
		for i, s := range list {
			used := f.strip(s, r, stages, depth)
			if len(list) == 1 {
				high = used
				break
			}
			v := s.over
			for _, p := range f.placed[from:] {
				v += f.value[p.kind]
			}
			if used > 0 && v > top {
				best, high, top = i, used, v
				kept = append(kept[:0], f.placed[from:]...)
			}
			for _, p := range f.placed[from:] {
				f.left[p.kind]++
			}
			f.placed = f.placed[:from]
		}
		for _, p := range kept {
			f.left[p.kind]--
			f.placed = append(f.placed, p)
		}
		if high == 0 {
			break // the grid promised what the sizes do not keep
		}
		reach += high
		if way := list[best].way; way == 0 {
			r.y, r.h = r.y+high, r.h-high
		} else {
			r.x, r.w = r.x+high, r.w-high
		}
		if stages > 0 {
			ways = [2]bool{list[best].way == 0, list[best].way == 1}
		}
	}
	return reach
}

// strip lays a strip at the rectangle's lower left, and reports how  it came out.
func (f *filler) strip(s start, r area, stages, depth int) int64 {
	along := r.w
	if s.way == 1 {
		along = r.h
	}
	if stages > 2 {
		// Stacks beside each other, each one of the rest of the stages.
		inner := area{r.x, r.y, r.w, s.high}
		if s.way == 1 {
			inner = area{r.x, r.y, s.high, r.h}
		}
		from := len(f.placed)
		f.fill(inner, [2]bool{s.way == 1, s.way == 0}, stages-1, depth+1)
		high := int64(0)
		for _, p := range f.placed[from:] {
			top := f.far(s.way, p)
			if s.way == 0 {
				high = max(high, top-r.y)
			} else {
				high = max(high, top-r.x)
			}
		}
		return high
	}
	used := int64(0)
	for _, l := range s.row {
		v := f.ways[s.way][l.variant]
		if stages == 0 && v.across != s.high {
			continue // what is lower finds its place beside the highest
		}
		for range l.n {
			if f.left[v.kind] == 0 || used+v.along > along {
				break
			}
			p := spot{kind: v.kind, x: r.x + used, y: r.y, turned: v.turned}
			if s.way == 1 {
				p.x, p.y = r.x, r.y+used
			}
			f.left[v.kind]--
			f.placed = append(f.placed, p)
			used += v.along
		}
	}
	switch {
	case used == 0:
		return 0
	case stages > 0:
	case s.way == 0:
		f.fill(area{r.x + used, r.y, r.w - used, s.high}, [2]bool{true, true}, 0, depth+1)
	default:
		f.fill(area{r.x, r.y + used, s.high, r.h - used}, [2]bool{true, true}, 0, depth+1)
	}
	return s.high
}

// far is how far a piece reaches across strips that run one way.
func (f *filler) far(way int, p spot) int64 {
	k := f.kinds[p.kind]
	if p.turned {
		k.w, k.h = k.h, k.w
	}
	if way == 0 {
		return p.y + k.h
	}
	return p.x + k.w
}

// grow makes room without keeping what was there.
func grow(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n, 1<<bits.Len(uint(n)))
	}
	return s[:n]
}

// growBool lengthens a list by cleared ones.
func growBool(s []bool, n int) []bool {
	old := len(s)
	s = slices.Grow(s, n-old)[:n]
	clear(s[old:])
	return s
}
