package sweep

import (
	"math"

	"drawerwright/geom"
)

// closedForm gives the opening of the loops for which it is known without a
// computation of places: circles, rectangles, and convex polygons whose fillets
// leave something of every side.
func closedForm(l geom.Loop, r float64) (loops []geom.Loop, ok bool) {
	if len(l) < 2 || r <= pointed || extent(l) != nil {
		return nil, false
	}
	if _, radius, ok := l.AsCircle(); ok && l[0].Bulge > 0 && radius > same {
		if radius < r-fit/2 {
			return nil, true
		}
		if within(l.Bounds()) {
			return []geom.Loop{l}, true
		}
	}
	if b, ok := l.AsRect(0); ok && l[1].Sub(l[0].Point).Cross(l[2].Sub(l[1].Point)) > 0 {
		if 2*r > math.Min(b.Width(), b.Height())+fit {
			return nil, true
		}
		return []geom.Loop{geom.RoundedRectangle(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, r)}, true
	}
	if o, ok := filleted(l, r); ok {
		return []geom.Loop{o}, true
	}
	return nil, false
}

// filleted rounds the corners of a convex polygon. The disc's center keeps
// within the sides moved inward by r, whose lengths are those of the sides less
// the fillets' at both ends. They shrink in proportion to r, so that where none
// has gone none went before, and the moved sides are what bounds the center.
func filleted(l geom.Loop, r float64) (geom.Loop, bool) {
	if !l.Straight() || !convex(l) {
		return nil, false
	}
	n := len(l)
	o := make(geom.Loop, 0, 2*n)
	var first, before, side float64 // fillets at the first corner and at the last one, and what they share
	for i, v := range l {
		from, to, cut := l.Fillet(i, r)
		if i == 0 {
			first = cut
		} else if before+cut > side-fit {
			return nil, false
		}
		side = v.To(l.Next(i).Point)
		if i == n-1 && cut+first > side-fit {
			return nil, false
		}
		before = cut
		if cut <= same {
			o = append(o, v)
			continue
		}
		o = append(o, from, to)
	}
	return o, true
}

// convex reports whether a loop turns only to the left, and once. Then it is simple.
func convex(l geom.Loop) bool {
	n := len(l)
	total := 0.0
	sides := make([]curve, 0, n)
	for i, v := range l {
		if next := l[(i+1)%n].Point; v.Point.To(next) > same {
			sides = append(sides, newSide(v.Point, next, v.Bulge))
		} else {
			return false
		}
	}
	for i := range sides {
		s := &sides[i]
		angle := s.direction(s.length).Turn(sides[(i+1)%n].direction(0))
		if angle < -convexSlack || angle > math.Pi-smooth || s.sweep < 0 {
			return false
		}
		total += angle + s.sweep
	}
	return n > 1 && total < 3*math.Pi // it is 2 pi or a multiple
}
