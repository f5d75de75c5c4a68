package solid

import (
	"encoding/binary"
	"math"
	"unique"

	"drawerwright/geom"
)

// Packed is a mesh in little room, for those of many drawers that are kept at once: each number of its
// vertices once, and how they make it up, which parts of one form share.
type Packed struct {
	numbers []float64
	form    unique.Handle[string]
}

// Pack packs a mesh.
func Pack(m Mesh) Packed {
	var p Packed
	at := make(map[uint64]int) // numbers by their bits: 0 is not -0
	form := binary.AppendUvarint(nil, uint64(len(m.Vertices)))
	for _, v := range m.Vertices {
		for _, x := range [3]float64{v.X, v.Y, v.Z} {
			i, known := at[math.Float64bits(x)]
			if !known {
				i = len(p.numbers)
				at[math.Float64bits(x)] = i
				p.numbers = append(p.numbers, x)
			}
			form = binary.AppendUvarint(form, uint64(i))
		}
	}
	for _, t := range m.Triangles {
		for _, k := range t {
			form = binary.AppendUvarint(form, uint64(k))
		}
	}
	p.numbers = append(make([]float64, 0, len(p.numbers)), p.numbers...) // without room for more
	p.form = unique.Make(string(form))
	return p
}

// Mesh is the mesh that was packed.
func (p Packed) Mesh() (m Mesh) {
	form := []byte(p.form.Value())
	next := func() int {
		v, n := binary.Uvarint(form)
		form = form[n:]
		return int(v)
	}
	number := func() float64 { return p.numbers[next()] }
	m.Vertices = make([]geom.Vec3, next())
	for i := range m.Vertices {
		m.Vertices[i] = geom.Vec3{X: number(), Y: number(), Z: number()}
	}
	for len(form) > 0 {
		m.Triangles = append(m.Triangles, [3]int32{int32(next()), int32(next()), int32(next())})
	}
	return m
}

// AppendKey adds to a key what tells a mesh from all others.
func (p Packed) AppendKey(key []byte) []byte {
	key = binary.AppendUvarint(key, uint64(len(p.numbers)))
	for _, x := range p.numbers {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(x))
	}
	return append(key, p.form.Value()...)
}
