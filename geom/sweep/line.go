package sweep

import (
	"cmp"
	"fmt"
	"slices"

	"drawerwright/geom"
)

// Line gives what a disc of radius r, in millimeters, covers whose center runs
// along an open path of straight sides and arcs; the bulge of its last vertex
// has no meaning. The path may cross itself and fold back, and a single point
// is a path. Loops are as those of [Pocket]: islands that the disc goes round
// run clockwise. An empty path and a radius up to 1e-4 mm cover nothing.
//
// Errors wrap [ErrRadius], [geom.ErrExtent], [ErrTooMany] or [ErrUnsettled].
func Line(path []geom.Vertex, r float64) ([]geom.Loop, error) {
	if !(r >= 0 && r <= geom.MaxExtent) {
		return nil, fmt.Errorf("%w: %g mm", ErrRadius, r)
	}
	if err := extent(path); err != nil {
		return nil, err
	}
	if len(path) == 0 || r <= pointed {
		return nil, nil
	}
	sides, err := sidesOf(path, false)
	if err != nil {
		return nil, err
	}
	if len(sides) == 0 {
		return []geom.Loop{geom.Circle(path[0].Point, r)}, nil
	}
	// There and back again is a closed chain with everything to its left.
	for i := len(sides) - 1; i >= 0; i-- {
		sides = append(sides, sides[i].reverse())
	}
	return settled(nil, func(p perturbation) ([]geom.Loop, error) {
		c, err := newCourse(sides, r+p.of(), true)
		if err != nil {
			return nil, err
		}
		pieces := cancel(c.pieces)
		pieces, ok := prune(pieces, len(c.web.nodes))
		if !ok {
			return nil, ErrUnsettled
		}
		for i := range pieces {
			p := &pieces[i]
			p.curve, p.from, p.to = p.reverse(), p.to, p.from
		}
		links, ok := pair(pieces, len(c.web.nodes), -1)
		if !ok {
			return nil, ErrUnsettled
		}
		return islandsLast(outlines(pieces, links, 0)), nil
	})
}

// cancel keeps one of the pieces that lie upon each other, as they do where a
// path runs twice, and none where they run both ways: there is nothing between
// two discs that touch all along.
func cancel(pieces []piece) []piece {
	slices.SortStableFunc(pieces, func(p, q piece) int {
		return cmp.Or(cmp.Compare(min(p.from, p.to), min(q.from, q.to)),
			cmp.Compare(max(p.from, p.to), max(q.from, q.to)))
	})
	gone := make([]bool, len(pieces))
	for i := range pieces {
		p := &pieces[i]
		at := p.at(p.length / 2)
		for j := i + 1; j < len(pieces); j++ {
			q := &pieces[j]
			if min(p.from, p.to) != min(q.from, q.to) || max(p.from, p.to) != max(q.from, q.to) {
				break
			}
			if gone[i] || gone[j] || at.To(q.at(q.length/2)) > same {
				continue
			}
			gone[j] = true
			gone[i] = p.direction(p.length/2).Dot(q.direction(q.length/2)) < 0
		}
	}
	kept := pieces[:0]
	for i := range pieces {
		if !gone[i] {
			kept = append(kept, pieces[i])
		}
	}
	return kept
}
