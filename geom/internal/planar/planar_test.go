package planar

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// twiceArea is exact for a ring of grid points, positive counter-clockwise.
func twiceArea(ring []Point) int64 {
	sum := int64(0)
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += int64(p.X)*int64(q.Y) - int64(q.X)*int64(p.Y)
	}
	return sum
}

// check asserts what every Subdivision promises: (1) triangles are
// counter-clockwise and not empty; (2) they fill the frame exactly; (3) each of
// their sides is shared by two of them, but for the frame's; (4) the side of a
// triangle between two regions is an Edge that names both; (5) edges run from
// the lesser point to the greater and have different regions at their sides,
// but for the frame's.
func check(t interface{ Fatalf(string, ...any) }, s *Subdivision) {
	type pair [2]int32
	sides := map[pair]int32{}
	total := int64(0)
	for _, tr := range s.Triangles {
		a, b, c := s.Points[tr.A], s.Points[tr.B], s.Points[tr.C]
		area := orient(a, b, c)
		if area <= 0 {
			t.Fatalf("triangle %v %v %v has twice the area %d", a, b, c, area)
		}
		total += area
		for _, side := range []pair{{tr.A, tr.B}, {tr.B, tr.C}, {tr.C, tr.A}} {
			if _, twice := sides[side]; twice {
				t.Fatalf("side %v lies in two triangles the same way round", side)
			}
			sides[side] = tr.Region
		}
	}
	first, last := s.Points[0], s.Points[len(s.Points)-1]
	frame := 2 * int64(last.X-first.X) * int64(last.Y-first.Y)
	if total != frame {
		t.Fatalf("triangles fill %d of %d", total, frame)
	}
	onFrame := func(p, q Point) bool {
		return p.X == q.X && (p.X == first.X || p.X == last.X) || p.Y == q.Y && (p.Y == first.Y || p.Y == last.Y)
	}
	edges := map[pair]Edge{}
	for _, e := range s.Edges {
		if e.From >= e.To || e.Above == e.Below && !onFrame(s.Points[e.From], s.Points[e.To]) {
			t.Fatalf("edge %v runs backward or divides nothing", e)
		}
		edges[pair{e.From, e.To}] = e
	}
	for side, region := range sides {
		other, shared := sides[pair{side[1], side[0]}]
		if !shared {
			if !onFrame(s.Points[side[0]], s.Points[side[1]]) {
				t.Fatalf("side %v has no opposite", side)
			}
			continue
		}
		e, isEdge := edges[pair{min(side[0], side[1]), max(side[0], side[1])}]
		left, right := region, other
		if side[0] > side[1] {
			left, right = other, region
		}
		if isEdge && (e.Above != left || e.Below != right) {
			t.Fatalf("edge %v between triangles of regions %d (above) and %d", e, left, right)
		}
		if !isEdge && region != other {
			t.Fatalf("regions %d and %d meet without an edge", region, other)
		}
	}
}

func TestArrangeKnownRegions(t *testing.T) {
	square := func(x0, y0, x1, y1 int32) []Point { return []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	for name, c := range map[string]struct {
		rings [][]Point
		areas map[uint64]int64 // twice the area by the set of rings that cover it
	}{
		"nothing":         {nil, map[uint64]int64{}},
		"one":             {[][]Point{square(0, 0, 10, 10)}, map[uint64]int64{1: 200}},
		"overlap":         {[][]Point{square(0, 0, 10, 10), square(5, 5, 15, 15)}, map[uint64]int64{1: 150, 3: 50, 2: 150}},
		"same twice":      {[][]Point{square(0, 0, 10, 10), square(0, 0, 10, 10)}, map[uint64]int64{3: 200}},
		"island":          {[][]Point{square(0, 0, 30, 30), square(10, 10, 20, 20)}, map[uint64]int64{1: 1600, 3: 200}},
		"apart, stacked":  {[][]Point{square(0, 0, 10, 10), square(0, 20, 10, 30)}, map[uint64]int64{1: 200, 2: 200}},
		"side by side":    {[][]Point{square(0, 0, 10, 10), square(10, 0, 20, 10)}, map[uint64]int64{1: 200, 2: 200}},
		"at a corner":     {[][]Point{square(0, 0, 10, 10), square(10, 10, 20, 20)}, map[uint64]int64{1: 200, 2: 200}},
		"a spike is none": {[][]Point{{{0, 0}, {10, 0}, {5, 0}}}, map[uint64]int64{}},
		// The diagonals of a square meet at (5,5): four triangles of 25 each.
		"bow tie": {[][]Point{{{0, 0}, {10, 10}, {10, 0}, {0, 10}}}, map[uint64]int64{1: 100}},
	} {
		t.Run(name, func(t *testing.T) {
			s := Arrange(c.rings)
			check(t, s)
			got := map[uint64]int64{}
			for _, tr := range s.Triangles {
				set := uint64(0)
				s.EachCover(tr.Region, func(r int) { set |= 1 << r })
				if set != 0 {
					got[set] += orient(s.Points[tr.A], s.Points[tr.B], s.Points[tr.C])
				}
			}
			if len(got) != len(c.areas) {
				t.Fatalf("regions %v, want %v", got, c.areas)
			}
			for set, area := range c.areas {
				if got[set] != area {
					t.Errorf("set %b: twice the area %d, want %d", set, got[set], area)
				}
			}
		})
	}
}

// TestArrangeAnyRings puts random, self-crossing, overlapping and degenerate
// rings through every promise. On a coarse grid, rounding moves much.
func TestArrangeAnyRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]int32{3, 8, 40, 1000, 1 << 24}).Draw(t, "size")
		coord := rapid.Int32Range(-size, size)
		point := rapid.Custom(func(t *rapid.T) Point { return Point{coord.Draw(t, "x"), coord.Draw(t, "y")} })
		rings := rapid.SliceOfN(rapid.SliceOfN(point, 0, 9), 0, 12).Draw(t, "rings")
		check(t, Arrange(rings))
	})
}

