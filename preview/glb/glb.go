// Package glb writes scenes as binary glTF 2.0.
//
// The layout is that of the Khronos Group's "glTF 2.0 Specification" (ISO/IEC
// 12113:2022): section 4 for the container, 3.6 for the numbers, 3.7 for meshes, 3.9
// for materials. A file is in meters with +Y up; the box's front, its -Y, looks along
// +Z, toward who looks at it. There is a node for each box and below it one for each
// piece, with a matrix of whole turns, so that places are exact; pieces that are the
// same share a mesh. Every face has normals of its own. The numbers of a part are the
// `extras` of its nodes, in millimeters from its lower left corner ([scene.Numbers]).
//
// The origin of a mesh is in its middle. A grid that holds the coordinates of a panel in
// float32 with something to spare, as that of a box does, has then no two points that
// become one in meters: half the extent leaves a bit for the division by 1000.
package glb

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"io"
	"math"

	"drawerwright/geom"
	"drawerwright/preview/scene"
)

// Parts of the container: section 4.4.
const (
	magic     = 0x46546C67 // "glTF"
	version   = 2
	chunkJSON = 0x4E4F534A
	chunkBIN  = 0x004E4942
)

// ErrEmpty is the error of a group without pieces, of which no valid file can be made.
var ErrEmpty = errors.New("there is no piece to write")

// perMeter are the millimeters of a meter.
const perMeter = 1000

// Write writes one group of a scene. The error is [ErrEmpty] or the writer's.
func Write(w io.Writer, s scene.Scene, g scene.Group) error {
	d := document{Asset: asset{Version: "2.0", Generator: "drawerwright"}, Scenes: []root{{Name: g.Name}}}
	b := builder{document: &d, scene: s, meshes: make(map[[2]int]int), materials: make(map[string]int), surface: make(map[int]int)}
	for i, n := range g.Boxes {
		b.box(s.Boxes[n], g.At[i])
	}
	if len(d.Meshes) == 0 {
		return ErrEmpty
	}
	p := packers.Get().(*packer)
	defer packers.Put(p)
	bin := p.pack(&b)
	text, err := json.Marshal(d)
	if err != nil {
		return err
	}
	for len(text)%4 != 0 {
		text = append(text, ' ')
	}
	head := make([]byte, 0, 20+len(text)+8)
	for _, v := range []uint32{magic, version, uint32(12 + 8 + len(text) + 8 + len(bin)), uint32(len(text)), chunkJSON} {
		head = binary.LittleEndian.AppendUint32(head, v)
	}
	head = append(head, text...)
	head = binary.LittleEndian.AppendUint32(head, uint32(len(bin)))
	head = binary.LittleEndian.AppendUint32(head, chunkBIN)
	if _, err := w.Write(head); err != nil {
		return err
	}
	_, err = w.Write(bin)
	return err
}

// builder gathers a document.
type builder struct {
	*document
	scene     scene.Scene
	meshes    map[[2]int]int // by surface and material
	materials map[string]int // by role
	surfaces  []surface
	surface   map[int]int // by mesh of the scene
}

// box adds a box that stands at a place of its group: Z up becomes Y up there.
func (b *builder) box(box scene.Box, at geom.Vec3) {
	n := len(b.Nodes)
	b.Scenes[0].Nodes = append(b.Scenes[0].Nodes, n)
	b.Nodes = append(b.Nodes, node{Name: box.Name, Matrix: matrix(geom.Vec3{X: 1}, geom.Vec3{Z: -1}, geom.Vec3{Y: 1}, geom.Vec3{X: at.X, Y: at.Z, Z: -at.Y}),
		Extras: boxExtras{Unit: "mm", Count: box.Count, Width: scene.Rounded(box.Size.Width), Height: scene.Rounded(box.Size.Height), Depth: scene.Rounded(box.Size.Depth)}})
	for _, p := range box.Pieces {
		part := b.scene.Parts[p.Part]
		b.Nodes[n].Children = append(b.Nodes[n].Children, len(b.Nodes))
		mesh := b.mesh(part)
		middle := p.Placement.Apply(b.surfaces[b.surface[part.Milled]].middle)
		b.Nodes = append(b.Nodes, node{Name: p.Name, Mesh: &mesh,
			Matrix: matrix(p.Placement.X, p.Placement.Y, p.Placement.Normal(), middle),
			Extras: partExtras{Unit: "mm", Part: part.Name, Role: string(part.Role), Stock: part.Stock, Quantity: part.Quantity, Numbers: scene.NumbersOf(part.Panel)}})
	}
}

// mesh is the number of a part's mesh in its role's color.
func (b *builder) mesh(p scene.Part) int {
	role := string(p.Role)
	m, ok := b.materials[role]
	if !ok {
		m = len(b.Materials)
		b.materials[role] = m
		c := scene.TintOf(p.Role).Light
		b.Materials = append(b.Materials, material{Name: role, PBR: pbr{Color: [4]float64{linear(c[0]), linear(c[1]), linear(c[2]), 1}, Roughness: 0.9}})
	}
	at, ok := b.surface[p.Milled]
	if !ok {
		at = len(b.surfaces)
		b.surface[p.Milled] = at
		b.surfaces = append(b.surfaces, newSurface(b.scene.Meshes[p.Milled].Mesh()))
	}
	n, ok := b.meshes[[2]int{at, m}]
	if !ok {
		n = len(b.Meshes)
		b.meshes[[2]int{at, m}] = n
		// Each surface has three accessors, in the order of the surfaces.
		b.Meshes = append(b.Meshes, mesh{Name: p.Name, Primitives: []primitive{{Material: m, Attributes: attributes{Position: 3 * at, Normal: 3*at + 1}, Indices: 3*at + 2}}})
	}
	return n
}

// linear is a part of an sRGB color as a part of the light itself (IEC 61966-2-1),
// rounded, so that no processor differs.
func linear(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		v /= 12.92
	} else {
		v = math.Pow((v+0.055)/1.055, 2.4)
	}
	return math.Round(v*1e4) / 1e4
}

// matrix has three axes and an origin, in millimeters, as its columns.
func matrix(x, y, z, o geom.Vec3) *[16]float32 {
	var m [16]float32
	for i, v := range [4]geom.Vec3{x, y, z, o.Scale(1. / perMeter)} {
		for k, c := range [3]float64{v.X, v.Y, v.Z} {
			m[4*i+k] = float32(c + 0) // no negative zeros
		}
	}
	m[15] = 1
	return &m
}
