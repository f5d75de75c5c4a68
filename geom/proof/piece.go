package proof

import (
	"math"

	"drawerwright/geom"
)

// Piece is a board in its place in the box. Stand's directions run along the axes.
type Piece struct {
	Name      string
	Board     Board
	Placement geom.Placement
	Role      Role
	// Lips are how far a front is meant to stand out beyond the box, from the lower to the higher place
	// along X and Z: sizes are taken without them.
	Lips struct{ X, Z [2]float64 }
}

// Axes of the box.
const (
	axisX = iota
	axisY
	axisZ
)

// axisOf is the axis that a direction runs along, and its sign.
func axisOf(v geom.Vec3) (axis int, sign float64) {
	switch {
	case math.Abs(v.X) > 0.5:
		return axisX, v.X
	case math.Abs(v.Y) > 0.5:
		return axisY, v.Y
	}
	return axisZ, v.Z
}

func component(v geom.Vec3, axis int) float64 { return [3]float64{v.X, v.Y, v.Z}[axis] }

func shifted(v geom.Vec3, axis int, by float64) geom.Vec3 {
	switch axis {
	case axisX:
		v.X += by
	case axisY:
		v.Y += by
	default:
		v.Z += by
	}
	return v
}

// frame is how a piece lies to the axes of the box.
type frame struct {
	axis [3]int     // of panel x, y, z
	sign [3]float64 // of each
	from [3]float64 // its origin, by axes of the box
}

func (p *Piece) frame() frame {
	var f frame
	f.axis[0], f.sign[0] = axisOf(p.Placement.X)
	f.axis[1], f.sign[1] = axisOf(p.Placement.Y)
	f.axis[2], f.sign[2] = axisOf(p.Placement.Normal())
	f.from = [3]float64{p.Placement.Origin.X, p.Placement.Origin.Y, p.Placement.Origin.Z}
	return f
}

// span is the piece's extent along an axis of the box.
func (p *Piece) span(axis int) (low, high float64) {
	f := p.frame()
	box := p.Board.Outline.box
	ends := [3][2]float64{{box.Min.X, box.Max.X}, {box.Min.Y, box.Max.Y}, {0, p.Board.Thickness}}
	for k := range 3 {
		if f.axis[k] == axis {
			a, b := f.from[axis]+float64(f.sign[k]*ends[k][0]), f.from[axis]+float64(f.sign[k]*ends[k][1])
			return min(a, b), max(a, b)
		}
	}
	return 0, 0
}

// reach is how far a piece stands in another along an axis, by their extents;
// below 0 by how much it falls short.
func (p *Piece) reach(into *Piece, axis int) float64 {
	p0, p1 := p.span(axis)
	q0, q1 := into.span(axis)
	return min(p1, q1) - max(p0, q0)
}
