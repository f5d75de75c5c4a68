package joinery

// GlueArea is what glue is spread on in the corners of one box, in square
// millimeters, one of the two faces that meet counted. With T the thickness of the
// end, Ts of the side and h the cutter height, a corner's glued length across the
// board is
//
//	dado-rabbet    T + 2 h   the shoulder, the tongue's end and both its faces
//	double-rabbet  Ts + h    the side's end, its rabbet's floor and the lip in the front's
//	rabbet         T + h     the rabbet's floor and shoulder
//	rabbeted front Ts + h    the same, of the front; its back has the corner above
//	butt           T
//	housed back    T + 2 h
//
// and runs the height of the wall. A box joint is glued on every finger: its faces
// are Ts by T, one fewer than there are rows, and the notches' floors.
func (d Drawer) GlueArea() float64 {
	return 2*(d.glued(Front)+d.glued(Back)) + d.cleatFaces()
}

// glued is that of one corner of the front or the back.
func (d Drawer) glued(r Role) float64 {
	long, side, deep := d.Dimensions.Walls.Height, d.Spec.Sides.Thickness.Mean, d.Setup.CutterHeight
	t := d.Spec.Front.Thickness.Mean
	if r == Back {
		t = d.Spec.Back.Thickness.Mean
	}
	switch d.Spec.CornerAt(r) {
	case DadoRabbet, Housed:
		return long * (t + 2*deep)
	case DoubleRabbet, RabbetedFront:
		return long * (side + deep)
	case Rabbet:
		return long * (t + deep)
	case BoxJoint, Dovetail: // a face of a finger between every two rows
		faces := len(d.Dimensions.Corner.FingerRows) - 2
		return float64(float64(faces)*side*t) + float64(long*(side+t)/2)
	}
	return long * t
}

// cleatFaces are the faces with which cleats are glued to their walls.
func (d Drawer) cleatFaces() float64 {
	sum := 0.0
	for _, p := range d.Parts {
		if p.Role == CleatRole {
			sum += float64(float64(len(p.Placements)) * p.Panel.Length() * p.Panel.Width())
		}
	}
	return sum
}
