package geom

// Placement stands a panel in a box: its origin, and the directions in which
// its x and y run, two unit vectors along axes of the box. Its z, out of the
// inside face, runs along their cross product.
type Placement struct {
	Origin Vec3
	X, Y   Vec3
}

// Normal is the direction out of the inside face.
func (p Placement) Normal() Vec3 { return p.X.Cross(p.Y) }

// Apply takes a place from panel to box coordinates.
func (p Placement) Apply(v Vec3) Vec3 {
	return p.Origin.Add(p.X.Scale(v.X)).Add(p.Y.Scale(v.Y)).Add(p.Normal().Scale(v.Z))
}
