package scene

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Patch is where a face of a piece lies at another piece, as a rectangle across an axis of the
// box, 0 for X; Up where the face looks along that axis.
type Patch struct {
	Piece, Other int // of the pieces of a box
	Low, High    geom.Vec3
	Axis         int
	Up           bool
}

// minPatch is how wide a patch is at least, in mm.
const minPatch = 1.0

// Patches are the faces of the pieces of a box that lie at another piece as the box stands, up to
// the play of a joint apart.
func (b Box) Patches(d joinery.Drawer) (list []Patch) {
	parts := make([]Part, len(d.Parts))
	for i, p := range d.Parts {
		parts[i].Panel = p.Panel
	}
	wood := stand(parts, b.Pieces)
	for i := range wood {
		for j := range wood {
			if i == j || wood[i].about.And(wood[j].about).Least() < -maxPlay {
				continue
			}
			for _, p := range wood[i].blocks {
				for _, q := range wood[j].blocks {
					list = append(list, patchesOf(p, q, Patch{Piece: i, Other: j})...)
				}
			}
		}
	}
	return list
}

// patchesOf are the faces of a block that lie at another one; of says whose they are.
func patchesOf(p, q block, of Patch) (list []Patch) {
	for axis := range 3 {
		common := p.And(q)
		for _, up := range [2]bool{false, true} {
			face, gap := p.Low[axis], p.Low[axis]-q.High[axis]
			if up {
				face, gap = p.High[axis], q.Low[axis]-p.High[axis]
			}
			if gap < -minSeen || gap > maxPlay {
				continue
			}
			at := common
			at.Low[axis], at.High[axis] = face, face+2*minPatch // whose extent across does not count
			if at.Least() < minPatch {
				continue
			}
			at.High[axis] = face
			of.Low, of.High, of.Axis, of.Up = vector(at.Low), vector(at.High), axis, up
			list = append(list, of)
		}
	}
	return list
}
