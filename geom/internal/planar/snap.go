package planar

import (
	"cmp"
	"math/bits"
	"slices"
)

// segment is a straight side of a ring, a before b. Its ring is len(rings) for
// the frame, which keeps every region bounded and covers nothing.
type segment struct {
	a, b Point
	ring int32
}

// segmentsOf lists the sides of the rings and of a frame about them all.
func segmentsOf(rings [][]Point) []segment {
	n := 4
	for _, r := range rings {
		n += len(r)
	}
	list := make([]segment, 0, n)
	var low, high Point
	add := func(ring []Point, id int32) {
		for i, q := range ring {
			p := ring[(i+len(ring)-1)%len(ring)]
			switch {
			case p.before(q):
				list = append(list, segment{p, q, id})
			case q.before(p):
				list = append(list, segment{q, p, id})
			}
		}
	}
	for i, r := range rings {
		for _, p := range r {
			low = Point{min(low.X, p.X), min(low.Y, p.Y)}
			high = Point{max(high.X, p.X), max(high.Y, p.Y)}
		}
		add(r, int32(i))
	}
	low, high = Point{low.X - 1, low.Y - 1}, Point{high.X + 1, high.Y + 1}
	add([]Point{low, {high.X, low.Y}, high, {low.X, high.Y}}, int32(len(rings)))
	return list
}

// hotPixels lists, sorted and without repeats, the grid points that segments
// must pass through when they come within half a unit: all ends, and all
// crossings rounded to the grid.
func hotPixels(segments []segment) []Point {
	slices.SortFunc(segments, func(s, t segment) int { return cmp.Compare(s.a.X, t.a.X) })
	points := make([]Point, 0, 4*len(segments))
	var active []int32
	for i := range segments {
		s := &segments[i]
		points = append(points, s.a, s.b)
		low, high := min(s.a.Y, s.b.Y), max(s.a.Y, s.b.Y)
		kept := active[:0]
		for _, j := range active {
			t := &segments[j]
			if t.b.X < s.a.X {
				continue
			}
			kept = append(kept, j)
			if max(t.a.Y, t.b.Y) < low || min(t.a.Y, t.b.Y) > high {
				continue
			}
			if p, ok := crossing(s, t); ok {
				points = append(points, p)
			}
		}
		active = append(kept, int32(i))
	}
	slices.SortFunc(points, compare)
	return slices.Compact(points)
}

// crossing gives the grid point nearest to where the insides of two segments
// cross. Segments that only touch have an end there, which is hot already.
func crossing(s, t *segment) (Point, bool) {
	sv, tv := s.a.X == s.b.X, t.a.X == t.b.X
	sh, th := s.a.Y == s.b.Y, t.a.Y == t.b.Y
	if sv && tv || sh && th {
		return Point{}, false
	}
	a, b := orient(s.a, s.b, t.a), orient(s.a, s.b, t.b)
	if a == 0 || b == 0 || a > 0 == (b > 0) {
		return Point{}, false
	}
	c, d := orient(t.a, t.b, s.a), orient(t.a, t.b, s.b)
	if c == 0 || d == 0 || c > 0 == (d > 0) {
		return Point{}, false
	}
	// The crossing divides s in the ratio of its ends' distances from t.
	return Point{
		s.a.X + scale(s.b.X-s.a.X, c, c-d),
		s.a.Y + scale(s.b.Y-s.a.Y, c, c-d),
	}, true
}

// scale gives v*num/den for 0 <= num/den <= 1, rounded to the nearest integer,
// halves up (as pixels are closed at their lower sides). Exact.
func scale(v int32, num, den int64) int32 {
	negative := v < 0
	hi, lo := bits.Mul64(uint64(abs(int64(v))), uint64(abs(num)))
	q, r := bits.Div64(hi, lo, uint64(abs(den)))
	twice := 2 * r
	if negative {
		if twice > uint64(abs(den)) {
			q++
		}
		return -int32(q)
	}
	if twice >= uint64(abs(den)) {
		q++
	}
	return int32(q)
}

func abs(v int64) int64 {
	if v < 0 {
		return -v
	}
	return v
}

// passes reports whether a segment that is neither upright nor level meets the
// pixel about p: the square of half a unit about it, closed at its lower and
// left sides and open at the others. Exact.
func (s *segment) passes(p Point) bool {
	// Doubled coordinates, relative to the segment's start.
	dx, dy := 2*int64(s.b.X-s.a.X), 2*int64(s.b.Y-s.a.Y)
	x, y := 2*int64(p.X-s.a.X), 2*int64(p.Y-s.a.Y)
	if c := dx*y - dy*x; abs(c) > dx+abs(dy) {
		return false // the line misses the closed pixel
	}
	// In the pixel for (x-1)/dx <= t < (x+1)/dx, and likewise for y, turned
	// about when the segment falls.
	across, up := window{ratio{x - 1, dx}, ratio{x + 1, dx}}, window{ratio{y - 1, dy}, ratio{y + 1, dy}}
	if dy > 0 {
		return across.meets(up)
	}
	return across.meetsFalling(window{ratio{-y - 1, -dy}, ratio{-y + 1, -dy}})
}

