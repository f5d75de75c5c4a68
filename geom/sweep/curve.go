package sweep

import (
	"math"

	"drawerwright/geom"
)

// curve is a piece of a straight line or of a circle, from a to b. Places on it
// are told by their distance from a along it, in millimetres.
type curve struct {
	a, b   geom.Point
	centre geom.Point
	radius float64 // 0 where straight
	sweep  float64 // in radians, positive counter-clockwise; 0 where straight
	length float64
	unit   geom.Point // the direction of a straight curve; of an arc that from the centre to a
	// An arc holds the directions from its centre that are no further than half
	// its sweep from its middle.
	middle  geom.Point
	cosHalf float64
}

func newLine(a, b geom.Point) curve {
	d := sub(b, a)
	n := size(d)
	if n == 0 {
		return curve{a: a, b: b, unit: geom.Point{X: 1}}
	}
	return curve{a: a, b: b, length: n, unit: geom.Point{X: d.X / n, Y: d.Y / n}}
}

// newArc starts in the direction unit from the centre.
func newArc(centre geom.Point, radius float64, unit geom.Point, sweep float64) curve {
	c := curve{centre: centre, radius: radius, sweep: sweep, unit: unit}
	c.a, c.b = move(centre, unit, radius), move(centre, rotate(unit, sweep), radius)
	c.length = float64(radius * math.Abs(sweep))
	c.middle, c.cosHalf = rotate(unit, sweep/2), math.Cos(sweep/2)
	return c
}

// newSide is the side of a loop from a to b. An arc too flat to tell from its
// chord is that chord.
func newSide(a, b geom.Point, bulge float64) curve {
	chord := distance(a, b)
	if math.Abs(bulge)*chord/2 <= same {
		return newLine(a, b)
	}
	k := (1 - float64(bulge*bulge)) / (4 * bulge)
	d := sub(b, a)
	centre := move(middle(a, b), left(d), k)
	radius := chord * (1 + float64(bulge*bulge)) / (4 * math.Abs(bulge))
	out := sub(a, centre)
	n := size(out)
	c := newArc(centre, radius, geom.Point{X: out.X / n, Y: out.Y / n}, 4*math.Atan(bulge))
	c.a, c.b = a, b
	return c
}

func (c *curve) straight() bool { return c.radius == 0 }

// curvature in 1/mm, positive to the left.
func (c *curve) curvature() float64 {
	if c.straight() {
		return 0
	}
	return math.Copysign(1/c.radius, c.sweep)
}

// out is the direction from the centre of an arc to the place s.
func (c *curve) out(s float64) geom.Point {
	return rotate(c.unit, math.Copysign(s/c.radius, c.sweep))
}

func (c *curve) at(s float64) geom.Point {
	switch {
	case s <= 0:
		return c.a
	case s >= c.length:
		return c.b
	case c.straight():
		return move(c.a, c.unit, s)
	}
	return move(c.centre, c.out(s), c.radius)
}

// direction is that of travel at the place s, of length 1.
func (c *curve) direction(s float64) geom.Point {
	switch {
	case c.straight():
		return c.unit
	case c.sweep > 0:
		return left(c.out(s))
	}
	return right(c.out(s))
}

// along gives the place of a point that lies on the curve's line or circle; ok
// tells whether it is on the curve, with [reach] beyond its ends.
func (c *curve) along(p geom.Point) (s float64, ok bool) {
	if c.straight() {
		s = dot(sub(p, c.a), c.unit)
	} else {
		angle := turn(c.unit, sub(p, c.centre))
		if c.sweep < 0 {
			angle = -angle
		}
		if float64(angle*c.radius) < -reach {
			angle += 2 * math.Pi
		}
		s = float64(angle * c.radius)
	}
	return math.Max(0, math.Min(s, c.length)), s >= -reach && s <= c.length+reach
}

// distance from a point to the curve, in millimetres.
func (c *curve) distance(p geom.Point) float64 {
	if c.straight() {
		s := dot(sub(p, c.a), c.unit)
		switch {
		case s <= 0:
			return distance(p, c.a)
		case s >= c.length:
			return distance(p, c.b)
		}
		return math.Abs(cross(c.unit, sub(p, c.a)))
	}
	d := sub(p, c.centre)
	n := size(d)
	if dot(d, c.middle) >= float64(n*c.cosHalf) {
		return math.Abs(n - c.radius)
	}
	return math.Min(distance(p, c.a), distance(p, c.b))
}

// box about the curve.
func (c *curve) box() geom.Rect {
	b := geom.Rect{Min: c.a, Max: c.a}.Union(geom.Rect{Min: c.b, Max: c.b})
	if c.straight() {
		return b
	}
	for _, d := range [...]geom.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		if dot(d, c.middle) >= c.cosHalf {
			p := move(c.centre, d, c.radius)
			b = b.Union(geom.Rect{Min: p, Max: p})
		}
	}
	return b
}

// part is the curve between two places.
func (c *curve) part(s, t float64) curve {
	if s <= 0 && t >= c.length {
		return *c
	}
	if c.straight() {
		p := newLine(c.at(s), c.at(t))
		p.unit = c.unit
		return p
	}
	p := newArc(c.centre, c.radius, c.out(s), math.Copysign((t-s)/c.radius, c.sweep))
	p.a, p.b = c.at(s), c.at(t)
	return p
}

func (c *curve) reverse() curve {
	r := *c
	r.a, r.b, r.sweep = c.b, c.a, -c.sweep
	if c.straight() {
		r.unit = geom.Point{X: -c.unit.X, Y: -c.unit.Y}
	} else {
		r.unit = c.out(c.length)
	}
	return r
}

// area is what the curve adds to that of a loop, seen from o, in square millimetres.
func (c *curve) area(o geom.Point) float64 {
	sum := cross(sub(c.a, o), sub(c.b, o)) / 2
	if !c.straight() {
		sum += float64(c.radius * c.radius / 2 * (c.sweep - math.Sin(c.sweep)))
	}
	return sum
}
