package glb_test

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"io"
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
	"drawerwright/preview/glb"
	"drawerwright/preview/scene"
)

// pair is a box of two pieces of one side.
func pair(t testing.TB, name string, panel geom.Panel) scene.Scene {
	t.Helper()
	m, err := solid.Build(panel, solid.Options{Grid: geom.FineGrid(2 * panel.Length())})
	if err != nil {
		t.Fatal(err)
	}
	return scene.Scene{Meshes: []solid.Packed{solid.Pack(m)}, Parts: []scene.Part{{Name: name + "-side", Role: joinery.Side, Panel: panel}},
		Boxes: []scene.Box{{Name: name, Pieces: []scene.Piece{
			{Name: "left side", Placement: geom.Placement{X: geom.Back, Y: geom.Up}},
			{Name: "right side", Placement: geom.Placement{Origin: geom.Vec3{X: 460, Y: panel.Length()}, X: geom.Vec3{Y: -1}, Y: geom.Up}},
		}}}, Groups: []scene.Group{scene.Alone(name, 0)}}
}

// file is what these tests read of a file.
type file struct {
	Nodes []struct {
		Name     string
		Mesh     *int
		Children []int
		Matrix   [16]float64
		Extras   struct {
			Unit, Part               string
			Length, Width, Thickness float64
			Pockets                  []scene.Pocket
		}
	}
	Meshes []struct {
		Primitives []struct {
			Attributes map[string]int
			Indices    int
		}
	}
	Accessors []struct {
		BufferView, ByteOffset, ComponentType, Count int
	}
	BufferViews []struct{ ByteOffset, ByteLength, ByteStride int }
}

// parse reads a file by its published layout.
func parse(t *testing.T, data []byte) (f file, bin []byte) {
	t.Helper()
	u32 := func(at int) int { return int(binary.LittleEndian.Uint32(data[at:])) }
	if string(data[:4]) != "glTF" || u32(4) != 2 || u32(8) != len(data) || len(data)%4 != 0 {
		t.Fatalf("head %q of %d bytes", data[:12], len(data))
	}
	n := u32(12)
	if string(data[16:20]) != "JSON" || n%4 != 0 || string(data[24+n:28+n]) != "BIN\x00" || u32(20+n) != len(data)-28-n {
		t.Fatalf("chunks %q of %d bytes", data[12:20], n)
	}
	if err := json.Unmarshal(data[20:20+n], &f); err != nil {
		t.Fatal(err)
	}
	return f, data[28+n:]
}

func written(t *testing.T, s scene.Scene) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := glb.Write(&out, s, s.Groups[0]); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestTwoSidesShareAMesh(t *testing.T) {
	name := `<img src=x onerror="alert(1)"> é`
	side := geomtest.Side()
	s := pair(t, name, side)
	data := written(t, s)
	f, bin := parse(t, data)
	if len(f.Nodes) != 3 || len(f.Meshes) != 1 || f.Nodes[0].Name != name || *f.Nodes[1].Mesh != 0 || *f.Nodes[2].Mesh != 0 {
		t.Fatalf("%d nodes, %d meshes: %+v", len(f.Nodes), len(f.Meshes), f.Nodes)
	}
	if e := f.Nodes[1].Extras; e.Unit != "mm" || e.Length != 500 || e.Width != 140 || e.Thickness != 12.2 || len(e.Pockets) != 3 ||
		e.Pockets[1] != (scene.Pocket{Kind: "dado", Face: "inside", At: [2]float64{487.55, 0}, Size: [2]float64{6.35, 140}, Depth: 6.1}) {
		t.Errorf("extras %+v", e)
	}
	// Every triangle, placed, in meters: the volume of the panel, normals as they turn.
	float := func(at int) float64 { return float64(math.Float32frombits(binary.LittleEndian.Uint32(bin[at:]))) }
	p := f.Meshes[0].Primitives[0]
	pos, nor, idx := f.Accessors[p.Attributes["POSITION"]], f.Accessors[p.Attributes["NORMAL"]], f.Accessors[p.Indices]
	view := f.BufferViews
	vec := func(k int, a struct{ BufferView, ByteOffset, ComponentType, Count int }) geom.Vec3 {
		at := view[a.BufferView].ByteOffset + a.ByteOffset + k*view[a.BufferView].ByteStride
		return geom.Vec3{X: float(at), Y: float(at + 4), Z: float(at + 8)}
	}
	var back solid.Mesh
	for i := range idx.Count {
		k := int(binary.LittleEndian.Uint16(bin[view[idx.BufferView].ByteOffset+idx.ByteOffset+2*i:]))
		back.Vertices = append(back.Vertices, vec(k, pos))
		if i%3 == 2 {
			back.Triangles = append(back.Triangles, [3]int32{int32(i - 2), int32(i - 1), int32(i)})
			d := back.Normal(len(back.Triangles) - 1).Sub(vec(k, nor))
			if d.Dot(d) > 1e-10 {
				t.Errorf("triangle %d has the normal %v", i/3, vec(k, nor))
			}
		}
	}
	if err := geomtest.CheckMesh(back); err != nil {
		t.Error(err)
	}
	m := s.Meshes[0].Mesh()
	want := m.Volume()
	if got := back.Volume() * 1e9; math.Abs(got-want) > 1e-6*want || len(back.Triangles) != len(m.Triangles) {
		t.Errorf("%d triangles, volume %g, want %g", len(back.Triangles), got, want)
	}
	// The left side's middle is half its thickness from the left, half its length back,
	// half its width up.
	if m := f.Nodes[1].Matrix; math.Abs(m[12]-0.0061) > 1e-6 || math.Abs(m[13]-0.25) > 1e-6 || math.Abs(m[14]-0.07) > 1e-6 {
		t.Errorf("the left side stands at %v", m[12:15])
	}
	if again := written(t, s); !bytes.Equal(data, again) {
		t.Error("not the same bytes twice")
	}
}

// TestCrowdedStaysClosed: no two vertices of a crowded panel become one in meters.
func TestCrowdedStaysClosed(t *testing.T) {
	s := pair(t, "crowded", geomtest.CrowdedRounded())
	f, bin := parse(t, written(t, s))
	seen := map[string]bool{}
	for _, v := range s.Meshes[0].Mesh().Vertices {
		seen[string(binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil,
			math.Float64bits(v.X)), math.Float64bits(v.Y)), math.Float64bits(v.Z)))] = true
	}
	want := len(seen)
	clear(seen)
	for i := range f.Accessors[0].Count {
		at := i * f.BufferViews[0].ByteStride
		seen[string(bin[at:at+12])] = true
	}
	if len(seen) != want {
		t.Errorf("%d places in meters of %d", len(seen), want)
	}
}

func TestNothingToWrite(t *testing.T) {
	if err := glb.Write(io.Discard, scene.Scene{}, scene.Group{}); !errors.Is(err, glb.ErrEmpty) {
		t.Error(err)
	}
}

// limited fails once n bytes have been written.
type limited struct{ n int }

func (l *limited) Write(p []byte) (int, error) {
	if l.n -= len(p); l.n < 0 {
		return 0, io.ErrShortWrite
	}
	return len(p), nil
}

func TestWriteErrors(t *testing.T) {
	s := pair(t, "x", geomtest.Side())
	for _, n := range []int{0, 19, 2000} {
		if err := glb.Write(&limited{n}, s, s.Groups[0]); !errors.Is(err, io.ErrShortWrite) {
			t.Errorf("after %d bytes: %v", n, err)
		}
	}
}
