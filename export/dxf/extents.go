package dxf

import "math"

// box is an upright rectangle, empty in its zero value.
type box struct {
	minX, minY, maxX, maxY micro
	some                   bool
}

// point widens the box to hold a point.
func (b *box) point(x, y micro) {
	if !b.some {
		*b = box{x, y, x, y, true}
		return
	}
	b.minX, b.maxX = min(b.minX, x), max(b.maxX, x)
	b.minY, b.maxY = min(b.minY, y), max(b.maxY, y)
}

// join widens the box to hold another.
func (b *box) join(o box) {
	if o.some {
		b.point(o.minX, o.minY)
		b.point(o.maxX, o.maxY)
	}
}

// beyond says whether the box leaves a square about the origin.
func (b *box) beyond(limit micro) bool {
	return b.minX < -limit || b.minY < -limit || b.maxX > limit || b.maxY > limit
}

// edge widens the box to hold the arc from p to q that p's bulge gives, its ends
// excepted. An edge without length holds nothing more.
//
// An arc reaches furthest in a direction u either at an end or, where u lies
// within the arc's own directions seen from the center, at the center plus the
// radius along u. With d the chord, n the chord turned a quarter to the left,
// t = u.d/|d| and s = u.n/|d| with the sign of the bulge, the arc's middle lies
// at s = -1 and its ends, half the included angle away, at |t| = sin(2 atan |b|)
// = 2|b|/(1+b²). The furthest point then lies
//
//	u.d/2 + |d| ((1+s) + b²(1-s)) / (4|b|)
//
// beyond p. For a flat arc 1+s is the difference of nearly equal numbers, so it
// is taken as t²/(1-s), which is the same and exact.
func (b *box) edge(p, q Vertex) {
	dx, dy := q.X-p.X, q.Y-p.Y
	chord := math.Hypot(dx, dy)
	bulge := math.Abs(p.Bulge)
	if bulge == 0 || chord == 0 {
		return
	}
	square := float64(bulge * bulge)
	ends := 2 * bulge / (1 + square)
	sign := math.Copysign(1, p.Bulge)
	reach := func(ux, uy float64) (float64, bool) {
		along := float64(ux*dx) + float64(uy*dy)
		t := along / chord
		s := sign * (float64(uy*dx) - float64(ux*dy)) / chord
		onArc := s <= 0 && math.Abs(t) <= ends
		if bulge > 1 {
			onArc = s <= 0 || math.Abs(t) >= ends
		}
		if !onArc {
			return 0, false
		}
		rise := 1 + s
		if s < 0 {
			rise = t * t / (1 - s)
		}
		return along/2 + chord*(rise+float64(square*(1-s)))/(4*bulge), true
	}
	x, y := toMicro(p.X), toMicro(p.Y)
	if r, ok := reach(1, 0); ok {
		b.point(toMicro(p.X+r), y)
	}
	if r, ok := reach(-1, 0); ok {
		b.point(toMicro(p.X-r), y)
	}
	if r, ok := reach(0, 1); ok {
		b.point(x, toMicro(p.Y+r))
	}
	if r, ok := reach(0, -1); ok {
		b.point(x, toMicro(p.Y-r))
	}
}
