package solid

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
)

// Options say how finely a solid is made. The zero value asks for the defaults.
type Options struct {
	// Chord is how far a chord may be from its arc, in millimeters;
	// 0 is [DefaultChord].
	Chord float64
	// Grid is the distance of the grid that coordinates are rounded to, in
	// millimeters, a power of two. 0 takes the finest on which they are exact
	// in float32, for the plane and for the thickness apart. A panel that will
	// be placed among others needs the grid of the whole, see [geom.FineGrid].
	Grid float64
}

// exactSteps is the number of grid steps that float32 counts exactly.
const exactSteps = 1 << 24

// DefaultChord is fine enough that an arc looks round at any zoom and its area
// is right within 0.1 % from 10 mm radius up.
const DefaultChord = 0.05

// Build makes the solid of a panel, in panel coordinates. Pockets may overlap,
// leave the panel, meet each other from both faces, and go through: what
// remains is solid, and the mesh is closed in every case. The panel's loops
// must be sound ([geom.Panel.Check]); loops that cross themselves count by the
// even-odd rule. Errors wrap [geom.ErrExtent].
func Build(p geom.Panel, o Options) (Mesh, error) {
	if !(o.Chord > 0) {
		o.Chord = DefaultChord
	}
	if fraction, _ := math.Frexp(o.Grid); o.Grid > 0 && fraction != 0.5 {
		return Mesh{}, fmt.Errorf("%w: the grid %g mm is no power of two", geom.ErrExtent, o.Grid)
	}
	plane, height := o.Grid, o.Grid
	if o.Grid <= 0 {
		box := p.Outline.Bounds()
		for _, h := range p.Holes {
			box = box.Union(h.Bounds())
		}
		for _, k := range p.Pockets {
			box = box.Union(k.Outline.Bounds())
		}
		extent := math.Max(math.Max(-box.Min.X, box.Max.X), math.Max(-box.Min.Y, box.Max.Y))
		plane, height = geom.FineGrid(extent), geom.FineGrid(p.Thickness)
	}
	plan, err := geom.NewPlan(p, o.Chord, plane)
	if err != nil {
		return Mesh{}, err
	}
	if !(p.Thickness > 0 && p.Thickness <= geom.MaxExtent && p.Thickness/height <= exactSteps) {
		return Mesh{}, fmt.Errorf("%w: thickness %g mm in steps of %g", geom.ErrExtent, p.Thickness, height)
	}
	b := builder{Plan: plan, height: height, thickness: p.Thickness, spans: make([]span, len(plan.Regions))}
	for i, r := range plan.Regions {
		if r.OnPanel {
			b.spans[i] = b.newSpan(r, r.OutsideDepth)
			if r.Leans() { // it is there, though it ends in an edge
				b.spans[i] = b.newSpan(r, 0)
			}
		}
	}
	b.layOut()
	b.faces()
	for _, e := range plan.Edges {
		b.wall(e.From, e.To, e.Above, e.Below)
		b.wall(e.To, e.From, e.Below, e.Above)
	}
	return b.mesh, nil
}

// span is the height from bottom to top, in grid steps, that a region fills;
// empty where both are 0.
type span struct{ bottom, top int32 }

// newSpan is that of a region, or of one of its points, that is cut so deep from the outside face.
func (b *builder) newSpan(r geom.Region, outside float64) span {
	// Half steps go up, also those that are a last digit below: floors of both faces at one height are on one step.
	steps := func(v float64) int32 { return int32(math.Floor(v/b.height + 0.5 + 1e-6)) }
	// Depths may be far beyond the thickness.
	s := span{steps(math.Min(outside, b.thickness)), steps(b.thickness - math.Min(r.InsideDepth, b.thickness))}
	if r.Leans() {
		s.bottom = min(s.bottom, s.top)
	}
	if s.bottom > s.top || s.bottom == s.top && !r.Leans() {
		return span{}
	}
	return s
}

// at is the span of a region at a point.
func (b *builder) at(region, p int32) span {
	if r := b.Regions[region]; r.Leans() && !b.spans[region].empty() {
		return b.newSpan(r, r.OutsideDepthAt(b.Points[p]))
	}
	return b.spans[region]
}

func (s span) empty() bool { return s.top == s.bottom }

