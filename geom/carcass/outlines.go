package carcass

import (
	"strings"

	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// cabinet outlines the sides, and the stiles of a face frame that stand in before them.
func (m *maker) cabinet() {
	o, t, over := m.out.Opening, m.sideThick(), m.Opening.FrameOverhang
	for _, h := range sidesOf {
		side, stile := h.between(o, o, -over-t, -over), h.between(o, o, -over, 0)
		stile.High[1] = stile.Low[1] + opening.UsualFrame(m.Unit)
		add := func(name string, b Block) {
			m.outline(Outline{Name: h.name + name, Block: b, Drawer: Stands, Motion: Stays, Usual: true})
		}
		add(" side of the cabinet", side)
		add(" stile of the frame", stile)
	}
}

// sideThick is how thick the cabinet's sides are.
func (m *maker) sideThick() float64 {
	if s := m.Opening.Sides; s != nil {
		return s.Thickness.Mean
	}
	return usualSide(m.Unit)
}

// hand is a side of the opening.
type hand struct {
	name  string
	right bool
}

var sidesOf = [2]hand{{"left", false}, {"right", true}}

// between sets a block between two distances from a side of another, inward.
func (h hand) between(o, b Block, from, to float64) Block {
	if h.right {
		b.Low[0], b.High[0] = o.High[0]-to, o.High[0]-from
	} else {
		b.Low[0], b.High[0] = o.Low[0]+from, o.Low[0]+to
	}
	return b
}

// slides outlines the slides of a drawer, at their line: between box and opening, under the box
// at its sides or under its middle.
func (m *maker) slides(drawer int) {
	box, ok := m.box(drawer)
	if !ok {
		return
	}
	s, o, name := m.Plan.Slide, m.out.Opening, m.Drawers[drawer].Name
	usual, _ := opening.BuiltIn(s.Kind, m.Unit)
	high := s.Height
	if high == 0 {
		high = usual.Height
	}
	line, shim := m.Plan.Rows[drawer].Line, m.Plan.Shim
	begins := m.Plan.Lip // at the front ends of the sides
	about := Block{[3]float64{0, begins, line - high/2}, [3]float64{0, begins + m.Plan.SlideLength, line + high/2}}
	add := func(name string, b Block, motion Motion, guessed bool) {
		m.outline(Outline{Name: name, Block: b, Drawer: drawer, Motion: motion, Usual: guessed})
	}
	known := high == s.Height && s.Height != usual.Height
	if s.Kind == opening.CenterMount {
		rail := about
		middle := (o.Low[0] + o.High[0]) / 2
		rail.Low[0], rail.High[0] = middle-usualRail(m.Unit)/2, middle+usualRail(m.Unit)/2
		rail.Low[2], rail.High[2] = box.Low[2]-s.ClearanceBelow, box.Low[2]
		add("slide of "+name, rail, Runs, true)
		return
	}
	for _, h := range sidesOf {
		called := h.name + " slide of " + name
		switch s.Kind {
		case opening.SideMount: // as thick as the widest box that runs leaves it
			add(called, h.between(o, about, shim, shim+s.Clearance-s.ClearancePlus/2), Runs, !known)
		case opening.Undermount:
			inner := shim + s.InsideDeduction/2 // where the box's sides end
			add(called, h.between(o, about, shim, inner-s.MaxSideThickness), Runs, !known)
			under := h.between(o, about, shim, inner+s.NotchWidth)
			under.High[2] = box.Low[2]
			add(called+", below the box", under, Runs, !known)
			m.carriage(drawer, called, h)
		case opening.Wooden:
			m.strips(drawer, h)
		}
		if m.Plan.Packing > 0 && s.Kind != opening.Wooden {
			packing := h.between(o, about, -m.Plan.Packing, 0)
			packing.Low[1] = m.face + opening.UsualFrame(m.Unit) // it is behind the frame
			add(h.name+" packing of "+name, packing, Stays, true)
		}
	}
}

// strips outlines the strips of wood on which a drawer runs, at one side.
func (m *maker) strips(drawer int, h hand) {
	for _, s := range m.Plan.Strips {
		if s.Row != drawer {
			continue
		}
		b := h.between(m.out.Opening, Block{}, -s.Out, s.Width-s.Out)
		b.Low[1], b.High[1] = m.face+s.From, m.face+s.From+s.Length
		b.Low[2], b.High[2] = s.Bottom, s.Bottom+s.High
		called := h.name + " " + string(s.Part)
		if s.Across() { // one of both sides
			if h.right {
				continue
			}
			middle := (m.out.Opening.Low[0] + m.out.Opening.High[0]) / 2
			b.Low[0], b.High[0] = middle-s.Length/2, middle+s.Length/2
			b.High[1], called = b.Low[1]+s.Width, string(s.Part)
		}
		m.outline(Outline{Name: called + " of " + m.Drawers[drawer].Name, Block: b, Drawer: drawer,
			Motion: Stays})
	}
}

// carriage outlines what of a slide under the box goes with it: below the bottom, from behind
// the box's front through the notch of its back, beside the box's side.
func (m *maker) carriage(drawer int, called string, h hand) {
	box, _ := m.box(drawer)
	front, ok := m.extent(drawer, func(p Piece) bool { return p.Role == joinery.Front })
	side, beside := m.extent(drawer, func(p Piece) bool {
		return p.Role == joinery.Side && strings.HasPrefix(p.Name, h.name)
	})
	if !ok || !beside {
		return
	}
	thick := side.High[0] - side.Low[0]
	b := h.between(box, box, thick, thick+m.Plan.Slide.NotchWidth)
	b.Low[1], b.High[2] = front.High[1], box.Low[2]+m.Plan.Slide.BottomRecess
	m.outline(Outline{Name: called + ", in the box", Block: b, Drawer: drawer, Motion: Moves})
}

// handle outlines the knob or handle of a drawer front about its holes.
func (m *maker) handle(drawer int) {
	front, ok := m.front(drawer)
	f := m.Drawers[drawer].Front
	if !ok || f == nil || f.Handles == 0 {
		return
	}
	down, middle := f.HandleFromTop, (front.Low[0]+front.High[0])/2
	if down == 0 {
		down = f.Height / 2
	}
	name, wide, high, out := "knob", usualKnob(m.Unit), usualKnob(m.Unit), usualKnob(m.Unit)
	if f.Handles == 2 {
		high, out = usualBar(m.Unit), usualStands(m.Unit)
		name, wide = "handle", f.HandleSpacing+high
	}
	z, y := front.High[2]-down, front.Low[1]
	m.outline(Outline{Name: name + " of " + m.Drawers[drawer].Name, Drawer: drawer, Motion: Moves, Usual: true,
		Block: Block{[3]float64{middle - wide/2, y - out, z - high/2}, [3]float64{middle + wide/2, y, z + high/2}}})
}
