package sweep

import (
	"cmp"
	"slices"

	"drawerwright/geom"
)

// web is a set of curves that meet in nodes.
type web struct {
	curves []curve
	source []int32    // what a curve was made from
	ends   [][2]int32 // nodes
	nodes  []geom.Point
	parent []int32 // of nodes that are one: a node of a lesser number, or itself
	splits []split
	met    int // how often curves meet but where one goes on as another
}

// split is a node on a curve, between its ends.
type split struct {
	curve, node int32
	s           float64
}

// piece is a part of a curve between two nodes. Places s to t are those on the
// whole curve.
type piece struct {
	curve
	from, to      int32
	whole, source int32
	s, t          float64
}

// newWeb has room for a number of curves.
func newWeb(n int) web {
	return web{
		curves: make([]curve, 0, n),
		source: make([]int32, 0, n),
		ends:   make([][2]int32, 0, n),
		nodes:  make([]geom.Point, 0, 3*n),
		parent: make([]int32, 0, 3*n),
		splits: make([]split, 0, 3*n),
	}
}

func (w *web) node(p geom.Point) int32 {
	w.nodes = append(w.nodes, p)
	w.parent = append(w.parent, int32(len(w.parent)))
	return int32(len(w.parent) - 1)
}

func (w *web) add(c curve, source, from, to int32) {
	w.curves = append(w.curves, c)
	w.source = append(w.source, source)
	w.ends = append(w.ends, [2]int32{from, to})
}

// find gives the node that stands for all that are one with n.
func (w *web) find(n int32) int32 {
	for w.parent[n] != n {
		w.parent[n] = w.parent[w.parent[n]]
		n = w.parent[n]
	}
	return n
}

// join makes two nodes one.
func (w *web) join(n, m int32) {
	n, m = w.find(n), w.find(m)
	w.parent[max(n, m)] = min(n, m)
}

// cross splits the curves where they meet. It gives false when they do so too
// often ([maxMeetings]).
func (w *web) cross() bool {
	if len(w.curves) == 0 {
		return true
	}
	index := newBoxes(w.curves)
	var met []meeting
	for i := range w.curves {
		c := &w.curves[i]
		if !index.each(index[0][i].Grow(reach), i+1, func(j int) bool {
			met = meet(c, &w.curves[j], met[:0])
			for _, m := range met {
				w.mark(i, j, m)
			}
			return w.met <= maxMeetings
		}) {
			return false
		}
	}
	return true
}

// mark notes a meeting of two curves.
func (w *web) mark(i, j int, m meeting) {
	c, d := &w.curves[i], &w.curves[j]
	if follows(c, d, m.s, m.t) && w.find(w.ends[i][1]) == w.find(w.ends[j][0]) ||
		follows(d, c, m.t, m.s) && w.find(w.ends[j][1]) == w.find(w.ends[i][0]) {
		return
	}
	w.met++
	switch a, b := w.endAt(i, m.s), w.endAt(j, m.t); {
	case a >= 0 && b >= 0:
		w.join(a, b)
	case a >= 0:
		w.splits = append(w.splits, split{int32(j), a, m.t})
	case b >= 0:
		w.splits = append(w.splits, split{int32(i), b, m.s})
	default:
		n := w.node(m.at)
		w.splits = append(w.splits, split{int32(i), n, m.s}, split{int32(j), n, m.t})
	}
}

// follows reports whether places on two curves are no more than what there is to
// see of where the one goes on as the other.
func follows(c, d *curve, s, t float64) bool {
	near := min(joint, c.length/4, d.length/4)
	return s >= c.length-near && t <= near
}

// endAt is the node at which curve i has its place s, or -1 between its ends.
func (w *web) endAt(i int, s float64) int32 {
	switch {
	case s <= reach:
		return w.ends[i][0]
	case s >= w.curves[i].length-reach:
		return w.ends[i][1]
	}
	return -1
}

// settle joins the nodes that are no further apart than [reach].
func (w *web) settle() {
	order := make([]int32, len(w.nodes))
	for i := range order {
		order[i] = int32(i)
	}
	x := func(n int32) float64 { return w.nodes[n].X }
	y := func(n int32) float64 { return w.nodes[n].Y }
	runs(order, x, func(column []int32) {
		runs(column, y, func(row []int32) {
			runs(row, x, func(spot []int32) {
				for _, n := range spot {
					w.join(spot[0], n)
				}
			})
		})
	})
}

// runs sorts nodes by a coordinate and calls f with those between which it
// grows by no more than [reach] at a time.
func runs(nodes []int32, key func(int32) float64, f func([]int32)) {
	if len(nodes) == 1 {
		return
	}
	slices.SortFunc(nodes, func(n, m int32) int { return cmp.Or(cmp.Compare(key(n), key(m)), cmp.Compare(n, m)) })
	first := 0
	for i := 1; i <= len(nodes); i++ {
		if i == len(nodes) || key(nodes[i])-key(nodes[i-1]) > reach {
			f(nodes[first:i])
			first = i
		}
	}
}

// pieces cuts the curves at their nodes. A piece that is over where it began
// is left out.
func (w *web) pieces() []piece {
	w.settle()
	slices.SortFunc(w.splits, func(a, b split) int {
		return cmp.Or(cmp.Compare(a.curve, b.curve), cmp.Compare(a.s, b.s), cmp.Compare(a.node, b.node))
	})
	list := make([]piece, 0, len(w.curves)+len(w.splits))
	k := 0
	for i := range w.curves {
		c := &w.curves[i]
		from, s := w.find(w.ends[i][0]), 0.0
		until := func(node int32, t float64) {
			if to := w.find(node); to != from || t-s > 4*reach {
				list = append(list, piece{c.part(s, t), from, to, int32(i), w.source[i], s, t})
				from, s = to, t
			}
		}
		for ; k < len(w.splits) && w.splits[k].curve == int32(i); k++ {
			until(w.splits[k].node, w.splits[k].s)
		}
		until(w.ends[i][1], c.length)
	}
	return list
}
