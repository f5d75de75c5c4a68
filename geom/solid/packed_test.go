package solid_test

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/solid"

	"pgregory.net/rapid"
)

// TestPacked: any mesh comes out of its package to the last bit, and its key tells it from any other.
func TestPacked(t *testing.T) {
	one := rapid.SampledFrom([]float64{0, math.Copysign(0, -1), 1, 12.25, -3.5, 1e-9})
	drawn := rapid.Custom(func(t *rapid.T) (m solid.Mesh) {
		for range rapid.IntRange(0, 6).Draw(t, "vertices") {
			m.Vertices = append(m.Vertices, geom.Vec3{X: one.Draw(t, "x"), Y: one.Draw(t, "y"), Z: one.Draw(t, "z")})
		}
		if n := int32(len(m.Vertices)); n > 0 {
			corner := rapid.Int32Range(0, n-1)
			for range rapid.IntRange(0, 6).Draw(t, "triangles") {
				m.Triangles = append(m.Triangles, [3]int32{corner.Draw(t, "a"), corner.Draw(t, "b"), corner.Draw(t, "c")})
			}
		}
		return m
	})
	rapid.Check(t, func(t *rapid.T) {
		m, other := drawn.Draw(t, "mesh"), drawn.Draw(t, "other")
		p, q := solid.Pack(m), solid.Pack(other)
		if got := p.Mesh(); !sameMesh(got, m) {
			t.Errorf("%v became %v", m, got)
		}
		if alike := slices.Equal(p.AppendKey(nil), q.AppendKey(nil)); alike != sameMesh(m, other) {
			t.Errorf("%v and %v: one key is %v", m, other, alike)
		}
	})
}

// sameMesh compares bit by bit: 0 is not -0.
func sameMesh(a, b solid.Mesh) bool {
	bits := func(v geom.Vec3) [3]uint64 {
		return [3]uint64{math.Float64bits(v.X), math.Float64bits(v.Y), math.Float64bits(v.Z)}
	}
	return slices.EqualFunc(a.Vertices, b.Vertices, func(v, w geom.Vec3) bool { return bits(v) == bits(w) }) &&
		slices.Equal(a.Triangles, b.Triangles)
}
