package kerf

import (
	"math"

	"drawerwright/geom"
)

// Distance is how near two loops of lines and arcs come to each other, in mm, and
// where on the first; 0 where they cross. Two sides that do not cross are nearest at
// an end of one of them, or where a line or an arc runs beside an arc: on the line
// through the center at right angles to the line, or on that through both centers.
func Distance(a, b geom.Loop) (least float64, at geom.Point) {
	least = math.Inf(1)
	for i := range a {
		s := sideOf(a, i)
		for k := range b {
			t := sideOf(b, k)
			if s.box().Gap(t.box()) >= least {
				continue
			}
			if d, p := s.distance(t); d < least {
				least, at = d, p
			}
		}
	}
	return least, at
}

// side is a straight or arc side; radius 0 is straight.
type side struct {
	geom.Arc
	center      geom.Point
	radius      float64
	from, sweep float64 // angles
}

func sideOf(l geom.Loop, i int) side {
	s := side{Arc: l.Arc(i)}
	if s.Bulge != 0 {
		s.center, s.radius, s.sweep = s.Center(), s.Radius(), s.Sweep()
		s.from = s.A.Sub(s.center).Angle()
	}
	return s
}

// box is about the side, or about all of its circle.
func (s side) box() geom.Rect {
	if s.radius > 0 {
		return geom.Around(s.center).Grow(s.radius)
	}
	return geom.Around(s.A, s.B)
}

// nearest is the place of a side that is nearest to a point.
func (s side) nearest(p geom.Point) geom.Point {
	if s.radius == 0 {
		return geom.Nearest(p, s.A, s.B)
	}
	if d := p.Sub(s.center); d.Norm() > 0 {
		if q := s.center.Along(d, s.radius/d.Norm()); s.has(q) {
			return q
		}
	}
	if s.A.To(p) < s.B.To(p) {
		return s.A
	}
	return s.B
}

// has reports whether a point of an arc's circle is on the arc.
func (s side) has(p geom.Point) bool {
	angle := p.Sub(s.center).Angle() - s.from
	if s.sweep < 0 {
		angle = -angle
	}
	angle = math.Mod(angle+4*math.Pi, 2*math.Pi)
	return angle <= math.Abs(s.sweep)+1e-12
}

func (s side) distance(t side) (float64, geom.Point) {
	least, at := math.Inf(1), s.A
	try := func(p geom.Point) { // of s, or near it
		q := t.nearest(p)
		p = s.nearest(q)
		if d := p.To(t.nearest(p)); d < least {
			least, at = d, p
		}
	}
	for _, p := range []geom.Point{s.A, s.B, t.A, t.B} {
		try(p)
	}
	for _, p := range s.candidates(t) {
		try(p)
	}
	for _, p := range t.candidates(s) {
		try(p)
	}
	return least, at
}

// candidates are places of s, or of what it is a part of, where it crosses t or runs
// beside it.
func (s side) candidates(t side) (list []geom.Point) {
	switch {
	case s.radius == 0 && t.radius == 0:
		d := s.B.Sub(s.A)
		if u, _, ok := geom.Meeting(s.A, d, t.A, t.B.Sub(t.A)); ok {
			list = append(list, s.A.Along(d, u))
		}
	case s.radius == 0:
		foot := s.A.Lerp(s.B, geom.Foot(t.center, s.A, s.B)) // also beyond its ends
		list = append(list, foot)
		if d := foot.To(t.center); d < t.radius {
			half := math.Sqrt(float64(t.radius*t.radius) - float64(d*d))
			along := s.B.Sub(s.A).Unit()
			list = append(list, foot.Along(along, half), foot.Along(along, -half))
		}
	case t.radius > 0:
		between := t.center.Sub(s.center)
		d := between.Norm()
		if d == 0 {
			return nil
		}
		u := between.Unit()
		at := func(along, across float64) geom.Point { return s.center.Along(u, along).Along(u.Left(), across) }
		list = append(list, at(s.radius, 0), at(-s.radius, 0))
		along := (float64(d*d) + float64(s.radius*s.radius) - float64(t.radius*t.radius)) / (2 * d)
		if h := float64(s.radius*s.radius) - float64(along*along); h >= 0 {
			list = append(list, at(along, math.Sqrt(h)), at(along, -math.Sqrt(h)))
		}
	}
	return list
}
