package sweep

import (
	"cmp"
	"math"
	"slices"
)

// groups lists the numbers of pieces by a node of theirs: those of node n are
// items[start[n]:start[n+1]].
type groups struct{ start, items []int32 }

func (g groups) of(n int32) []int32 { return g.items[g.start[n]:g.start[n+1]] }

func groupBy(pieces []piece, nodes int, node func(*piece) int32) groups {
	g := groups{make([]int32, nodes+1), make([]int32, len(pieces))}
	for i := range pieces {
		g.start[node(&pieces[i])+1]++
	}
	for n := range nodes {
		g.start[n+1] += g.start[n]
	}
	fill := slices.Clone(g.start)
	for i := range pieces {
		n := node(&pieces[i])
		g.items[fill[n]] = int32(i)
		fill[n]++
	}
	return g
}

func from(p *piece) int32 { return p.from }
func to(p *piece) int32   { return p.to }

// prune takes away the pieces that lead nowhere or come from nowhere, which
// rounding leaves beside a course. It gives false when they are longer than
// that: more than [crumbs] for each place where something leads nowhere.
func prune(pieces []piece, nodes int) ([]piece, bool) {
	outs, ins := make([]int32, nodes), make([]int32, nodes)
	for i := range pieces {
		outs[pieces[i].from]++
		ins[pieces[i].to]++
	}
	places := 0
	var open []int32 // nodes to look at
	for n := range nodes {
		if (outs[n] == 0) != (ins[n] == 0) {
			open = append(open, int32(n))
			places++
		}
	}
	if places == 0 {
		return pieces, true
	}
	out, in := groupBy(pieces, nodes, from), groupBy(pieces, nodes, to)
	gone := make([]bool, len(pieces))
	lost := 0.0
	remove := func(i int32) {
		if gone[i] {
			return
		}
		p := &pieces[i]
		gone[i] = true
		lost += p.length
		outs[p.from]--
		ins[p.to]--
		open = append(open, p.from, p.to)
	}
	for len(open) > 0 {
		n := open[len(open)-1]
		open = open[:len(open)-1]
		if outs[n] == 0 && ins[n] > 0 {
			for _, i := range in.of(n) {
				remove(i)
			}
		}
		if ins[n] == 0 && outs[n] > 0 {
			for _, i := range out.of(n) {
				remove(i)
			}
		}
	}
	kept := pieces[:0]
	for i := range pieces {
		if !gone[i] {
			kept = append(kept, pieces[i])
		}
	}
	return kept, lost <= float64(crumbs*float64(places))
}

// pair ties every piece to the one that follows it, so that as little as can be
// is turned at each node. A course turns only to the left, side 1, and the rim
// of what a disc covers only to the right, side -1: both are proven of what is
// as far from something as a radius. It gives false where that cannot be.
func pair(pieces []piece, nodes int, side float64) ([]link, bool) {
	links, ok := tie(pieces, nodes, math.Pi+slack, func(turn float64) float64 {
		if turn = float64(side * turn); turn < -slack {
			turn += 2 * math.Pi
		}
		return turn
	})
	for i := range links {
		links[i].turn = float64(side * links[i].turn)
	}
	return links, ok
}

// leftmost ties every piece to the one that follows it: at each node the one furthest to
// the left, so that loops which touch in a point stay apart.
func leftmost(pieces []piece, nodes int) ([]link, bool) {
	links, ok := tie(pieces, nodes, math.Inf(1), func(turn float64) float64 { return -turn })
	for i := range links {
		links[i].turn = -links[i].turn
	}
	return links, ok
}

// tie ties pieces at their nodes, those first for which a rank of the turn between
// them is least. A link has the rank for its turn. It gives false where as many pieces
// do not leave a node as come to it, or where a rank would be more than the most.
func tie(pieces []piece, nodes int, most float64, rank func(turn float64) float64) ([]link, bool) {
	out, in := groupBy(pieces, nodes, from), groupBy(pieces, nodes, to)
	links := make([]link, len(pieces))
	tied, followed := make([]bool, len(pieces)), make([]bool, len(pieces))
	type tie struct {
		i, j int32
		rank float64
	}
	var ties []tie
	for n := range int32(nodes) {
		ins, outs := in.of(n), out.of(n)
		if len(ins) != len(outs) {
			return nil, false
		}
		ties = ties[:0]
		for _, i := range ins {
			end := pieces[i].direction(pieces[i].length)
			for _, j := range outs {
				ties = append(ties, tie{i, j, rank(end.Turn(pieces[j].direction(0)))})
			}
		}
		if len(ties) > 1 {
			slices.SortFunc(ties, func(a, b tie) int {
				return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.i, b.i), cmp.Compare(a.j, b.j))
			})
		}
		for _, t := range ties {
			if tied[t.i] || followed[t.j] {
				continue
			}
			tied[t.i], followed[t.j] = true, true
			if t.rank > most {
				return nil, false
			}
			links[t.i] = link{t.j, t.rank}
		}
	}
	return links, true
}

// loops lists the closed chains of linked pieces, each from its piece of the
// lowest number.
func loops(links []link) [][]int32 {
	seen := make([]bool, len(links))
	var list [][]int32
	for i := range links {
		var chain []int32
		for j := int32(i); !seen[j]; j = links[j].next {
			seen[j] = true
			chain = append(chain, j)
		}
		if chain != nil {
			list = append(list, chain)
		}
	}
	return list
}
