// Package scene is the model of boxes to look at before a board is cut: parts with
// their solids, where each piece stands, in which order it comes off, and where
// there is play. Writers of previews share it.
//
// Everything is in millimeters. Boxes are in box coordinates (X right, Y back, Z up,
// from the outside bottom front left corner), solids in those of their panel. Parts
// that are the same share a solid, across drawers too. A scene is read, never
// changed, once it is made.
package scene

import (
	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
)

// Scene is what one looks at.
type Scene struct {
	Title  string
	Unit   geom.Unit // in which numbers are shown
	Stocks []string  // of the job, in its order, where they have colors
	Meshes []solid.Packed
	Parts  []Part
	Boxes  []Box
	Groups []Group // what is looked at together: each cabinet, then each drawer
	// Settings are those of the machines with a fence; none where nobody tells them.
	Settings []Setting
}

// Part is a panel of which there are some pieces.
type Part struct {
	Name     string // as in the cut list
	Number   int    // there, of all parts that are alike
	Role     joinery.Role
	Label    string // tells parts of one role apart; often empty
	Stock    string
	Grained  bool // the grain runs along the panel's x
	Quantity int  // to cut for the whole job
	Panel    geom.Panel
	Mesh     int // among the scene's
	// Eased is the solid with plays made [Exaggeration] times as large; Mesh where
	// there are none.
	Eased int
	// Milled is the solid that bits leave of it; Mesh where that is as designed.
	Milled int
}

// Box is one drawer with its pieces as they stand.
type Box struct {
	Name    string
	Count   int // of boxes of this kind
	Size    joinery.Size
	Pieces  []Piece
	Opening []string // what happens in each step of opening it
	// Steps gives those of putting it together; nil where nobody tells them. Judged gives the measures with the
	// verdicts that stand at the clearances; nil where nobody judges them. Joints gives what judges them for boards
	// and errors that a person chooses; nil where nobody does. All are asked once: of many boxes they would be the
	// most in memory.
	Steps    func() []Step
	Judged   func() []joinery.Check
	Joints   func() []fit.Joint
	Overlaps []Overlap
}

// Piece is a part in its place.
type Piece struct {
	Name      string // one of its own in the box, as "left side"
	Part      int    // among the scene's
	Placement geom.Placement
	Moves     []Move // in the order of their steps
}

// Move is how far a piece moves in a step of opening.
type Move struct {
	Step int
	By   geom.Vec3
}

// Group is boxes and where each stands.
type Group struct {
	Name  string
	Boxes []int
	At    []geom.Vec3 // of each box; of a single one its origin
	// Carcass is the opening that the boxes share, and how they run in it; nil without.
	Carcass *carcass.Carcass
}

// Alone is the group of one box.
func Alone(name string, box int) Group {
	return Group{Name: name, Boxes: []int{box}, At: []geom.Vec3{{}}}
}

// Offset is how far a piece has moved when opening has come to a number of steps:
// 2.5 is in the middle of the third.
func (p Piece) Offset(steps float64) (by geom.Vec3) {
	for _, m := range p.Moves {
		by = by.Add(m.By.Scale(min(1, max(0, steps-float64(m.Step)))))
	}
	return by
}
