package solid

import (
	"errors"
	"fmt"
	"math"

	"drawerwright/geom"
)

// Mesh is a closed surface of triangles, counter-clockwise seen from outside.
// Coordinates are in millimetres and exact in float32.
type Mesh struct {
	Vertices  []geom.Vec3
	Triangles [][3]int32
}

// Corners gives the three corners of a triangle.
func (m Mesh) Corners(i int) (a, b, c geom.Vec3) {
	t := m.Triangles[i]
	return m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
}

// Normal is the unit normal of a triangle, out of the solid; NaN for a flat one,
// which [Build] never makes.
func (m Mesh) Normal(i int) geom.Vec3 {
	a, b, c := m.Corners(i)
	n := b.Sub(a).Cross(c.Sub(a))
	return n.Scale(1 / n.Norm())
}

// Volume by the divergence theorem, in cubic millimetres: the sum of the signed
// tetrahedra over a corner of the mesh.
func (m Mesh) Volume() float64 {
	sum := 0.0
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		o := m.Vertices[0]
		sum += a.Sub(o).Dot(b.Sub(o).Cross(c.Sub(o)))
	}
	return sum / 6
}

// Surface area in square millimetres.
func (m Mesh) Surface() float64 {
	sum := 0.0
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		n := b.Sub(a).Cross(c.Sub(a))
		sum += n.Norm()
	}
	return sum / 2
}

// Bounds gives the least and greatest coordinates.
func (m Mesh) Bounds() (low, high geom.Vec3) {
	if len(m.Vertices) == 0 {
		return
	}
	low, high = m.Vertices[0], m.Vertices[0]
	for _, v := range m.Vertices {
		low = geom.Vec3{X: math.Min(low.X, v.X), Y: math.Min(low.Y, v.Y), Z: math.Min(low.Z, v.Z)}
		high = geom.Vec3{X: math.Max(high.X, v.X), Y: math.Max(high.Y, v.Y), Z: math.Max(high.Z, v.Z)}
	}
	return low, high
}

// Faults that [Mesh.Check] finds.
var (
	ErrFlat   = errors.New("triangle without area")
	ErrOpen   = errors.New("edge without its opposite")
	ErrFloat  = errors.New("coordinate is not exact in float32")
	ErrInside = errors.New("surface is inside out")
)

// Check proves that the mesh is a closed, outward surface, by coordinates alone
// and as float32 holds them: every directed edge occurs as often as its
// opposite (once, but where pockets touch in an edge: then two solids' corners
// share it and it occurs twice each way), and no triangle is flat.
func (m Mesh) Check() error {
	type corner [3]float32
	type edge struct{ a, b corner }
	balance := make(map[edge]int, 3*len(m.Triangles))
	at := func(v geom.Vec3) (corner, bool) {
		k := corner{float32(v.X), float32(v.Y), float32(v.Z)}
		return k, float64(k[0]) == v.X && float64(k[1]) == v.Y && float64(k[2]) == v.Z
	}
	for i := range m.Triangles {
		var k [3]corner
		a, b, c := m.Corners(i)
		for j, v := range [3]geom.Vec3{a, b, c} {
			exact := false
			if k[j], exact = at(v); !exact {
				return fmt.Errorf("%w: triangle %d, %v", ErrFloat, i, v)
			}
		}
		if n := b.Sub(a).Cross(c.Sub(a)); n.Dot(n) == 0 {
			return fmt.Errorf("%w: number %d at %v", ErrFlat, i, a)
		}
		for j := range k {
			p, q := k[j], k[(j+1)%3]
			balance[edge{p, q}]++
			balance[edge{q, p}]--
		}
	}
	for e, n := range balance {
		if n != 0 {
			return fmt.Errorf("%w: from %v to %v", ErrOpen, e.a, e.b)
		}
	}
	if m.Volume() < 0 {
		return ErrInside
	}
	return nil
}
