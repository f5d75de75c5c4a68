package sweep

import (
	"math"
	"math/rand/v2"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// anyLoop draws simple loops: outlines of connected cells of one size, so that
// much is just as wide as something else, and loops around a middle; some
// turned, some with arcs for sides; and a radius, often of a simple ratio to
// the cells.
func anyLoop(t *rapid.T) (geom.Loop, float64) {
	s := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	for {
		l, r := draw(s, rapid.Bool().Draw(t, "arcs"))
		if _, err := sound(l); err != nil {
			continue
		}
		if sides, err := sidesOf(l, true); err == nil {
			if _, crossing := crossed(sides); !crossing {
				return l, r
			}
		}
	}
}

func draw(s *rand.Rand, arcs bool) (geom.Loop, float64) {
	size := [...]float64{1, 2, 5, 6.35, 12.7, 40}[s.IntN(6)]
	r := size * [...]float64{0.5, 0.5, 0.25, 0.75, 1, 1.5, 0.3, math.Sqrt2 / 2, math.Sqrt2 / 4}[s.IntN(9)]
	var l geom.Loop
	if s.IntN(3) > 0 {
		l = cells(s, 1+s.IntN(25), size)
	} else {
		n, low := 3+s.IntN(12), s.Float64()
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.9*s.Float64()) / float64(n))
			far := size * 5 * (low + (1-low)*s.Float64())
			l = append(l, v(far*cos, far*sin))
		}
		r = size * (0.05 + 2*s.Float64())
	}
	if arcs {
		for i := range l {
			if s.IntN(3) == 0 {
				l[i].Bulge = [...]float64{0.1, -0.1, 0.2, -0.2, math.Tan(math.Pi / 8), 1, -1}[s.IntN(7)]
			}
		}
	}
	if s.IntN(2) == 0 {
		l = turned(l, 2*math.Pi*s.Float64())
	}
	return l, r
}

// cells is the outline of a number of squares that hang together by their sides
// and close around nothing.
func cells(s *rand.Rand, n int, size float64) geom.Loop {
	type cell struct{ x, y int }
	list := []cell{{0, 0}}
	in := map[cell]bool{{0, 0}: true}
	around := [...]cell{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}
	for tries := 0; len(list) < n && tries < 500; tries++ {
		c, d := list[s.IntN(len(list))], around[2*s.IntN(4)]
		next := cell{c.x + d.x, c.y + d.y}
		changes := 0 // one run of neighbors keeps the outline in one piece
		for k, e := range around {
			f := around[(k+1)%8]
			if in[cell{next.x + e.x, next.y + e.y}] != in[cell{next.x + f.x, next.y + f.y}] {
				changes++
			}
		}
		if !in[next] && changes == 2 {
			in[next] = true
			list = append(list, next)
		}
	}
	start := list[0]
	for _, c := range list {
		if c.y < start.y || c.y == start.y && c.x < start.x {
			start = c
		}
	}
	var l geom.Loop
	x, y, dx, dy := start.x, start.y, 1, 0
	for {
		l = append(l, v(float64(x)*size, float64(y)*size))
		x, y = x+dx, y+dy
		if x == start.x && y == start.y {
			return l
		}
		ahead := func(side int) bool { return in[cell{x + (dx-side*dy-1)/2, y + (dy+side*dx-1)/2}] }
		switch {
		case ahead(-1): // a cell to the right too
			dx, dy = dy, -dx
		case !ahead(1):
			dx, dy = -dy, dx
		}
	}
}

// holds reports whether a point lies inside a loop or within a tolerance of it.
func holds(l geom.Loop, p geom.Point, tolerance float64) bool {
	angle := 0.0
	for i, a := range l {
		s := newSide(a.Point, l[(i+1)%len(l)].Point, a.Bulge)
		if s.distance(p) <= tolerance {
			return true
		}
	}
	flat := l.Flatten(tolerance / 2)
	for i, a := range flat {
		angle += a.Sub(p).Turn(flat[(i+1)%len(flat)].Sub(p))
	}
	return angle > math.Pi
}
