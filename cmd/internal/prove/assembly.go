package prove

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/milled"
	"drawerwright/geom/proof"
)

// facesOf are the flat faces of a solid along the three axes, and the box about it.
type facesOf struct {
	along     [3]levels
	low, high geom.Vec3
	volume    float64
}

// cycled puts x, y or z in the place of z, so that faces across it are found as levels.
func cycled(v geom.Vec3, axis int) geom.Vec3 {
	switch axis {
	case 0:
		return geom.Vec3{X: v.Y, Y: v.Z, Z: v.X}
	case 1:
		return geom.Vec3{X: v.Z, Y: v.X, Z: v.Y}
	}
	return v
}

func facesIn(list []triangle) (f facesOf) {
	turned := make([]triangle, len(list))
	for axis := range f.along {
		for i, t := range list {
			turned[i] = triangle{cycled(t[0], axis), cycled(t[1], axis), cycled(t[2], axis)}
		}
		if f.along[axis], f.low, f.high = levelsOf(turned); axis == 2 {
			f.volume = volume(turned)
		}
	}
	return f
}

// differ says in what two solids differ, wherever they stand; "" for nothing. Allowed is what
// an area may, in mm2.
func (c *checking) differ(is, want facesOf, allowed float64) string {
	for axis, name := range []string{"x", "y", "z"} {
		a, b := cycled(is.high.Sub(is.low), axis).Z, cycled(want.high.Sub(want.low), axis).Z
		if !(math.Abs(a-b) <= sameSize) {
			return fmt.Sprintf("it is %s along %s; as the parts are it is %s", c.text(a), name, c.text(b))
		}
	}
	for axis, name := range []string{"x", "y", "z"} {
		size := cycled(want.high.Sub(want.low), axis)
		for _, g := range grouped(is.along[axis], want.along[axis]) {
			a, b := is.along[axis].within(g), want.along[axis].within(g)
			arm := math.Max(math.Abs(a.mx-b.mx)/math.Max(1, size.X), math.Abs(a.my-b.my)/math.Max(1, size.Y))
			if math.Abs(a.area-b.area) > allowed || arm > allowed {
				return fmt.Sprintf("%s along %s %s of faces look one way more than the other; of the parts in their "+
					"places it is %s, or they lie elsewhere",
					c.text(float64(g[0])*1e-3), name, c.area(a.area), c.area(b.area))
			}
		}
	}
	if reach := size3(want); math.Abs(is.volume-want.volume) > float64(allowed*reach) {
		return fmt.Sprintf("it holds %.2f cm3; the parts have %.2f cm3", is.volume/1e3, want.volume/1e3)
	}
	return ""
}

func size3(f facesOf) float64 {
	d := f.high.Sub(f.low)
	return math.Max(d.X, math.Max(d.Y, d.Z))
}

// piece is a part of a box in its place.
type piece struct {
	part  string
	list  []triangle
	faces facesOf
}

// standing are the solids of a drawer's parts in their places, from their own files, and what
// the grid of a box may make of their areas.
func (w *Worker) standing(d record.Drawer, read Read) (list []piece, allowed float64, ok bool) {
	allowed = proof.MinCut
	for _, name := range d.Parts {
		part := w.report.Parts.At(w.parts[name])
		own, known := w.ownSolid(part, read)
		outline, sound := loopOf(part.Outline)
		if !known || !sound {
			return nil, 0, false
		}
		edges := outline.Perimeter()
		for _, op := range part.Operations {
			if l, known := loopOf(op.Outline); known {
				edges += l.Perimeter()
			}
		}
		_, low, _ := levelsOf(own)
		corner := outline.Bounds().Min
		for _, s := range part.Placements {
			stand := placement(s)
			placed := make([]triangle, len(own))
			for i, t := range own {
				for k, v := range t {
					placed[i][k] = stand.Apply(geom.Vec3{X: v.X - low.X + corner.X, Y: v.Y - low.Y + corner.Y,
						Z: v.Z - low.Z})
				}
			}
			list = append(list, piece{part: name, list: placed})
			allowed += float64(edges * solidGrid)
		}
	}
	return list, allowed, len(list) > 0
}

// ownSolid is the solid of a part by its own file, or without tabs and onion skin, which do not go
// into a box, as its board has it. What is wrong with the file is said where that is checked.
func (w *Worker) ownSolid(part record.Part, read Read) (list []triangle, ok bool) {
	if w.drawerOf(part.Name).Preview == record.PreviewMilled {
		b, err := w.milledBoard(part.Name, read)
		if err != nil {
			return nil, false
		}
		if len(b.CutOut) > 0 {
			m, err := milled.Solid(b.Trimmed(), 0)
			for i := range m.Triangles {
				p, q, r := m.Corners(i)
				list = append(list, triangle{p, q, r})
			}
			return list, err == nil
		}
	}
	data, err := read(part.Files.STL)
	if err != nil {
		return nil, false
	}
	list, _, err = trianglesOf(data)
	return list, err == nil
}

