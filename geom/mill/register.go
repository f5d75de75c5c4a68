package mill

import (
	"math"

	"drawerwright/geom"
)

const (
	// registerWeb is the least wood about a registration hole; common practice, no source.
	registerWeb = 3.0
	// PinDepth is how far the holes go on into the spoilboard, so that a pin stands
	// there; common practice, no source.
	PinDepth = 5.0
)

// PinBelow is how far registration holes go on below a board of the mean of the readings, in
// mm: [PinDepth] into the spoilboard under the thickest, too. From the spoilboard no board
// counts.
func (s Settings) PinBelow(mean, most float64) float64 {
	if s.FromSpoilboard {
		return PinDepth
	}
	return PinDepth + most - mean
}

// UsualPin is the diameter, in mm, of the pin that a shop has at hand: 6 mm, or a quarter
// of an inch; common practice, no source.
func UsualPin(u geom.Unit) float64 {
	if u == geom.Inch {
		return geom.InchMM / 4
	}
	return 6
}

// register places the two holes that a panel is put down on when it has been
// turned over end for end. In the waste they change places with each other, on
// the center line each keeps its own. They are off the middle, so that a panel
// that was turned the wrong way lies visibly off. They are drilled once, from the
// face that is cut first; then pins stand in them.
func (p *preparation) register() {
	p.uses(SettingRegister, "")
	r, box := p.Register, p.part.Outline.Bounds()
	deep := p.part.MaxThickness + PinDepth
	reaches := func(b int) bool {
		return p.Bits[b].Reach == 0 || p.Bits[b].Reach >= deep-geom.Settle
	}
	if r.Diameter == 0 {
		r.Diameter = UsualPin(p.Unit)
		for i := len(p.bits) - 1; i >= 0; i-- { // the narrowest that reaches, if that is wider
			if b := p.bits[i]; reaches(b) {
				r.Diameter = math.Max(r.Diameter, p.Bits[b].Diameter)
				break
			}
		}
	}
	bit, short := -1, -1
	for _, b := range p.bits {
		if p.Bits[b].Diameter > r.Diameter+touching {
			continue
		}
		if reaches(b) {
			bit = b
			break
		}
		if short < 0 || p.Bits[b].Reach > p.Bits[short].Reach {
			short = b
		}
	}
	if bit < 0 {
		p.refuseRegister(r.Diameter, short, deep)
		return
	}
	place := p.inWaste
	if r.Place == PlaceCenterline {
		place = p.onCenterline
	}
	at := place(&r, box)
	for _, c := range at {
		hole := geom.Circle(c, r.Diameter/2)
		p.work.Pins = append(p.work.Pins, hole)
		p.work.Cuts = append(p.work.Cuts, Cut{Operation: Registering, Face: p.work.Faces[0], Depth: p.part.Thickness,
			Below: p.PinBelow(p.part.Thickness, p.part.MaxThickness), Bit: bit, Outline: hole, Pocket: -1})
		p.work.EndGap = max(p.work.EndGap, r.Diameter/2+registerWeb-min(c.X-box.Min.X, box.Max.X-c.X))
	}
}

// refuseRegister says why no bit makes the registration holes: the one that is short does not reach so deep,
// or, where that is below 0, all are too wide.
func (p *preparation) refuseRegister(diameter float64, short int, deep float64) {
	through := geom.Sentencef("a registration hole of %s through %s and %s into the spoilboard",
		geom.Millimeters(diameter), geom.Millimeters(p.part.MaxThickness), geom.Millimeters(PinDepth))
	if short < 0 {
		d := p.found.Fail("register", SettingRegister, "no bit makes %s", through)
		d.Ask = geom.Sentencef("write a larger diameter, or use a smaller bit")
		return
	}
	b := p.Bits[short]
	d := p.failBit(CodeBitReach, b, "no bit makes %s: %s reaches %s", through, named{b}, geom.Millimeters(b.Reach))
	d.Measured, d.Limit = geom.Millimeters(deep), geom.Millimeters(b.Reach)
	d.Remedies = []geom.Remedy{p.longer(deep, diameter)}
}

