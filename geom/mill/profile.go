package mill

import (
	"drawerwright/geom"
)

// profile cuts the panel out of its sheet, last.
func (p *preparation) profile() {
	part, face := p.part, p.lastFace()
	c := Cut{Operation: Profile, Face: face, Depth: part.Thickness, Bit: -1, Outline: p.drawn, Pocket: -1}
	p.work.Small = part.Outline.Area() < float64(p.SmallPart*p.SmallPart)
	if len(p.Bits) == 0 {
		p.work.Small = false
		p.work.Cuts = append(p.work.Cuts, c)
		return
	}
	c.Bit = p.outline
	if c.Bit < 0 {
		return // said before
	}
	if p.Tabs.Width > 0 && !(p.work.Small && p.OnionSkin > 0) {
		p.uses(SettingTabs, "")
		slots, held := p.tabs(c)
		if held && p.Tabs.Marked {
			p.work.Tabs = slots
			p.work.Cuts = append(p.work.Cuts, c)
			return
		}
		if held {
			c.Depth, c.Remaining = part.Thickness-p.Tabs.Height, p.Tabs.Height
			p.work.Cuts = append(p.work.Cuts, c)
			for _, l := range slots {
				p.work.Cuts = append(p.work.Cuts, Cut{Operation: Slotting, Face: c.Face, Depth: part.Thickness, Bit: c.Bit, Outline: l, Pocket: -1})
			}
			return
		}
	}
	switch {
	case p.OnionSkin > 0 && (p.work.Small || p.Tabs.Width > 0):
		p.uses(SettingOnionSkin, "")
		c.Depth, c.Remaining = part.Thickness-p.OnionSkin, p.OnionSkin
		p.checkOnionSkin()
	case p.work.Small:
		d := p.found.Warn("small-part", SettingSmall,
			"the panel is %s x %s, less than %s square: it may come loose when it is cut out",
			geom.Millimeters(part.Length()), geom.Millimeters(part.Width()), geom.Millimeters(p.SmallPart))
		d.Remedies = p.withOnionSkin()
		d.Remedies[0].Result = geom.Sentencef("hold it down by more than suction") // a skin is no hold
	}
	p.work.Cuts = append(p.work.Cuts, c)
}
