// Package stl writes triangle meshes as STL, binary and ASCII.
//
// The layout is the one published by P. Bourke ("STL format",
// paulbourke.net/dataformats/stl): in binary an 80 byte header, a count of
// triangles, then 50 bytes for each, little endian; in ASCII facets of a normal
// and three vertices between "solid" and "endsolid". STL has no unit; the
// header names millimeters.
package stl

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

const (
	headerSize   = 80
	triangleSize = 50 // normal, three corners, attribute count
)

// Binary writes a mesh as binary STL. The name goes into the header, cut to
// what fits; characters outside printable ASCII become question marks.
func Binary(w io.Writer, name string, m solid.Mesh) error {
	// Readers take a file that begins with "solid" for ASCII.
	header := plain("drawerwright mm: " + name)
	head := make([]byte, headerSize, headerSize+4)
	copy(head, header)
	head = binary.LittleEndian.AppendUint32(head, uint32(len(m.Triangles)))
	if _, err := w.Write(head); err != nil {
		return err
	}
	out := bufio.NewWriterSize(w, min(1<<16, triangleSize*len(m.Triangles)))
	var record [triangleSize]byte
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		for j, v := range [4]geom.Vec3{m.Normal(i), a, b, c} {
			for k, x := range [3]float64{v.X, v.Y, v.Z} {
				binary.LittleEndian.PutUint32(record[12*j+4*k:], math.Float32bits(float32(x+0))) // no negative zeros
			}
		}
		if _, err := out.Write(record[:]); err != nil {
			return err
		}
	}
	return out.Flush()
}

// ASCII writes a mesh as ASCII STL, each number with as many digits as bring
// back the same float32.
func ASCII(w io.Writer, name string, m solid.Mesh) error {
	out := bufio.NewWriterSize(w, 1<<16)
	title := plain(name + " mm")
	fmt.Fprintf(out, "solid %s\n", title)
	line := make([]byte, 0, 64)
	vector := func(lead string, v geom.Vec3) {
		line = append(line[:0], lead...)
		for _, x := range [3]float64{v.X, v.Y, v.Z} {
			line = strconv.AppendFloat(append(line, ' '), x+0, 'e', -1, 32)
		}
		out.Write(append(line, '\n'))
	}
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		vector("facet normal", m.Normal(i))
		out.WriteString("outer loop\n")
		vector("vertex", a)
		vector("vertex", b)
		vector("vertex", c)
		out.WriteString("endloop\nendfacet\n")
	}
	fmt.Fprintf(out, "endsolid %s\n", title)
	return out.Flush() // the first error of all the writes above
}

func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, s)
}
