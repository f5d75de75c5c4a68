package paper

import (
	"math"

	"drawerwright/geom"
)

// near finds things that may touch a rectangle among many, by the squares of the paper that they reach into.
type near[T any] struct {
	of    []T
	at    map[uint32][]int // things by their squares
	large []int            // that reach into many
}

const (
	nearSquare = 8.0 // mm: what names and leaders are about
	nearMost   = 256 // squares: a slanting line across a page has more in its box
)

// squares are the first and the last of a rectangle.
func squares(b geom.Rect) (first, last [2]int) {
	number := func(v float64) int { return int(math.Floor(v / nearSquare)) }
	return [2]int{number(b.Min.X), number(b.Min.Y)}, [2]int{number(b.Max.X), number(b.Max.Y)}
}

// squareKey is one key for a square of any paper: a map finds it in half the time that it takes for two.
func squareKey(x, y int) uint32 { return uint32(uint16(x))<<16 | uint32(uint16(y)) }

// add takes a thing within a rectangle.
func (n *near[T]) add(thing T, within geom.Rect) {
	if n.at == nil {
		n.at = make(map[uint32][]int)
	}
	i := len(n.of)
	n.of = append(n.of, thing)
	first, last := squares(within)
	if (last[0]-first[0]+1)*(last[1]-first[1]+1) > nearMost {
		n.large = append(n.large, i)
		return
	}
	for x := first[0]; x <= last[0]; x++ {
		for y := first[1]; y <= last[1]; y++ {
			n.at[squareKey(x, y)] = append(n.at[squareKey(x, y)], i)
		}
	}
}

// any reports whether one of the things that may touch a rectangle is such a one.
func (n *near[T]) any(b geom.Rect, is func(T) bool) bool {
	for _, i := range n.large {
		if is(n.of[i]) {
			return true
		}
	}
	first, last := squares(b)
	for x := first[0]; x <= last[0]; x++ {
		for y := first[1]; y <= last[1]; y++ {
			for _, i := range n.at[squareKey(x, y)] {
				if is(n.of[i]) {
					return true
				}
			}
		}
	}
	return false
}