// inWaste is a hole beyond each end, at a third of the width.
func (p *preparation) inWaste(r *Register, box geom.Rect) []geom.Point {
	least := p.work.Gap + registerWeb + r.Diameter/2
	switch {
	case r.Distance == 0:
		r.Distance = math.Ceil(least)
	case r.Distance < least-geom.Settle:
		d := p.found.Fail("register", SettingRegister,
			"registration holes %s from the panel's ends meet the cuts beyond them",
			geom.Millimeters(r.Distance))
		d.Measured, d.Limit = geom.Millimeters(r.Distance), geom.AtLeast(least)
		d.Remedies = []geom.Remedy{p.least(SettingRegister, KeyDistance, least)}
	}
	y := box.Min.Y + box.Height()/3
	return []geom.Point{{X: box.Min.X - r.Distance, Y: y}, {X: box.Max.X + r.Distance, Y: y}}
}

// onCenterLine is a hole at a distance from each long edge, the upper one a
// diameter further in; where something is cut there, as near to that as it is clear.
func (p *preparation) onCenterline(r *Register, box geom.Rect) []geom.Point {
	if r.Distance == 0 {
		r.Distance = box.Height() / 4
	}
	x := box.Center().X
	need := r.Diameter/2 + registerWeb
	low, high := box.Min.Y+r.Distance, box.Max.Y-r.Distance-r.Diameter
	if high-low < 2*need || r.Distance < need {
		d := p.found.Fail("register", SettingRegister,
			"the panel, %s wide, has no room for two registration holes of %s, %s from its edges",
			geom.Millimeters(box.Height()), geom.Millimeters(r.Diameter), geom.Millimeters(r.Distance))
		d.Ask = intoWaste
		return nil
	}
	// Not as far below the middle as the other one is above it, so that a panel that was
	// turned top to bottom lies off.
	off := func(y, other float64) bool { return math.Abs(y+other-box.Min.Y-box.Max.Y) > r.Diameter/2 }
	lower, found := p.clearOn(x, low, need, func(float64) bool { return true })
	if found {
		high, found = p.clearOn(x, high, need, func(y float64) bool { return y-lower >= 2*need && off(y, lower) })
	}
	if !found {
		d := p.found.Fail("register", SettingRegister,
			"on the panel's centerline there is no room for two registration holes of %s "+
				"beside what is cut there", geom.Millimeters(r.Diameter))
		d.Ask = intoWaste
		return nil
	}
	return []geom.Point{{X: x, Y: lower}, {X: x, Y: high}}
}

// intoWaste is asked where the panel itself has no room.
var intoWaste = geom.Sentencef("put the holes into the waste")

// registerStep is how far apart, in millimeters, the places are that are tried for a
// registration hole.
const registerStep = 1.0

// clearOn finds the place on an upright line, nearest to the one that is wanted, that
// keeps a distance from all cuts and from the panel's outline.
func (p *preparation) clearOn(x, wanted, need float64, allowed func(y float64) bool) (float64, bool) {
	outline := p.part.Outline.Flatten(flatWithin)
	clear := func(y float64) bool {
		h := geom.Point{X: x, Y: y}
		for _, c := range p.work.Cuts {
			if pathBounds(c, p.Bits).Grow(need).Overlaps(geom.Around(h)) {
				return false
			}
		}
		return outline.Contains(h) && outline.Distance(h) >= need-touching
	}
	box := p.part.Outline.Bounds()
	for n := range int(box.Height()/registerStep) + 1 {
		for _, sign := range []float64{1, -1} {
			if y := wanted + float64(sign*float64(n)*registerStep); y > box.Min.Y && y < box.Max.Y && allowed(y) && clear(y) {
				return y, true
			}
		}
	}
	return 0, false
}

// flatWithin is how near, in millimeters, chords keep to arcs where a hole's distance
// from them is judged: far less than the wood that is left between.
const flatWithin = 0.01
