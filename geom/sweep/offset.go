package sweep

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// Inset gives where the center of a disc of radius r, in millimeters, can be while
// the disc stays inside a simple counter-clockwise loop: the loop moved inward, the
// erosion of the loop by the disc. There are none where the disc fits nowhere, and
// several where it cannot get from one place to another; all run counter-clockwise. A
// slot just as wide as the disc leaves nothing. A radius up to 1e-4 mm gives the
// loop itself.
//
// Tolerances and errors are those of [Pocket].
func Inset(l geom.Loop, r float64) ([]geom.Loop, error) {
	return moved(l, r, l)
}

// Outset gives where the center of a disc is that is led around the outside of a
// simple counter-clockwise loop: the loop moved outward by r, in millimeters, the
// dilation of the loop by the disc. Corners that point outward become arcs. The
// first loop is the outline and runs counter-clockwise; loops that run clockwise
// are what stays free inside, where a bay's mouth closes.
//
// Tolerances and errors are those of [Pocket]; [ErrRadius] is also about a radius
// beyond [geom.MaxExtent].
func Outset(l geom.Loop, r float64) ([]geom.Loop, error) {
	if r > geom.MaxExtent {
		return nil, fmt.Errorf("%w: %g mm", ErrRadius, r)
	}
	list, err := moved(l, r, l.Reverse())
	for i := range list {
		if r > pointed {
			list[i] = list[i].Reverse()
		}
		for k := range list[i] {
			list[i][k].Bulge += 0 // no -0
		}
	}
	return islandsLast(list), err
}

// moved is the course of a disc along the left of a loop, which is l or its reverse.
func moved(l geom.Loop, r float64, along geom.Loop) ([]geom.Loop, error) {
	if !(r >= 0) || math.IsInf(r, 1) {
		return nil, fmt.Errorf("%w: %g mm", ErrRadius, r)
	}
	if _, err := sound(l); err != nil {
		return nil, err
	}
	if r <= pointed {
		return []geom.Loop{l}, nil
	}
	if c, radius, ok := l.AsCircle(); ok {
		if &l[0] == &along[0] { // moved inward
			if radius -= r; radius <= fit {
				return nil, nil
			}
			return []geom.Loop{geom.Circle(c, radius)}, nil
		}
		return []geom.Loop{geom.Circle(c, radius+r).Reverse()}, nil
	}
	sides, err := sidesOf(along, true)
	if err != nil {
		return nil, err
	}
	return settled(sides, func(p perturbation) ([]geom.Loop, error) {
		c, err := newCourse(sides, r-p.of(), false)
		if err != nil {
			return nil, err
		}
		if c.whole {
			c.pieces = c.web.pieces()
		}
		if err := c.follow(p.strict); err != nil {
			return nil, err
		}
		return outlines(c.pieces, c.links, scrap), nil
	})
}
