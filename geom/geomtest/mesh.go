package geomtest

import (
	"errors"
	"fmt"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// Faults that [CheckMesh] finds.
var (
	ErrFlat   = errors.New("triangle without area")
	ErrOpen   = errors.New("edge without its opposite")
	ErrFloat  = errors.New("coordinate is not exact in float32")
	ErrInside = errors.New("surface is inside out")
)

// CheckMesh proves that a mesh is a closed, outward surface, by coordinates alone
// and as float32 holds them: every directed edge occurs as often as its
// opposite (once, but where pockets touch in an edge: then two solids' corners
// share it and it occurs twice each way), and no triangle is flat.
func CheckMesh(m solid.Mesh) error {
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

// Extent is the least and the greatest coordinates of a mesh, in mm.
func Extent(m solid.Mesh) (low, high geom.Vec3) {
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
