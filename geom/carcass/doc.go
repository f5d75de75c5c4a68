// Package carcass says how drawers stand and run in the opening of a cabinet: outlines of
// the carcass, of slides and handles, how far a drawer is pulled out, what is free about it
// and what collides, in any place from closed to pulled out. [Make] is the one entry.
//
// All lengths are in millimeters. Places are over the lower left corner of the opening, seen
// from before (X right, Y back, Z up); Y is 0 where the boxes begin.
package carcass

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// Bank is an opening with the drawers that stand in it, from the top down.
type Bank struct {
	Unit    geom.Unit
	Opening opening.Opening
	Plan    opening.Plan
	Drawers []Drawer // as many as the plan has rows
}

// Drawer is one drawer, with the corner of its box from which its pieces are measured.
type Drawer struct {
	Name   string
	At     geom.Vec3
	Pieces []Piece
	Front  *joinery.DrawerFront // with the holes of its handle; nil without
}

// Piece is a board by the wood of it.
type Piece struct {
	Name   string
	Role   joinery.Role
	Blocks []Block
}

// Stands is the drawer of what belongs to none.
const Stands = -1

// Motion is what an outline does while its drawer is pulled.
type Motion string

const (
	Stays Motion = "stays"
	Moves Motion = "moves" // with its drawer
	Runs  Motion = "runs"  // grows out with its drawer, as slides do
)

// Outline is what is not made, by the block about it.
type Outline struct {
	Name string
	Block
	Drawer int // whose it is, or [Stands]
	Motion Motion
	Usual  bool // a size of it is a usual one that no job and no maker's sheet has said
}

// Clearance is a gap along an axis, from Low to High; below 0 of what is too large.
type Clearance struct {
	Name string
	Gap  float64
	Axis int // 0 is X, 1 Y, 2 Z
	Block
	Drawer int
}

// Collision is where two bodies would both be, or how far one stands out of where it belongs.
type Collision struct {
	Name string
	By   float64 // as far as one of them has to give way
	Block
	Pulled bool // not while all drawers are closed
}

// Carcass is an opening with what stands and runs in it.
type Carcass struct {
	Opening    Block
	Outlines   []Outline
	Travel     []float64 // how far each drawer is pulled out
	Assumed    []string  // for people
	Clearances []Clearance
	Collisions []Collision
}

// Usual sizes of what a job does not say; common practice, no source.
func usualSide(u geom.Unit) float64   { return u.Usual(18, 3.0/4) }   // of a cabinet
func usualKnob(u geom.Unit) float64   { return u.Usual(30, 1+1.0/4) } // across, and out
func usualBar(u geom.Unit) float64    { return u.Usual(12, 1.0/2) }   // of a handle
func usualStands(u geom.Unit) float64 { return u.Usual(35, 1+3.0/8) } // of a handle, out
func usualRail(u geom.Unit) float64   { return u.Usual(30, 1+1.0/4) } // of a slide under the middle, across

// shortTravel is what a drawer is pulled out without slides that go out wholly, of its depth.
const shortTravel = 0.75

// settle is what no verdict may hang on, in millimeters.
const settle = geom.Settle

// maker gathers a carcass.
type maker struct {
	Bank
	out  Carcass
	face float64 // where the front edge of the cabinet is, along Y
}

// Make says how the drawers of a bank stand and run.
func Make(b Bank) Carcass {
	m := maker{Bank: b}
	if len(b.Drawers) == 0 || len(b.Drawers) != len(b.Plan.Rows) {
		return m.out
	}
	m.face = m.faceAt()
	size := b.Plan.Opening
	m.out.Opening = Block{[3]float64{0, m.face, 0}, [3]float64{size.Width, m.face + size.Depth, size.Height}}
	m.cabinet()
	for i := range b.Drawers {
		m.travel()
		m.slides(i)
		m.handle(i)
	}
	m.assume()
	m.clearances()
	m.collisions()
	return m.out
}

// faceAt is where the cabinet's front edge is: behind overlay fronts and lips, level with inset fronts.
func (m *maker) faceAt() float64 {
	front, ok := m.front(0)
	switch {
	case ok && m.Opening.Fronts == opening.Inset:
		return front.Low[1]
	case m.Plan.Lip > 0:
		return m.Plan.Lip
	case ok && m.Opening.Fronts == opening.Overlay:
		return front.High[1]
	}
	return 0
}

func (m *maker) travel() {
	length := m.Plan.SlideLength
	if k := m.Plan.Slide.Kind; k != opening.SideMount && k != opening.Undermount {
		length *= shortTravel
	}
	m.out.Travel = append(m.out.Travel, length)
}

// extent is the block about the pieces of a drawer that are asked for.
func (m *maker) extent(drawer int, is func(Piece) bool) (about Block, ok bool) {
	d := m.Drawers[drawer]
	for _, p := range d.Pieces {
		for _, b := range p.Blocks {
			if !is(p) {
				continue
			}
			if b = b.moved(d.At); !ok {
				about, ok = b, true
			}
			about = about.Over(b)
		}
	}
	return about, ok
}

// front is the drawer front, or the box front that covers the cabinet.
func (m *maker) front(drawer int) (Block, bool) {
	return m.extent(drawer, func(p Piece) bool { return m.covers(p.Role) })
}

// box is what goes into the opening, but for a box front that covers it.
func (m *maker) box(drawer int) (Block, bool) {
	return m.extent(drawer, func(p Piece) bool { return !m.covers(p.Role) })
}

func (m *maker) covers(r joinery.Role) bool {
	return r == joinery.DrawerFrontRole || r == joinery.Front && m.Plan.Lip > 0
}

// outline adds an outline, unless nothing is left of it.
func (m *maker) outline(o Outline) {
	if o.Least() > settle {
		m.out.Outlines = append(m.out.Outlines, o)
	}
}

// assume says what is not known.
func (m *maker) assume() {
	say := func(format string, mm ...float64) {
		list := make([]any, len(mm))
		for i, v := range mm {
			list[i] = geom.Millimeters(v)
		}
		m.out.Assumed = append(m.out.Assumed, geom.Sentencef(format, list...).In(m.Unit))
	}
	switch travel := m.out.Travel[0]; m.Plan.Slide.Kind {
	case opening.SideMount, opening.Undermount:
		say("the slides go out wholly, by their length, %s", travel)
	default:
		say("the drawers are pulled out by three quarters of their depth, %s, and stopped there", travel)
	}
	if m.Opening.Sides == nil {
		say("the sides of the cabinet are %s thick", usualSide(m.Unit))
	}
	for _, o := range m.out.Outlines {
		if o.Usual && o.Motion == Runs {
			say("the slides are as high and as thick as usual ones: the slide maker's sheet comes first")
			break
		}
	}
	for _, d := range m.Drawers {
		if d.Front == nil || d.Front.Handles == 0 {
			continue
		}
		if d.Front.Handles == 1 {
			say("a knob is %s across and stands out by as much", usualKnob(m.Unit))
		} else {
			say("a handle is %s high and stands out by %s", usualBar(m.Unit), usualStands(m.Unit))
		}
		break
	}
}
