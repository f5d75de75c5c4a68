package mill

import "drawerwright/geom"

// beyond measures how far the pockets reach past the panel, and how much room that and
// the bit that cuts it out take round it.
func (p *preparation) beyond() {
	panel := p.part.Outline.Bounds()
	for _, c := range p.work.Cuts {
		b := pathBounds(c, p.Bits)
		p.work.Beyond = max(p.work.Beyond, panel.Min.X-b.Min.X, panel.Min.Y-b.Min.Y, b.Max.X-panel.Max.X, b.Max.Y-panel.Max.Y)
	}
	p.work.Gap, p.work.Reach = p.work.Beyond, p.work.Beyond
	if p.outline >= 0 {
		d := p.Bits[p.outline].Diameter
		p.work.Gap, p.work.Reach = max(p.work.Gap, d+SlotRoom), max(p.work.Reach, d)
	}
	p.work.EndGap = p.work.Gap
}

// pathBounds is the box about what a cut takes away.
func pathBounds(c Cut, bits []Bit) geom.Rect {
	if len(c.Path) == 0 {
		return c.Outline.Bounds()
	}
	ring := make(geom.Ring, len(c.Path))
	for i, v := range c.Path {
		ring[i] = v.Point
	}
	return ring.Bounds().Grow(bits[c.Bit].Diameter / 2)
}

// checkGap judges the distance of panels on a sheet.
func (p *preparation) checkGap() {
	if need := p.work.Reach + Between; p.PartGap > 0 && p.PartGap < need-touching {
		p.fail("part-gap", FieldGap, "write a part-gap of "+p.atLeast(need)+" or more, or less over-run, or give a smaller bit",
			"panels %s apart: the cuts and the bit that cuts it out reach %s past the panel, and %s of wood have to stay before the next", p.text(p.PartGap), p.text(p.work.Reach), p.text(Between))
		p.naming(FieldGap, p.up(need))
	} else if need := p.work.EndGap; p.PartGap > 0 && p.PartGap < need-touching {
		p.fail("part-gap", FieldGap, "write a part-gap of "+p.atLeast(need)+" or more, or put the registration holes on the centre line",
			"panels %s apart: the registration holes and the wood about them reach %s past the ends of this one", p.text(p.PartGap), p.text(need))
		p.naming(FieldGap, p.up(need))
	}
}
