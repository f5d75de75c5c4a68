package planar

import (
	"cmp"
	"slices"
)

// Simple reports whether a ring touches itself nowhere but where its sides join,
// and if it does, gives an end of one of the sides concerned. Points on top of
// their predecessor are passed over; fewer than three others are not a ring.
func Simple(ring []Point) (at Point, ok bool) {
	distinct := make([]Point, 0, len(ring))
	for i, p := range ring {
		if p != ring[(i+len(ring)-1)%len(ring)] {
			distinct = append(distinct, p)
		}
	}
	n := len(distinct)
	if n < 3 {
		if len(ring) > 0 {
			at = ring[0]
		}
		return at, false
	}
	sides := make([]int, n)
	for i := range sides {
		sides[i] = i
	}
	ends := func(i int) (Point, Point) { return distinct[i], distinct[(i+1)%n] }
	left := func(i int) int32 { p, q := ends(i); return min(p.X, q.X) }
	slices.SortFunc(sides, func(i, j int) int { return cmp.Or(cmp.Compare(left(i), left(j)), cmp.Compare(i, j)) })
	var active []int
	for _, i := range sides {
		a, b := ends(i)
		kept := active[:0]
		for _, j := range active {
			c, d := ends(j)
			if max(c.X, d.X) < min(a.X, b.X) {
				continue
			}
			kept = append(kept, j)
			switch {
			case (i+1)%n == j && foldsBack(a, b, d), (j+1)%n == i && foldsBack(c, d, b):
				return b, false
			case (i+1)%n == j || (j+1)%n == i:
			case touch(a, b, c, d):
				return a, false
			}
		}
		active = append(kept, i)
	}
	return Point{}, true
}

// foldsBack reports whether the side from b to c runs back over that from a to b.
func foldsBack(a, b, c Point) bool {
	dot := int64(a.X-b.X)*int64(c.X-b.X) + int64(a.Y-b.Y)*int64(c.Y-b.Y)
	return dot > 0 && orient(a, b, c) == 0
}

// touch reports whether two sides have a point in common.
func touch(a, b, c, d Point) bool {
	if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) ||
		max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	sign := func(v int64) int { return cmp.Compare(v, 0) }
	return sign(orient(a, b, c))*sign(orient(a, b, d)) <= 0 && sign(orient(c, d, a))*sign(orient(c, d, b)) <= 0
}
