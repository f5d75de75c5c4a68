package packet

import (
	"fmt"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// cornerLeft and cornerFore are how far the picture of a corner sets the side off to the left and
// the box front to the fore, cornerLong is how much of each part it shows, in thicknesses of the
// side.
const cornerLeft, cornerFore, cornerLong = 2.0, 5.0, 9.0

// Corner is the picture of the left front corner, into whose joint one looks from before, above
// and the right: the ends of the left side, of the box front and of the bottom, a little apart,
// with their numbers. Errors are those of [solid.Build], with the part.
func (t Taken) Corner(room geom.Point) (drawing.Drawing, error) {
	left := slices.IndexFunc(t.box.Pieces, func(p scene.Piece) bool {
		return t.drawer.Parts[p.Part].Role == joinery.Side && p.Placement.Normal().X > 0
	})
	thick := t.drawer.Parts[t.box.Pieces[left].Part].Panel.Thickness
	by := map[joinery.Role]geom.Vec3{joinery.Front: {Y: -cornerFore * thick}, joinery.Side: {X: -cornerLeft * thick},
		joinery.Bottom: {}}
	cut := t
	cut.meshes = slices.Clone(t.meshes)
	var pieces []scene.Piece
	var meet geom.Vec3 // of front and side, above
	for i, p := range t.box.Pieces {
		part := t.drawer.Parts[p.Part]
		move, shown := by[part.Role]
		if !shown || part.Role == joinery.Side && i != left {
			continue
		}
		panel := cornerOf(part.Panel, p.Placement, cornerLong*thick)
		mesh, err := solid.Build(panel, solid.Options{Grid: t.grid})
		if err != nil {
			return drawing.Drawing{}, fmt.Errorf("%s: %w", part.Name, err)
		}
		if part.Role == joinery.Front {
			for i, at := range highest(insideCorners(panel, p.Placement)) {
				if i == 0 || at.X < meet.X {
					meet = at
				}
			}
		}
		cut.meshes[p.Part] = mesh
		p.Moves = []scene.Move{{By: move}}
		pieces = append(pieces, p)
	}
	paths := []picture.Between{{From: meet.Add(by[joinery.Front]), To: meet},
		{From: meet.Add(by[joinery.Side]), To: meet}}
	return cut.scenery(1, pieces, paths).Draw(room), nil
}

// cornerOf is what is left of a panel when it is sawn off so far from the left front lower corner
// of its box, along each axis of the box. Holes that the saw meets are left out.
func cornerOf(panel geom.Panel, at geom.Placement, far float64) geom.Panel {
	var outline geom.Loop
	for _, p := range panel.Outline.Flatten(sawnArcs) {
		outline = append(outline, geom.Vertex{Point: p})
	}
	along := func(axis geom.Vec3) (from, way float64) { // of the box, as x or y of the panel runs
		way = axis.X + axis.Y + axis.Z
		return float64(way * at.Origin.Dot(axis)), way
	}
	from, way := along(at.X)
	outline = sawn(outline, func(p geom.Point) float64 { return far - from - float64(way*p.X) })
	from, way = along(at.Y)
	outline = sawn(outline, func(p geom.Point) float64 { return far - from - float64(way*p.Y) })
	left := outline.Bounds()
	inside := func(l geom.Loop) bool {
		b := l.Bounds()
		return b.Min.X > left.Min.X && b.Min.Y > left.Min.Y && b.Max.X < left.Max.X && b.Max.Y < left.Max.Y
	}
	holes, pockets := panel.Holes, panel.Pockets
	panel.Outline, panel.Holes, panel.Pockets, panel.EdgeCuts = outline, nil, nil, nil
	for _, h := range holes {
		if inside(h) {
			panel.Holes = append(panel.Holes, h)
		}
	}
	for _, k := range pockets {
		if k.Outline.Bounds().Overlaps(left) {
			panel.Pockets = append(panel.Pockets, k)
		}
	}
	return panel
}

// sawnArcs is how far chords may lie off arcs of what is sawn, in mm: less than is seen.
const sawnArcs = 0.05

// sawn is what is left of a loop of straight sides where room is not below 0 (I. Sutherland and
// G. Hodgman, "Reentrant polygon clipping", Communications of the ACM 17, 1974).
func sawn(l geom.Loop, room func(geom.Point) float64) (out geom.Loop) {
	for i, v := range l {
		w := l.Next(i)
		a, b := room(v.Point), room(w.Point)
		if a >= 0 {
			out = append(out, v)
		}
		if a > 0 && b < 0 || a < 0 && b > 0 {
			out = append(out, geom.Vertex{Point: v.Lerp(w.Point, a/(a-b))})
		}
	}
	return out
}
