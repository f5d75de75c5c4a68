package sweep

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// Pocket gives what a disc of radius r, in millimeters, covers while it stays
// inside a simple counter-clockwise loop: the opening of the loop by the disc.
// It consists of simple loops, first those that run counter-clockwise; a loop
// that runs clockwise is an island in one of them that the disc goes round but
// cannot cut, so that the covered area is the sum of all. There are none where
// the disc fits nowhere. Where it reaches everything the result is the loop
// itself, and so it is for a radius up to 1e-4 mm.
//
// Sides stay lines and arcs, and fillets are arcs of radius r. A slot counts as
// wide enough for a disc that is up to 1e-6 mm wider; where one fits that nearly,
// fillets come out smaller by 5e-7 mm. Neighboring corners within 1e-7 mm are
// one; sides beyond a radius of 1 km become chords within 1e-5 mm.
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
	whole, nothing := areaOf(sides)
	return settled(sides, func(p perturbation) ([]geom.Loop, error) {
		c, err := followed(sides, r, p)
		if err != nil {
			return nil, err
		}
		if c.whole {
			return []geom.Loop{l}, nil
		}
		rim, err := c.rim(false)
		if err != nil {
			return nil, err
		}
		loops, area := islandsLast(outlines(rim.pieces, rim.links, scrap)), 0.0
		for _, o := range loops {
			area += o.Area()
		}
		switch {
		case area > whole+spill:
			return nil, ErrUnsettled
		case len(loops) == 1 && area > whole-nothing:
			return []geom.Loop{l}, nil
		}
		return loops, nil
	})
}
