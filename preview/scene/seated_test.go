package scene_test

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

// TestSeated: at a clearance the piece that is named as in the slot and the one that has the slot stand on its two
// sides; the latter comes off its way without touching the other, and then may be moved sideways.
func TestSeated(t *testing.T) {
	joints := 0
	each(t, func(t *testing.T, s joinery.Spec, made scene.Scene) {
		d, _, _ := joinery.LayOut(s)
		wood := scene.Wood(d)
		for _, c := range made.Clearances(0) {
			in, of, across := wood[c.Joint.In], wood[c.Joint.Of], unitOf(c.Axis)
			if !c.Joint.Up {
				across = across.Scale(-1)
			}
			joints++
			beyond := across.Scale(c.Gap/2 + 0.01)
			middle := c.Low.Add(c.High.Sub(c.Low).Scale(0.37)) // blocks of wood often end at half
			beyond = beyond.Add(across.Scale(c.Gap * 0.13))
			sides := holds(in, middle.Sub(beyond)) && holds(of, middle.Add(beyond))
			if !sides || holds(in, middle) || holds(of, middle) {
				t.Errorf("%s: the %s and the %s are not on its sides", c.Name, in.Name, of.Name)
			}
			for _, part := range []float64{0.25, 0.5, 0.99, 1.01, 2} {
				by := c.Joint.Way.Scale(part)
				if meet(in, of, by) {
					t.Errorf("%s: %g of its way, the %s meets the %s", c.Name, part, of.Name, in.Name)
				}
				if part > 1 && (meet(in, of, by.Add(across.Scale(3))) || meet(in, of, by.Sub(across.Scale(3)))) {
					t.Errorf("%s: %g of its way, the %s is not out", c.Name, part, in.Name)
				}
			}
			pockets := len(made.Parts[made.Boxes[0].Pieces[c.Joint.Of].Part].Panel.Pockets)
			if k := c.Joint.Pocket; k >= pockets || k < 0 && s.Joint != joinery.BoxJoint {
				t.Errorf("%s: pocket %d of %d", c.Name, k, pockets)
			}
		}
	})
	if joints < 100 {
		t.Errorf("%d clearances", joints)
	}
}

func unitOf(axis int) geom.Vec3 { return [3]geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}}[axis] }

// holds reports whether a place is in the wood of a piece.
func holds(p carcass.Piece, at geom.Vec3) bool {
	for _, b := range p.Blocks {
		inside := true
		for k, v := range array(at) {
			inside = inside && v > b.Low[k] && v < b.High[k]
		}
		if inside {
			return true
		}
	}
	return false
}

// meet reports whether a piece and one that is moved would both be in one place.
func meet(p, moved carcass.Piece, by geom.Vec3) bool {
	for _, a := range p.Blocks {
		for _, b := range moved.Blocks {
			for k, v := range array(by) {
				b.Low[k], b.High[k] = b.Low[k]+v, b.High[k]+v
			}
			if a.And(b).Least() > 0.001 {
				return true
			}
		}
	}
	return false
}
