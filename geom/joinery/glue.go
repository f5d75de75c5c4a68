package joinery

import "drawerwright/geom"

// GlueArea is what glue is spread on in the corners of one box, in square
// millimetres, one of the two faces that meet counted. With T the thickness of the
// end, Ts of the side and h the cutter height, a corner's glued length across the
// board is
//
//	dado-rabbet    T + 2 h   the shoulder, the tongue's end and both its faces
//	double-rabbet  Ts + h    the side's end, its rabbet's floor and the lip in the front's
//	rabbet         T + h     the rabbet's floor and shoulder
//	butt           T
//	housed back    T + 2 h
//
// and runs the height of the wall. A box joint is glued on every finger: its faces
// are Ts by T, one fewer than there are rows, and the notches' floors.
func (d Drawer) GlueArea() float64 {
	l := newLayout(d.Spec)
	h := l.wallHeight()
	corner := func(r Role) float64 {
		stock, _ := l.stockOf(r)
		t := stock.Thickness.Mean
		if r == Back && l.BackJoint == Housed {
			return h * (t + 2*l.h)
		}
		switch l.Joint {
		case DadoRabbet:
			return h * (t + 2*l.h)
		case DoubleRabbet:
			return h * (l.Ts + l.h)
		case Rabbet:
			return h * (t + l.h)
		case BoxJoint:
			return float64(float64(d.rows()-1)*l.Ts*t) + float64(h*(l.Ts+t)/2)
		}
		return h * t
	}
	return 2*(corner(Front)+corner(Back)) + d.cleatFaces()
}

// cleatFaces are the faces with which cleats are glued to their walls.
func (d Drawer) cleatFaces() float64 {
	sum := 0.0
	for _, p := range d.Parts {
		if p.Role == CleatRole {
			sum += float64(float64(len(p.Stands)) * p.Panel.Length() * p.Panel.Width())
		}
	}
	return sum
}

// rows is how many rows of fingers the corners of a box joint have: the notches of
// the front have two inside corners each, at both ends, one fewer than there are rows.
func (d Drawer) rows() int {
	for _, p := range d.Parts {
		if p.Role == Front {
			return len(p.Panel.Outline.Marked(geom.Relief))/2 + 1
		}
	}
	return 0
}
