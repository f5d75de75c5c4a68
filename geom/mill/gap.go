package mill

import "drawerwright/geom"

// SlotRoom is what a slot is drawn wider than its bit, in mm, when it would be just as wide:
// many toolpath programs find no path in a slot of the bit's own width. Common practice, no
// source.
const SlotRoom = 0.05

// MinWaste is the least wood, in mm, between what cuts one panel out and the next panel: a
// bit that skims it tears its edge; common practice, no source.
const MinWaste = 3.0

// beyond measures how far the pockets reach past the panel, and how much room that and
// the bit that cuts it out take round it.
func (p *preparation) beyond() {
	panel := p.part.Outline.Bounds()
	for _, c := range p.work.Cuts {
		b := pathBounds(c, p.Bits)
		p.work.Beyond = max(p.work.Beyond, panel.Min.X-b.Min.X, panel.Min.Y-b.Min.Y, b.Max.X-panel.Max.X,
			b.Max.Y-panel.Max.Y)
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
func (p *preparation) checkSpacing() {
	if p.PartSpacing <= 0 {
		return
	}
	// Report the larger need: a gap of the smaller one would only be refused for the other.
	switch need, ends := p.work.Reach+MinWaste, p.work.EndGap; {
	case p.PartSpacing >= max(need, ends)-geom.Settle:
	case need >= ends:
		p.tooNear(need, geom.Sentencef("panels %s apart: the cuts and the bit that cuts it out reach %s past the panel, "+
			"and %s of wood have to stay before the next", geom.Millimeters(p.PartSpacing), geom.Millimeters(p.work.Reach),
			geom.Millimeters(MinWaste)), "take less overcut, or a smaller bit")
	default:
		p.tooNear(ends, geom.Sentencef("panels %s apart: the registration holes and the wood about them reach %s "+
			"past the ends of this one", geom.Millimeters(p.PartSpacing), geom.Millimeters(ends)),
			"put the registration holes on the centerline")
	}
}

// tooNear refuses a gap between panels that has to be larger.
func (p *preparation) tooNear(need float64, fact geom.Sentence, ask string) {
	d := p.found.Add(geom.LevelError, "part-spacing", SettingPartSpacing, fact)
	d.Measured, d.Limit, d.Ask = geom.Millimeters(p.PartSpacing), geom.AtLeast(need), geom.Sentencef(ask)
	d.Remedies = []geom.Remedy{p.least(SettingPartSpacing, "", need)}
}
