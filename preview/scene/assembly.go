package scene

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Step is a step of putting a box together, as the packet and the viewer tell and show it.
type Step struct {
	Text string
	Stage
	Clamps []Block // that are on
}

// Stage is how a box stands as a step begins, and what comes on in it.
type Stage struct {
	Frame
	Pieces []int        // that come on, of the box
	Role   joinery.Role // of what comes on, a side where there are several
	// First is set where the left side takes box front and back, WallsClosed where the right side comes on.
	First, WallsClosed bool
	Glue               []Patch // that get glue, where the pieces stand in the box
}

// Frame is a box on its way together: how many steps of opening are still to be undone, and from which step on pieces
// are there. What comes off before that is not on yet.
type Frame struct {
	From int
	Open float64
}

// Has reports whether a piece is there.
func (f Frame) Has(p Piece) bool { return len(p.Moves) == 0 || p.Moves[0].Step >= f.From }

// Done is the frame once what comes is in its place.
func (f Frame) Done() Frame { return Frame{f.From, float64(f.From)} }

// Apart is the frame of all pieces of a box, taken apart.
func (b Box) Apart() Frame { return Frame{Open: float64(len(b.Opening))} }

// Stages are the steps of opening, backward: the last two of them are one, in which one side takes
// box front and back.
func (b Box) Stages(d joinery.Drawer) (list []Stage) {
	patches := b.Patches(d)
	last := len(b.Opening) - 1
	for step := last - 1; step >= 0; step-- {
		s := Stage{Frame: Frame{From: step, Open: float64(step + 1)}}
		if step == last-1 {
			s.First = true // front and back wait in their places, not apart, so that the ways are straight
		}
		comes := make(map[int]bool)
		for i, p := range b.Pieces {
			first := last + 1 // a bottom that never comes off goes in with the first
			if len(p.Moves) > 0 {
				first = p.Moves[0].Step
			}
			if first != step && (step < last-1 || first < step) {
				continue
			}
			s.Pieces, comes[i] = append(s.Pieces, i), true
			if r := d.Parts[p.Part].Role; s.Role == "" || r == joinery.Side {
				s.Role = r
			}
		}
		s.WallsClosed = s.Role == joinery.Side && !s.First
		for _, g := range patches {
			p, q := b.Pieces[g.Piece], b.Pieces[g.Other]
			if s.Has(p) && s.Has(q) && (comes[g.Piece] || comes[g.Other]) &&
				glued(d.Parts[p.Part].Role, d.Parts[q.Part].Role) {
				s.Glue = append(s.Glue, g)
			}
		}
		list = append(list, s)
	}
	return list
}

// glued reports whether glue goes between two parts as a box is put together: between its walls.
// Cleats are on them before.
func glued(p, q joinery.Role) bool {
	wall := func(r joinery.Role) bool { return r == joinery.Side || r == joinery.Front || r == joinery.Back }
	return wall(p) && wall(q)
}

// Block is a block of a clamp, along the axes of the box; Pad where it is of wood, not of steel.
type Block struct {
	Low, High geom.Vec3
	Pad       bool
}

// clampSize is how thick the bar of a clamp is drawn, of the box's largest size.
const clampSize = 0.022

// Clamps go along box front and back, from side to side; and along the sides, from front to back,
// where the joint has to be pulled home that way too.
func Clamps(d joinery.Drawer) (list []Block) {
	size, s := d.Outside, d.Spec
	thick := float64(clampSize * max(size.Width, size.Height, size.Depth))
	across := []float64{s.Front.Thickness.Mean / 2, size.Depth - s.Back.Thickness.Mean/2}
	for _, y := range across {
		list = append(list, bar{long: size.Width, at: y, thick: thick, box: size}.blocks()...)
	}
	if s.Joint == joinery.DadoRabbet || s.Joint == joinery.Butt {
		return list // the sides pull box front and back square, or fasteners hold them
	}
	for _, x := range []float64{s.Sides.Thickness.Mean / 2, size.Width - s.Sides.Thickness.Mean/2} {
		list = append(list, bar{long: size.Depth, at: x, thick: thick, box: size, turned: true}.blocks()...)
	}
	return list
}

// bar is a clamp under the box, with a jaw at either end: the upper edges are free to be measured.
type bar struct {
	long, at, thick float64 // the box along the bar, and where it lies across
	box             joinery.Size
	turned          bool // along the box's Y
}

// blocks are the bar, the jaws and the pads of a clamp. Bars along Y lie under those along X.
func (c bar) blocks() (list []Block) {
	e, high := c.thick, c.box.Height
	under := -2 * e
	if c.turned {
		under -= 2 * e
	}
	add := func(pad bool, from, to, half, low, top float64) {
		a, b := geom.Vec3{X: from, Y: c.at - half, Z: low}, geom.Vec3{X: to, Y: c.at + half, Z: top}
		if c.turned {
			a.X, a.Y, b.X, b.Y = a.Y, a.X, b.Y, b.X
		}
		list = append(list, Block{a, b, pad})
	}
	const pad, steel = true, false
	add(pad, -e/2, 0, 1.2*e, 0.1*high, 0.9*high)
	add(pad, c.long, c.long+e/2, 1.2*e, 0.1*high, 0.9*high)
	add(steel, -1.5*e, -e/2, 0.6*e, under, 0.7*high)
	add(steel, c.long+e/2, c.long+1.5*e, 0.6*e, under, 0.7*high)
	add(steel, -e/2, c.long+e/2, 0.6*e, under, under+e)
	return list
}
