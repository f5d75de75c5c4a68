package sweep

import (
	"math"

	"drawerwright/geom"
)

// rim is the boundary of what a disc covers whose center keeps to its course,
// the covered to the left: the parts of sides that it touches, and about each
// corner of the course an arc of its own radius, where it is stuck. Only those
// arcs can meet, where the disc comes to one place from two; what it covers of
// them from elsewhere is no boundary.
type rim struct {
	pieces []piece
	links  []link
}

// rim gives the boundary of what is covered. Alone says that the course is one
// chain around a connected thing. Then no arc is covered from elsewhere: the
// disc would go round something between the two points at which it is stuck,
// and that would hang together with nothing.
func (c *course) rim(alone bool) (rim, error) {
	w, r := newWeb(len(c.pieces)), rim{}
	touched := make([]curve, len(c.pieces))
	for i := range c.pieces {
		touched[i] = c.touched(&c.pieces[i])
		a, b := w.node(touched[i].a), w.node(touched[i].b)
		if touched[i].length <= reach {
			w.join(a, b)
		}
	}
	for i, l := range c.links {
		end, start := int32(2*i+1), 2*l.next
		if arc, ok := c.stuck(i, touched[i].b, touched[l.next].a); ok {
			w.add(arc, int32(-1-i), end, start)
		} else {
			w.join(end, start)
		}
	}
	if !alone {
		for i, p := range c.spots { // whole discs
			n, m := int32(len(w.nodes)), int32(-1-len(c.pieces)-2*i)
			for k, unit := range [...]geom.Point{{X: 1}, {X: -1}} {
				half := newArc(p, c.radius, unit, math.Pi)
				w.node(half.a)
				w.add(half, m-int32(k), n+int32(k), n+int32(1-k))
			}
		}
		if !w.cross() {
			return r, ErrTooMany
		}
	}
	covered := c.covers()
	for _, p := range w.pieces() {
		if alone || !covered(p.at(p.length/2)) {
			r.pieces = append(r.pieces, p)
		}
	}
	for i := range touched {
		a, b := w.find(int32(2*i)), w.find(int32(2*i+1))
		if t := &touched[i]; a != b || t.length > reach {
			r.pieces = append(r.pieces, piece{*t, a, b, int32(i), c.pieces[i].source, 0, t.length})
		}
	}
	ok := false
	if r.pieces, ok = prune(r.pieces, len(w.nodes)); !ok {
		return r, ErrUnsettled
	}
	if r.links, ok = pair(r.pieces, len(w.nodes), -1); !ok {
		return r, ErrUnsettled
	}
	return r, nil
}

// stuck gives the arc that the disc leaves at the end of piece i of its course, from
// one point that it touches to another; ok is false where they are one.
func (c *course) stuck(i int, from, to geom.Point) (arc curve, ok bool) {
	l := c.links[i]
	center := c.pieces[i].b.Middle(c.pieces[l.next].a)
	v, w := from.Sub(center), to.Sub(center)
	sweep := v.Turn(w)
	if sweep < 0 && l.turn > math.Pi/2 {
		sweep += 2 * math.Pi
	}
	if float64(sweep*c.radius) <= same {
		return arc, false
	}
	arc = newArc(center, c.radius, v.Unit(), sweep)
	arc.a, arc.b = from, to
	return arc, true
}

// covers gives the test whether a point on the disc in some place lies within
// what is covered, and not just on its boundary. As the sides are less than two
// radii away from it, the course is less than one, also where it lies within.
func (c *course) covers() func(geom.Point) bool {
	parts := make([]curve, 0, len(c.pieces)+len(c.spots))
	for i := range c.pieces {
		parts = append(parts, c.pieces[i].curve)
	}
	for _, p := range c.spots {
		parts = append(parts, newLine(p, p))
	}
	index := newBoxes(parts)
	least := c.radius - noise
	return func(p geom.Point) bool {
		return !index.each(geom.Rect{Min: p, Max: p}.Grow(c.radius), 0, func(i int) bool {
			return parts[i].distance(p) >= least
		})
	}
}
