// Package picture draws solids as lines, those that others hide left out, for paper.
//
// The picture plane has x to the right and y up, in millimeters; the eye is far away
// on the side to which Right x Up points (a parallel projection). [Draw] takes closed
// meshes as the package solid makes them.
package picture

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// View is how the eye looks: where right and up in the picture are in the box, two
// unit vectors at right angles.
type View struct{ Right, Up geom.Vec3 }

// From is the view of an eye that stands so many degrees to the left of straight
// before the box and as many above it, upright: 45 and 35.264 is isometric.
func From(left, above float64) View {
	sin, cos := math.Sincos(left * math.Pi / 180)
	sina, cosa := math.Sincos(above * math.Pi / 180)
	// The eye is in the direction (-sin cosa, -cos cosa, sina).
	return View{Right: geom.Vec3{X: cos, Y: -sin}, Up: geom.Vec3{X: float64(sin * sina), Y: float64(cos * sina), Z: cosa}}
}

// At is where a point of the box is in the picture.
func (v View) At(p geom.Vec3) geom.Point {
	return geom.Point{X: v.Right.Dot(p), Y: v.Up.Dot(p)}
}

// eye is the direction to the eye.
func (v View) eye() geom.Vec3 {
	return v.Right.Cross(v.Up)
}

// Segment is a visible line in the picture plane.
type Segment struct{ A, B geom.Point }

const (
	// depthRoom is how much nearer to the eye, in mm, something must be to hide a line:
	// less than any gap that is to be seen, more than rounding and the step aside below.
	depthRoom = 0.02
	// aside is how far left and right of a line it is looked at whether it is hidden, in
	// mm: on the line itself faces meet that are not to count.
	aside = 1e-3
	// shortest are lines that are left out, in mm.
	shortest = 1e-3
	// facet is the cosine of the angle, 25 degrees, below which two faces are chords of
	// one arc: the solids' chords turn by less even about small holes.
	facet = 0.9063
)

// place is a point of the picture with its nearness to the eye.
type place struct {
	geom.Point
	near float64
}

// edge is a line that may be seen.
type edge struct{ a, b place }

// face is a triangle that is turned toward the eye.
type face struct{ a, b, c place }

// Draw gives the visible lines of solids: their corners, and where they turn away
// from the eye.
func Draw(solids []solid.Mesh, v View) []Segment {
	var d drawing
	for _, m := range solids {
		d.add(m, v)
	}
	d.index()
	var list []Segment
	for i, e := range d.edges {
		list = d.visible(e, i, list)
	}
	return merged(list)
}

// Between is a straight line between two places of the box.
type Between struct{ From, To geom.Vec3 }

// lookedAt is in how many parts it is asked whether a line is hidden that may go through solids.
const lookedAt = 100

// DrawBetween gives what is seen of straight lines among solids, each way from From to To.
func DrawBetween(lines []Between, solids []solid.Mesh, v View) (list []Segment) {
	if len(lines) == 0 {
		return nil
	}
	var d drawing
	for _, m := range solids {
		d.add(m, v)
	}
	d.index()
	eye := v.eye()
	for _, l := range lines {
		e := edge{place{v.At(l.From), l.From.Dot(eye)}, place{v.At(l.To), l.To.Dot(eye)}}
		from := len(list)
		for k := range lookedAt {
			part := edge{e.on(float64(k) / lookedAt), e.on(float64(k+1) / lookedAt)}
			list = d.visible(part, -1, list)
		}
		list = append(list[:from], chained(list[from:])...)
	}
	return list
}

// chained joins each segment with the next one that begins where it ends.
func chained(list []Segment) (out []Segment) {
	for _, s := range list {
		if n := len(out) - 1; n >= 0 && out[n].B.To(s.A) < shortest {
			out[n].B = s.B
			continue
		}
		out = append(out, s)
	}
	return out
}

type drawing struct {
	edges []edge
	faces []face
	grid  grid
}

// add takes in the faces of a mesh that are turned to the eye and the edges of them
// that are corners or outlines.
func (d *drawing) add(m solid.Mesh, v View) {
	eye := v.eye()
	at := func(p geom.Vec3) place { return place{v.At(p), p.Dot(eye)} }
	seen := make([]place, len(m.Vertices))
	for i, p := range m.Vertices {
		seen[i] = at(p)
	}
	same := placesOf(m)
	normals := make([]geom.Vec3, len(m.Triangles))
	sides := make([]side, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		normals[i] = m.Normal(i)
		if normals[i].Dot(eye) > 1e-9 {
			d.faces = append(d.faces, face{seen[t[0]], seen[t[1]], seen[t[2]]})
		}
		for k := range t {
			a, b := same[t[k]], same[t[(k+1)%3]]
			sides = append(sides, side{uint64(min(a, b))<<32 | uint64(max(a, b)), int32(i)})
		}
	}
	slices.SortFunc(sides, func(s, t side) int { return cmp.Or(cmp.Compare(s.ends, t.ends), cmp.Compare(s.of, t.of)) })
	for i := 0; i < len(sides); {
		n := i + 1
		for n < len(sides) && sides[n].ends == sides[i].ends {
			n++
		}
		if shows(sides[i:n], normals, eye) {
			a, b := sides[i].ends>>32, uint64(uint32(sides[i].ends))
			if compare(m.Vertices[a], m.Vertices[b]) > 0 { // the same way whichever came first
				a, b = b, a
			}
			d.edges = append(d.edges, edge{seen[a], seen[b]})
		}
		i = n
	}
}

