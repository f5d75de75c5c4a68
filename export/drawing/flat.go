package drawing

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// chord is how far, in mm, a picture's chords may be off an arc: less than half a
// dot at 600 to the inch.
const chord = 0.02

// flat gives the chains of a shape as points.
func (s Shape) flat() (lines []geom.Ring) {
	var line geom.Ring
	end := func() {
		if line != nil {
			lines = append(lines, line)
		}
		line = nil
	}
	from := geom.Point{}
	s.follow(
		func(p geom.Point) { end(); line, from = geom.Ring{p}, p },
		func(p geom.Point) { line, from = append(line, p), p },
		func(c curve) {
			// A cubic of an angle t is r t^2/8 off its chord: n chords r t^2/(8 n^2).
			long := from.To(c.to)
			n := max(1, int(math.Ceil(math.Sqrt(long*maxTurn/8/chord))))
			for i := 1; i <= n; i++ {
				line = append(line, c.at(from, float64(i)/float64(n)))
			}
			from = c.to
		},
		func() {})
	end()
	return lines
}

// at is the place of a cubic from a at a part t of its way.
func (c curve) at(a geom.Point, t float64) geom.Point {
	u := 1 - t
	mix := func(a, b, c, d float64) float64 {
		return float64(u*u*u*a) + float64(3*u*u*t*b) + float64(3*u*t*t*c) + float64(t*t*t*d)
	}
	return geom.Point{X: mix(a.X, c.c1.X, c.c2.X, c.to.X), Y: mix(a.Y, c.c1.Y, c.c2.Y, c.to.Y)}
}

// evenOdd turns rings so that filling by winding number leaves out what an even
// number of them covers: counter-clockwise those that lie in an even number of
// others. Rings do not cross each other.
func evenOdd(rings []geom.Ring) []geom.Ring {
	out := make([]geom.Ring, 0, len(rings))
	for i, r := range rings {
		if len(r) < 3 {
			continue
		}
		in := false
		for k, other := range rings {
			if k != i && other.Contains(r[0]) {
				in = !in
			}
		}
		if (r.Area() > 0) == in {
			r = slices.Clone(r)
			slices.Reverse(r)
		}
		out = append(out, r)
	}
	return out
}

// dashes cuts a line where the pen is up.
func dashes(l []geom.Point, pattern []float64) [][]geom.Point {
	if len(pattern) == 0 {
		return [][]geom.Point{l}
	}
	var out [][]geom.Point
	k, left, down := 0, pattern[0], true
	dash := []geom.Point{l[0]}
	for i := range len(l) - 1 {
		a, b := l[i], l[i+1]
		long := a.To(b)
		for at := 0.0; at < long; {
			step := min(left, long-at)
			at += step
			left -= step
			p := a.Lerp(b, at/long)
			if down {
				dash = append(dash, p)
			}
			if left > 0 {
				continue
			}
			if down {
				out = append(out, dash)
			}
			k = (k + 1) % len(pattern)
			left, down = pattern[k], !down
			dash = []geom.Point{p}
		}
	}
	if down {
		out = append(out, dash)
	}
	return out
}
