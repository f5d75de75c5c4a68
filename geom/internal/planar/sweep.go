package planar

import "slices"

// none is the absent node, edge or gap.
const none = -1

// node is a vertex in the chain of a gap. The chain is what the sweep has left
// untriangulated of the gap's boundary, from the left end of the edge below it
// (low) to the left end of the edge above it (high); seen from the right, every
// vertex between is reflex or straight.
type node struct{ point, up, down int32 }

// gap is the strip between two edges that are neighbors on the sweep line.
type gap struct {
	low, high, last int32 // nodes; last is the one that the sweep passed last
	region          int32
}

// active is an edge on the sweep line with the gap above it.
type active struct {
	edge  int32
	above gap
}

// sweeper triangulates while it moves over the points from left to right.
type sweeper struct {
	*Subdivision
	nodes  []node
	status []active // from bottom to top
	fresh  []active
	frame  int      // the ring number of the frame
	sets   []uint64 // rings along each edge, words per edge
	index  map[string]int32
	key    []byte
}

// sweep turns routed pieces into the edges, regions and triangles of s.
func (s *Subdivision) sweep(points []Point, raw pieces, frame int) {
	s.Points = points
	w := &sweeper{Subdivision: s, frame: frame, index: make(map[string]int32), key: make([]byte, 8*s.words)}
	w.merge(raw)
	w.regionOf(make([]uint64, s.words))
	w.nodes = make([]node, 0, 4*len(points))
	s.Triangles = make([]Triangle, 0, 2*len(points))
	next := 0
	for v := range points {
		first := next
		for next < len(s.Edges) && s.Edges[next].From == int32(v) {
			next++
		}
		w.visit(int32(v), first, next)
	}
}

// merge sorts the pieces by their left end, then by slope from below, joins
// equal ones, and drops those along which every ring runs an even number of
// times.
func (w *sweeper) merge(raw pieces) {
	start := make([]int32, len(w.Points)+1)
	for _, f := range raw.from {
		start[f+1]++
	}
	for i := 1; i < len(start); i++ {
		start[i] += start[i-1]
	}
	order, fill := make([]int32, len(raw.from)), slices.Clone(start)
	for e, f := range raw.from {
		order[fill[f]] = int32(e)
		fill[f]++
	}
	w.Edges = make([]Edge, 0, len(order))
	w.sets = make([]uint64, 0, len(order)*w.words)
	for v := range w.Points {
		bucket := order[start[v]:start[v+1]]
		p := w.Points[v]
		slope := func(e, f int32) int {
			switch o := orient(p, w.Points[raw.to[e]], w.Points[raw.to[f]]); {
			case o > 0:
				return -1
			case o < 0:
				return 1
			}
			return int(raw.to[e] - raw.to[f])
		}
		slices.SortFunc(bucket, slope)
		for i := 0; i < len(bucket); {
			set := len(w.sets)
			w.sets = append(w.sets, make([]uint64, w.words)...)
			to, used := raw.to[bucket[i]], uint64(0)
			for ; i < len(bucket) && raw.to[bucket[i]] == to; i++ {
				for k := range w.words {
					w.sets[set+k] ^= raw.rings[int(bucket[i])*w.words+k]
				}
			}
			for _, word := range w.sets[set:] {
				used |= word
			}
			if used == 0 {
				w.sets = w.sets[:set]
				continue
			}
			w.Edges = append(w.Edges, Edge{From: int32(v), To: to})
		}
	}
}

// regionOf numbers a set of rings.
func (w *sweeper) regionOf(set []uint64) int32 {
	for i, word := range set {
		for k := range 8 {
			w.key[8*i+k] = byte(word >> (8 * k))
		}
	}
	if id, ok := w.index[string(w.key)]; ok {
		return id
	}
	id := int32(len(w.index))
	w.index[string(w.key)] = id
	w.covers = append(w.covers, set...)
	return id
}

// across gives the region above an edge, given the one below it.
func (w *sweeper) across(edge, below int32) int32 {
	var buffer [4]uint64
	set := append(buffer[:0], w.covers[int(below)*w.words:int(below+1)*w.words]...)
	for k := range set {
		set[k] ^= w.sets[int(edge)*w.words+k]
	}
	set[w.frame/64] &^= 1 << (w.frame % 64) // the frame covers nothing
	return w.regionOf(set)
}

