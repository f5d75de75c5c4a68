package brep

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// surface is what a triangle lies on: a level at a height, seen from above or below, or a
// side, with the wood to its left or to its right.
type surface struct {
	level   bool
	forward bool // looks up; the wood is to the left of the side
	height  float64
	side    int
	flank   int // 1 and more, of a floor that leans: which of the panel's pockets it is, from 1
}

// half is an edge of a face: it leaves a corner, and its twin runs back along it.
type half struct {
	from             int32
	twin, next, prev int32
	face             int32 // the triangle of which it was
	gone             bool
}

// net is the surface of a solid on its way from triangles to faces.
type net struct {
	*sides
	panel    geom.Panel
	mesh     solid.Mesh
	heights  []float64
	surfaces []surface // per triangle
	halves   []half    // three per triangle, in its order
}

// label says of each triangle on which surface it lies.
func (n *net) label() error {
	type pair [2]geom.Point
	known := map[pair]int{}
	for i := range n.mesh.Triangles {
		a, b, c := n.mesh.Corners(i)
		out := b.Sub(a).Cross(c.Sub(a))
		if a.Z == b.Z && b.Z == c.Z {
			n.surfaces = append(n.surfaces, surface{level: true, forward: out.Z > 0, height: nearest(n.heights, a.Z)})
			continue
		}
		if out.Z != 0 {
			n.surfaces = append(n.surfaces, surface{flank: n.leaningAt(a.Add(b).Add(c).Scale(1.0 / 3))})
			continue
		}
		u, v := flatten(a), flatten(b)
		if u == v {
			v = flatten(c)
		}
		// The wood is to the left of the way along which the normal is to the right.
		if v.Sub(u).Right().Dot(flatten(out)) < 0 {
			u, v = v, u
		}
		k, ok := known[pair{u, v}]
		if !ok {
			if k, ok = n.of(u, v); !ok {
				return fmt.Errorf("%w: from %.4f, %.4f to %.4f, %.4f mm", ErrLost, u.X, u.Y, v.X, v.Y)
			}
			known[pair{u, v}] = k
		}
		n.surfaces = append(n.surfaces, surface{side: k, forward: n.sides.forward(k, u, v)})
	}
	return nil
}

// leaningAt is the pocket with a floor that leans at a place.
func (n *net) leaningAt(v geom.Vec3) int {
	for i, k := range n.panel.Pockets {
		if b := k.Outline.Bounds(); k.Lean != 0 && b.Contains(geom.Around(flatten(v), flatten(v))) {
			return i + 1
		}
	}
	return 0
}

// forward reports whether the way from u to v is that of a side.
func (s *sides) forward(k int, u, v geom.Point) bool {
	one := s.list[k]
	if one.radius > 0 {
		return one.along(v) > one.along(u)
	}
	return v.Sub(u).Dot(one.b.Sub(one.a)) > 0
}

func flatten(v geom.Vec3) geom.Point { return geom.Point{X: v.X, Y: v.Y} }

// join makes the edges of all triangles, each with its twin.
func (n *net) join() {
	n.halves = make([]half, 3*len(n.mesh.Triangles))
	ways := make(map[[2]int32][]int32, len(n.halves))
	for i, t := range n.mesh.Triangles {
		for k := range 3 {
			h := int32(3*i + k)
			n.halves[h] = half{from: t[k], next: int32(3*i + (k+1)%3), prev: int32(3*i + (k+2)%3), face: int32(i)}
			way := [2]int32{t[k], t[(k+1)%3]}
			ways[way] = append(ways[way], h)
		}
	}
	for h := range n.halves {
		from, to := n.halves[h].from, n.halves[n.halves[h].next].from
		n.halves[h].twin = n.across(int32(h), ways[[2]int32{to, from}])
	}
}

// across is, of the edges that run back along one, that behind the wood of its face: where
// solids touch in an edge there are several.
func (n *net) across(h int32, back []int32) int32 {
	if len(back) == 1 {
		return back[0]
	}
	a := n.mesh.Vertices[n.halves[h].from]
	axis := n.mesh.Vertices[n.halves[n.halves[h].next].from].Sub(a)
	aside := func(h int32) geom.Vec3 { // from the edge into its face
		to := n.mesh.Vertices[n.halves[n.halves[h].prev].from].Sub(a)
		return to.Sub(axis.Scale(to.Dot(axis) / axis.Dot(axis)))
	}
	here := aside(h)
	into := here.Cross(axis).Scale(1 / axis.Norm())
	return slices.MinFunc(back, func(p, q int32) int {
		turn := func(h int32) float64 {
			w := aside(h)
			angle := math.Atan2(w.Dot(into), w.Dot(here))
			if angle <= 0 {
				angle += 2 * math.Pi
			}
			return angle
		}
		return cmp.Compare(turn(p), turn(q))
	})
}

func (n *net) link(a, b int32) { n.halves[a].next, n.halves[b].prev = b, a }

// mergeFaces takes away the edges between faces on one surface.
func (n *net) mergeFaces() {
	for i := range n.halves {
		h := int32(i)
		t := n.halves[h].twin
		if n.halves[h].gone || n.surfaces[n.halves[h].face] != n.surfaces[n.halves[t].face] {
			continue
		}
		before, after, tBefore, tAfter := n.halves[h].prev, n.halves[h].next, n.halves[t].prev, n.halves[t].next
		if tAfter != h {
			n.link(before, tAfter)
		}
		if after != t {
			n.link(tBefore, after)
		}
		n.halves[h].gone, n.halves[t].gone = true, true
	}
}

// mergeEdges takes away corners at which only two edges meet: both lie between the same two
// surfaces. Each loop keeps two.
func (n *net) mergeEdges() {
	for i := range n.halves {
		h := int32(i)
		for !n.halves[h].gone {
			m, t := n.halves[h].next, n.halves[h].twin
			back := n.halves[m].twin
			if n.halves[back].next != t || n.halves[m].next == h || n.halves[back].prev == t || m == t {
				break
			}
			n.link(h, n.halves[m].next)
			n.link(n.halves[back].prev, t)
			n.halves[t].from = n.halves[back].from
			n.halves[m].gone, n.halves[back].gone = true, true
		}
	}
}