// ratio is a fraction with a positive divisor.
type ratio struct{ n, d int64 }

func (r ratio) less(s ratio) bool { return r.n*s.d < s.n*r.d }

func (r ratio) atMost(s ratio) bool { return r.n*s.d <= s.n*r.d }

// window is where along a line, in parts of its segment, it is between two sides of a
// pixel; it begins before it ends.
type window struct{ from, to ratio }

// meets reports whether some part of the segment is in both windows, each closed where it
// begins and open where it ends.
func (w window) meets(v window) bool {
	return w.from.less(v.to) && v.from.less(w.to) &&
		w.to.n > 0 && v.to.n > 0 && w.from.n <= w.from.d && v.from.n <= v.from.d
}

// meetsFalling is meets with a window that is open where it begins and closed where it
// ends, as a pixel's is from above.
func (w window) meetsFalling(v window) bool {
	return w.from.atMost(v.to) && v.from.less(w.to) &&
		w.to.n > 0 && v.to.n >= 0 && w.from.n <= w.from.d && v.from.n < v.from.d
}

// byRow is the order by y, then by x.
func byRow(p, q Point) int {
	return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X))
}

// pieces is what route makes: undirected edges between points, each with the
// set of rings that run along it an odd number of times.
type pieces struct {
	from, to []int32
	rings    []uint64 // words per edge
}

// route bends every segment through the hot pixels that it passes and gives
// the pieces between them.
func route(segments []segment, points []Point, words int) pieces {
	rows := make([]int32, len(points)) // points by y, then x
	for i := range rows {
		rows[i] = int32(i)
	}
	slices.SortFunc(rows, func(i, j int32) int { return byRow(points[i], points[j]) })

	var out pieces
	hits := make([]int32, 0, 64)
	for i := range segments {
		s := &segments[i]
		hits = hits[:0]
		switch {
		case s.a.Y == s.b.Y: // level: points of the same row, already in order
			k, _ := slices.BinarySearchFunc(rows, s.a, func(i int32, p Point) int { return byRow(points[i], p) })
			for ; points[rows[k]] != s.b; k++ {
				hits = append(hits, rows[k])
			}
			hits = append(hits, rows[k])
		case s.a.X == s.b.X: // upright: points of the same column
			k, _ := slices.BinarySearchFunc(points, s.a, compare)
			for ; points[k] != s.b; k++ {
				hits = append(hits, int32(k))
			}
			hits = append(hits, int32(k))
		default:
			hits = s.hits(hits, points, rows)
		}
		for k := 1; k < len(hits); k++ {
			a, b := hits[k-1], hits[k]
			if a > b {
				a, b = b, a
			}
			out.from, out.to = append(out.from, a), append(out.to, b)
			for w := range words {
				word := uint64(0)
				if w == int(s.ring)/64 {
					word = 1 << (s.ring % 64)
				}
				out.rings = append(out.rings, word)
			}
		}
	}
	return out
}

// hits lists the points whose pixels a slanted segment passes, along it. It
// looks through the columns or the rows that the segment spans, whichever hold
// fewer points.
func (s *segment) hits(hits []int32, points []Point, rows []int32) []int32 {
	low, high := min(s.a.Y, s.b.Y), max(s.a.Y, s.b.Y)
	x0, _ := slices.BinarySearchFunc(points, s.a.X, func(p Point, x int32) int { return cmp.Compare(p.X, x) })
	x1, _ := slices.BinarySearchFunc(points, s.b.X+1, func(p Point, x int32) int { return cmp.Compare(p.X, x) })
	y0, _ := slices.BinarySearchFunc(rows, low, func(i, y int32) int { return cmp.Compare(points[i].Y, y) })
	y1, _ := slices.BinarySearchFunc(rows, high+1, func(i, y int32) int { return cmp.Compare(points[i].Y, y) })
	if x1-x0 <= y1-y0 {
		for k := x0; k < x1; k++ {
			if p := points[k]; p.Y >= low && p.Y <= high && s.passes(p) {
				hits = append(hits, int32(k))
			}
		}
	} else {
		for _, k := range rows[y0:y1] {
			if p := points[k]; p.X >= s.a.X && p.X <= s.b.X && s.passes(p) {
				hits = append(hits, k)
			}
		}
	}
	dx, dy := int64(s.b.X-s.a.X), int64(s.b.Y-s.a.Y)
	along := func(i int32) int64 { return int64(points[i].X)*dx + int64(points[i].Y)*dy }
	slices.SortFunc(hits, func(i, j int32) int { return cmp.Compare(along(i), along(j)) })
	return hits
}
