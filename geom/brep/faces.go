package brep

import (
	"cmp"
	"slices"

	"drawerwright/geom"
)

// loop is one around a face: its edges in order.
type loop []int32

// solids gathers what is left of the net.
func (n *net) solids() []Solid {
	loops, of := n.loops()
	places := n.places()
	// Loops of one face share a set; faces that share an edge, a body.
	faces, bodies := newSets(len(n.mesh.Triangles)), newSets(len(n.mesh.Triangles))
	for i, h := range n.halves {
		f, g := h.face, n.halves[h.twin].face
		if n.surfaces[f] == n.surfaces[g] && n.halves[i].gone {
			faces.join(f, g)
		}
		bodies.join(f, g)
	}
	var out []Solid
	body, face := map[int32]*builder{}, map[int32]int{}
	var order []*builder
	for i, l := range loops {
		b := body[bodies.of(of[i])]
		if b == nil {
			b = &builder{net: n, places: places, corner: map[int32]int{}, edge: map[int32]int{}}
			body[bodies.of(of[i])] = b
			order = append(order, b)
		}
		f := faces.of(of[i])
		k, ok := face[f]
		if !ok {
			k = len(b.out.Faces)
			face[f] = k
			b.out.Faces = append(b.out.Faces, n.face(of[i]))
		}
		b.out.Faces[k].Loops = append(b.out.Faces[k].Loops, b.uses(l))
	}
	for _, b := range order {
		for i := range b.out.Faces {
			b.outerFirst(&b.out.Faces[i])
		}
		out = append(out, b.out)
	}
	return out
}

// loops are those around all faces, each with a triangle of its face.
func (n *net) loops() (list []loop, of []int32) {
	seen := make([]bool, len(n.halves))
	for i := range n.halves {
		if n.halves[i].gone || seen[i] {
			continue
		}
		var l loop
		for h := int32(i); !seen[h]; h = n.halves[h].next {
			seen[h] = true
			l = append(l, h)
		}
		list, of = append(list, l), append(of, n.halves[i].face)
	}
	return list, of
}

// places are those of the corners that are left, by what they are in the plane.
func (n *net) places() map[geom.Point]geom.Point {
	meet := map[geom.Point][]int{}
	for _, h := range n.halves {
		if h.gone {
			continue
		}
		at := flatten(n.mesh.Vertices[h.from])
		for _, f := range [2]int32{h.face, n.halves[h.twin].face} {
			if s := n.surfaces[f]; !s.level && s.flank == 0 && !slices.Contains(meet[at], s.side) {
				meet[at] = append(meet[at], s.side)
			}
		}
	}
	out := make(map[geom.Point]geom.Point, len(meet))
	for at, list := range meet {
		slices.Sort(list)
		out[at] = n.sides.corner(at, list)
	}
	return out
}

// face is that of a triangle, without its loops.
func (n *net) face(of int32) Face {
	s := n.surfaces[of]
	if s.level {
		normal := geom.Up
		if !s.forward {
			normal = normal.Scale(-1)
		}
		return Face{At: geom.Vec3{Z: s.height}, Normal: normal}
	}
	if s.flank > 0 {
		return leaning(n.panel.Pockets[s.flank-1])
	}
	one := n.list[s.side]
	if one.radius > 0 {
		return Face{At: geom.Vec3{X: one.center.X, Y: one.center.Y}, Radius: one.radius,
			Hollow: (one.sweep > 0) != s.forward}
	}
	out := one.b.Sub(one.a).Unit().Right()
	if !s.forward {
		out = out.Scale(-1)
	}
	return Face{At: geom.Vec3{X: one.a.X, Y: one.a.Y}, Normal: geom.Vec3{X: out.X, Y: out.Y}}
}

// leaning is the floor of a pocket that leans, which looks down and away from where it is deepest.
func leaning(k geom.Pocket) Face {
	b := k.Outline.Bounds()
	low, high := k.DepthAt(b.Min.Y), k.DepthAt(b.Max.Y)
	normal := geom.Vec3{Y: high - low, Z: -b.Height()}
	return Face{At: geom.Vec3{X: b.Min.X, Y: b.Min.Y, Z: low}, Normal: normal.Scale(1 / normal.Norm())}
}

