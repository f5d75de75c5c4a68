package packet

import (
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// Tones of what is not wood: glue, and the steel of clamps.
var (
	glueTone  = drawing.Tint{0x4f, 0x8f, 0xa8}
	steelTone = drawing.Tint{0xb4, 0xb8, 0xbc}
)

// stageBand is the room for balloons about a picture of a stage, in mm: few that have room in it too.
const stageBand = 7.0

// glueThick is how thick glue is drawn, in mm: enough to lie before its wood.
const glueThick = 0.3

// standing are the pieces that a frame has, with the place of each in their list by its number, and their solids there.
func (t Taken) standing(f scene.Frame) (shown []scene.Piece, number map[int]int, solids []solid.Mesh) {
	number = make(map[int]int)
	for i, p := range t.box.Pieces {
		if f.Has(p) {
			number[i] = len(shown)
			shown = append(shown, p)
		}
	}
	return shown, number, t.at(f.Open, shown)
}

// picture shows a stage before its pieces are in place: what stands already, what comes with its
// numbers, its ways, and the glue between them.
func (t Taken) picture(s scene.Stage) paper.Scenery {
	shown, number, solids := t.standing(s.Frame)
	walls := len(solids)
	var joints [][2]int // of each patch of glue
	var middles []picture.Between
	for _, patch := range s.Glue {
		by := t.box.Pieces[patch.Piece].Offset(s.Open)
		solids = append(solids, plate(patch, by))
		middles = append(middles, middleOf(patch, by))
		joints = append(joints, [2]int{min(patch.Piece, patch.Other), max(patch.Piece, patch.Other)})
	}
	out := paper.Scenery{Band: stageBand, Lines: picture.Draw(solids[:walls], Seen)}
	var moving []scene.Piece
	for _, i := range s.Pieces {
		moving = append(moving, t.box.Pieces[i])
	}
	out.Paths = picture.DrawBetween(t.paths(s.Open, moving), solids[:walls], Seen)
	for i, loops := range picture.Areas(solids, Seen) {
		a := paper.Area{Loops: loops, Tint: glueTone}
		if i < walls {
			part := t.drawer.Parts[shown[i].Part]
			a.Tint = t.tones[part.Stock.Name]
		}
		out.Areas = append(out.Areas, a)
	}
	for _, i := range s.Pieces {
		out.Areas[number[i]].Mark = numberOf(t.drawer.Parts[t.box.Pieces[i].Part])
	}
	markGlue(out.Areas[walls:], joints)
	out.GlueTint = glueTone
	out.Glue = picture.DrawBetween(middles, solids[:walls], Seen)
	return out
}

// markGlue puts a letter at each joint, at the patch of glue of which most is seen; joints has that
// of each patch.
func markGlue(patches []paper.Area, joints [][2]int) {
	best := make(map[[2]int]int)
	seen := func(i int) (sum float64) {
		for _, l := range patches[i].Loops {
			sum += l.Area()
		}
		return sum
	}
	for i, joint := range joints {
		if k, known := best[joint]; seen(i) > 0 && (!known || seen(i) > seen(k)) {
			best[joint] = i
		}
	}
	for _, i := range best {
		patches[i].Mark = "G"
	}
}

// middleOf is the middle of a patch that has moved, from end to end along its longer side, just
// before its wood.
func middleOf(p scene.Patch, by geom.Vec3) picture.Between {
	out, size := glueThick, p.High.Sub(p.Low)
	if !p.Up {
		out = -glueThick
	}
	off := [3]geom.Vec3{{X: out}, {Y: out}, {Z: out}}[p.Axis].Add(by)
	half := size.Scale(0.5)
	from, to := p.Low.Add(half), p.Low.Add(half)
	switch max(size.X, size.Y, size.Z) {
	case size.X:
		from.X, to.X = p.Low.X, p.High.X
	case size.Y:
		from.Y, to.Y = p.Low.Y, p.High.Y
	default:
		from.Z, to.Z = p.Low.Z, p.High.Z
	}
	return picture.Between{From: from.Add(off), To: to.Add(off)}
}

// plate is glue on a patch that has moved.
func plate(p scene.Patch, by geom.Vec3) solid.Mesh {
	out := glueThick
	if !p.Up {
		out = -glueThick
	}
	far := [3]geom.Vec3{{X: out}, {Y: out}, {Z: out}}[p.Axis]
	return cuboid(p.Low.Add(by), p.High.Add(far).Add(by))
}

// cuboid is a solid along the axes of the box between two corners.
func cuboid(a, b geom.Vec3) (m solid.Mesh) {
	low := geom.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)}
	high := geom.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
	for i := range 8 { // corner i is high along X, Y, Z by its bits 0, 1, 2
		v := low
		if i&1 > 0 {
			v.X = high.X
		}
		if i&2 > 0 {
			v.Y = high.Y
		}
		if i&4 > 0 {
			v.Z = high.Z
		}
		m.Vertices = append(m.Vertices, v)
	}
	for _, f := range [6][4]int32{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		m.Triangles = append(m.Triangles, [3]int32{f[0], f[1], f[2]}, [3]int32{f[0], f[2], f[3]})
	}
	return m
}
