package proof

// Role is what a piece is in its box.
type Role uint8

const (
	// Any is a side, front, back or bottom, by where its inside face looks.
	Any Role = iota
	Side
	Front
	Back
	Bottom
	Divider
	// Strip is one of a grid that stands loose on the bottom.
	Strip
	// DrawerFront stands before the box's own front.
	DrawerFront
	// Cleat is a strip along the inside of an upright, on which the bottom lies.
	Cleat
	// Other is left where it is; what it has in common with others is reported.
	Other
)

// tell finds the place of a piece by its role, which its inside face has to suit:
// along Y for fronts and backs, along X for sides, up for a bottom.
func (a *assembly) tell(p *Piece) {
	axis, sign := axisOf(p.Placement.Normal())
	is := func(r Role) bool { return p.Role == r || p.Role == Any }
	switch {
	case p.Role == Divider && axis != axisZ:
		a.dividers = append(a.dividers, p)
	case p.Role == Strip && axis != axisZ:
		a.strips = append(a.strips, p)
	case p.Role == Cleat && axis != axisZ:
		a.cleats = append(a.cleats, p)
	case p.Role == DrawerFront && axis == axisY:
		a.faces = append(a.faces, p)
	case axis == axisX && is(Side) && sign > 0:
		a.left = p
	case axis == axisX && is(Side):
		a.right = p
	case axis == axisY && is(Front) && sign > 0:
		a.front = p
	case axis == axisY && is(Back) && sign < 0:
		a.back = p
	case axis == axisZ && is(Bottom) && sign > 0:
		a.base = p
	}
}

// upright is one of the four boards that stand round the bottom (sides, box front and back),
// with the axis that its inside face looks along and the
// direction out of the box.
type upright struct {
	*Piece
	axis int
	out  float64
}

func (a *assembly) uprights() [4]upright {
	return [4]upright{{a.left, axisX, -1}, {a.right, axisX, 1}, {a.front, axisY, -1}, {a.back, axisY, 1}}
}