// boxCheck holds the solids of a whole box against those of its parts: assembled they stand
// in their places; exploded each is moved away from there along one axis.
func (w *Worker) boxCheck(d record.Drawer, box string, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedBox, Name: d.Name,
		Faults: []record.Fault{}}}
	file, apart := filing.BoxSolid(box, filing.Assembled), filing.BoxSolid(box, filing.Exploded)
	together, readable := c.triangles(file, read)
	var exploded []triangle
	also := slices.Contains(d.Solids, apart)
	if also {
		exploded, also = c.triangles(apart, read)
	}
	if d.Step != "" {
		w.exactBox(&c, d, read)
	}
	list, allowed, known := w.standing(d, read)
	if !known {
		return c.out
	}
	var all []triangle
	for _, p := range list {
		all = append(all, p.list...)
	}
	if readable {
		want, is := facesIn(all), facesIn(together)
		if off := math.Max(length(is.low.Sub(want.low)), length(is.high.Sub(want.high))); off > 2*sameSize {
			c.fault("box-place", place{d.Name, file, 0}, rebuild, "the box about it is %s off the parts in their places",
				c.text(off))
		} else if said := c.differ(is, want, allowed); said != "" {
			c.fault("box-parts", place{d.Name, file, 0}, rebuild, "the assembled box is not its parts in their places: %s",
				said)
		}
	}
	if also {
		c.exploded(d, apart, exploded, list, allowed)
	}
	return c.out
}

// exploded finds each piece of a box among the shells of its exploded solid. Pieces that
// touch, as dividers do that are halved over each other, are one shell: then all are
// compared together, by the faces that look each way and by their volume.
func (c *checking) exploded(d record.Drawer, file string, list []triangle, pieces []piece, allowed float64) {
	shells := shellsOf(list)
	if len(shells) != len(pieces) {
		var all []triangle
		for _, p := range pieces {
			all = append(all, p.list...)
		}
		if len(shells) > len(pieces) || !sameSums(facesIn(list), facesIn(all), allowed) {
			c.fault("box-count", place{d.Name, file, 0}, rebuild,
				"the exploded box has %d solids that are apart, and not the faces and the volume of its %d parts",
				len(shells), len(pieces))
		}
		return
	}
	for i := range pieces {
		pieces[i].faces = facesIn(pieces[i].list)
	}
	free := slices.Clone(pieces)
	for _, s := range shells {
		is := facesIn(s)
		found := slices.IndexFunc(free, func(p piece) bool {
			return movedAlong(is.low.Sub(p.faces.low)) && c.differ(is, p.faces, allowed) == ""
		})
		if found < 0 {
			c.fault("box-parts", place{d.Name, file, 0}, rebuild,
				"the solid from %s, %s, %s of the exploded box is none of its parts, moved along one axis",
				c.text(is.low.X), c.text(is.low.Y), c.text(is.low.Z))
			continue
		}
		free = slices.Delete(free, found, found+1)
	}
}

func length(v geom.Vec3) float64 { return math.Sqrt(v.Dot(v)) }

// movedAlong reports whether a way is along one axis, or none.
func movedAlong(v geom.Vec3) bool {
	n := 0
	for _, d := range [3]float64{v.X, v.Y, v.Z} {
		if math.Abs(d) > sameSize {
			n++
		}
	}
	return n < 2
}

// sameSums compares what looks each way in all, and the volumes.
func sameSums(a, b facesOf, allowed float64) bool {
	for axis := range a.along {
		for way := range 2 {
			sum := 0.0
			for _, f := range a.along[axis] {
				sum += f[way].area
			}
			for _, f := range b.along[axis] {
				sum -= f[way].area
			}
			if math.Abs(sum) > allowed {
				return false
			}
		}
	}
	return math.Abs(a.volume-b.volume) <= float64(allowed*size3(b))
}

// shellsOf parts triangles into those that hang together by their corners.
func shellsOf(list []triangle) [][]triangle {
	at := make(map[geom.Vec3]int, len(list))
	var parent []int
	find := func(i int) int {
		for parent[i] != i {
			parent[i] = parent[parent[i]]
			i = parent[i]
		}
		return i
	}
	corner := func(v geom.Vec3) int {
		i, known := at[v]
		if !known {
			i = len(parent)
			at[v], parent = i, append(parent, i)
		}
		return find(i)
	}
	for _, t := range list {
		a := corner(t[0])
		for _, v := range t[1:] {
			if b := corner(v); b != a {
				parent[max(a, b)], a = min(a, b), min(a, b)
			}
		}
	}
	place := make(map[int]int)
	var shells [][]triangle
	for _, t := range list {
		root := find(at[t[0]])
		i, known := place[root]
		if !known {
			i = len(shells)
			place[root], shells = i, append(shells, nil)
		}
		shells[i] = append(shells[i], t)
	}
	return shells
}
