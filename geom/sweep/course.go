package sweep

import (
	"math"

	"drawerwright/geom"
)

// course is where a disc's centre may be at the utmost: the boundary of all
// places to the left of a chain of sides that are as far from every side as the
// radius. It is made from rails, the curves at that distance from a side or
// from a corner that points to the left; those parts are kept from which no
// other side is nearer.
type course struct {
	radius float64
	sides  []curve
	index  boxes
	web    web
	pieces []piece // of the course
	links  []link  // of each piece
	// doubt is whether something fits or fails to by no more than [fit], so that
	// a slot that should count as wide enough may have been passed over.
	doubt bool
}

// link is the piece that follows and the angle, in radians, between the two.
type link struct {
	next int32
	turn float64
}

// corner as the source of a rail is that between a side and the next.
func (c *course) corner(source int32) bool { return int(source) >= len(c.sides) }

// newCourse gives the course of a disc along a closed chain of sides. A path
// that folds back is run round at its ends. Errors wrap [ErrTooMany].
func newCourse(sides []curve, radius float64, folds bool) (*course, error) {
	c := &course{radius: radius, sides: sides, index: newBoxes(sides)}
	c.lay(folds)
	if !c.web.cross() {
		return nil, ErrTooMany
	}
	used := make([]bool, len(c.web.nodes))
	for _, p := range c.web.pieces() {
		switch c.room(p.at(p.length / 2)) {
		case free:
			c.pieces = append(c.pieces, p)
			used[p.from], used[p.to] = true, true
		case tight:
			c.doubt = true
		}
	}
	for n, p := range c.web.nodes { // a disc that has no way to go
		if c.web.find(int32(n)) == int32(n) && !used[n] && !c.doubt {
			c.doubt = c.room(p) != blocked
		}
	}
	return c, nil
}

// lay puts down a rail for every side and for every corner that points to the left.
func (c *course) lay(folds bool) {
	n := len(c.sides)
	for i := range c.sides {
		s := &c.sides[i]
		a := move(s.a, left(s.direction(0)), c.radius)
		b := move(s.b, left(s.direction(s.length)), c.radius)
		c.web.node(a)
		c.web.node(b)
		from, to := int32(2*i), int32(2*i+1)
		if s.straight() {
			c.web.add(newLine(a, b), int32(i), from, to)
			continue
		}
		radius := s.radius - math.Copysign(c.radius, s.sweep)
		switch {
		case radius > reach:
			rail := newArc(s.centre, radius, s.unit, s.sweep)
			rail.a, rail.b = a, b
			c.web.add(rail, int32(i), from, to)
		case radius >= -reach: // the disc turns on the spot
			c.web.join(from, to)
		}
	}
	for i := range c.sides {
		s, next := &c.sides[i], &c.sides[(i+1)%n]
		end, start := s.direction(s.length), next.direction(0)
		from, to := int32(2*i+1), int32(2*((i+1)%n))
		angle := turn(end, start)
		if math.Abs(angle) > math.Pi-smooth {
			// Straight back: with everything to the left of the corner, or nothing.
			angle = -math.Pi
			if !folds && s.curvature()+next.curvature() < 0 {
				angle = math.Pi
			}
		}
		switch {
		case math.Abs(angle) <= smooth:
			c.web.join(from, to)
		case angle < 0:
			rail := newArc(s.b, c.radius, left(end), angle)
			rail.a, rail.b = c.web.nodes[from], c.web.nodes[to]
			c.web.add(rail, int32(n+i), from, to)
		}
	}
}

// room is whether a disc about a point leaves every side alone.
type room uint8

const (
	free    room = iota
	tight        // no, but a disc smaller by [fit] would
	blocked      // nor would that one
)

func (c *course) room(p geom.Point) room {
	state := free
	c.index.each(grow(geom.Rect{Min: p, Max: p}, c.radius), 0, func(i int) bool {
		if d := c.sides[i].distance(p); d < c.radius-fit {
			state = blocked
		} else if d < c.radius-noise {
			state = tight
		}
		return state != blocked
	})
	return state
}

// foot is where the disc touches the sides while its centre is at the place s
// of a rail.
func (c *course) foot(rail, source int32, s float64) geom.Point {
	if c.corner(source) {
		return c.sides[int(source)-len(c.sides)].b
	}
	side := &c.sides[source]
	return side.at(c.onSide(rail, side, s))
}

// onSide is the place on a side that belongs to a place on its rail.
func (c *course) onSide(rail int32, side *curve, s float64) float64 {
	r := &c.web.curves[rail]
	if s >= r.length {
		return side.length
	}
	if side.straight() {
		return s
	}
	return s / r.length * side.length
}

// touched is the part of a side that the disc touches along a piece; it has no
// length at a corner.
func (c *course) touched(p *piece) curve {
	if c.corner(p.source) {
		at := c.foot(p.whole, p.source, p.s)
		return newLine(at, at)
	}
	side := &c.sides[p.source]
	return side.part(c.onSide(p.whole, side, p.s), c.onSide(p.whole, side, p.t))
}

// follow ties the pieces of the course into closed chains. With nothing taken
// off the radius there must be no doubt.
func (c *course) follow(share float64) error {
	ok := false
	if c.pieces, ok = prune(c.pieces, len(c.web.nodes)); !ok {
		return ErrUnsettled
	}
	if c.links, ok = pair(c.pieces, len(c.web.nodes), 1); !ok {
		return ErrUnsettled
	}
	for _, l := range c.links {
		c.doubt = c.doubt || l.turn > math.Pi-slack // there and back again
	}
	if c.doubt && share == 0 {
		return ErrUnsettled
	}
	return nil
}
