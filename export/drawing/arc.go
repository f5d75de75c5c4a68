package drawing

import (
	"math"

	"drawerwright/geom"
)

// maxTurn is the angle that one cubic curve stands for: of a radius of 1 m it is
// then 1 um off the arc.
const maxTurn = math.Pi / 6

// curve is a cubic from where the last one ended.
type curve struct{ c1, c2, to geom.Point }

// curves are the cubics of an arc from a to b with a bulge other than 0. A cubic
// touches an arc of angle t and radius r at both ends with controls 4/3 tan(t/4) r
// away.
func curves(a, b geom.Point, bulge float64) []curve {
	arc := geom.Arc{A: a, B: b, Bulge: bulge}
	angle, c := arc.Sweep(), arc.Center()
	n := int(math.Ceil(math.Abs(angle)/maxTurn - 1e-9))
	step := angle / float64(n)
	arm := 4.0 / 3 * math.Tan(step/4)
	list := make([]curve, n)
	from := a.Sub(c)
	start := from
	for i := range list {
		to := start.Rotate(step * float64(i+1))
		if i == n-1 {
			to = b.Sub(c)
		}
		list[i] = curve{c.Add(from).Along(from.Left(), arm), c.Add(to).Along(to.Right(), arm), c.Add(to)}
		from = to
	}
	return list
}

// follow walks along the chains of a shape.
func (s Shape) follow(move, line func(geom.Point), bend func(curve), closePath func()) {
	for _, path := range s.Paths {
		if len(path) == 0 {
			continue
		}
		move(path[0].Point)
		n := len(path) - 1
		if s.Closed {
			n++
		}
		for i := range n {
			a, b := path[i], path[(i+1)%len(path)].Point
			switch {
			case a.Bulge != 0:
				for _, c := range curves(a.Point, b, a.Bulge) {
					bend(c)
				}
			case i < len(path)-1: // the last side of a loop is drawn by closing it
				line(b)
			}
		}
		if s.Closed {
			closePath()
		}
	}
}
