// Package proof puts a box together from panels as they were cut and says whether
// it goes together, how much play its joints have, where they seat, and how the
// box comes out. [Assemble] is the one entry.
//
// It knows nothing of how a drawer was designed. It takes each panel as a board
// with cuts, each of them the region that a bit really reached, and where the
// panel is meant to stand; it moves the panels along the box's axes until they
// touch, as a person would with a mallet. Contact is found in sections: two panels
// at right angles have one axis in common, and at every place along it each of
// them shows rectangles. All lengths are in millimetres, in box coordinates:
// X right, Y back, Z up.
package proof

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Cut is a region taken away from one face of a board, straight down.
type Cut struct {
	Face  geom.Face
	Depth float64 // from its face
	Shape Shape
}

// Board is a panel as cut, in panel coordinates.
type Board struct {
	Outline   Shape
	Thickness float64
	Cuts      []Cut
}

// Shape is a closed region of straight sides: a ring of points, counter-clockwise
// or not, and the box about it.
type Shape struct {
	ring []geom.Point
	box  geom.Rect
}

// arcChord is how far, in millimetres, the chords of an arc keep to it: a tenth of
// what a joint could tell.
const arcChord = 0.005

// ShapeOf flattens a loop.
func ShapeOf(l geom.Loop) Shape {
	s := Shape{ring: l.Flatten(arcChord)}
	if len(s.ring) == 0 {
		return s
	}
	s.box = geom.Rect{Min: s.ring[0], Max: s.ring[0]}
	for _, p := range s.ring {
		s.box.Min.X, s.box.Min.Y = math.Min(s.box.Min.X, p.X), math.Min(s.box.Min.Y, p.Y)
		s.box.Max.X, s.box.Max.Y = math.Max(s.box.Max.X, p.X), math.Max(s.box.Max.Y, p.Y)
	}
	return s
}

// Moved is the shape somewhere else.
func (s Shape) Moved(dx, dy float64) Shape {
	out := Shape{ring: make([]geom.Point, len(s.ring)), box: s.box}
	for i, p := range s.ring {
		out.ring[i] = geom.Point{X: p.X + dx, Y: p.Y + dy}
	}
	out.box.Min.X, out.box.Max.X = s.box.Min.X+dx, s.box.Max.X+dx
	out.box.Min.Y, out.box.Max.Y = s.box.Min.Y+dy, s.box.Max.Y+dy
	return out
}

// Bounds is the box about the shape.
func (s Shape) Bounds() geom.Rect { return s.box }

// crossings appends where the line at a fixed first coordinate passes the shape's
// boundary, along the other coordinate; along is 0 for a line at x, 1 at y.
func (s Shape) crossings(list []float64, along int, at float64) []float64 {
	n := len(s.ring)
	for i, p := range s.ring {
		q := s.ring[(i+1)%n]
		u0, v0, u1, v1 := p.X, p.Y, q.X, q.Y
		if along == 1 {
			u0, v0, u1, v1 = v0, u0, v1, u1
		}
		if (u0 > at) == (u1 > at) {
			continue
		}
		list = append(list, v0+float64((at-u0)/(u1-u0)*(v1-v0)))
	}
	return list
}

// run is a stretch of a board along a line, with the wood there.
type run struct {
	from, to  float64
	low, high float64 // of the wood, from the outside face
	// uncut says that the inside face is as it was.
	uncut bool
}

// sections cuts boards along lines; it keeps its memory from one to the next.
type sections struct {
	marks []float64
	spans []span
}

type span struct {
	from, to float64
	cut      int // -1 for the outline
}

// along gives the runs of a board on a line, in order: at x for along 0, at y for 1.
func (s *sections) along(b *Board, out []run, along int, at float64) []run {
	s.spans, s.marks = s.spans[:0], s.marks[:0]
	add := func(shape Shape, cut int) {
		lo, hi := shape.box.Min.X, shape.box.Max.X
		if along == 1 {
			lo, hi = shape.box.Min.Y, shape.box.Max.Y
		}
		if at < lo || at > hi {
			return
		}
		first := len(s.marks)
		s.marks = shape.crossings(s.marks, along, at)
		slices.Sort(s.marks[first:])
		for i := first; i+1 < len(s.marks); i += 2 {
			s.spans = append(s.spans, span{s.marks[i], s.marks[i+1], cut})
		}
	}
	add(b.Outline, -1)
	for i := range b.Cuts {
		add(b.Cuts[i].Shape, i)
	}
	slices.Sort(s.marks)
	first := len(out)
	for i := 0; i+1 < len(s.marks); i++ {
		from, to := s.marks[i], s.marks[i+1]
		if to-from < sliver {
			continue
		}
		r := run{from: from, to: to, high: b.Thickness, uncut: true}
		there := false
		for _, p := range s.spans {
			if p.from > from+sliver/2 || p.to < to-sliver/2 {
				continue
			}
			switch {
			case p.cut < 0:
				there = true
			case b.Cuts[p.cut].Face == geom.Outside:
				r.low = math.Max(r.low, b.Cuts[p.cut].Depth)
			default:
				r.high = math.Min(r.high, b.Thickness-b.Cuts[p.cut].Depth)
				r.uncut = false
			}
		}
		if !there || r.high-r.low < sliver {
			continue
		}
		if last := len(out) - 1; last >= first && out[last].to >= from-sliver && out[last].low == r.low && out[last].high == r.high {
			out[last].to = to
			continue
		}
		out = append(out, r)
	}
	return out
}

// sliver is the width, in millimetres, of what is rounding and not wood.
const sliver = 1e-7
