package prove

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/milled"
)

// sceneFile is what is read of binary glTF (Khronos Group, "glTF 2.0 Specification",
// sections 3 to 5).
type sceneFile struct {
	Nodes []struct {
		Name     string
		Children []int
		Mesh     *int
		Matrix   []float64
		Extras   struct{ Part string }
	}
	Meshes []struct {
		Primitives []struct {
			Attributes struct {
				Position int `json:"POSITION"`
			}
			Indices int
		}
	}
	Accessors []struct {
		BufferView, ByteOffset, ComponentType, Count int
	}
	BufferViews []struct{ ByteOffset, ByteLength, ByteStride int }
	bin         []byte
}

// group is what a scene has to show: drawers, each at a place in it.
type group struct {
	name, file string
	drawers    []record.Drawer
	at         []geom.Vec3
}

// sceneCheck holds a preview against the parts in their places: every piece's solid, and
// where it stands.
func (w *Worker) sceneCheck(g group, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedScene, Name: g.name, Faults: []record.Fault{}}}
	data, ok := c.file(g.file, read)
	if !ok {
		return c.out
	}
	s, err := parseScene(data)
	if err != nil {
		c.fault("unreadable", place{g.name, g.file, 0}, rebuild, "no binary glTF that can be read: %v", err)
		return c.out
	}
	var boxes []int
	for i, n := range s.Nodes {
		if n.Mesh == nil {
			boxes = append(boxes, i)
		}
	}
	if len(boxes) != len(g.drawers) {
		c.fault("scene-count", place{g.name, g.file, 0}, rebuild,
			"the preview shows %s; the report has %d", words.Count(len(boxes), "box", "boxes"), len(g.drawers))
		return c.out
	}
	for k, i := range boxes {
		w.boxed(&c, s, scenePlace{g.file, i, g.drawers[k], g.at[k]}, read)
	}
	return c.out
}

// scenePlace is a box of a scene: the file, its node, the drawer, and where that has to be.
type scenePlace struct {
	file   string
	node   int
	drawer record.Drawer
	at     geom.Vec3
}

// boxed compares one box of a scene.
func (w *Worker) boxed(c *checking, s sceneFile, box scenePlace, read Read) {
	file, d, at := box.file, box.drawer, box.at
	n := s.Nodes[box.node]
	// Up is y there, and the front looks along z: x, y, z of the box become x, -z, y.
	if !near(n.Matrix, [3]geom.Vec3{{X: 1}, {Z: -1}, {Y: 1}}, geom.Vec3{X: at.X, Y: at.Z, Z: -at.Y}) {
		c.fault("scene-place", place{d.Name, file, 0}, rebuild, "the box %s does not stand in the preview as the report has it, at %s, %s", d.Name, c.text(at.X), c.text(at.Z))
	}
	var free []struct {
		part  record.Part
		stand geom.Placement
	}
	for _, name := range d.Parts {
		part := c.report.Parts.At(c.parts[name])
		for _, s := range part.Placements {
			free = append(free, struct {
				part  record.Part
				stand geom.Placement
			}{part, placement(s)})
		}
	}
	for _, child := range n.Children {
		piece := s.Nodes[child]
		list, err := s.mesh(piece.Mesh)
		if err != nil {
			c.fault("unreadable", place{piece.Extras.Part, file, 0}, rebuild,
				"the mesh of %s cannot be read: %v", piece.Name, err)
			continue
		}
		i, known := c.parts[piece.Extras.Part]
		if !known {
			c.fault("scene-count", place{d.Name, file, 0}, rebuild,
				"the preview shows a part %q that the report does not have", piece.Extras.Part)
			continue
		}
		want, ok := w.shown(c, c.report.Parts.At(i), read, milled.Board.Trimmed)
		if !ok {
			continue
		}
		c.solid(file, piece.Extras.Part, list, want)
		// The origin of a mesh is in its middle.
		on := want.box.Center()
		middle := geom.Vec3{X: on.X, Y: on.Y, Z: want.thickness / 2}
		found := slices.IndexFunc(free, func(f struct {
			part  record.Part
			stand geom.Placement
		}) bool {
			return f.part.Name == piece.Extras.Part && near(piece.Matrix, [3]geom.Vec3{f.stand.X, f.stand.Y, f.stand.Normal()}, f.stand.Apply(middle))
		})
		if found < 0 {
			c.fault("scene-place", place{piece.Extras.Part, file, 0}, rebuild,
				"%s does not stand in the preview as the report has it", piece.Name)
			continue
		}
		free = slices.Delete(free, found, found+1)
	}
	if len(free) > 0 && len(c.out.Faults) == 0 {
		c.fault("scene-count", place{free[0].part.Name, file, 0}, rebuild, "the preview lacks %s of %s",
			free[0].part.Name, d.Name)
	}
}

