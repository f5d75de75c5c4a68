package solid

import (
	"math"

	"drawerwright/geom"
)

// Place moves a mesh into the box. Rotation is exact; the origin is rounded to
// the grid that the mesh was built on (its [Options.Grid]), so that coordinates
// stay exact in float32 and no triangle is lost.
func (m Mesh) Place(p geom.Placement, grid float64) Mesh {
	p.Origin = roundTo(p.Origin, grid)
	out := Mesh{Vertices: make([]geom.Vec3, len(m.Vertices)), Triangles: m.Triangles}
	for i, v := range m.Vertices {
		out.Vertices[i] = p.Apply(v)
	}
	return out
}

// Join puts meshes into one. Parts keep their own shells.
func Join(meshes ...Mesh) Mesh {
	var out Mesh
	for _, m := range meshes {
		base := int32(len(out.Vertices))
		out.Vertices = append(out.Vertices, m.Vertices...)
		for _, t := range m.Triangles {
			out.Triangles = append(out.Triangles, [3]int32{t[0] + base, t[1] + base, t[2] + base})
		}
	}
	return out
}

func roundTo(v geom.Vec3, grid float64) geom.Vec3 {
	return geom.Vec3{X: math.Round(v.X/grid) * grid, Y: math.Round(v.Y/grid) * grid, Z: math.Round(v.Z/grid) * grid}
}

// Explode moves a panel's place by a distance along its outside face, so that a
// box opens the way it is put together: sides, front and back outward, the
// bottom down.
func Explode(p geom.Placement, by float64) geom.Placement {
	p.Origin = p.Origin.Sub(p.Normal().Scale(by))
	return p
}