// builder makes one body.
type builder struct {
	*net
	places map[geom.Point]geom.Point
	corner map[int32]int // by the mesh's vertex
	edge   map[int32]int // by the lesser half
	out    Solid
}

func (b *builder) uses(l loop) (list []Use) {
	for _, h := range l {
		first := min(h, b.halves[h].twin)
		k, ok := b.edge[first]
		if !ok {
			k = len(b.out.Edges)
			b.edge[first] = k
			b.out.Edges = append(b.out.Edges, b.edgeOf(first))
		}
		e := b.out.Edges[k]
		// An edge with a round wall may have been turned round to run counter-clockwise.
		list = append(list, Use{k, b.turned(first, e) != (h != first)})
	}
	return list
}

// turned reports whether an edge runs against the half of which it was made.
func (b *builder) turned(h int32, e Edge) bool { return b.cornerOf(b.halves[h].from) != e.From }

func (b *builder) edgeOf(h int32) Edge {
	from, to := b.halves[h].from, b.halves[b.halves[h].twin].from
	e := Edge{From: b.cornerOf(from), To: b.cornerOf(to)}
	u, v := b.mesh.Vertices[from], b.mesh.Vertices[to]
	if u.Z != v.Z {
		return e
	}
	for _, f := range [2]int32{b.halves[h].face, b.halves[b.halves[h].twin].face} {
		s := b.surfaces[f]
		if s.level || s.flank > 0 || b.list[s.side].radius == 0 {
			continue
		}
		one := b.list[s.side]
		e.Radius, e.Center = one.radius, geom.Vec3{X: one.center.X, Y: one.center.Y, Z: b.out.Corners[e.From].Z}
		if b.forward(s.side, flatten(u), flatten(v)) != (one.sweep > 0) {
			e.From, e.To = e.To, e.From
		}
	}
	return e
}

func (b *builder) cornerOf(v int32) int {
	k, ok := b.corner[v]
	if !ok {
		k = len(b.out.Corners)
		b.corner[v] = k
		at := b.mesh.Vertices[v]
		p := b.places[flatten(at)]
		b.out.Corners = append(b.out.Corners, geom.Vec3{X: p.X, Y: p.Y, Z: nearest(b.heights, at.Z)})
	}
	return k
}

// outerFirst puts the loop around a face before those around what is left out of it.
func (b *builder) outerFirst(f *Face) {
	slices.SortStableFunc(f.Loops, func(p, q []Use) int { return cmp.Compare(b.out.Area(*f, q), b.out.Area(*f, p)) })
}

// Area is what a loop of a face encloses, in mm2, below 0 where it goes around what is left
// out.
func (s Solid) Area(f Face, loop []Use) (sum float64) {
	if f.Radius == 0 && f.Normal.Z != 0 {
		var flat geom.Loop
		for _, u := range loop {
			from, _, turn := s.Ends(u)
			flat = append(flat, geom.Vertex{Point: flatten(s.Corners[from]), Bulge: geom.BulgeOf(turn)})
		}
		return float64(flat.Area() * f.Normal.Z)
	}
	for _, u := range loop { // unrolled: what is below its level edges, to the left of them
		from, to, turn := s.Ends(u)
		a, b := s.Corners[from], s.Corners[to]
		way := float64(f.Radius * turn)
		if f.Hollow {
			way = -way
		}
		if f.Radius == 0 {
			way = b.Sub(a).Dot(geom.Up.Cross(f.Normal))
		}
		sum -= float64(way * (a.Z + b.Z) / 2)
	}
	return sum
}

// Ends are the corners of an edge in the direction of its use, and by how much it turns to
// the left between them, in radians: 0 where it is straight.
func (s Solid) Ends(u Use) (from, to int, turn float64) {
	e := s.Edges[u.Edge]
	from, to = e.From, e.To
	if e.Radius > 0 {
		turn = geom.ArcAbout(flatten(e.Center), flatten(s.Corners[from]), flatten(s.Corners[to])).Sweep()
	}
	if u.Backward {
		return to, from, -turn
	}
	return from, to, turn
}

// sets are disjoint sets of numbers.
type sets []int32

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = int32(i)
	}
	return s
}

func (s sets) of(i int32) int32 {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

func (s sets) join(i, j int32) {
	i, j = s.of(i), s.of(j)
	s[max(i, j)] = min(i, j)
}
