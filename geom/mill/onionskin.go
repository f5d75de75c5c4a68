package mill

import (
	"math"

	"drawerwright/geom"
)

// UsualSmallPart is the side, in mm, of the square below whose area a panel is small: then hold-down
// by vacuum or a few screws is doubtful; round in the unit of a job; common practice, no source.
func UsualSmallPart(u geom.Unit) float64 { return u.Usual(150, 6) }

// checkSkin judges an onion skin against the boards.
func (p *preparation) checkOnionSkin() {
	part := p.part
	thin := part.MinThickness - part.Thickness + p.OnionSkin
	switch {
	case p.OnionSkin >= part.Thickness:
		skin, thick := geom.Millimeters(p.OnionSkin), geom.Millimeters(part.Thickness)
		d := p.found.Fail("onion-skin", SettingOnionSkin, "an onion skin of %s is as thick as the panel, %s",
			skin, thick)
		d.Measured, d.Limit, d.Remedies = skin, thick, p.withOnionSkin()
	case !p.FromSpoilboard && thin < minOnionSkin-geom.Settle:
		stays := geom.Millimeters(math.Max(0, thin))
		d := p.found.Warn("onion-skin", SettingOnionSkin, "an onion skin of %s is %s in the thinnest board",
			geom.Millimeters(p.OnionSkin), stays)
		d.Measured, d.Limit, d.Ask = stays, geom.AtLeast(minOnionSkin), fromSpoilboard
		d.Remedies = []geom.Remedy{p.least(SettingOnionSkin, "", p.OnionSkin+minOnionSkin-thin)}
	}
}

// fromSpoilboard is asked where a thin board leaves too little under a cut.
var fromSpoilboard = geom.Sentencef("measure depths from the spoilboard")

// minOnionSkin is the thinnest onion skin that holds, and usualOnionSkin one that a knife still cuts
// through, in millimeters; common practice, no source.
const minOnionSkin, usualOnionSkin = 0.15, 0.5

// DefaultOnionSkin is an onion skin that holds in boards of a mean and a minimum thickness, all in
// mm. With depths from the spoilboard a thin board has the same skin.
func (s Settings) DefaultOnionSkin(mean, least float64) float64 {
	if s.FromSpoilboard {
		return usualOnionSkin
	}
	return math.Max(usualOnionSkin, mean-least+minOnionSkin)
}

// withSkin writes an onion skin that holds in the thinnest board.
func (p *preparation) withOnionSkin() []geom.Remedy {
	return []geom.Remedy{p.exactly(SettingOnionSkin, p.DefaultOnionSkin(p.part.Thickness, p.part.MinThickness))}
}