// TestPasses compares with rational arithmetic: a segment meets a half-open
// pixel when one of the places at which it crosses the lines of the pixel's
// sides, an end, or a place between two of those lies in it.
func TestPasses(t *testing.T) {
	inPixel := func(s segment, p Point, at *big.Rat) bool {
		within := func(from, to, center int32) bool {
			v := new(big.Rat).Mul(at, big.NewRat(int64(to-from), 1))
			v.Add(v, big.NewRat(int64(from-center), 1))
			return v.Cmp(big.NewRat(-1, 2)) >= 0 && v.Cmp(big.NewRat(1, 2)) < 0
		}
		return within(s.a.X, s.b.X, p.X) && within(s.a.Y, s.b.Y, p.Y)
	}
	met := map[bool]int{}
	const reach = 6 // every slope and pixel up to here; only differences matter
	for bx := int32(1); bx <= reach; bx++ {
		for by := int32(-reach); by <= reach; by++ {
			for px := int32(-1); px <= bx+1; px++ {
				for py := int32(-reach - 1); py <= reach+1; py++ {
					s, p := segment{b: Point{bx, by}}, Point{px, py}
					if by == 0 {
						continue // routed without asking
					}
					places := []*big.Rat{big.NewRat(0, 1), big.NewRat(1, 1)}
					for _, half := range []int64{-1, 1} {
						for _, at := range []*big.Rat{big.NewRat(2*int64(px)+half, 2*int64(bx)), big.NewRat(2*int64(py)+half, 2*int64(by))} {
							if at.Sign() >= 0 && at.Cmp(big.NewRat(1, 1)) <= 0 {
								places = append(places, at)
							}
						}
					}
					want := false
					for _, a := range places {
						for _, b := range places {
							middle := new(big.Rat).Add(a, b)
							want = want || inPixel(s, p, middle.Mul(middle, big.NewRat(1, 2)))
						}
					}
					met[want]++
					if got := s.passes(p); got != want {
						t.Errorf("%v to %v and the pixel about %v: %t, want %t", s.a, s.b, p, got, want)
					}
				}
			}
		}
	}
	if met[true] == 0 || met[false] == 0 {
		t.Errorf("one-sided: %v", met)
	}
}

// TestArrangeManyRings goes beyond one word of rings, and compares each ring's
// area with its own: rounding moves a simple ring's sides by half a unit.
func TestArrangeManyRings(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	rings := make([][]Point, 150)
	for i := range rings {
		x, y, r := random.Float64()*1e6, random.Float64()*1e6, 1e4+random.Float64()*1e5
		for k := range 5 {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + random.Float64()*0.9) / 5)
			rings[i] = append(rings[i], Point{int32(x + r*cos), int32(y + r*sin)})
		}
	}
	s := Arrange(rings)
	check(t, s)
	areas := make([]int64, len(rings))
	for _, tr := range s.Triangles {
		s.EachCover(tr.Region, func(r int) { areas[r] += orient(s.Points[tr.A], s.Points[tr.B], s.Points[tr.C]) })
	}
	for i, ring := range rings {
		perimeter := 0.0
		for k, p := range ring {
			q := ring[(k+1)%len(ring)]
			perimeter += math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y))
		}
		if d := math.Abs(float64(areas[i] - twiceArea(ring))); d > perimeter*math.Sqrt2 {
			t.Errorf("ring %d: twice the area is off by %g, more than half a unit along %g", i, d, perimeter)
		}
	}
}

// TestTurned: a quarter turn of everything keeps every area.
func TestTurned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coord := rapid.Int32Range(0, 30)
		rect := rapid.Custom(func(t *rapid.T) []Point {
			x, y, w, h := coord.Draw(t, "x"), coord.Draw(t, "y"), coord.Draw(t, "w"), coord.Draw(t, "h")
			return []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
		})
		rings := rapid.SliceOfN(rect, 1, 8).Draw(t, "rings")
		turned := make([][]Point, len(rings))
		for i, r := range rings {
			for _, p := range r {
				turned[i] = append(turned[i], Point{-p.Y, p.X})
			}
		}
		areas := func(rings [][]Point) map[uint64]int64 {
			s, m := Arrange(rings), map[uint64]int64{}
			check(t, s)
			for _, tr := range s.Triangles {
				set := uint64(0)
				s.EachCover(tr.Region, func(r int) { set |= 1 << r })
				if set != 0 {
					m[set] += orient(s.Points[tr.A], s.Points[tr.B], s.Points[tr.C])
				}
			}
			return m
		}
		a, b := areas(rings), areas(turned)
		for set, area := range a {
			if b[set] != area {
				t.Fatalf("rings %b cover %d, turned %d", set, area, b[set])
			}
		}
	})
}

func BenchmarkArrange(b *testing.B) {
	random := rand.New(rand.NewPCG(3, 4))
	rings := [][]Point{{{0, 0}, {1 << 24, 0}, {1 << 24, 1 << 22}, {0, 1 << 22}}}
	for range 30 {
		x, y := random.Int32N(1<<23), random.Int32N(1<<21)
		w, h := random.Int32N(1<<23), random.Int32N(1<<21)
		rings = append(rings, []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}})
	}
	for b.Loop() {
		Arrange(rings)
	}
	s := Arrange(rings)
	b.ReportMetric(float64(len(s.Edges)), "edges")
}
