// Package proof puts a box together from panels as they were cut and says whether
// it goes together, how much play its joints have, where they seat, and how the
// box comes out. [Assembler.Assemble] is the one entry.
//
// It knows nothing of how a drawer was designed. It takes each panel as a board
// with cuts, each of them the region that a bit really reached, and where the
// panel is meant to stand; it moves the panels along the box's axes until they
// touch, as a person would with a mallet. Contact is found in sections: two panels
// at right angles have one axis in common, and at every place along it each of
// them shows rectangles. All lengths are in millimeters, in box coordinates:
// X right, Y back, Z up.
package proof

import "drawerwright/geom"

// Cut is a region taken away from one face of a board, straight down.
type Cut struct {
	Face  geom.Face
	Depth float64 // from its face
	Shape Shape
	// Lean is which way the floor goes down along the board's y, as of [geom.Pocket]; 0 is a level floor.
	Lean int
}

// depthAt is the depth at a y of the board.
func (c *Cut) depthAt(y float64) float64 {
	if c.Lean == 0 {
		return c.Depth
	}
	share := (y - c.Shape.box.Min.Y) / c.Shape.box.Height()
	if c.Lean < 0 {
		share = 1 - share
	}
	return float64(c.Depth * share)
}

// Board is a panel as cut, in panel coordinates.
type Board struct {
	Outline   Shape
	Thickness float64
	Cuts      []Cut
}

// Shape is a region of straight sides: a ring of points and the box about it. A
// line is inside between every other crossing of the ring.
type Shape struct {
	ring geom.Ring
	box  geom.Rect
}

// arcChord is how far, in millimeters, the chords of an arc keep to it: a tenth of
// what a joint could tell.
const arcChord = 0.01

// ShapeOf flattens loops that do not cross. One inside another is a hole in it,
// whichever way they run.
func ShapeOf(loops ...geom.Loop) Shape {
	var s Shape
	for _, l := range loops {
		flat := l.Flatten(arcChord)
		if len(flat) == 0 {
			continue
		}
		// Into one ring, from its first point there and back again: what is passed
		// both ways is no side.
		first := len(s.ring) == 0
		s.ring = append(s.ring, flat...)
		if len(loops) > 1 {
			s.ring = append(s.ring, flat[0])
		}
		if !first {
			s.ring = append(s.ring, s.ring[0])
		}
	}
	s.box = s.ring.Bounds()
	return s
}

// Moved is the shape somewhere else.
func (s Shape) Moved(dx, dy float64) Shape {
	by := geom.Point{X: dx, Y: dy}
	out := Shape{ring: make(geom.Ring, len(s.ring)), box: s.box.Translate(by)}
	for i, p := range s.ring {
		out.ring[i] = p.Add(by)
	}
	return out
}

// Ring are the corners of the shape. A hole is reached from the first of them, there and
// back again.
func (s Shape) Ring() geom.Ring { return s.ring }

// Corners is how many points the ring has.
func (s Shape) Corners() int { return len(s.ring) }

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

// sliver is the width, in millimeters, of what is rounding and not wood.
const sliver = 1e-7
