package glb

import (
	"encoding/binary"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// stride is the size of a vertex: its place and its normal, float32 each.
const stride = 24

// surface is a mesh whose vertices are split where faces of different normals meet.
type surface struct {
	mesh    solid.Mesh
	middle  geom.Vec3    // of the mesh
	of      []int32      // per vertex written, the mesh's vertex
	normals [][3]float32 // per vertex written
	corners []uint32
}

func newSurface(m solid.Mesh) surface {
	low, high := m.Bounds()
	return surface{mesh: m, middle: low.Add(high).Scale(0.5)}
}

// split gives every face its own vertices. Each vertex of the mesh has a chain of those
// that are written for it, few, so that nothing has to be hashed.
func (s *surface) split() {
	m := s.mesh
	first := make([]int32, len(m.Vertices)) // of the chain; 0 is none, numbers are one more
	next := make([]int32, 0, 4*len(m.Vertices))
	s.of = make([]int32, 0, 4*len(m.Vertices))
	s.normals = make([][3]float32, 0, 4*len(m.Vertices))
	s.corners = make([]uint32, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		v := m.Normal(i)
		n := [3]float32{float32(v.X + 0), float32(v.Y + 0), float32(v.Z + 0)} // no negative zeros
		for _, k := range t {
			at := first[k]
			for at != 0 && s.normals[at-1] != n {
				at = next[at-1]
			}
			if at == 0 {
				s.of, s.normals, next = append(s.of, k), append(s.normals, n), append(next, first[k])
				at = int32(len(s.of))
				first[k] = at
			}
			s.corners = append(s.corners, uint32(at-1))
		}
	}
}

// pack splits all surfaces and lays out the binary chunk: all vertices, then all
// corners of triangles.
func (b *builder) pack() []byte {
	vertices, size := 0, 0
	for i := range b.surfaces {
		s := &b.surfaces[i]
		s.split()
		vertices += stride * len(s.of)
		size += s.cornerSize()*len(s.corners) + 3
	}
	out := make([]byte, vertices, vertices+size+3)
	at := 0
	for _, s := range b.surfaces {
		var low, high [3]float32
		start := at
		for k, from := range s.of {
			v := s.mesh.Vertices[from].Sub(s.middle)
			for axis, x := range [3]float64{v.X, v.Y, v.Z} {
				f := float32(x/perMetre + 0)
				if k == 0 {
					low[axis], high[axis] = f, f
				}
				low[axis], high[axis] = min(low[axis], f), max(high[axis], f)
				binary.LittleEndian.PutUint32(out[at+4*axis:], math.Float32bits(f))
				binary.LittleEndian.PutUint32(out[at+12+4*axis:], math.Float32bits(s.normals[k][axis]))
			}
			at += stride
		}
		kind, offset := typeUint16, len(out)-vertices
		if s.cornerSize() == 4 {
			kind = typeUint32
			for _, c := range s.corners {
				out = binary.LittleEndian.AppendUint32(out, c)
			}
		} else {
			for _, c := range s.corners {
				out = binary.LittleEndian.AppendUint16(out, uint16(c))
			}
		}
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
		b.Accessors = append(b.Accessors,
			accessor{View: 0, Offset: start, Kind: typeFloat, Count: len(s.of), Type: "VEC3", Min: &low, Max: &high},
			accessor{View: 0, Offset: start + 12, Kind: typeFloat, Count: len(s.of), Type: "VEC3"},
			accessor{View: 1, Offset: offset, Kind: kind, Count: len(s.corners), Type: "SCALAR"})
	}
	b.BufferViews = []bufferView{{Length: vertices, Stride: stride, Target: vertexView}, {Offset: vertices, Length: len(out) - vertices, Target: indexView}}
	b.Buffers = []buffer{{Length: len(out)}}
	return out
}

// cornerSize is the bytes of a corner.
func (s *surface) cornerSize() int {
	if len(s.of) > mostShortCorner {
		return 4
	}
	return 2
}
