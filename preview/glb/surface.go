package glb

import (
	"encoding/binary"
	"math"
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// stride is the size of a vertex: its place and its normal, float32 each.
const stride = 24

// surface is a mesh about its middle.
type surface struct {
	mesh   solid.Mesh
	middle geom.Vec3
}

func newSurface(m solid.Mesh) surface {
	if len(m.Vertices) == 0 {
		return surface{mesh: m}
	}
	low, high := m.Vertices[0], m.Vertices[0]
	for _, v := range m.Vertices {
		low = geom.Vec3{X: min(low.X, v.X), Y: min(low.Y, v.Y), Z: min(low.Z, v.Z)}
		high = geom.Vec3{X: max(high.X, v.X), Y: max(high.Y, v.Y), Z: max(high.Z, v.Z)}
	}
	return surface{m, low.Add(high).Scale(0.5)}
}

// packer lays out the binary chunk: the vertices of all surfaces, then their corners.
type packer struct {
	vertices []byte
	corners  []uint32
	first    []int32 // per vertex of a mesh, the chain of those written for it; 0 is none, numbers are one more
	next     []int32 // in the chain, per vertex written
}

// packers keep their room from file to file: clearing new room takes as long as filling it.
var packers = sync.Pool{New: func() any { return new(packer) }}

// pack packs all surfaces. What it gives is the packer's until that packs again.
func (p *packer) pack(b *builder) []byte {
	p.vertices, p.corners = p.vertices[:0], p.corners[:0]
	for _, s := range b.surfaces {
		p.add(b.document, s)
	}
	// A view of corners follows that of vertices.
	out, corners := p.vertices, p.corners
	b.BufferViews = []bufferView{{Length: len(out), Stride: stride, Target: vertexView}, {Offset: len(out), Target: indexView}}
	for i := range b.surfaces {
		a := &b.Accessors[3*i+2]
		a.Offset = len(out) - b.BufferViews[1].Offset
		if a.Kind == typeUint32 {
			for _, c := range corners[:a.Count] {
				out = binary.LittleEndian.AppendUint32(out, c)
			}
		} else {
			for _, c := range corners[:a.Count] {
				out = binary.LittleEndian.AppendUint16(out, uint16(c))
			}
		}
		corners = corners[a.Count:]
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	p.vertices = out
	b.BufferViews[1].Length = len(out) - b.BufferViews[1].Offset
	b.Buffers = []buffer{{Length: len(out)}}
	return out
}

// add gives every face of a surface its own vertices. A vertex of the mesh has a chain
// of those that are written for it, few, so that nothing has to be hashed.
func (p *packer) add(d *document, s surface) {
	start := len(p.vertices)
	if n := len(s.mesh.Vertices); cap(p.first) < n {
		p.first = make([]int32, n)
		p.next = make([]int32, 0, 4*n)
	} else {
		p.first = p.first[:n]
		clear(p.first)
		p.next = p.next[:0]
	}
	low := [3]float32{math.MaxFloat32, math.MaxFloat32, math.MaxFloat32}
	high := [3]float32{-math.MaxFloat32, -math.MaxFloat32, -math.MaxFloat32}
	var record [stride]byte
	for i, t := range s.mesh.Triangles {
		v := upright(s.mesh, t)
		if v.Z == 0 {
			v = s.mesh.Normal(i)
		}
		x, y, z := bits(v.X), bits(v.Y), bits(v.Z)
		binary.LittleEndian.PutUint32(record[12:], x)
		binary.LittleEndian.PutUint32(record[16:], y)
		binary.LittleEndian.PutUint32(record[20:], z)
		for _, k := range t {
			at := p.first[k]
			for at != 0 {
				n := p.vertices[start+int(at-1)*stride+12:]
				if binary.LittleEndian.Uint32(n) == x && binary.LittleEndian.Uint32(n[4:]) == y && binary.LittleEndian.Uint32(n[8:]) == z {
					break
				}
				at = p.next[at-1]
			}
			if at == 0 {
				v := s.mesh.Vertices[k].Sub(s.middle)
				for axis, c := range [3]float64{v.X / perMeter, v.Y / perMeter, v.Z / perMeter} {
					low[axis], high[axis] = min(low[axis], float32(c+0)), max(high[axis], float32(c+0))
					binary.LittleEndian.PutUint32(record[4*axis:], bits(c))
				}
				p.vertices = append(p.vertices, record[:]...)
				p.next = append(p.next, p.first[k])
				at = int32(len(p.next))
				p.first[k] = at
			}
			p.corners = append(p.corners, uint32(at-1))
		}
	}
	kind := typeUint16
	if len(p.next) > maxShortCorner {
		kind = typeUint32
	}
	d.Accessors = append(d.Accessors,
		accessor{View: 0, Offset: start, Kind: typeFloat, Count: len(p.next), Type: "VEC3", Min: &low, Max: &high},
		accessor{View: 0, Offset: start + 12, Kind: typeFloat, Count: len(p.next), Type: "VEC3"},
		accessor{View: 1, Kind: kind, Count: 3 * len(s.mesh.Triangles), Type: "SCALAR"})
}

// upright is the normal of a level triangle, as about half of a panel's are, without
// the root that others take; 0 for those.
func upright(m solid.Mesh, t [3]int32) geom.Vec3 {
	a, b, c := &m.Vertices[t[0]], &m.Vertices[t[1]], &m.Vertices[t[2]]
	if a.Z != b.Z || a.Z != c.Z {
		return geom.Vec3{}
	}
	if float64((b.X-a.X)*(c.Y-a.Y)) < float64((b.Y-a.Y)*(c.X-a.X)) {
		return geom.Vec3{Z: -1}
	}
	return geom.Vec3{Z: 1}
}

// bits is a number as float32, never as a negative zero.
func bits(v float64) uint32 { return math.Float32bits(float32(v + 0)) }
