package sweep

import (
"os"
"fmt"
	"math"

	"drawerwright/geom"
)

// rim is the boundary of what a disc covers whose centre keeps to its course,
// the covered to the left: the parts of sides that it touches, and about each
// corner of the course an arc of its own radius, where it is stuck. Only those
// arcs can meet, where the disc comes to one place from two; what other places
// of the disc cover of them is no boundary.
type rim struct {
	pieces []piece
	links  []link
	caps   int // how many arcs of the disc's own there are
}

// rim gives the boundary of what is covered. With only the outermost chain of
// the course kept, places within it do not count.
func (c *course) rim(outermost bool) (rim, error) {
	var w web
	r := rim{}
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
		if cap, ok := c.cap(i, touched[i].b, touched[l.next].a); ok {
			w.add(cap, int32(-1-i), end, start)
		} else {
			w.join(end, start)
		}
	}
	r.caps = len(w.curves)
	if !w.cross() {
		return r, ErrTooMany
	}
	covered := c.covers(outermost)
	for _, p := range w.pieces() {
		if !covered(p.at(p.length / 2)) {
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
	dbg := append([]piece(nil), r.pieces...)
	if r.pieces, ok = prune(r.pieces, len(w.nodes)); !ok {
		if debug { fmt.Println("rim", len(dbg), len(r.pieces)); for _, d := range dbg { fmt.Println(d.source, d.from, d.to, d.length, d.a, d.b, d.radius, d.sweep) }; for i := range c.pieces { fmt.Println("C", c.pieces[i].source, c.pieces[i].length, c.links[i].turn, c.links[i].next) } }
		return r, ErrUnsettled
	}
	if r.links, ok = pair(r.pieces, len(w.nodes), -1); !ok {
		return r, ErrUnsettled
	}
	return r, nil
}

// cap is the arc that the disc leaves at the end of piece i of its course, from
// one point that it touches to another; ok is false where they are one.
func (c *course) cap(i int, from, to geom.Point) (arc curve, ok bool) {
	l := c.links[i]
	centre := middle(c.pieces[i].b, c.pieces[l.next].a)
	v, w := sub(from, centre), sub(to, centre)
	sweep := turn(v, w)
	if sweep < 0 && l.turn > math.Pi/2 {
		sweep += 2 * math.Pi
	}
	if float64(sweep*c.radius) <= same {
		return arc, false
	}
	n := size(v)
	arc = newArc(centre, c.radius, geom.Point{X: v.X / n, Y: v.Y / n}, sweep)
	arc.a, arc.b = from, to
	return arc, true
}

// covers gives the test whether a point lies within what is covered, and not
// just on its boundary.
func (c *course) covers(outermost bool) func(geom.Point) bool {
	if len(c.pieces) == 0 {
		return func(geom.Point) bool { return false }
	}
	parts := make([]curve, len(c.pieces))
	for i := range parts {
		parts[i] = c.pieces[i].curve
	}
	index := newBoxes(parts)
	least := c.radius - noise
	return func(p geom.Point) bool {
		if !index.each(grow(geom.Rect{Min: p, Max: p}, c.radius), 0, func(i int) bool {
			return parts[i].distance(p) >= least
		}) {
			return true
		}
		if c.room(p) != free {
			return false
		}
		if !outermost {
			return true
		}
		angle := 0.0
		for i := range parts {
			angle += parts[i].winding(p)
		}
		return math.Abs(angle) < math.Pi // the chain does not go round it
	}
}

// whole tells whether a rim is all that the sides are.
func (c *course) whole(r rim) bool {
	rest := 0.0
	for i := range c.sides {
		rest += c.sides[i].length
	}
	for i := range r.pieces {
		rest -= r.pieces[i].length
	}
	return r.caps == 0 && math.Abs(rest) <= float64(same*float64(len(c.sides)))
}

// outlines gives the closed chains of linked pieces as loops. Pieces of one
// source that follow one another become one side.
func outlines(pieces []piece, links []link) []geom.Loop {
	var list []geom.Loop
	for _, chain := range loops(links) {
		if l := outline(pieces, chain); math.Abs(l.Area()) > speck {
			list = append(list, l)
		}
	}
	return list
}

func outline(pieces []piece, chain []int32) geom.Loop {
	first := 0
	for k := range chain {
		if pieces[chain[k]].source != pieces[chain[(k+len(chain)-1)%len(chain)]].source {
			first = k
			break
		}
	}
	l := make(geom.Loop, 0, len(chain)+1)
	for k := 0; k < len(chain); {
		start := &pieces[chain[(first+k)%len(chain)]]
		sweep := 0.0
		for ; k < len(chain) && pieces[chain[(first+k)%len(chain)]].source == start.source; k++ {
			sweep += pieces[chain[(first+k)%len(chain)]].sweep
		}
		if math.Abs(sweep) <= 3*math.Pi/2 {
			l = append(l, geom.Vertex{Point: start.a, Bulge: math.Tan(sweep / 4)})
			continue
		}
		// The bulge of a full turn is infinite.
		half := newArc(start.centre, start.radius, start.unit, sweep/2)
		l = append(l, geom.Vertex{Point: start.a, Bulge: math.Tan(sweep / 8)}, geom.Vertex{Point: half.b, Bulge: math.Tan(sweep / 8)})
	}
	return l
}
var debug = os.Getenv("DBG") != ""
