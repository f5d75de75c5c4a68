package packet

import (
	"cmp"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/preview/scene"
)

// paths are the ways of pieces from where they stand when opening has come to a number of steps
// back to their places in the box.
func (t Taken) paths(steps float64, pieces []scene.Piece) (list []picture.Between) {
	for _, p := range pieces {
		for _, from := range t.guides(p) {
			at := from.Add(p.Offset(steps))
			for n := len(p.Moves) - 1; n >= 0; n-- {
				m := p.Moves[n]
				to := at.Sub(m.By.Scale(min(1, max(0, steps-float64(m.Step)))))
				if to != at {
					list = append(list, picture.Between{From: at, To: to})
				}
				at = to
			}
		}
	}
	return list
}

// guides are the places of a piece, as it stands in the box, whose ways are drawn: of walls where
// they meet at the corners, of all else the upper two that come last as it goes in. Cleats go with
// their walls.
func (t Taken) guides(p scene.Piece) []geom.Vec3 {
	switch t.drawer.Parts[p.Part].Role {
	case joinery.CleatRole:
		return nil
	case joinery.Front, joinery.Back:
		return highest(insideCorners(t.drawer.Parts[p.Part].Panel, p.Placement))
	case joinery.Side:
		return t.sideGuides(p)
	}
	list := insideCorners(t.drawer.Parts[p.Part].Panel, p.Placement)
	if len(p.Moves) > 0 {
		way := p.Moves[len(p.Moves)-1].By
		slices.SortStableFunc(list, func(a, b geom.Vec3) int { return cmp.Compare(a.Dot(way), b.Dot(way)) })
		list = slices.DeleteFunc(list, func(v geom.Vec3) bool { return v.Dot(way) > list[0].Dot(way)+way.Norm()/1000 })
	}
	return highest(list)
}

// sideGuides are the guides of box front and back that are nearer to this side than to the other.
func (t Taken) sideGuides(p scene.Piece) (list []geom.Vec3) {
	left := p.Placement.Normal().X > 0
	for _, q := range t.box.Pieces {
		if r := t.drawer.Parts[q.Part].Role; r != joinery.Front && r != joinery.Back {
			continue
		}
		for _, g := range t.guides(q) {
			if g.X < t.box.Size.Width/2 == left {
				list = append(list, g)
			}
		}
	}
	return list
}

// highest are the two of some places that are highest.
func highest(list []geom.Vec3) []geom.Vec3 {
	slices.SortStableFunc(list, func(a, b geom.Vec3) int { return cmp.Compare(b.Z, a.Z) })
	return list[:min(2, len(list))]
}

// insideCorners are the corners of the inside face of a panel, where it stands in the box.
func insideCorners(panel geom.Panel, at geom.Placement) (list []geom.Vec3) {
	r := panel.Outline.Bounds()
	for _, x := range []float64{r.Min.X, r.Max.X} {
		for _, y := range []float64{r.Min.Y, r.Max.Y} {
			list = append(list, at.Apply(geom.Vec3{X: x, Y: y, Z: panel.Thickness}))
		}
	}
	return list
}
