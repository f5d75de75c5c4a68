package router

import (
	"slices"
)

// MinToolChanges orders the layers of the faces of a part or sheet, in the order in which
// the faces are cut, so that the bit is changed as seldom as the order of operations
// allows: layers of operations that share a place in it come bit by bit, and begin with
// the bit that is in the machine where they can.
func (o Options) MinToolChanges(faces ...[]Layer) {
	var groups []group
	for _, list := range faces {
		for from := 0; from < len(list); {
			to := from + 1
			for to < len(list) && o.rank(list[to].Operation) == o.rank(list[from].Operation) {
				to++
			}
			groups = append(groups, newGroup(list[from:to]))
			from = to
		}
	}
	// The least changes up to each group, by the bit that it ends with, and before that
	// the one that it begins with.
	for i := range groups {
		g := &groups[i]
		for last := range g.bits {
			for first := range g.bits {
				if first == last && len(g.bits) > 1 {
					continue
				}
				changes, before := len(g.bits)-1, -1
				if i > 0 {
					p := groups[i-1]
					for k := range p.bits {
						c := p.least[k] + len(g.bits) - 1
						if p.bits[k] != g.bits[first] {
							c++
						}
						if before < 0 || c <= changes {
							changes, before = c, k
						}
					}
				}
				if g.first[last] < 0 || changes < g.least[last] {
					g.least[last], g.first[last], g.before[last] = changes, first, before
				}
			}
		}
	}
	last := -1
	for i := len(groups) - 1; i >= 0; i-- {
		g := groups[i]
		if last < 0 {
			for k, c := range g.least { // of equal ones that which keeps the order
				if c == slices.Min(g.least) {
					last = k
				}
			}
		}
		g.sort(g.first[last], last)
		last = g.before[last]
	}
}

// group is layers that may be cut in any order, by their bits.
type group struct {
	layers []Layer
	bits   []int // in the order in which they come up
	least  []int // changes up to here, if the group ends with that bit
	first  []int // the bit that it begins with then, and that with which the one before ends
	before []int
}

func newGroup(layers []Layer) group {
	g := group{layers: layers}
	for _, l := range layers {
		if !slices.Contains(g.bits, l.Bit) {
			g.bits = append(g.bits, l.Bit)
			g.least, g.first, g.before = append(g.least, 0), append(g.first, -1), append(g.before, -1)
		}
	}
	return g
}

// sort puts the layers of one bit first and those of another last.
func (g group) sort(first, last int) {
	place := func(l Layer) int {
		switch i := slices.Index(g.bits, l.Bit); i {
		case first:
			return -1
		case last:
			return len(g.bits)
		default:
			return i
		}
	}
	slices.SortStableFunc(g.layers, func(a, b Layer) int { return place(a) - place(b) })
}
