package scene

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Opened is a box by its pieces, of the drawer's parts, and how it opens.
func Opened(d joinery.Drawer) Box {
	b := Box{Name: d.Spec.Name, Count: d.Spec.Count, Size: d.Outside}
	for i, p := range d.Parts {
		for k, at := range p.Placements {
			b.Pieces = append(b.Pieces, Piece{Name: PieceName(p, k), Part: i, Placement: at})
		}
	}
	open(&b, d)
	return b
}

// open says in which steps a box comes apart: as it is put together, backward. In no
// step does a piece go through another. The front and the back stand in one side, the
// bottom slides between them, the other side closes the box; what is put on last comes
// off first. The grooves of a box joint's front and back end in its fingers, so that its
// bottom goes in with them.
func open(b *Box, d joinery.Drawer) {
	apart := float64(parted * max(d.Outside.Width, d.Outside.Height, d.Outside.Depth))
	step := func(said string, is func(Piece) bool, by geom.Vec3) {
		found := false
		for i := range b.Pieces {
			if p := &b.Pieces[i]; is(*p) {
				found = true
				p.Moves = append(p.Moves, Move{Step: len(b.Opening), By: by})
			}
		}
		if found && !slices.Contains(b.Opening, said) {
			b.Opening = append(b.Opening, said)
		}
	}
	role := func(roles ...joinery.Role) func(Piece) bool {
		return func(p Piece) bool { return slices.Contains(roles, d.Parts[p.Part].Role) }
	}
	side := func(normal float64) func(Piece) bool {
		return func(p Piece) bool {
			return role(joinery.Side, joinery.CleatRole)(p) && p.Placement.Normal().X*normal > 0.5
		}
	}
	step("The insert lifts out", role(joinery.InsertRole), geom.Vec3{Z: d.Outside.Height})
	step("The drawer front comes off", role(joinery.DrawerFrontRole), geom.Vec3{Y: -apart})
	step("The dividers lift out", role(joinery.DividerRole), geom.Vec3{Z: d.Outside.Height})
	switch d.Spec.BottomFit {
	case joinery.BottomApplied:
		step("The bottom comes off below", role(joinery.Bottom), geom.Vec3{Z: -apart})
	case joinery.BottomCleats: // which stay on their walls
		step("The bottom lifts out", role(joinery.Bottom), geom.Vec3{Z: d.Outside.Height})
	case joinery.BottomSlideIn, joinery.BottomFielded:
		step("The bottom slides out behind", role(joinery.Bottom), geom.Vec3{Y: 2 * apart})
	}
	step("The right side comes off", side(-1), geom.Vec3{X: 2 * apart})
	if f := d.Spec.BottomFit; f.Grooved() && !f.SlidesIn() && !d.Spec.Joint.Interlocks() {
		step("The bottom slides out", role(joinery.Bottom), geom.Vec3{X: apart})
	}
	step("The left side comes off front and back", side(1), geom.Vec3{X: -apart})
	// Both in the last step, whichever there is.
	n := len(b.Opening)
	end := func(r joinery.Role, normal float64) func(Piece) bool {
		return func(p Piece) bool {
			return role(r)(p) || role(joinery.CleatRole)(p) && p.Placement.Normal().Y*normal > 0.5
		}
	}
	step("Box front and back part",
		func(p Piece) bool { return end(joinery.Front, 1)(p) || role(joinery.DrawerFrontRole)(p) }, geom.Vec3{Y: -apart})
	b.Opening = b.Opening[:n]
	step("Box front and back part", end(joinery.Back, -1), geom.Vec3{Y: apart})
}