func compare(p, q geom.Vec3) int {
	return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y), cmp.Compare(p.Z, q.Z))
}

// side is one of a triangle: its ends, the lower one above, by what placesOf gives.
type side struct {
	ends uint64
	of   int32
}

// placesOf gives each vertex the number of the first one at its place.
func placesOf(m solid.Mesh) []uint32 {
	first := make(map[geom.Vec3]uint32, len(m.Vertices))
	list := make([]uint32, len(m.Vertices))
	for i, p := range m.Vertices {
		n, known := first[p]
		if !known {
			n = uint32(i)
			first[p] = n
		}
		list[i] = n
	}
	return list
}

// shows reports whether an edge at which these sides meet is a corner, or an outline, of faces that
// are turned to the eye.
func shows(sides []side, normals []geom.Vec3, eye geom.Vec3) bool {
	turned, away, flat, sharp := false, false, true, false
	for _, s := range sides {
		if normals[s.of].Dot(eye) > 1e-9 {
			turned = true
		} else {
			away = true
		}
		c := normals[s.of].Dot(normals[sides[0].of])
		flat = flat && c > 1-1e-9
		sharp = sharp || c < facet
	}
	return turned && !flat && (sharp || away)
}

// on is the place of an edge at a part t of its way.
func (e edge) on(t float64) place {
	return place{e.a.Lerp(e.b.Point, t), e.a.near + float64(t*(e.b.near-e.a.near))}
}

// visible appends what is seen of an edge, the one of number i if it is of a solid. It can change
// only where the edge crosses another one in the picture.
func (d *drawing) visible(e edge, i int, list []Segment) []Segment {
	way := e.b.Sub(e.a.Point)
	long := way.Norm()
	if long < shortest {
		return list
	}
	cuts := []float64{0, 1}
	d.grid.edges.along(e, func(k int) {
		if k == i {
			return
		}
		f := d.edges[k]
		other := f.b.Sub(f.a.Point)
		if math.Abs(way.Cross(other)) < 1e-9 {
			// Along the same line: where the other ends.
			for _, p := range []place{f.a, f.b} {
				if v := p.Sub(e.a.Point); math.Abs(v.Cross(way)) < float64(aside*long) {
					cuts = append(cuts, v.Dot(way)/(long*long))
				}
			}
			return
		}
		if t, u, _ := geom.Meeting(e.a.Point, way, f.a.Point, other); u >= -1e-6 && u <= 1+1e-6 {
			cuts = append(cuts, t)
		}
	})
	slices.Sort(cuts)
	// Across the line in the picture.
	across := way.Left().Scale(1 / long * aside)
	from := -1.0
	end := 0.0
	flush := func() {
		if from >= 0 && float64((end-from)*long) > shortest {
			a, b := e.on(from), e.on(end)
			list = append(list, Segment{a.Point, b.Point})
		}
		from = -1
	}
	last := 0.0
	for _, t := range cuts {
		if t <= last || t > 1 {
			continue
		}
		if float64((t-last)*long) > shortest/10 {
			p := e.on((last + t) / 2)
			if d.hidden(place{p.Add(across), p.near}) && d.hidden(place{p.Sub(across), p.near}) {
				flush()
			} else if from < 0 {
				from = last
			}
		}
		last, end = t, t
	}
	flush()
	return list
}

// hidden reports whether a face is before a place.
func (d *drawing) hidden(p place) bool {
	found := false
	d.grid.faces.at(p.Point, func(i int) bool {
		near, in := d.faces[i].over(p.Point)
		found = in && near > p.near+depthRoom
		return !found
	})
	return found
}

// over is how near a face is at a place of the picture, if it is there at all.
func (f face) over(at geom.Point) (near float64, in bool) {
	cross := func(p, q place) float64 { return q.Sub(p.Point).Cross(at.Sub(p.Point)) }
	u, v, w := cross(f.b, f.c), cross(f.c, f.a), cross(f.a, f.b)
	if u < 0 || v < 0 || w < 0 || u+v+w == 0 {
		return 0, false
	}
	sum := u + v + w
	return (float64(u*f.a.near) + float64(v*f.b.near) + float64(w*f.c.near)) / sum, true
}
