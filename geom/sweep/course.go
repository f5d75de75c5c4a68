package sweep

import (
	"math"

	"drawerwright/geom"
)

// course is where a disc's center may be at the utmost: the boundary of all
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
	// spots are places where a disc fits without a way to go.
	spots []geom.Point
	// doubt is whether something fits or fails to by no more than [fit], so that
	// a slot that should count as wide enough may have been passed over.
	doubt bool
	// whole is whether the rails are one closed chain that meets itself nowhere
	// and is course in one place. Then all of it is: along a rail only another
	// one can tell of something else that comes nearer. So the disc reaches all
	// that there is.
	whole bool
}

// link is the piece that follows and the angle, in radians, between the two.
type link struct {
	next int32
	turn float64
}

// newCourse gives the course of a disc along a closed chain of sides. A path
// that folds back is run round at its ends. Errors wrap [ErrTooMany].
func newCourse(sides []curve, radius float64, folds bool) (*course, error) {
	c := &course{radius: radius, sides: sides, index: newBoxes(sides), web: newWeb(2 * len(sides))}
	unbroken, turns := c.lay(folds)
	if !c.web.cross() {
		return nil, ErrTooMany
	}
	if unbroken && !folds && c.web.met == 0 && c.room(c.web.curves[0].a) == free {
		c.whole = true
		return c, nil
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
	for n, p := range c.web.nodes {
		if used[c.web.find(int32(n))] {
			continue
		}
		fits := c.room(p)
		c.doubt = c.doubt || fits != blocked
		// The first nodes are the ends of rails, which may lie beyond a corner.
		if fits == free && (n >= 2*len(c.sides) || turns[n/2]) && c.offCourse(p) {
			c.spots = append(c.spots, p)
		}
	}
	return c, nil
}

// offCourse reports whether a point is none of the course, as far as that is known.
func (c *course) offCourse(p geom.Point) bool {
	for i := range c.pieces {
		if c.pieces[i].distance(p) <= same {
			return false
		}
	}
	for _, q := range c.spots {
		if p.To(q) <= same {
			return false
		}
	}
	return true
}

// lay puts down a rail for every side i, with i as its source, and for every
// corner at the end of a side that points to the left, with i and the number of
// sides. It reports whether each of them begins where the one before it ends, and
// along which sides the disc turns on the spot.
func (c *course) lay(folds bool) (unbroken bool, turns []bool) {
	n := len(c.sides)
	unbroken, turns = true, make([]bool, n)
	for i := range c.sides {
		s := &c.sides[i]
		a := s.a.Along(s.direction(0).Left(), c.radius)
		b := s.b.Along(s.direction(s.length).Left(), c.radius)
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
			rail := newArc(s.center, radius, s.unit, s.sweep)
			rail.a, rail.b = a, b
			c.web.add(rail, int32(i), from, to)
		case radius >= -reach:
			c.web.join(from, to)
			unbroken, turns[i] = false, true
		default:
			unbroken = false
		}
	}
	for i := range c.sides {
		s, next := &c.sides[i], &c.sides[(i+1)%n]
		end, start := s.direction(s.length), next.direction(0)
		from, to := int32(2*i+1), int32(2*((i+1)%n))
		angle := end.Turn(start)
		// Straight back: with everything to the left of the corner, or nothing.
		// Of a path it is everything; a loop's sides part to one side or the other.
		if folds && math.Abs(angle) > math.Pi-even {
			angle = -math.Abs(angle)
		} else if !folds && math.Abs(angle) > math.Pi-smooth {
			if within := s.curvature()+next.curvature() < 0; within && angle < 0 {
				angle += 2 * math.Pi
			} else if !within && angle > 0 {
				angle -= 2 * math.Pi
			}
		}
		switch {
		case angle >= -even && float64(c.radius*angle*angle) <= 4*noise:
			// Inside the corner the rails go on beyond where they cross, by half of
			// radius times angle, but get no nearer than an eighth of radius times
			// angle squared. That is noise, and so is where they cross.
			c.web.join(from, to)
		case angle < 0:
			rail := newArc(s.b, c.radius, end.Left(), angle)
			rail.a, rail.b = c.web.nodes[from], c.web.nodes[to]
			c.web.add(rail, int32(n+i), from, to)
		default:
			unbroken = false
		}
	}
	return unbroken, turns
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
	c.index.each(geom.Rect{Min: p, Max: p}.Grow(c.radius), 0, func(i int) bool {
		if d := c.sides[i].distance(p); d < c.radius-fit {
			state = blocked
		} else if d < c.radius-noise {
			state = tight
		}
		return state != blocked
	})
	return state
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
	if n := int32(len(c.sides)); p.source >= n {
		at := c.sides[p.source-n].b
		return newLine(at, at)
	}
	side := &c.sides[p.source]
	return side.part(c.onSide(p.whole, side, p.s), c.onSide(p.whole, side, p.t))
}

// followed is the course of a disc along the left of closed sides, in closed chains,
// the radius perturbed; one that is whole follows all of them.
func followed(sides []curve, r float64, p perturbation) (*course, error) {
	c, err := newCourse(sides, r-p.of(), false)
	if err != nil || c.whole {
		return c, err
	}
	return c, c.follow(p.strict)
}

// follow ties the pieces of the course into closed chains. Strictly it fails
// when there is doubt.
func (c *course) follow(strict bool) error {
	ok := false
	if c.pieces, ok = prune(c.pieces, len(c.web.nodes)); !ok {
		return ErrUnsettled
	}
	if c.links, ok = pair(c.pieces, len(c.web.nodes), 1); !ok {
		return ErrUnsettled
	}
	for _, l := range c.links {
		c.doubt = c.doubt || l.turn > math.Pi-smooth // there and back again
	}
	if c.doubt && strict {
		return ErrUnsettled
	}
	return nil
}
