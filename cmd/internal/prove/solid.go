package prove

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/milled"
	"drawerwright/geom/proof"
)

// solidCheck holds the solid of a part against what the job asks for of it.
func (w *Worker) solidCheck(part record.Part, read Read) record.Checked {
	c := checking{Prover: w.Prover,
		out: record.Checked{Kind: record.CheckedSolid, Name: part.Name, Faults: []record.Fault{}}}
	list, ok := c.triangles(part.Files.STL, read)
	if want, known := w.shown(&c, part, read, milled.Board.FromSheet); ok && known {
		c.solid(part.Files.STL, part.Name, list, want)
	}
	if file := part.Files.Step; file != "" {
		if is, ok := c.step(file, read); ok {
			w.exactPart(&c, part, file, is, read)
		}
	}
	return c.out
}

// checking gathers the faults of one thing that is read back.
type checking struct {
	*Prover
	out record.Checked
}

func (c *checking) fault(code string, at place, hint, format string, args ...any) {
	c.out.Faults = withFault(c.out.Faults, code, at, hint, fmt.Sprintf(format, args...))
}

const rebuild = "build the job into a new folder"

// file reads one, and says so where it cannot.
func (c *checking) file(name string, read Read) ([]byte, bool) {
	data, err := read(name)
	if err != nil {
		c.missing(name, err)
	}
	return data, err == nil
}

// missing says that a file cannot be read.
func (c *checking) missing(name string, err error) {
	var of *fs.PathError
	if errors.As(err, &of) { // which names the file again
		err = of.Err
	}
	c.fault("missing-file", place{c.out.Name, name, 0}, rebuild, "the file cannot be read: %v", err)
}

// triangles reads an STL file, in either form.
func (c *checking) triangles(name string, read Read) ([]triangle, bool) {
	data, ok := c.file(name, read)
	if !ok {
		return nil, false
	}
	list, line, err := trianglesOf(data)
	if err != nil {
		c.fault("unreadable", place{c.out.Name, name, line}, rebuild, "no STL that can be read: %v", err)
	}
	return list, err == nil
}

// solid compares triangles with a shape.
func (c *checking) solid(file, part string, list []triangle, want shapeOf) {
	is, low, high := levelsOf(list)
	box := geom.Vec3{X: want.box.Width(), Y: want.box.Height(), Z: want.thickness}
	for i, d := range [3][2]float64{{high.X - low.X, box.X}, {high.Y - low.Y, box.Y}, {high.Z - low.Z, box.Z}} {
		if !(math.Abs(d[0]-d[1]) <= sameSize) {
			c.fault("solid-size", place{part, file, 0}, rebuild, "the solid is %s along %c; the part is %s", c.text(d[0]),
				"xyz"[i], c.text(d[1]))
			return
		}
	}
	// By the flat faces of both: whatever is too much or too little of one.
	allowed := want.allowed + proof.MinCut
	for _, g := range grouped(is, want.levels) {
		z, a, b := g[0], is.within(g), want.levels.within(g)
		arm := math.Max(math.Abs(a.mx-b.mx)/math.Max(1, box.X), math.Abs(a.my-b.my)/math.Max(1, box.Y))
		height := c.text(float64(z) * 1e-3)
		switch {
		case math.Abs(a.area-b.area) > allowed:
			c.fault("solid-face", place{part, file, 0}, rebuild,
				"at %s above the outside face %s more of the solid looks up than down; the job asks for %s", height,
				c.area(a.area), c.area(b.area))
			return
		case arm > allowed:
			c.fault("solid-place", place{part, file, 0}, rebuild,
				"what ends %s above the outside face has its middle at x %s, y %s; the job asks for x %s, y %s", height,
				c.text(a.mx/a.area), c.text(a.my/a.area), c.text(b.mx/b.area), c.text(b.my/b.area))
			return
		}
	}
	// A thickness is on a grid, too.
	flat := float64(box.X * box.Y * solidGrid / 4)
	if got, asked := volume(list), want.volume(); math.Abs(got-asked) > float64(allowed*want.thickness)+flat {
		c.fault("solid-open", place{part, file, 0}, rebuild,
			"the solid holds %.2f cm3; its flat faces and the job have %.2f cm3: its faces do not close", got/1e3,
			asked/1e3)
	}
}

func (c *checking) area(mm2 float64) string { return fmt.Sprintf("%.1f mm2", mm2) }

// within is what faces up, less what faces down, between two heights. Wood that begins and
// ends there counts for nothing.
func (l levels) within(g [2]int64) (sum facing) {
	for _, k := range l.heights() {
		if f := l[k]; k >= g[0] && k <= g[1] {
			sum.area, sum.mx, sum.my = sum.area+f[up].area-f[down].area, sum.mx+f[up].mx-f[down].mx,
				sum.my+f[up].my-f[down].my
		}
	}
	return sum
}

// grouped are the ranges of heights, in microns, in which either has faces that are no
// further apart than files round: the same for both.
func grouped(a, b levels) (list [][2]int64) {
	const near = 12
	all := levels{}
	for _, l := range []levels{a, b} {
		for k, f := range l {
			all[k] = f
		}
	}
	for _, k := range all.heights() {
		if n := len(list); n > 0 && k-list[n-1][1] <= near {
			list[n-1][1] = k
			continue
		}
		list = append(list, [2]int64{k, k})
	}
	return list
}

var (
	errSTLShort = errors.New("it is shorter than it says")
	errSTLWords = errors.New("its words are not those of a facet")
)

// trianglesOf reads STL by its published layout.
func trianglesOf(data []byte) (list []triangle, line int, err error) {
	if bytes.HasPrefix(data, []byte("solid ")) {
		return asciiTriangles(data)
	}
	const header, size = 84, 50
	if len(data) < header {
		return nil, 0, errSTLShort
	}
	n := int(binary.LittleEndian.Uint32(data[80:]))
	if len(data) != header+size*n {
		return nil, 0, fmt.Errorf("%w: %d bytes for %d triangles", errSTLShort, len(data), n)
	}
	list = make([]triangle, 0, n)
	for i := range n {
		record := data[header+size*i:]
		at := func(k int) float64 {
			return float64(math.Float32frombits(binary.LittleEndian.Uint32(record[4*k:])))
		}
		list = append(list,
			triangle{{X: at(3), Y: at(4), Z: at(5)}, {X: at(6), Y: at(7), Z: at(8)}, {X: at(9), Y: at(10), Z: at(11)}})
	}
	return list, 0, nil
}

func asciiTriangles(data []byte) (list []triangle, line int, err error) {
	var t triangle
	corner := 0
	for text := range bytes.Lines(data) {
		line++
		words := bytes.Fields(text)
		if len(words) == 0 || string(words[0]) != "vertex" {
			continue
		}
		if len(words) != 4 || corner > 2 {
			return nil, line, errSTLWords
		}
		var v [3]float64
		for k := range v {
			if v[k], err = strconv.ParseFloat(string(words[k+1]), 64); err != nil {
				return nil, line, err
			}
		}
		t[corner] = geom.Vec3{X: v[0], Y: v[1], Z: v[2]}
		if corner++; corner == 3 {
			list, corner = append(list, t), 0
		}
	}
	if corner != 0 || len(list) == 0 {
		return nil, line, errSTLShort
	}
	return list, 0, nil
}
