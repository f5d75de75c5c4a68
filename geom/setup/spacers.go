package setup

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
)

// Stack is some of a shop's spacers put together.
type Stack struct {
	Pieces []float64 // the largest first
	Height float64   // their sum
}

// maxPieces is how many spacers are put together at most: each joint between two
// adds dust and a hundredth or two; common practice, no source.
const maxPieces = 5

// Stacks gives the stacks of the shop's spacers whose height is within a range, the
// best first: nearest to what is wished, to a hundredth; then with the fewest pieces.
// No more than most are given. With no stack in the range there are none.
func Stacks(spacers []float64, in geom.Interval, wished float64, most int) []Stack {
	pieces := slices.Clone(spacers)
	slices.SortFunc(pieces, func(a, b float64) int { return cmp.Compare(b, a) })
	var found []Stack
	var chosen []float64
	var try func(from int, sum float64)
	try = func(from int, sum float64) {
		if len(chosen) > 0 && within(sum, in) {
			found = append(found, Stack{slices.Clone(chosen), sum})
			slices.SortStableFunc(found, func(a, b Stack) int { return a.compare(b, wished) })
			found = found[:min(len(found), most)]
		}
		if len(chosen) == maxPieces {
			return
		}
		for i := from; i < len(pieces); i++ {
			if i > from && pieces[i] == pieces[i-1] || sum+pieces[i] > in.Max+settle {
				continue // as the piece before it; or too high
			}
			chosen = append(chosen, pieces[i])
			try(i+1, sum+pieces[i])
			chosen = chosen[:len(chosen)-1]
		}
	}
	try(0, 0)
	return found
}

// tell is what heights of two stacks differ by at least to matter.
const tell = 0.01

func (s Stack) compare(t Stack, wished float64) int {
	off := func(h float64) float64 { return math.Round(math.Abs(h-wished) / tell) }
	if c := cmp.Compare(off(s.Height), off(t.Height)); c != 0 {
		return c
	}
	if c := len(s.Pieces) - len(t.Pieces); c != 0 {
		return c
	}
	return slices.Compare(s.Pieces, t.Pieces)
}

// Nearest is the stack that comes nearest to what is wished, whatever its height;
// none without spacers.
func Nearest(spacers []float64, wished float64) (Stack, bool) {
	total := 0.0
	for _, s := range spacers {
		total += s
	}
	list := Stacks(spacers, geom.Interval{Min: 0, Max: max(total, wished)}, wished, 1)
	if len(list) == 0 {
		return Stack{}, false
	}
	return list[0], true
}

// One finds one stack for fence and cutter height alike, within what a group takes:
// the fewest things to mix up.
func (g Group) One(spacers []float64) (Stack, bool) {
	list := Stacks(spacers, g.Fence.Intersect(g.Height), g.AtFence, 1)
	if len(list) == 0 {
		return Stack{}, false
	}
	return list[0], true
}
