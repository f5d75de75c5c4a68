package stl

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"
)

func box(t testing.TB) solid.Mesh {
	t.Helper()
	m, err := solid.Build(geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12}, solid.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// readBack reads a binary file by its published layout.
func readBack(t *testing.T, data []byte) (header string, m solid.Mesh, normals []geom.Vec3) {
	t.Helper()
	if len(data) < headerSize+4 {
		t.Fatalf("only %d bytes", len(data))
	}
	n := int(binary.LittleEndian.Uint32(data[headerSize:]))
	if want := headerSize + 4 + n*triangleSize; len(data) != want {
		t.Fatalf("%d bytes for %d triangles, want %d", len(data), n, want)
	}
	vec := func(at int) geom.Vec3 {
		f := func(k int) float64 {
			return float64(math.Float32frombits(binary.LittleEndian.Uint32(data[at+4*k:])))
		}
		return geom.Vec3{X: f(0), Y: f(1), Z: f(2)}
	}
	for i := range n {
		at := headerSize + 4 + i*triangleSize
		normals = append(normals, vec(at))
		base := int32(len(m.Vertices))
		m.Vertices = append(m.Vertices, vec(at+12), vec(at+24), vec(at+36))
		m.Triangles = append(m.Triangles, [3]int32{base, base + 1, base + 2})
		if data[at+48] != 0 || data[at+49] != 0 {
			t.Fatalf("triangle %d has attributes", i)
		}
	}
	return string(bytes.TrimRight(data[:headerSize], "\x00")), m, normals
}

func TestBinary(t *testing.T) {
	var out bytes.Buffer
	m := box(t)
	if err := Binary(&out, "solid bench/side\n", m); err != nil {
		t.Fatal(err)
	}
	// Computed from the published layout: a box of 12 triangles is 84 + 50 x 12 = 684 bytes.
	if len(m.Triangles) != 12 || out.Len() != 684 {
		t.Errorf("%d triangles in %d bytes", len(m.Triangles), out.Len())
	}
	header, back, normals := readBack(t, out.Bytes())
	if header != "drawerwright mm: solid bench/side?" || strings.HasPrefix(header, "solid") {
		t.Errorf("header %q", header)
	}
	if err := geomtest.CheckMesh(back); err != nil || back.Volume() != 300*100*12 {
		t.Errorf("volume %g, %v", back.Volume(), err)
	}
	for i, n := range normals {
		for _, x := range []float64{n.X, n.Y, n.Z} {
			if x == 0 && math.Signbit(x) {
				t.Errorf("normal %d has a negative zero", i)
			}
		}
		if d := n.Sub(back.Normal(i)); d.Dot(d) > 1e-12 {
			t.Errorf("normal %d is %v, want %v", i, n, back.Normal(i))
		}
	}
}

func TestASCIIHoldsTheSameNumbers(t *testing.T) {
	m := box(t)
	m = m.Place(geom.Placement{Origin: geom.Vec3{X: 1.0 / 3}, X: geom.Right, Y: geom.Back}, geom.FineGrid(512))
	var out bytes.Buffer
	if err := ASCII(&out, "box", m); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	if !strings.HasPrefix(text, "solid box mm\n") || !strings.HasSuffix(text, "endsolid box mm\n") || strings.Contains(text, "-0e") {
		t.Errorf("ends %.40q", text)
	}
	var back []geom.Vec3
	for _, line := range strings.Split(text, "\n") {
		var v geom.Vec3
		if n, _ := fmt.Sscanf(line, "vertex %g %g %g", &v.X, &v.Y, &v.Z); n == 3 {
			back = append(back, v)
		}
	}
	if len(back) != 36 {
		t.Fatalf("%d vertices", len(back))
	}
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		for j, v := range []geom.Vec3{a, b, c} {
			if w := back[3*i+j]; float32(w.X) != float32(v.X) || float32(w.Y) != float32(v.Y) || float32(w.Z) != float32(v.Z) {
				t.Fatalf("vertex %d is %v, want %v", 3*i+j, w, v)
			}
		}
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
	m := box(t)
	for _, write := range []func(io.Writer, string, solid.Mesh) error{Binary, ASCII} {
		for _, n := range []int{0, 83, 84, 500} {
			if err := write(&limited{n}, "x", m); !errors.Is(err, io.ErrShortWrite) {
				t.Errorf("after %d bytes: %v", n, err)
			}
		}
	}
}
