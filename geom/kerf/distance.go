package kerf

import (
	"math"

	"drawerwright/geom"
)

// Distance is how near two loops of lines and arcs come to each other, in mm, and
// where on the first; 0 where they cross. Two sides that do not cross are nearest at
// an end of one of them, or where a line or an arc runs beside an arc: on the line
// through the centre at right angles to the line, or on that through both centres.
func Distance(a, b geom.Loop) (least float64, at geom.Point) {
	least = math.Inf(1)
	for i := range a {
		s := sideOf(a, i)
		for k := range b {
			t := sideOf(b, k)
			if apart(s.box(), t.box()) >= least {
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
	a, b, centre geom.Point
	radius       float64
	from, sweep  float64 // angles
}

func sideOf(l geom.Loop, i int) side {
	a, b := l[i], l[(i+1)%len(l)].Point
	s := side{a: a.Point, b: b}
	if a.Bulge == 0 {
		return s
	}
	k := (1 - float64(a.Bulge*a.Bulge)) / (4 * a.Bulge)
	s.centre = geom.Point{X: (a.X+b.X)/2 - float64(k*(b.Y-a.Y)), Y: (a.Y+b.Y)/2 + float64(k*(b.X-a.X))}
	s.radius = s.centre.To(a.Point)
	s.from, s.sweep = math.Atan2(a.Y-s.centre.Y, a.X-s.centre.X), 4*math.Atan(a.Bulge)
	return s
}

func (s side) box() geom.Rect {
	r := geom.Rect{Min: geom.Point{X: min(s.a.X, s.b.X), Y: min(s.a.Y, s.b.Y)}, Max: geom.Point{X: max(s.a.X, s.b.X), Y: max(s.a.Y, s.b.Y)}}
	if s.radius > 0 {
		c, q := s.centre, s.radius
		r = geom.Rect{Min: geom.Point{X: c.X - q, Y: c.Y - q}, Max: geom.Point{X: c.X + q, Y: c.Y + q}}
	}
	return r
}

// nearest is the place of a side that is nearest to a point.
func (s side) nearest(p geom.Point) geom.Point {
	if s.radius == 0 {
		dx, dy := s.b.X-s.a.X, s.b.Y-s.a.Y
		long := float64(dx*dx) + float64(dy*dy)
		if long == 0 {
			return s.a
		}
		t := math.Max(0, math.Min(1, (float64((p.X-s.a.X)*dx)+float64((p.Y-s.a.Y)*dy))/long))
		return geom.Point{X: s.a.X + float64(t*dx), Y: s.a.Y + float64(t*dy)}
	}
	if d := s.centre.To(p); d > 0 {
		q := geom.Point{X: s.centre.X + float64(s.radius*(p.X-s.centre.X)/d), Y: s.centre.Y + float64(s.radius*(p.Y-s.centre.Y)/d)}
		if s.has(q) {
			return q
		}
	}
	if s.a.To(p) < s.b.To(p) {
		return s.a
	}
	return s.b
}

// has tells whether a point of an arc's circle is on the arc.
func (s side) has(p geom.Point) bool {
	angle := math.Atan2(p.Y-s.centre.Y, p.X-s.centre.X) - s.from
	if s.sweep < 0 {
		angle = -angle
	}
	angle = math.Mod(angle+4*math.Pi, 2*math.Pi)
	return angle <= math.Abs(s.sweep)+1e-12
}

func (s side) distance(t side) (float64, geom.Point) {
	least, at := math.Inf(1), s.a
	try := func(p geom.Point) { // of s, or near it
		q := t.nearest(p)
		p = s.nearest(q)
		if d := p.To(t.nearest(p)); d < least {
			least, at = d, p
		}
	}
	for _, p := range []geom.Point{s.a, s.b, t.a, t.b} {
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
		dx, dy, ex, ey := s.b.X-s.a.X, s.b.Y-s.a.Y, t.b.X-t.a.X, t.b.Y-t.a.Y
		if det := float64(dx*ey) - float64(dy*ex); det != 0 {
			u := (float64((t.a.X-s.a.X)*ey) - float64((t.a.Y-s.a.Y)*ex)) / det
			list = append(list, geom.Point{X: s.a.X + float64(u*dx), Y: s.a.Y + float64(u*dy)})
		}
	case s.radius == 0:
		foot := s.foot(t.centre)
		list = append(list, foot)
		if d := foot.To(t.centre); d < t.radius {
			half := math.Sqrt(float64(t.radius*t.radius) - float64(d*d))
			long := s.a.To(s.b)
			for _, k := range []float64{half, -half} {
				list = append(list, geom.Point{X: foot.X + float64(k*(s.b.X-s.a.X)/long), Y: foot.Y + float64(k*(s.b.Y-s.a.Y)/long)})
			}
		}
	case t.radius > 0:
		d := s.centre.To(t.centre)
		if d == 0 {
			return nil
		}
		ux, uy := (t.centre.X-s.centre.X)/d, (t.centre.Y-s.centre.Y)/d
		at := func(along, across float64) geom.Point {
			return geom.Point{X: s.centre.X + float64(along*ux) - float64(across*uy), Y: s.centre.Y + float64(along*uy) + float64(across*ux)}
		}
		list = append(list, at(s.radius, 0), at(-s.radius, 0))
		along := (float64(d*d) + float64(s.radius*s.radius) - float64(t.radius*t.radius)) / (2 * d)
		if h := float64(s.radius*s.radius) - float64(along*along); h >= 0 {
			list = append(list, at(along, math.Sqrt(h)), at(along, -math.Sqrt(h)))
		}
	}
	return list
}

// foot is the place of a line nearest to a point, also beyond its ends.
func (s side) foot(p geom.Point) geom.Point {
	dx, dy := s.b.X-s.a.X, s.b.Y-s.a.Y
	t := (float64((p.X-s.a.X)*dx) + float64((p.Y-s.a.Y)*dy)) / (float64(dx*dx) + float64(dy*dy))
	return geom.Point{X: s.a.X + float64(t*dx), Y: s.a.Y + float64(t*dy)}
}
