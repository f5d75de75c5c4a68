package joinery

import (
	"math"

	"drawerwright/geom"
)

// addFittings adds what stands in the box, is cut into its walls, or is screwed on.
func (l *layout) addFittings() {
	for _, add := range []func(){l.undermount, l.drawerFront, l.dividers, l.insert, l.pull} {
		l.then(add)
	}
}

// wall gives the part of a role; of the sides, the left one.
func (l *layout) wall(r Role) *Part {
	for i := range l.drawer.Parts {
		if l.drawer.Parts[i].Role == r {
			return &l.drawer.Parts[i]
		}
	}
	return nil
}

// along is the panel coordinate x of a place in the box, on the first of a part's
// stands.
func (p *Part) along(at geom.Vec3) float64 {
	d, x := at.Sub(p.Placements[0].Origin), p.Placements[0].X
	return float64(d.X*x.X) + float64(d.Y*x.Y) + float64(d.Z*x.Z)
}

// cutSides changes the left side, and makes the right one its mirror image.
func (l *layout) cutSides(change func(p *geom.Panel, left *Part)) {
	left := *l.wall(Side)
	stands := left.Placements
	var others []Part
	for _, p := range l.drawer.Parts {
		if p.Role != Side {
			others = append(others, p)
		} else if p.Label == "right" {
			stands = append(stands[:1:1], p.Placements[0])
		}
	}
	change(&left.Panel, &left)
	l.drawer.Parts = nil
	l.putSides(left.Panel, stands[0], stands[1])
	l.drawer.Parts = append(l.drawer.Parts, others...)
}

// EndWidth is the narrower of the box front and a back whose ends are cut like its, for these
// two; 0 for other parts.
func (d Drawer) EndWidth(r Role) float64 {
	cutAlike := func(r Role) bool { return r == Front || r == Back && d.Spec.CornerAt(Back) == d.Spec.CornerAt(Front) }
	if !cutAlike(r) {
		return 0
	}
	width := math.Inf(1)
	for _, p := range d.Parts {
		if cutAlike(p.Role) {
			width = min(width, p.Panel.Width())
		}
	}
	return width
}
