package mill

import (
	"math"

	"drawerwright/geom"
)

// DefaultSmallPart is the side, in mm, of the square below whose area a panel is small: then
// hold-down by vacuum or a few screws is doubtful; common practice, no source.
const DefaultSmallPart = 150.0

// checkSkin judges a skin against the boards.
func (p *preparation) checkSkin() {
	part := p.part
	thin := part.Least - part.Thickness + p.Skin
	switch {
	case p.Skin >= part.Thickness:
		skin, thick := geom.Millimetres(p.Skin), geom.Millimetres(part.Thickness)
		d := p.fail("skin", SettingSkin, "a skin of %s is as thick as the panel, %s", skin, thick)
		d.Measured, d.Limit, d.Remedies = skin, thick, p.withSkin()
	case !p.FromSpoilboard && thin < leastSkin-geom.Settle:
		stays := geom.Millimetres(math.Max(0, thin))
		d := p.warn("skin", SettingSkin, "a skin of %s is %s in the thinnest board", geom.Millimetres(p.Skin), stays)
		d.Measured, d.Limit, d.Ask = stays, geom.AtLeast(leastSkin), fromSpoilboard
		d.Remedies = []geom.Remedy{p.least(SettingSkin, "", p.Skin+leastSkin-thin)}
	}
}

// fromSpoilboard is asked where a thin board leaves too little under a cut.
var fromSpoilboard = geom.Sentencef("measure depths from the spoilboard")

// leastSkin is the least skin that holds, and usualSkin one that is still cut through with
// a knife, in millimetres; common practice, no source.
const leastSkin, usualSkin = 0.15, 0.5

// UsualSkin is one that holds in boards of a mean and a least thickness, all in mm. From the
// spoilboard a thin board has the same skin.
func (s Settings) UsualSkin(mean, least float64) float64 {
	if s.FromSpoilboard {
		return usualSkin
	}
	return math.Max(usualSkin, mean-least+leastSkin)
}

// withSkin is a skin that holds in the thinnest board.
func (p *preparation) withSkin() []geom.Remedy {
	return []geom.Remedy{p.exactly(SettingSkin, p.UsualSkin(p.part.Thickness, p.part.Least))}
}