func placement(s record.Placement) geom.Placement {
	at := func(v [3]float64) geom.Vec3 { return geom.Vec3{X: v[0], Y: v[1], Z: v[2]} }
	o := s.Origin
	return geom.Placement{Origin: geom.Vec3{X: o[0].MM(), Y: o[1].MM(), Z: o[2].MM()}, X: at(s.X), Y: at(s.Y)}
}

// near reports whether a matrix has these axes, and this origin in mm.
func near(m []float64, axes [3]geom.Vec3, origin geom.Vec3) bool {
	if len(m) != 16 {
		return false
	}
	for i, v := range [4]geom.Vec3{axes[0], axes[1], axes[2], origin.Scale(1e-3)} {
		tolerance := 1e-6
		if i == 3 {
			tolerance = sameSize * 1e-3
		}
		for k, w := range [3]float64{v.X, v.Y, v.Z} {
			if !(math.Abs(m[4*i+k]-w) <= tolerance) {
				return false
			}
		}
	}
	return true
}

var errScene = errors.New("its parts do not fit together")

// parseScene takes the container apart.
func parseScene(data []byte) (s sceneFile, err error) {
	if len(data) < 28 || string(data[:4]) != "glTF" || int(binary.LittleEndian.Uint32(data[8:])) != len(data) {
		return s, errScene
	}
	n := int(binary.LittleEndian.Uint32(data[12:]))
	if n < 0 || 20+n+8 > len(data) {
		return s, errScene
	}
	if err := json.Unmarshal(data[20:20+n], &s); err != nil {
		return s, err
	}
	s.bin = data[20+n+8:]
	for _, node := range s.Nodes {
		for _, c := range node.Children {
			if c < 0 || c >= len(s.Nodes) {
				return s, errScene
			}
		}
	}
	return s, nil
}

// mesh gives a mesh's triangles, in mm.
func (s sceneFile) mesh(n *int) (list []triangle, err error) {
	if n == nil || *n < 0 || *n >= len(s.Meshes) {
		return nil, errScene
	}
	for _, p := range s.Meshes[*n].Primitives {
		position, err := s.numbers(p.Attributes.Position, 3)
		if err != nil {
			return nil, err
		}
		index, err := s.numbers(p.Indices, 1)
		if err != nil {
			return nil, err
		}
		at := func(i float64) (geom.Vec3, bool) {
			k := int(i) * 3
			if k < 0 || k+2 >= len(position) {
				return geom.Vec3{}, false
			}
			return geom.Vec3{X: position[k] * 1e3, Y: position[k+1] * 1e3, Z: position[k+2] * 1e3}, true
		}
		for i := 0; i+2 < len(index); i += 3 {
			var t triangle
			for k := range t {
				v, ok := at(index[i+k])
				if !ok {
					return nil, errScene
				}
				t[k] = v
			}
			list = append(list, t)
		}
	}
	return list, nil
}

// numbers reads an accessor of so many numbers each.
func (s sceneFile) numbers(n, each int) ([]float64, error) {
	if n < 0 || n >= len(s.Accessors) {
		return nil, errScene
	}
	a := s.Accessors[n]
	if a.BufferView < 0 || a.BufferView >= len(s.BufferViews) {
		return nil, errScene
	}
	v := s.BufferViews[a.BufferView]
	size, known := map[int]int{5121: 1, 5123: 2, 5125: 4, 5126: 4}[a.ComponentType]
	stride := v.ByteStride
	if stride == 0 {
		stride = size * each
	}
	start := v.ByteOffset + a.ByteOffset
	if !known || start < 0 || a.Count < 0 || a.Count > len(s.bin) || stride < size*each ||
		a.Count > 0 && start+stride*(a.Count-1)+size*each > len(s.bin) {
		return nil, fmt.Errorf("accessor %d: %w", n, errScene)
	}
	list := make([]float64, 0, a.Count*each)
	for i := range a.Count {
		for k := range each {
			b := s.bin[start+stride*i+size*k:]
			switch a.ComponentType {
			case 5121:
				list = append(list, float64(b[0]))
			case 5123:
				list = append(list, float64(binary.LittleEndian.Uint16(b)))
			case 5125:
				list = append(list, float64(binary.LittleEndian.Uint32(b)))
			default:
				list = append(list, float64(math.Float32frombits(binary.LittleEndian.Uint32(b))))
			}
		}
	}
	return list, nil
}
