package drawing

import (
	"math"

	"drawerwright/geom"
)

// mostTurn is the angle that one cubic curve stands for: of a radius of 1 m it is
// then 1 um off the arc.
const mostTurn = math.Pi / 6

// curve is a cubic from where the last one ended.
type curve struct{ c1, c2, to geom.Point }

// curves are the cubics of an arc from a to b with a bulge other than 0. A cubic
// touches an arc of angle t and radius r at both ends with controls 4/3 tan(t/4) r
// away.
func curves(a, b geom.Point, bulge float64) []curve {
	angle := 4 * math.Atan(bulge)
	n := int(math.Ceil(math.Abs(angle)/mostTurn - 1e-9))
	// The centre is left of the chord's middle by its half length over tan(angle/2).
	mx, my := (a.X+b.X)/2, (a.Y+b.Y)/2
	k := (1 - float64(bulge*bulge)) / (4 * bulge)
	cx, cy := mx-float64(k*(b.Y-a.Y)), my+float64(k*(b.X-a.X))
	step := angle / float64(n)
	arm := 4.0 / 3 * math.Tan(step/4)
	list := make([]curve, n)
	from := geom.Point{X: a.X - cx, Y: a.Y - cy}
	start := from
	for i := range list {
		sin, cos := math.Sincos(step * float64(i+1))
		to := geom.Point{X: float64(start.X*cos) - float64(start.Y*sin), Y: float64(start.X*sin) + float64(start.Y*cos)}
		if i == n-1 {
			to = geom.Point{X: b.X - cx, Y: b.Y - cy}
		}
		list[i] = curve{
			geom.Point{X: cx + from.X - float64(arm*from.Y), Y: cy + from.Y + float64(arm*from.X)},
			geom.Point{X: cx + to.X + float64(arm*to.Y), Y: cy + to.Y - float64(arm*to.X)},
			geom.Point{X: cx + to.X, Y: cy + to.Y},
		}
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
