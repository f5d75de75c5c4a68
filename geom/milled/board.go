// Package milled is a board as bits and blades leave it: each cut is the region that a
// bit really reached, with its round inside corners, its reliefs and its way past the
// edge, and what still hangs at the board where it was cut out of its sheet.
//
// It knows nothing of how a panel was designed or drawn; whoever reads the drawings says
// what was reached. Everything is in panel coordinates and millimeters, whichever the
// face.
package milled

import (
	"drawerwright/geom"
	"drawerwright/geom/solid"
)

// Chord is how far, in millimeters, the chords of a milled solid keep to their arcs at
// most: half of what a good caliper reads.
const Chord = 0.01

// Cut is what a bit reached of one line of a drawing.
type Cut struct {
	Face  geom.Face
	Depth float64     // from its face; the board's thickness or more goes through
	Reach []geom.Loop // outlines counter-clockwise, islands in them clockwise
}

// Board is a board with all of its cuts.
type Board struct {
	Outline   geom.Loop // what the outline's bit left of it
	Thickness float64
	Cuts      []Cut
	// CutOut are the cuts of the outline that leave wood beside it, tabs or an onion
	// skin; none where the outline goes right through. Reach is all that the bit swept
	// and the board itself; slots between tabs are among Cuts.
	CutOut []Cut
}

// Trimmed is the board when tabs and onion skin are off, as it goes into a box. Its
// pockets are in the order of the cuts.
func (b Board) Trimmed() geom.Panel {
	p := geom.Panel{Outline: b.Outline, Thickness: b.Thickness}
	for _, c := range b.Cuts {
		p.Pockets = append(p.Pockets, pocket(c.Face, c.Depth, c.Reach))
	}
	return p
}

// FromSheet is the board as it comes out of its sheet, with tabs and onion skin as far as
// the bit that cut the outline is wide.
func (b Board) FromSheet() geom.Panel {
	p := b.Trimmed()
	for i, c := range b.CutOut {
		if i == 0 {
			p.Outline = c.Reach[0]
			for _, l := range c.Reach[1:] {
				p.Holes = append(p.Holes, l.Reverse())
			}
		}
		p.Pockets = append(p.Pockets, pocket(c.Face, c.Depth, []geom.Loop{c.Reach[0], b.Outline.Reverse()}))
	}
	return p
}

// pocket is a cut as one loop: from the first corner of its first loop there is a way to
// each of the others and back, which counts for nothing by the even-odd rule.
func pocket(face geom.Face, depth float64, loops []geom.Loop) geom.Pocket {
	k := geom.Pocket{Face: face, Depth: depth}
	if len(loops) == 1 {
		k.Outline = loops[0]
		return k
	}
	for i, l := range loops {
		if i > 0 {
			k.Outline = append(k.Outline, geom.Vertex{Point: loops[0][0].Point})
		}
		k.Outline = append(k.Outline, l...)
		if i > 0 {
			k.Outline = append(k.Outline, geom.Vertex{Point: l[0].Point})
		}
	}
	return k
}

// Solid makes the solid of a panel as milled, its arcs in chords within [Chord], on the
// grid of [solid.Options].
func Solid(p geom.Panel, grid float64) (solid.Mesh, error) {
	return solid.Build(p, solid.Options{Chord: Chord, Grid: grid})
}
