package packet

import (
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// stage is a step of putting a box together: what has to be undone of its opening, and what comes
// on with it.
type stage struct {
	from   int     // the step of opening that is undone last
	open   float64 // steps of opening before it
	pieces []int
	role   joinery.Role // of what comes on, a side where there are several
	// first is set where the left side takes box front and back, wallsClosed where the right side comes on.
	first, wallsClosed bool
}

// stages are the steps of opening, backward: the last two of them are one, in which one side takes
// box front and back.
func (t Taken) stages() (list []stage) {
	last := len(t.box.Steps) - 1
	for step := last - 1; step >= 0; step-- {
		s := stage{from: step, open: float64(step + 1)}
		if step == last-1 {
			s.first = true // front and back wait in their places, not apart, so that the ways are straight
		}
		for i, p := range t.box.Pieces {
			first := last + 1 // a bottom that never comes off goes in with the first
			if len(p.Moves) > 0 {
				first = p.Moves[0].Step
			}
			if first != step && (step < last-1 || first < step) {
				continue
			}
			s.pieces = append(s.pieces, i)
			if r := t.drawer.Parts[p.Part].Role; s.role == "" || r == joinery.Side {
				s.role = r
			}
		}
		s.wallsClosed = s.role == joinery.Side && !s.first
		list = append(list, s)
	}
	return list
}

// Tones of what is not wood: glue, and the steel of clamps.
var (
	glueTone  = drawing.Tint{0x4f, 0x8f, 0xa8}
	steelTone = drawing.Tint{0xb4, 0xb8, 0xbc}
)

// stageBand is the room for balloons about a picture of a stage, in mm: few that have room in it too.
const stageBand = 7.0

// glueThick is how thick glue is drawn, in mm: enough to lie before its wood.
const glueThick = 0.3

// glued reports whether glue goes between two parts as a box is put together: between its walls.
// Cleats are on them before.
func glued(p, q joinery.Role) bool {
	wall := func(r joinery.Role) bool { return r == joinery.Side || r == joinery.Front || r == joinery.Back }
	return wall(p) && wall(q)
}

// picture shows a stage before its pieces are in place: what stands already, what comes with its
// numbers, its ways, and the glue between them.
func (t Taken) picture(s stage) paper.Scenery {
	comes := make(map[int]bool)
	for _, i := range s.pieces {
		comes[i] = true
	}
	var shown []scene.Piece
	number := make(map[int]int) // of a piece, among those that are shown
	for i, p := range t.box.Pieces {
		if len(p.Moves) > 0 && p.Moves[0].Step < s.from {
			continue
		}
		number[i] = len(shown)
		shown = append(shown, p)
	}
	solids := t.at(s.open, shown)
	walls := len(solids)
	var joints [][2]int // of each patch of glue
	var middles []picture.Between
	for _, patch := range t.box.Patches(t.drawer.Drawer) {
		mine, there := number[patch.Piece]
		_, other := number[patch.Other]
		if there && other && (comes[patch.Piece] || comes[patch.Other]) &&
			glued(t.roleOf(patch.Piece), t.roleOf(patch.Other)) {
			by := shown[mine].Offset(s.open)
			solids = append(solids, plate(patch, by))
			middles = append(middles, middleOf(patch, by))
			joints = append(joints, [2]int{min(patch.Piece, patch.Other), max(patch.Piece, patch.Other)})
		}
	}
	out := paper.Scenery{Band: stageBand, Lines: picture.Draw(solids[:walls], Seen)}
	var moving []scene.Piece
	for _, i := range s.pieces {
		moving = append(moving, t.box.Pieces[i])
	}
	out.Paths = picture.DrawBetween(t.paths(s.open, moving), solids[:walls], Seen)
	for i, loops := range picture.Areas(solids, Seen) {
		a := paper.Area{Loops: loops, Tint: glueTone}
		if i < walls {
			part := t.drawer.Parts[shown[i].Part]
			a.Tint = t.tones[part.Stock.Name]
		}
		out.Areas = append(out.Areas, a)
	}
	for _, i := range s.pieces {
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

// roleOf is the role of a piece of the box.
func (t Taken) roleOf(piece int) joinery.Role { return t.drawer.Parts[t.box.Pieces[piece].Part].Role }

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
