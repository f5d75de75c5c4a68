package sweep

import (
	"fmt"

	"drawerwright/geom"
)

// Outside gives what is left of a panel when a disc of radius r, in millimeters,
// is led around its outline, a simple counter-clockwise loop: the closing of the
// loop. A convex outline is left as it is, sharp inside corners keep a fillet of
// radius r, and slots narrower than the disc stay full. So does a bay that the
// disc would fit into but cannot reach from outside. A radius up to 1e-4 mm
// leaves the loop itself.
//
// Tolerances and errors are those of [Pocket]; [ErrRadius] is also about one
// beyond [geom.MaxExtent].
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
	return outside(l, r)
}

// outside is Outside of a sound loop without closed forms.
func outside(l geom.Loop, r float64) (geom.Loop, error) {
	sides, err := sidesOf(l.Reverse(), true)
	if err != nil {
		return nil, err
	}
	whole, nothing := areaOf(sides) // clockwise
	loops, err := settled(sides, func(p perturbation) ([]geom.Loop, error) {
		c, err := followed(sides, r, p)
		if err != nil {
			return nil, err
		}
		if c.whole {
			return []geom.Loop{l}, nil
		}
		if err := c.outermost(); err != nil {
			return nil, err
		}
		rim, err := c.rim(true)
		if err != nil {
			return nil, err
		}
		// What is left beside the panel may touch it in a point.
		left := widest(outlines(rim.pieces, rim.links, scrap)).Reverse()
		switch area := left.Area(); {
		case area < -whole-spill:
			return nil, ErrUnsettled
		case area < nothing-whole:
			return []geom.Loop{l}, nil
		}
		for i := range left {
			left[i].Bulge += 0 // no -0
		}
		return []geom.Loop{left}, nil
	})
	if err != nil {
		return nil, err
	}
	return loops[0], nil
}

// widest of loops, and the empty one of none.
func widest(loops []geom.Loop) (l geom.Loop) {
	round := func(l geom.Loop) float64 { return l.Bounds().Width() + l.Bounds().Height() }
	for _, o := range loops {
		if l == nil || round(o) > round(l) {
			l = o
		}
	}
	return l
}

// outermost keeps the chain of the course that goes round everything: the only
// one that runs clockwise, but for what is no wider than rounding.
func (c *course) outermost() error {
	var around []int32
	least := 0.0
	for _, chain := range loops(c.links) {
		area := 0.0
		for _, i := range chain {
			area += c.pieces[i].area(c.pieces[0].a)
		}
		if area < least {
			around, least = chain, area
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
