package sweep

import (
	"math"

	"drawerwright/geom"
)

// curve is a piece of a straight line or of a circle, from a to b. Places on it
// are given by their distance from a along it, in millimeters.
type curve struct {
	a, b   geom.Point
	center geom.Point
	radius float64 // 0 where straight
	sweep  float64 // in radians, positive counter-clockwise; 0 where straight
	length float64
	unit   geom.Point // the direction of a straight curve; of an arc that from the center to a
	// An arc holds the directions from its center that are no further than half
	// its sweep from its middle.
	middle  geom.Point
	cosHalf float64
}

func newLine(a, b geom.Point) curve {
	d := b.Sub(a)
	n := d.Norm()
	if n == 0 {
		return curve{a: a, b: b, unit: geom.Point{X: 1}}
	}
	return curve{a: a, b: b, length: n, unit: geom.Point{X: d.X / n, Y: d.Y / n}}
}

// newArc starts in the direction unit from the center.
func newArc(center geom.Point, radius float64, unit geom.Point, sweep float64) curve {
	c := curve{center: center, radius: radius, sweep: sweep, unit: unit}
	c.a, c.b = center.Along(unit, radius), center.Along(unit.Rotate(sweep), radius)
	c.length = float64(radius * math.Abs(sweep))
	c.middle, c.cosHalf = unit.Rotate(sweep/2), math.Cos(sweep/2)
	return c
}

// newSide is the side of a loop from a to b. An arc too flat to tell from its
// chord is that chord.
func newSide(a, b geom.Point, bulge float64) curve {
	if math.Abs(bulge)*a.To(b)/2 <= same {
		return newLine(a, b)
	}
	arc := geom.Arc{A: a, B: b, Bulge: bulge}
	center := arc.Center()
	c := newArc(center, arc.Radius(), a.Sub(center).Unit(), arc.Sweep())
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

// out is the direction from the center of an arc to the place s.
func (c *curve) out(s float64) geom.Point {
	return c.unit.Rotate(math.Copysign(s/c.radius, c.sweep))
}

func (c *curve) at(s float64) geom.Point {
	switch {
	case s <= 0:
		return c.a
	case s >= c.length:
		return c.b
	case c.straight():
		return c.a.Along(c.unit, s)
	}
	return c.center.Along(c.out(s), c.radius)
}

// direction is that of travel at the place s, of length 1.
func (c *curve) direction(s float64) geom.Point {
	switch {
	case c.straight():
		return c.unit
	case c.sweep > 0:
		return c.out(s).Left()
	}
	return c.out(s).Right()
}

// along gives the place of a point that lies on the curve's line or circle; ok
// reports whether it is on the curve, with [reach] beyond its ends.
func (c *curve) along(p geom.Point) (s float64, ok bool) {
	if c.straight() {
		s = p.Sub(c.a).Dot(c.unit)
	} else {
		angle := c.unit.Turn(p.Sub(c.center))
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

// distance from a point to the curve, in millimeters.
func (c *curve) distance(p geom.Point) float64 {
	if c.straight() {
		s := p.Sub(c.a).Dot(c.unit)
		switch {
		case s <= 0:
			return p.To(c.a)
		case s >= c.length:
			return p.To(c.b)
		}
		return math.Abs(c.unit.Cross(p.Sub(c.a)))
	}
	d := p.Sub(c.center)
	n := d.Norm()
	if d.Dot(c.middle) >= float64(n*c.cosHalf) {
		return math.Abs(n - c.radius)
	}
	return math.Min(p.To(c.a), p.To(c.b))
}

// box about the curve.
func (c *curve) box() geom.Rect {
	b := geom.Around(c.a, c.b)
	if c.straight() {
		return b
	}
	for _, d := range [...]geom.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		if d.Dot(c.middle) >= c.cosHalf {
			b = b.Include(c.center.Along(d, c.radius))
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
	p := newArc(c.center, c.radius, c.out(s), math.Copysign((t-s)/c.radius, c.sweep))
	p.a, p.b = c.at(s), c.at(t)
	return p
}

func (c *curve) reverse() curve {
	r := *c
	r.a, r.b, r.sweep = c.b, c.a, -c.sweep
	if c.straight() {
		r.unit = c.unit.Scale(-1)
	} else {
		r.unit = c.out(c.length)
	}
	return r
}

// area is what the curve adds to that of a loop, seen from o, in square millimeters.
func (c *curve) area(o geom.Point) float64 {
	sum := c.a.Sub(o).Cross(c.b.Sub(o)) / 2
	if !c.straight() {
		sum += geom.SegmentArea(c.radius, c.sweep)
	}
	return sum
}