// builder makes the mesh of a plan. A mesh vertex is a plan point at a level;
// each point has the levels at which any region about it begins or ends, so that
// faces and walls that meet there use the same vertices.
type builder struct {
	*geom.Plan
	height, thickness float64
	spans             []span  // per region; of one that leans where it is highest
	first             []int32 // per point, where its levels begin; also the number of its first vertex
	levels            []int32 // ascending for each point
	mesh              Mesh
}

// layOut finds every point's levels and makes the vertices.
func (b *builder) layOut() {
	// Room for two levels from either side of every edge at both ends.
	room := make([]int32, len(b.Points)+1)
	for _, e := range b.Edges {
		room[e.From+1] += 4
		room[e.To+1] += 4
	}
	for i := 1; i < len(room); i++ {
		room[i] += room[i-1]
	}
	all := make([]int32, room[len(b.Points)])
	count := make([]int32, len(b.Points))
	put := func(p, region int32) {
		if b.spans[region].empty() {
			return
		}
		s := b.at(region, p)
		list := all[room[p] : room[p]+count[p]]
		for _, z := range [2]int32{s.bottom, s.top} {
			if !slices.Contains(list, z) {
				list = append(list, z)
			}
		}
		count[p] = int32(len(list))
	}
	for _, e := range b.Edges {
		for _, p := range [2]int32{e.From, e.To} {
			put(p, e.Above)
			put(p, e.Below)
		}
	}
	b.first = make([]int32, len(b.Points)+1)
	b.levels = all[:0]
	b.mesh.Vertices = make([]geom.Vec3, 0, len(all)/2)
	for p := range b.Points {
		b.first[p] = int32(len(b.levels))
		list := all[room[p] : room[p]+count[p]]
		slices.Sort(list)
		at := b.Place(b.Points[p])
		for _, z := range list {
			b.mesh.Vertices = append(b.mesh.Vertices, geom.Vec3{X: at.X, Y: at.Y, Z: float64(z) * b.height})
		}
		b.levels = append(b.levels, list...) // never ahead of what is still to be read
	}
	b.first[len(b.Points)] = int32(len(b.levels))
}

// vertex gives the number of the vertex at a point and one of its levels.
func (b *builder) vertex(p, level int32) int32 {
	v := b.first[p]
	for b.levels[v] != level {
		v++
	}
	return v
}

// faces adds the top and the bottom of every region.
func (b *builder) faces() {
	b.mesh.Triangles = make([][3]int32, 0, 3*len(b.Plan.Triangles))
	for _, t := range b.Plan.Triangles {
		s := b.spans[t.Region]
		if s.empty() {
			continue
		}
		low := func(p int32) int32 { return b.vertex(p, b.at(t.Region, p).bottom) }
		b.add(b.vertex(t.A, s.top), b.vertex(t.B, s.top), b.vertex(t.C, s.top))
		b.add(low(t.A), low(t.C), low(t.B))
	}
}

func (b *builder) add(i, j, k int32) {
	b.mesh.Triangles = append(b.mesh.Triangles, [3]int32{i, j, k})
}

// wall adds what shows, along the edge from u to v, of the region to its left:
// its span less that of the region to the right.
func (b *builder) wall(u, v, left, right int32) {
	if b.spans[left].empty() {
		return
	}
	l := [2]span{b.at(left, u), b.at(left, v)}
	r := [2]span{b.at(right, u), b.at(right, v)}
	apart := func(k int) bool { return r[k].top <= l[k].bottom || r[k].bottom >= l[k].top }
	if b.spans[right].empty() || apart(0) && apart(1) {
		b.strip(u, v, l)
		return
	}
	if l[0].bottom < r[0].bottom || l[1].bottom < r[1].bottom {
		b.strip(u, v, [2]span{{l[0].bottom, r[0].bottom}, {l[1].bottom, r[1].bottom}})
	}
	if r[0].top < l[0].top || r[1].top < l[1].top {
		b.strip(u, v, [2]span{{r[0].top, l[0].top}, {r[1].top, l[1].top}})
	}
}

// strip fills the upright piece of wall over the edge from u to v between the spans at both, seen from the
// right of it, using every level of both ends on the way up.
func (b *builder) strip(u, v int32, s [2]span) {
	i, iTop := b.vertex(u, s[0].bottom), b.vertex(u, s[0].top)
	j, jTop := b.vertex(v, s[1].bottom), b.vertex(v, s[1].top)
	for i < iTop || j < jTop {
		if j == jTop || i < iTop && b.levels[i+1] <= b.levels[j+1] {
			b.add(i, j, i+1)
			i++
		} else {
			b.add(i, j, j+1)
			j++
		}
	}
}
