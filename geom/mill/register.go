package mill

import (
	"math"

	"drawerwright/geom"
)

const (
	// registerDiameter is the usual pin, in millimetres, unless every bit is wider.
	registerDiameter = 6.0
	// registerWeb is the least wood about a registration hole; common practice, no source.
	registerWeb = 3.0
	// PinDepth is how far the holes go on into the spoilboard, so that a pin stands
	// there; common practice, no source.
	PinDepth = 5.0
)

// register places the two holes that a panel is put down on when it has been
// turned over end for end. In the waste they change places with each other, on
// the centre line each keeps its own. They are off the middle, so that a panel
// that was turned the wrong way lies visibly off. They are drilled once, from the
// face that is cut first; then pins stand in them.
func (p *preparation) register() {
	r, box := p.Register, p.part.Outline.Bounds()
	if r.Diameter == 0 {
		r.Diameter = math.Max(registerDiameter, p.Bits[p.bits[len(p.bits)-1]].Diameter)
	}
	bit := -1
	for _, b := range p.bits {
		if p.Bits[b].Diameter <= r.Diameter+touching && (p.Bits[b].Reach == 0 || p.Bits[b].Reach >= p.part.Most+PinDepth-touching) {
			bit = b
			break
		}
	}
	if bit < 0 {
		p.fail("register", FieldRegister, "write a larger diameter, or give a smaller or longer bit", "no bit makes a registration hole of %s through %s and %s into the spoilboard",
			p.text(r.Diameter), p.text(p.part.Most), p.text(PinDepth))
		return
	}
	place := p.inWaste
	if r.Place == PlaceCentreLine {
		place = p.onCentreLine
	}
	at := place(&r, box)
	for _, c := range at {
		hole := geom.Circle(c, r.Diameter/2)
		p.work.Pins = append(p.work.Pins, hole)
		p.work.Cuts = append(p.work.Cuts, Cut{Operation: Registering, Face: p.work.Faces[0], Depth: p.part.Thickness, Below: PinDepth + p.part.Most - p.part.Thickness, Bit: bit, Outline: hole, Pocket: -1})
		p.work.EndGap = max(p.work.EndGap, r.Diameter/2+registerWeb-min(c.X-box.Min.X, box.Max.X-c.X))
	}
}

// inWaste is a hole beyond each end, at a third of the width.
func (p *preparation) inWaste(r *Register, box geom.Rect) []geom.Point {
	least := p.work.Gap + registerWeb + r.Diameter/2
	switch {
	case r.Distance == 0:
		r.Distance = math.Ceil(least)
	case r.Distance < least-touching:
		p.fail("register", FieldRegister, "write a distance of "+p.atLeast(least)+" or more", "registration holes %s from the panel's ends meet the cuts beyond them",
			p.text(r.Distance))
		p.naming(FieldRegister, p.up(least))
	}
	y := box.Min.Y + box.Height()/3
	return []geom.Point{{X: box.Min.X - r.Distance, Y: y}, {X: box.Max.X + r.Distance, Y: y}}
}

// onCentreLine is a hole at a distance from each long edge, the upper one a
// diameter further in.
func (p *preparation) onCentreLine(r *Register, box geom.Rect) []geom.Point {
	if r.Distance == 0 {
		r.Distance = box.Height() / 4
	}
	x := (box.Min.X + box.Max.X) / 2
	at := []geom.Point{{X: x, Y: box.Min.Y + r.Distance}, {X: x, Y: box.Max.Y - r.Distance - r.Diameter}}
	need := r.Diameter/2 + registerWeb
	if at[1].Y-at[0].Y < 2*need || r.Distance < need {
		p.fail("register", FieldRegister, "put them into the waste", "the panel, %s wide, has no room for two registration holes of %s, %s from its edges",
			p.text(box.Height()), p.text(r.Diameter), p.text(r.Distance))
		return nil
	}
	for _, c := range p.work.Cuts {
		b := pathBounds(c, p.Bits)
		for _, h := range at {
			if h.X > b.Min.X-need && h.X < b.Max.X+need && h.Y > b.Min.Y-need && h.Y < b.Max.Y+need {
				p.fail("register", FieldRegister, "write another distance, or put the holes into the waste", "a registration hole at x %s, y %s meets %s",
					p.text(h.X), p.text(h.Y), p.what(c.Pocket))
				return nil
			}
		}
	}
	return at
}
