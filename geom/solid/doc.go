// Package solid turns panels into triangle meshes that are closed by
// construction, and stands them in a box.
//
// [Build] makes the solid of one panel, [Mesh.Place] moves it where it belongs,
// and geomtest.CheckMesh is the invariant that all its tests share.
package solid
