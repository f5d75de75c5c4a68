package setup

import (
	"drawerwright/geom"
)

// The operator of a machine stands before its table and feeds away from himself, with the fence at
// his right. In the coordinates of the machine X runs to the right from the near side of the
// cutter, Y away from the operator from the middle of the cutter, Z up from the table, in mm.

// Faces are where the face of the fence stands for each pass, along X: below 0 as much of the
// cutter is buried in a sacrificial fence.
func (s Step) Faces() []float64 {
	switch {
	case len(s.Passes) == 0:
		return []float64{s.Fence}
	case s.Buries():
		return []float64{s.Width - s.Cutter}
	}
	return s.Passes
}

// Buries reports whether the rest of the cutter is buried in a sacrificial fence.
func (s Step) Buries() bool {
	return (s.Holding == AtEnd || s.Holding == AtEdge) && len(s.Passes) == 1
}

// Lies is how a panel lies or stands for a turn of a step that a machine with a fence makes, on the
// table, its right side at a place along X and its nearer side at Y = 0: the fence's face or, in
// a finger jig, where the lower edge stands.
func (s Step) Lies(p geom.Panel, edges Edges, right float64) geom.Placement {
	edge, face := edges.out(), geom.Up // out of the panel
	if s.Face == geom.Outside {
		face = geom.Up.Scale(-1)
	}
	down, toRight := face, edge
	switch s.Holding {
	case OnEnd:
		down, toRight = edge, face
	case Fingers:
		down, toRight = edge, Edges{Lower: true}.out()
	}
	third := down.Cross(toRight)
	turned := func(v geom.Vec3) geom.Vec3 { // down goes to -Z, toRight to X, and third to -Z x X = -Y
		return geom.Vec3{X: v.Dot(toRight), Y: -v.Dot(third), Z: -v.Dot(down)}
	}
	at := geom.Placement{X: turned(geom.Vec3{X: 1}), Y: turned(geom.Vec3{Y: 1})}
	low, high := Extent(p, at)
	at.Origin = geom.Vec3{X: right - high.X, Y: -low.Y, Z: -low.Z}
	return at
}

// out is the direction out of a panel at an edge.
func (e Edges) out() geom.Vec3 {
	switch {
	case e.Left:
		return geom.Vec3{X: -1}
	case e.Right:
		return geom.Vec3{X: 1}
	case e.Lower:
		return geom.Vec3{Y: -1}
	}
	return geom.Vec3{Y: 1}
}

// Extent is the block about the blank of a panel where that stands.
func Extent(p geom.Panel, at geom.Placement) (low, high geom.Vec3) {
	a := at.Apply(geom.Vec3{})
	b := at.Apply(geom.Vec3{X: p.Length(), Y: p.Width(), Z: p.Thickness})
	low = geom.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)}
	return low, geom.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
}