// visit takes the sweep over one point, whose edges to the right are
// Edges[first:last].
func (w *sweeper) visit(v int32, first, last int) {
	p := w.Points[v]
	// Active edges with p above them, then those that end at p.
	lo, _ := slices.BinarySearchFunc(w.status, p, func(a active, p Point) int {
		e := w.Edges[a.edge]
		if orient(w.Points[e.From], w.Points[e.To], p) > 0 {
			return -1
		}
		return 1
	})
	hi := lo
	for hi < len(w.status) && w.Edges[w.status[hi].edge].To == v {
		hi++
	}
	if lo == hi && first == last {
		return // every ring that came here canceled out
	}

	// The gaps below and above p, each with p as its new end.
	below, above := gap{none, none, none, 0}, gap{none, none, none, 0}
	switch {
	case lo == hi && lo > 0:
		below, above = w.split(w.status[lo-1].above, v)
	case lo < hi:
		if lo > 0 {
			below = w.extendHigh(w.status[lo-1].above, v)
		}
		for i := lo; i < hi-1; i++ {
			w.extendHigh(w.status[i].above, v)
		}
		above = w.extendLow(w.status[hi-1].above, v)
	}

	if first == last { // nothing goes on: the two gaps become one
		if lo > 0 {
			w.status[lo-1].above = w.join(below, above)
		}
		w.status = slices.Delete(w.status, lo, hi)
		return
	}
	if lo > 0 {
		w.status[lo-1].above = below
	}
	w.fresh = w.fresh[:0]
	region := below.region
	for e := first; e < last; e++ {
		w.Edges[e].Below = region
		region = w.across(int32(e), region)
		w.Edges[e].Above = region
		g := above
		if e < last-1 {
			n := w.add(v)
			g = gap{low: n, high: n, last: n}
		}
		g.region = region
		w.fresh = append(w.fresh, active{int32(e), g})
	}
	w.status = slices.Replace(w.status, lo, hi, w.fresh...)
}

func (w *sweeper) add(v int32) int32 {
	w.nodes = append(w.nodes, node{v, none, none})
	return int32(len(w.nodes) - 1)
}

// emit adds the triangle a, v, b, which is counter-clockwise when b is a convex
// corner of the chain a, b, v as seen from the right.
func (w *sweeper) emit(a, v, b, region int32) {
	w.Triangles = append(w.Triangles, Triangle{w.nodes[a].point, w.nodes[v].point, w.nodes[b].point, region})
}

func (w *sweeper) convex(a, b, c int32) bool {
	return orient(w.Points[w.nodes[a].point], w.Points[w.nodes[b].point], w.Points[w.nodes[c].point]) < 0
}

// extendHigh puts v at the upper end of a gap's chain and cuts off every
// triangle that v sees.
func (w *sweeper) extendHigh(g gap, v int32) gap {
	if g.high == none {
		return g
	}
	n := w.add(v)
	b := g.high
	for a := w.nodes[b].down; a != none && w.convex(a, b, n); a = w.nodes[b].down {
		w.emit(a, n, b, g.region)
		b = a
	}
	w.nodes[b].up, w.nodes[n].down = n, b
	g.high, g.last = n, n
	return g
}

// extendLow does the same at the lower end.
func (w *sweeper) extendLow(g gap, v int32) gap {
	if g.low == none {
		return g
	}
	n := w.add(v)
	b := g.low
	for c := w.nodes[b].up; c != none && w.convex(n, b, c); c = w.nodes[b].up {
		w.emit(n, c, b, g.region)
		b = c
	}
	w.nodes[b].down, w.nodes[n].up = n, b
	g.low, g.last = n, n
	return g
}

// split ties v, at which a gap parts in two, to the vertex that the sweep
// passed last in the gap, and gives the gaps below and above v.
func (w *sweeper) split(g gap, v int32) (below, above gap) {
	if g.last == none {
		return g, g
	}
	// The vertex in question ends both chains, so it is there twice.
	twin := w.add(w.nodes[g.last].point)
	below, above = g, g
	if up := w.nodes[g.last].up; up != none {
		w.nodes[twin].up, w.nodes[up].down = up, twin
	} else {
		above.high = twin
	}
	w.nodes[g.last].up = none
	below.high, above.low = g.last, twin
	return w.extendHigh(below, v), w.extendLow(above, v)
}

// join makes one gap of the two that meet behind v, the high end of one and the
// low end of the other.
func (w *sweeper) join(below, above gap) gap {
	if below.high == none {
		return above
	}
	if above.low == none {
		return below
	}
	n, up := below.high, w.nodes[above.low].up
	w.nodes[n].up = up
	if up != none {
		w.nodes[up].down = n
	}
	high := above.high
	if up == none {
		high = n
	}
	return gap{below.low, high, n, below.region}
}
