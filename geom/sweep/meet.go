package sweep

import (
	"math"

	"drawerwright/geom"
)

// meeting is a point that two curves share, and its place along each.
type meeting struct {
	at   geom.Point
	s, t float64
}

// meet appends where two curves cross or touch: at most two points, or where
// one lies upon the other the ends of what they share.
func meet(c, d *curve, list []meeting) []meeting {
	switch {
	case c.straight() && d.straight():
		return lines(c, d, list)
	case c.straight():
		return lineArc(c, d, list)
	case d.straight():
		n := len(list)
		list = lineArc(d, c, list)
		for i := range list[n:] {
			m := &list[n+i]
			m.s, m.t = m.t, m.s
		}
		return list
	}
	return arcs(c, d, list)
}

func lines(c, d *curve, list []meeting) []meeting {
	sin := c.unit.Cross(d.unit)
	if math.Abs(sin)*math.Min(c.length, d.length) <= noise { // apart by as much as noise at most
		return shared(c, d, list)
	}
	s := d.a.Sub(c.a).Cross(d.unit) / sin
	return onBoth(c, d, c.a.Along(c.unit, s), list)
}

func lineArc(c, d *curve, list []meeting) []meeting {
	o := d.center.Sub(c.a)
	s, off := o.Dot(c.unit), c.unit.Cross(o)
	return chord{c.a.Along(c.unit, s), c.unit, d.radius, math.Abs(off)}.ends(c, d, list)
}

func arcs(c, d *curve, list []meeting) []meeting {
	// From the center of the lesser, or a large radius would cost digits.
	lesser, radius := c, d.radius
	if d.radius < c.radius {
		lesser, radius = d, c.radius
	}
	o := d.center.Sub(c.center)
	n := o.Norm()
	if n <= reach {
		if math.Abs(c.radius-d.radius) <= reach {
			return shared(c, d, list)
		}
		return list
	}
	u := geom.Point{X: o.X / n, Y: o.Y / n}
	if lesser == d {
		u = u.Scale(-1)
	}
	// To the line through both points.
	a := (n + float64((lesser.radius-radius)*((lesser.radius+radius)/n))) / 2
	return chord{lesser.center.Along(u, a), u.Left(), lesser.radius, math.Abs(a)}.ends(c, d, list)
}

// chord is a line that passes a circle's center at a distance, off: foot is its point
// there and along its unit direction.
type chord struct {
	foot, along geom.Point
	radius, off float64
}

// ends takes the points on both sides of the foot at which the line meets the circle,
// where both curves have them. Where the curves part by no more than noise between the
// two, they touch at the foot.
func (h chord) ends(c, d *curve, list []meeting) []meeting {
	switch deep := h.radius - h.off; {
	case deep < -noise:
		return list
	case deep <= noise:
		return onBoth(c, d, h.foot, list)
	}
	half := math.Sqrt(float64((h.radius - h.off) * (h.radius + h.off)))
	return onBoth(c, d, h.foot.Along(h.along, -half), onBoth(c, d, h.foot.Along(h.along, half), list))
}

// shared takes the ends of each curve that lie on the other.
func shared(c, d *curve, list []meeting) []meeting {
	for _, p := range [...]geom.Point{c.a, c.b} {
		if d.distance(p) <= reach {
			list = onBoth(c, d, p, list)
		}
	}
	for _, p := range [...]geom.Point{d.a, d.b} {
		if c.distance(p) <= reach {
			list = onBoth(c, d, p, list)
		}
	}
	return list
}

func onBoth(c, d *curve, p geom.Point, list []meeting) []meeting {
	s, ok := c.along(p)
	if !ok {
		return list
	}
	t, ok := d.along(p)
	if !ok {
		return list
	}
	return append(list, meeting{p, s, t})
}
