package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// outlineBit is the widest bit that reaches through the panel, gets into all arcs
// and notches of its outline, and has room for the relief of the corners into which
// other parts go; -1 when there is none. It sets the outline as it is drawn.
func (p *preparation) outlineBit() int {
	outline, thick := p.part.Outline, p.part.MaxThickness+p.IntoSpoilboard
	least := outline.Reverse().MinInsideRadius() // to a bit outside it
	best, why := p.bits[len(p.bits)-1], tooShort
	list := p.upTo(p.part.Bit)
	floorless := -1 // the narrowest that fits, but for the floors of notches
	for n, b := range list {
		no := fits
		bit := p.Bits[b]
		radius := bit.Diameter / 2
		drawn, room := p.relieved(radius)
		sharp := sharpCorners(outline)
		switch {
		case bit.Reach > 0 && bit.Reach < thick-geom.Settle:
			no = tooShort
		case least < radius-geom.Settle:
			no = tooRound
		case !room && p.ReliefOf(Profile) == ReliefNone:
			no = notRelieved
		case !room:
			no = noRelief
		default:
			// A notch of just its width is none, and one of hardly more one for a narrower bit.
			room := touching
			if !p.isNarrowest(bit) {
				room = SlotRoom / 2
			}
			left, err := sweep.Outside(drawn, radius+room)
			if err != nil || left.Area()-drawn.Area() > fillets(outline, sharp, radius+room)+minStanding {
				no = tooWide
			}
		}
		if no == fits && !p.floors(drawn) {
			floorless = b
			continue
		}
		if no == fits {
			p.take(b, drawn)
			return b
		}
		if n == 0 || no < why {
			best, why = b, no
		}
	}
	if floorless >= 0 {
		drawn, _ := p.relieved(p.Bits[floorless].Diameter / 2)
		p.take(floorless, drawn)
		return floorless
	}
	p.refuseOutline(why, least, p.Bits[best])
	return -1
}

// take draws the outline for a bit, and reports what it leaves standing.
func (p *preparation) take(b int, drawn geom.Loop) {
	p.drawn = drawn
	if len(sharpCorners(p.part.Outline)) > 0 {
		d := p.found.Add(geom.LevelNote, "outline-corner", SettingBits,
			geom.Sentencef("%s leaves wood in inside corners of the outline", named{p.Bits[b]}))
		d.Ask = geom.Sentencef("square it by hand, or make it round")
	}
}

// refuseOutline says why no bit cuts the panel out.
func (p *preparation) refuseOutline(why obstacle, least float64, b Bit) {
	thick := p.part.MaxThickness + p.IntoSpoilboard
	switch why {
	case tooRound:
		d := p.failBit("bit-radius", b, "the outline has an inside radius of %s, too small for %s",
			geom.Millimeters(least), named{b})
		d.Measured, d.Limit = geom.Millimeters(b.Diameter/2), geom.Millimeters(least)
		d.Ask = geom.Sentencef("use a smaller bit")
	case notRelieved:
		d := p.found.Fail("corner-relief", SettingRelief, "the outline keeps round inside corners of %s, for its relief is none, "+
			"and other parts go into them: the box would not go together", geom.Millimeters(b.Diameter/2))
		d.Remedies = relieved(Profile)
	case noRelief:
		d := p.failBit("corner-relief", b, "the outline has no room for the relief of its inside corners by %s", named{b})
		d.Ask = geom.Sentencef("a smaller bit needs less")
	case tooWide:
		d := p.failBit("bit-width", b, "a notch of the outline is narrower than %s", named{b})
		d.Ask = geom.Sentencef("use a smaller bit, or make it wider")
	default:
		d := p.failBit(CodeBitReach, b, "no bit cuts through %s: %s reaches %s",
			geom.Millimeters(thick), named{b}, geom.Millimeters(b.Reach))
		d.Measured, d.Limit = geom.Millimeters(thick), geom.Millimeters(b.Reach)
		d.Remedies = []geom.Remedy{p.least(SettingBits, KeyReach, thick)}
	}
}

// minFloor is the least of a notch's floor, in millimeters, that has to be left
// between the reliefs of its corners for another part to seat on.
const minFloor = 1.0

// floors reports whether every notch keeps a floor between its two relieved corners.
func (p *preparation) floors(drawn geom.Loop) bool {
	l := p.part.Outline
	for _, i := range l.Marked(geom.Relief) {
		j := l.After(i)
		if !l[j].Marks.Has(geom.Relief) {
			continue
		}
		left := 0.0
		for k, v := range drawn {
			w := drawn[(k+1)%len(drawn)]
			if v.Bulge == 0 && within(v.Point, w.Point, l[i].Point, l[j].Point) {
				left = math.Max(left, v.To(w.Point))
			}
		}
		if left < minFloor-touching {
			return false
		}
	}
	return true
}

// relieved is the outline with room for other parts in the corners that take them.
// Seen from outside, where the bit runs, it is a pocket.
func (p *preparation) relieved(radius float64) (geom.Loop, bool) {
	around := p.part.Outline.Reverse()
	need := make([]bool, len(around))
	for _, i := range around.Marked(geom.Relief) {
		need[i] = around.Turn(i) > 0 // an outer corner needs none
	}
	if !slices.Contains(need, true) {
		return p.part.Outline, true
	}
	p.uses(SettingRelief, Profile)
	if p.ReliefOf(Profile) == ReliefNone {
		return p.part.Outline, false
	}
	out, ok := relieve(around, need, radius, p.ReliefOf(Profile))
	return out.Reverse(), ok
}

// sharpCorners are the inside corners of an outline, but for those that are relieved.
func sharpCorners(l geom.Loop) (list []int) {
	for i := range l {
		if l.Turn(i) < -1e-6 && !l[i].Marks.Has(geom.Relief) {
			list = append(list, i)
		}
	}
	return list
}

// fillets is the area that a disc leaves in corners.
func fillets(l geom.Loop, corners []int, radius float64) float64 {
	sum := 0.0
	for _, i := range corners {
		sum += geom.CornerArea(radius, math.Abs(l.Turn(i)))
	}
	return sum
}

// minStanding is the area, in square millimeters, of what a bit may leave at an
// outline without a word.
const minStanding = 0.05

// outermost reports whether a side of the outline is straight and lies on the box
// about it: there a bit runs past, not into a notch.
func (p *preparation) outermost(side int) bool {
	l := p.part.Outline
	a, b, box := l[side], l[(side+1)%len(l)], l.Bounds()
	if a.Bulge != 0 {
		return false
	}
	both := func(u, v, edge float64) bool { return math.Abs(u-edge) < touching && math.Abs(v-edge) < touching }
	return both(a.X, b.X, box.Min.X) || both(a.X, b.X, box.Max.X) || both(a.Y, b.Y,
		box.Min.Y) || both(a.Y, b.Y, box.Max.Y) || convex(l)
}

// convex reports whether a loop of straight sides has no inside corner.
func convex(l geom.Loop) bool {
	for i, v := range l {
		if v.Bulge != 0 || l.Turn(i) < -1e-6 {
			return false
		}
	}
	return true
}

// place is how far along an outline a point on one of its straight sides lies.
func place(l geom.Loop, q geom.Point) float64 {
	start, best, at := 0.0, math.Inf(1), 0.0
	for i, a := range l {
		b := l[(i+1)%len(l)]
		length := l.SideLength(i)
		if a.Bulge == 0 && length > touching {
			s, left := geom.Beside(q, a.Point, b.Point)
			if off := math.Abs(left); s > -touching && s < length+touching && off < best {
				best, at = off, start+s
			}
		}
		start += length
	}
	return at
}
