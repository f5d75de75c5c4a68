package sweep

import (
	"drawerwright/geom"
	"fmt"
)

// Outside gives what is left of a panel when a disc of radius r, in millimetres,
// is led around its outline: the closing of the loop. A convex outline is left
// as it is, sharp inside corners keep a fillet of radius r, and slots narrower
// than the disc stay full. So does a bay that the disc would fit into but cannot
// reach from outside. Waste that is cut all around, between the outline and
// places that the disc reaches from several sides, falls off and is not part of
// the result.
//
// Tolerances and errors are those of [Pocket].
func Outside(l geom.Loop, r float64) (geom.Loop, error) {
	if !(r >= 0 && r <= geom.MaxExtent) {
		return nil, fmt.Errorf("%w: %g mm", ErrRadius, r)
	}
	if _, err := sound(l); err != nil {
		return nil, err
	}
	if r <= pointed || convex(l) {
		return l, nil
	}
	sides, err := sidesOf(l.Reverse(), true)
	if err != nil {
		return nil, err
	}
	loops, err := settled(sides, func(share float64) ([]geom.Loop, error) {
		c, err := newCourse(sides, r-float64(fit*share), false)
		if err != nil {
			return nil, err
		}
		if err := c.follow(share); err != nil {
			return nil, err
		}
		if err := c.outermost(); err != nil {
			return nil, err
		}
		rim, err := c.rim(true)
		if err != nil {
			return nil, err
		}
		if c.whole(rim) {
			return []geom.Loop{l}, nil
		}
		var widest geom.Loop
		for _, o := range outlines(rim.pieces, rim.links) {
			if b := o.Bounds(); widest == nil || b.Width()+b.Height() > widest.Bounds().Width()+widest.Bounds().Height() {
				widest = o
			}
		}
		widest = widest.Reverse()
		if widest.Area() < l.Area()-crumbs {
			return nil, ErrUnsettled
		}
		return []geom.Loop{widest}, nil
	})
	if err != nil {
		return nil, err
	}
	return loops[0], nil
}

// outermost keeps the chain of the course that goes round everything: the only
// one that runs clockwise.
func (c *course) outermost() error {
	var around []int32
	for _, chain := range loops(c.links) {
		area := 0.0
		for _, i := range chain {
			area += c.pieces[i].area(c.pieces[0].a)
		}
		if area < 0 && around != nil {
			return ErrUnsettled
		}
		if area < 0 {
			around = chain
		}
	}
	if around == nil {
		return ErrUnsettled
	}
	pieces, links := make([]piece, len(around)), make([]link, len(around))
	for k, i := range around {
		pieces[k] = c.pieces[i]
		links[k] = link{int32((k + 1) % len(around)), c.links[i].turn}
	}
	c.pieces, c.links = pieces, links
	return nil
}
