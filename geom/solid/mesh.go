package solid

import (
	"drawerwright/geom"
)

// Mesh is a closed surface of triangles, counter-clockwise seen from outside.
// Coordinates are in millimeters and exact in float32.
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

// Volume by the divergence theorem, in cubic millimeters: the sum of the signed
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
