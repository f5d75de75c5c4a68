// Package brep is the exact boundary of a panel: plane faces as large as they are, round walls
// as cylinders, edges that are lines and arcs, each shared by two faces.
//
// Which faces meet where follows from the solid of [solid.Build], which is closed for every
// panel; faces that lie on one surface become one. Where edges run follows from the sides of
// the panel's own loops: corners are those of loops, or where two sides cross. Features nearer
// to each other than [Same] may become one.
package brep

import (
	"errors"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// Same is the distance, in millimeters, within which corners and edges lie on the surfaces
// that meet there: of a panel as long as any board. Most lie on them to the last digits.
const Same = 1e-3

// Solid is a closed body in panel coordinates, in millimeters.
type Solid struct {
	Corners []geom.Vec3
	Edges   []Edge
	Faces   []Face
}

// Edge runs from one corner to another, both by index: straight, or along a level circle,
// counter-clockwise seen from above, where Radius is above 0.
type Edge struct {
	From, To int
	Center   geom.Vec3
	Radius   float64
}

// Face is a piece of a plane, level, upright or leaning, or of an upright cylinder where Radius is above 0. Its first
// loop goes around it, the others around what is left out of it, all with the face to their
// left, seen from outside.
type Face struct {
	At     geom.Vec3 // a place of the plane, or of the cylinder's axis
	Normal geom.Vec3 // of a plane, out of the body
	Radius float64
	Hollow bool // the body is outside of the cylinder
	Loops  [][]Use
}

// Use is an edge, by index, as a face has it.
type Use struct {
	Edge     int
	Backward bool
}

// ErrLost is wrapped by errors about walls that lie on no side of the panel.
var ErrLost = errors.New("wall on no side of the panel")

// Build makes the bodies of a panel: one, or as many as it falls apart into. Errors wrap
// [geom.ErrExtent] or [ErrLost].
func Build(p geom.Panel) ([]Solid, error) {
	s := sidesOf(p)
	mesh, err := solid.Build(s.flat(p), solid.Options{})
	if err != nil {
		return nil, err
	}
	n := net{sides: s, panel: p, mesh: mesh, heights: heightsOf(p)}
	if err := n.label(); err != nil {
		return nil, err
	}
	n.join()
	n.mergeFaces()
	n.mergeEdges()
	return n.solids(), nil
}

// heightsOf are those at which faces of a panel lie.
func heightsOf(p geom.Panel) []float64 {
	list := []float64{0, p.Thickness}
	for _, k := range p.Pockets {
		if k.Through(p.Thickness) {
			continue
		}
		if k.Face == geom.Outside {
			list = append(list, k.Depth)
		} else {
			list = append(list, p.Thickness-k.Depth)
		}
	}
	return list
}

// nearest is the value of a list nearest to another.
func nearest(list []float64, to float64) float64 {
	best := list[0]
	for _, v := range list {
		if math.Abs(v-to) < math.Abs(best-to) {
			best = v
		}
	}
	return best
}
