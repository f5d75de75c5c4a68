package picture

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/internal/planar"
	"drawerwright/geom/solid"
)

// perMM is how many steps of the integer grid of areas a millimeter has: finer than any
// printer, and solids of 30 m are within [planar.Limit].
const perMM = 1000

// Areas gives of each solid where it is seen, as loops in the picture plane that hold what an
// odd number of them covers; none of a solid that others hide.
func Areas(solids []solid.Mesh, v View) [][]geom.Loop {
	var d drawing
	first := make([]int, len(solids)+1) // the faces of solid i begin at first[i]
	var rings [][]planar.Point
	for i, m := range solids {
		d.add(m, v)
		first[i+1] = len(d.faces)
		rings = append(rings, outlineOf(m, v)...)
	}
	d.index()
	plane := planar.Arrange(rings)
	owner := make([]int, len(plane.Triangles))
	for k, t := range plane.Triangles {
		if owner[k] = -1; t.Region != 0 {
			owner[k] = d.nearest(plane, t, first)
		}
	}
	out := make([][]geom.Loop, len(solids))
	for i := range solids {
		for _, ring := range bordersIn(plane, func(k int) bool { return owner[k] == i }) {
			out[i] = append(out[i], loopOf(ring))
		}
	}
	return out
}

// outlineOf is the outline of all that the faces of a solid cover in the picture.
func outlineOf(m solid.Mesh, v View) [][]planar.Point {
	var rings [][]planar.Point
	var of []int // the plane of each ring
	planes := planesOf(m, v)
	for i, triangles := range planes {
		for _, ring := range bordersOf(triangles) {
			points := make([]planar.Point, len(ring))
			for k, n := range ring {
				points[k] = onGrid(v.At(m.Vertices[n]))
			}
			rings, of = append(rings, points), append(of, i)
		}
	}
	plane := planar.Arrange(rings)
	covered := make([]bool, plane.Regions())
	odd := make([]bool, len(planes))
	for region := range covered {
		clear(odd)
		plane.EachCover(int32(region), func(ring int) { odd[of[ring]] = !odd[of[ring]] })
		covered[region] = slices.Contains(odd, true)
	}
	return bordersIn(plane, func(k int) bool { return covered[plane.Triangles[k].Region] })
}

// planesOf are the triangles of a mesh that are turned to the eye, those in one plane together.
// Their corners are numbers of vertices, one of all at the same place.
func planesOf(m solid.Mesh, v View) (list [][][3]int32) {
	type key struct{ x, y, z, off int64 } // of the normal and of the plane, rounded
	const fine = 1e4
	same, eye := placesOf(m), v.eye()
	number := make(map[key]int)
	for i, t := range m.Triangles {
		n := m.Normal(i)
		if n.Dot(eye) <= 1e-9 {
			continue
		}
		step := func(x float64) int64 { return int64(math.Round(x * fine)) }
		k := key{step(n.X), step(n.Y), step(n.Z), step(n.Dot(m.Vertices[t[0]]))}
		at, known := number[k]
		if !known {
			at = len(list)
			number[k] = at
			list = append(list, nil)
		}
		list[at] = append(list[at], [3]int32{int32(same[t[0]]), int32(same[t[1]]), int32(same[t[2]])})
	}
	return list
}

// nearest is the solid that is seen in a triangle of the picture, -1 for none.
func (d *drawing) nearest(plane *planar.Subdivision, t planar.Triangle, first []int) int {
	a, b, c := plane.Points[t.A], plane.Points[t.B], plane.Points[t.C]
	middle := geom.Point{X: (float64(a.X) + float64(b.X) + float64(c.X)) / (3 * perMM),
		Y: (float64(a.Y) + float64(b.Y) + float64(c.Y)) / (3 * perMM)}
	best, found := math.Inf(-1), -1
	d.grid.faces.at(middle, func(i int) bool {
		if near, in := d.faces[i].over(middle); in && near > best {
			best, found = near, i
		}
		return true
	})
	if found < 0 {
		return -1
	}
	owner, exact := slices.BinarySearch(first, found)
	if !exact {
		return owner - 1
	}
	for first[owner+1] == found { // solids without a face
		owner++
	}
	return owner
}

// bordersIn are the rings about the triangles of a plane that are in.
func bordersIn(plane *planar.Subdivision, in func(k int) bool) [][]planar.Point {
	var triangles [][3]int32
	for k, t := range plane.Triangles {
		if in(k) {
			triangles = append(triangles, [3]int32{t.A, t.B, t.C})
		}
	}
	borders := bordersOf(triangles)
	rings := make([][]planar.Point, len(borders))
	for i, border := range borders {
		for _, n := range border {
			rings[i] = append(rings[i], plane.Points[n])
		}
	}
	return rings
}

// bordersOf are the rings of corners about triangles that have whole sides in common. The
// triangles lie at the left of their sides.
func bordersOf(triangles [][3]int32) (rings [][]int32) {
	type way struct{ from, to int32 }
	sides := make(map[way]bool)
	var order []way
	for _, t := range triangles {
		for k := range t {
			w := way{t[k], t[(k+1)%3]}
			if back := (way{w.to, w.from}); sides[back] { // inside
				delete(sides, back)
				continue
			}
			sides[w] = true
			order = append(order, w)
		}
	}
	next := make(map[int32][]int32)
	for _, w := range order {
		if sides[w] {
			next[w.from] = append(next[w.from], w.to)
		}
	}
	for _, w := range order {
		var ring []int32
		for at := w.from; len(next[at]) > 0; {
			ring = append(ring, at)
			to := next[at][0]
			next[at] = next[at][1:]
			at = to
		}
		if len(ring) > 2 {
			rings = append(rings, ring)
		}
	}
	return rings
}

// onGrid is a place of the picture on the grid of areas.
func onGrid(p geom.Point) planar.Point {
	step := func(mm float64) int32 {
		return int32(max(-planar.Limit, min(planar.Limit, math.Round(mm*perMM))))
	}
	return planar.Point{X: step(p.X), Y: step(p.Y)}
}

// loopOf is a ring in millimeters, without corners on straight sides.
func loopOf(ring []planar.Point) (loop geom.Loop) {
	for i, p := range ring {
		before, after := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
		ux, uy := int64(p.X-before.X), int64(p.Y-before.Y)
		if vx, vy := int64(after.X-p.X), int64(after.Y-p.Y); ux*vy == uy*vx {
			continue
		}
		loop = append(loop, geom.Vertex{Point: geom.Point{X: float64(p.X) / perMM, Y: float64(p.Y) / perMM}})
	}
	return loop
}
