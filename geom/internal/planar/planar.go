// Package planar cuts the plane along the boundaries of closed rings and
// triangulates every region that results, in integers and without tolerances.
//
// [Arrange] is the one entry. It works in two steps, each from a published
// method:
//
//   - snap rounding (J. D. Hobby, "Practical segment intersection with finite
//     precision output", Computational Geometry 13, 1999; the guarantee that the
//     result has no new crossings is from L. Guibas and D. Marimont, "Rounding
//     arrangements dynamically", SoCG 1995), in snap.go;
//   - triangulation of a plane subdivision in one sweep (S. Hertel and
//     K. Mehlhorn, "Fast triangulation of simple polygons", FCT 1983), in
//     sweep.go.
package planar

import "math/bits"

// Limit bounds the magnitude of coordinates, so that every product below stays
// inside 64 bits: doubled differences have 27 bits and a cross product 55.
const Limit = 1 << 25

// Point is a point of the integer grid.
type Point struct{ X, Y int32 }

// before is the order of the sweep: by x, then by y.
func (p Point) before(q Point) bool { return p.X < q.X || p.X == q.X && p.Y < q.Y }

func compare(p, q Point) int {
	switch {
	case p.before(q):
		return -1
	case q.before(p):
		return 1
	}
	return 0
}

// orient is positive when c lies to the left of the line from a to b, negative
// to the right, 0 on it. Exact.
func orient(a, b, c Point) int64 {
	return int64(b.X-a.X)*int64(c.Y-a.Y) - int64(b.Y-a.Y)*int64(c.X-a.X)
}

// Edge is a straight piece of one or more rings between two vertices. From
// comes before To in the order of x, then y; Above is the region to its left,
// Below the region to its right.
type Edge struct{ From, To, Below, Above int32 }

// Triangle has its corners counter-clockwise and never an area of 0.
type Triangle struct{ A, B, C, Region int32 }

// Subdivision is the plane cut into regions. Two places belong to the same
// region when the same rings cover them, so a region need not be connected.
type Subdivision struct {
	Points    []Point // in the order of x, then y
	Edges     []Edge
	Triangles []Triangle // of every region, those that no ring covers included, inside a frame about everything
	covers    []uint64   // words per region
	words     int
}

// Regions is how many regions there are. Region 0 is covered by no ring.
func (s *Subdivision) Regions() int { return len(s.covers) / s.words }

// EachCover calls f with the index of every ring that covers a region, by the even-odd
// rule, in order.
func (s *Subdivision) EachCover(region int32, f func(ring int)) {
	for w, word := range s.covers[int(region)*s.words : (int(region)+1)*s.words] {
		for ; word != 0; word &= word - 1 {
			f(w*64 + bits.TrailingZeros64(word))
		}
	}
}

// Arrange cuts the plane along rings, each a closed chain of points whose last
// joins its first. Rings may touch, cross and repeat one another in any way;
// crossings between grid points move to the nearest grid point. Rings of fewer
// than three points and points on top of one another are harmless. Coordinates
// must lie within [Limit].
func Arrange(rings [][]Point) *Subdivision {
	s := &Subdivision{words: len(rings)/64 + 1}
	segments := segmentsOf(rings)
	points := hotPixels(segments)
	edges := route(segments, points, s.words)
	s.sweep(points, edges, len(rings))
	return s
}
