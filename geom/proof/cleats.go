package proof

import "math"

// onCleats lays the bottom on the strips along the insides of the uprights, which go with
// the uprights that they are fixed to, and feels what room it has between the uprights.
func (a *assembly) onCleats() {
	a.box.BottomFit = OnCleats
	a.box.GrooveClearance = math.Inf(1)
	of := func(w upright) (strip *Piece) {
		for _, c := range a.cleats {
			if axis, sign := axisOf(c.Placement.Normal()); axis == w.axis && sign*w.out < 0 {
				strip = c
			}
		}
		return strip
	}
	top := math.Inf(-1)
	for _, w := range a.uprights() {
		strip := of(w)
		if strip == nil {
			continue
		}
		face, _ := w.span(w.axis) // the inside one
		_, outer := strip.span(w.axis)
		if w.out < 0 {
			_, face = w.span(w.axis)
			outer, _ = strip.span(w.axis)
		}
		strip.Placement.Origin = shifted(strip.Placement.Origin, w.axis, face-outer)
		_, z := strip.span(axisZ)
		top = math.Max(top, z)
	}
	under, _ := a.base.span(axisZ)
	if !math.IsInf(top, 0) {
		a.base.Placement.Origin = shifted(a.base.Placement.Origin, axisZ, top-under)
	}
	for _, w := range a.uprights() {
		a.jointWhole(w.Piece, a.base)
	}
	uprights := a.uprights()
	a.box.ClearanceX = a.clearance(axisX, uprights[:], false)
	a.look(uprights[:])
	a.box.ClearanceY = a.clearance(axisY, uprights[:], false)
	for _, w := range a.uprights() {
		found := PanelJoint{Name: w.Name}
		if strip := of(w); strip != nil {
			_, z := strip.span(axisZ)
			found.Engagement, found.Gap = a.base.reach(strip, w.axis), top-z
			found.GoesIn = found.Engagement > penetration
		}
		a.box.BottomJoints = append(a.box.BottomJoints, found)
	}
}
