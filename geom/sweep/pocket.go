package sweep

import (
	"drawerwright/geom"
	"fmt"
	"math"
)

// Pocket gives what a disc of radius r, in millimetres, covers while it stays
// inside a simple counter-clockwise loop: the opening of the loop by the disc.
// It consists of simple loops, first those that run counter-clockwise; a loop
// that runs clockwise is an island in one of them that the disc goes round but
// cannot cut, so that the covered area is the sum of all. There are none where
// the disc fits nowhere. Where it reaches everything the result is the loop
// itself, and so it is for a radius up to 1e-4 mm.
//
// A slot counts as wide enough for a disc that is up to 1e-6 mm wider. Fillets
// of r may come out smaller by half of that. Neighbouring corners within 1e-7 mm
// are one; sides beyond a radius of 1 km become chords within 1e-5 mm.
//
// Errors wrap [ErrRadius], [geom.ErrExtent], [ErrRing] (judged as
// [geom.Panel.Check] does, on [geom.CoarseGrid]), [ErrWinding], [ErrTooMany] or
// [ErrUnsettled].
func Pocket(l geom.Loop, r float64) ([]geom.Loop, error) {
	if !(r >= 0) || math.IsInf(r, 1) {
		return nil, fmt.Errorf("%w: %g mm", ErrRadius, r)
	}
	if loops, ok := closedForm(l, r); ok {
		return loops, nil
	}
	return pocket(l, r)
}

// pocket is Pocket without closed forms.
func pocket(l geom.Loop, r float64) ([]geom.Loop, error) {
	box, err := sound(l)
	if err != nil {
		return nil, err
	}
	if r <= pointed {
		return []geom.Loop{l}, nil
	}
	if 2*r > math.Min(box.Width(), box.Height())+fit {
		return nil, nil
	}
	sides, err := sidesOf(l, true)
	if err != nil {
		return nil, err
	}
	return settled(sides, func(share float64) ([]geom.Loop, error) {
		c, err := newCourse(sides, r-float64(fit*share), false)
		if err != nil {
			return nil, err
		}
		if err := c.follow(share); err != nil || len(c.pieces) == 0 {
			return nil, err
		}
		rim, err := c.rim(false)
		if err != nil {
			return nil, err
		}
		if c.whole(rim) {
			return []geom.Loop{l}, nil
		}
		var loops []geom.Loop
		area := 0.0
		all := outlines(rim.pieces, rim.links)
		for _, winding := range [...]float64{1, -1} {
			for _, o := range all {
				if a := o.Area(); float64(a*winding) > 0 {
					loops = append(loops, o)
					area += a
				}
			}
		}
		if whole := l.Area(); area > whole+crumbs || area < 0 {
			return nil, ErrUnsettled
		}
		return loops, nil
	})
}
