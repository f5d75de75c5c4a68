package sweep

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"drawerwright/geom"
)

// polyomino outline, random, simply connected: grow cells; returns loop of one boundary (no holes).
func polyomino(s *rand.Rand, n, cells int, size float64) geom.Loop {
	for {
		in := map[[2]int]bool{{0, 0}: true}
		list := [][2]int{{0, 0}}
		for len(list) < cells {
			c := list[s.IntN(len(list))]
			d := [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}}[s.IntN(4)]
			e := [2]int{c[0] + d[0], c[1] + d[1]}
			if in[e] {
				continue
			}
			// 8-neighbourhood connectivity test to stay simply connected and free of point contacts
			ring := [][2]int{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}
			ch := 0
			for k := range 8 {
				a, b := in[[2]int{e[0] + ring[k][0], e[1] + ring[k][1]}], in[[2]int{e[0] + ring[(k+1)%8][0], e[1] + ring[(k+1)%8][1]}]
				if a != b {
					ch++
				}
			}
			if ch != 2 {
				if len(list) > 3 && s.IntN(50) == 0 {
					break
				}
				continue
			}
			in[e] = true
			list = append(list, e)
		}
		// trace
		var start [2]int
		start = list[0]
		for _, c := range list {
			if c[1] < start[1] || c[1] == start[1] && c[0] < start[0] {
				start = c
			}
		}
		x, y := start[0], start[1]
		dx, dy := 1, 0
		var l geom.Loop
		x0, y0 := x, y
		for {
			l = append(l, geom.Vertex{Point: geom.Point{X: float64(x) * size, Y: float64(y) * size}})
			x, y = x+dx, y+dy
			if x == x0 && y == y0 {
				break
			}
			// cell left-ahead and right-ahead
			cell := func(px, py int) bool { return in[[2]int{px, py}] }
			la := [2]int{x + (dx-dy-1)/2, y + (dy+dx-1)/2}
			ra := [2]int{x + (dx+dy-1)/2, y + (dy-dx-1)/2}
			switch {
			case cell(ra[0], ra[1]):
				dx, dy = dy, -dx
			case cell(la[0], la[1]):
			default:
				dx, dy = -dy, dx
			}
		}
		return l
	}
}

func TestTmpStress(t *testing.T) {
	s := rand.New(rand.NewPCG(5, 6))
	fails := map[string]int{}
	for i := range 20000 {
		size := []float64{1, 2, 5, 12.7, 6.35, 0.1}[s.IntN(6)]
		l := polyomino(s, 0, 1+s.IntN(30), size)
		kind := "plain"
		if s.IntN(3) == 0 {
			kind = "turned"
			sin, cos := math.Sincos(s.Float64() * 6.3)
			for i, v := range l {
				l[i].Point = geom.Point{v.X*cos - v.Y*sin, v.X*sin + v.Y*cos}
			}
		}
		if s.IntN(3) == 0 {
			kind += "bent"
			b := []float64{1, -1, math.Tan(math.Pi / 8), -math.Tan(math.Pi / 8), 0.2, -0.2}
			m := s.IntN(6)
			for i := range l {
				if s.IntN(3) == 0 {
					l[i].Bulge = b[m]
					if s.IntN(2) == 0 {
						l[i].Bulge = b[s.IntN(6)]
					}
				}
			}
		}
		r := size * []float64{0.5, 0.5, 0.5, 0.25, 1, 1.5, 0.75, math.Sqrt2 / 2, math.Sqrt2 / 4, 0.3, math.Sqrt(5) / 2}[s.IntN(11)]
		for w, f := range []func() error{
			func() error { _, err := Pocket(l, r); return err },
			func() error { _, err := Outside(l, r); return err },
			func() error { _, err := Line(l, r); return err },
		} {
			err := f()
			key := fmt.Sprint(w, kind, " ")
			switch {
			case err == nil:
				key += "ok"
			case errors.Is(err, ErrRing):
				key += "ring"
			default:
				key += err.Error()
				if fails[key] < 2 {
					fmt.Printf("%s r=%v %#v\n", key, r, l)
				}
			}
			fails[key]++
			_ = i
		}
	}
	for k, v := range fails {
		fmt.Println(k, v)
	}
	fmt.Println(trialCount)
}
