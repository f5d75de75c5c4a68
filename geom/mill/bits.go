package mill

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

func (p *preparation) sortBits() {
	for i, b := range p.Bits {
		if !b.Engraves {
			p.bits = append(p.bits, i)
		}
	}
	slices.SortStableFunc(p.bits, func(a, b int) int { return cmp.Compare(p.Bits[b].Diameter, p.Bits[a].Diameter) })
}

// faces lists the faces in the order of cutting. A panel without pockets is cut
// out with its inside face up.
func (p *preparation) faces() {
	if p.part.CutOn(geom.Outside) {
		p.work.Faces = append(p.work.Faces, geom.Outside)
	}
	if e := p.part.Engraving; len(p.work.Faces) == 0 && len(p.part.Holes) == 0 && !p.part.CutOn(geom.Inside) && e != nil && p.Engrave.Depth > 0 {
		p.work.Faces = append(p.work.Faces, e.Face) // and is cut out from there too
		return
	}
	if p.part.CutOn(geom.Inside) || len(p.part.Holes) > 0 || len(p.work.Faces) == 0 {
		p.work.Faces = append(p.work.Faces, geom.Inside)
	}
}

// lastFace is the one from which the panel is cut out.
func (p *preparation) lastFace() geom.Face { return p.work.Faces[len(p.work.Faces)-1] }

// pocket works one pocket out.
func (p *preparation) pocket(i int) {
	k := p.part.Pockets[i]
	c := Cut{Operation: k.Kind.String(), Face: k.Face, Depth: k.Depth, Remaining: p.left(k.Depth), Bit: -1, Outline: k.Outline, Pocket: i}
	p.cut(c, k.Takes, k.Bit)
}

// hole works one of the panel's holes out, from the face it is cut out from.
func (p *preparation) hole(l geom.Loop) {
	p.cut(Cut{Operation: geom.Cutout.String(), Face: p.lastFace(), Depth: p.part.Thickness, Bit: -1, Outline: l, Pocket: -1}, nil, 0)
}

func (p *preparation) left(depth float64) float64 { return math.Max(0, p.part.Thickness-depth) }

// cut finds the widest bit that makes a closed cut, of those for which it is laid out,
// and shapes the cut for it. A diameter of 0 lays it out for any.
func (p *preparation) cut(c Cut, takes geom.Loop, laidOutFor float64) {
	if len(p.Bits) == 0 {
		p.work.Cuts = append(p.work.Cuts, c)
		return
	}
	open := openSides(c.Outline, p.part.Outline)
	best := tooShort // what keeps the bit that came nearest
	nearest := p.bits[len(p.bits)-1]
	for n, b := range p.upTo(laidOutFor) {
		shaped, no := p.shape(c, takes, open, p.Bits[b])
		if no == fits {
			shaped.Bit = b
			p.work.Cuts = append(p.work.Cuts, shaped)
			return
		}
		if n == 0 || no < best {
			best, nearest = no, b
		}
	}
	p.refuse(c, best, p.Bits[nearest])
}

// upTo are the bits no wider than one for which a cut is laid out, at least the
// narrowest; all of them where it is laid out for any.
func (p *preparation) upTo(diameter float64) []int {
	for i, b := range p.bits {
		if diameter == 0 || p.Bits[b].Diameter <= diameter+touching {
			return p.bits[i:]
		}
	}
	return p.bits[max(0, len(p.bits)-1):]
}

// isNarrowest reports whether no bit is narrower than this one.
func (p *preparation) isNarrowest(b Bit) bool {
	return b.Diameter <= p.Bits[p.bits[len(p.bits)-1]].Diameter
}

// obstacle says why a bit cannot make a cut; the order is that of how near it came.
type obstacle int

const (
	fits        obstacle = iota
	tooShort             // it does not reach the depth
	noRelief             // a corner that needs relief has no room for it
	notRelieved          // or is to have none
	tooWide              // it does not get in, or not everywhere
	tooRound             // it is wider than an arc inside the cut
)

// shape fits a cut to a bit.
func (p *preparation) shape(c Cut, takes geom.Loop, open []bool, b Bit) (Cut, obstacle) {
	radius := b.Diameter / 2
	by := radius + p.Overcut
	if slices.Contains(open, true) {
		p.uses(SettingOvercut, "")
	}
	drawn := overRun(c.Outline, open, by)
	if lacks := b.Diameter + SlotRoom - narrowOpen(c.Outline, open, drawn); lacks > 0 {
		drawn = overRun(c.Outline, open, by+lacks) // a bit may overhang the edge
	}
	if drawn.MinInsideRadius() < radius-geom.Settle {
		return c, tooRound
	}
	if !enters(drawn, radius) {
		return c, tooWide
	}
	if b.Reach > 0 && p.deepest(c) > b.Reach+geom.Settle {
		return c, tooShort
	}
	cleared := p.clearedBeside(c)
	if box, ok := drawn.AsRect(touching); ok && c.Operation != geom.Drill.String() {
		upright := box.Width() <= box.Height()
		narrow := math.Min(box.Width(), box.Height())
		if narrow < b.Diameter+SlotRoom-touching {
			// A line's round ends cannot be relieved.
			square := slices.Contains(needRelief(drawn, takes, radius, cleared), true)
			exact := !square && narrow < b.Diameter+touching
			if exact {
				p.uses(SettingSlots, "")
			}
			if p.Slots == SlotsCenterline && exact {
				c.Path, c.Outline = centerline(box, radius), nil
				return c, fits
			}
			if !p.isNarrowest(b) { // which leaves the slot as wide as it is asked for
				return c, tooWide
			}
			grow := (b.Diameter + SlotRoom - narrow) / 2
			if upright {
				box.Min.X, box.Max.X = box.Min.X-grow, box.Max.X+grow
			} else {
				box.Min.Y, box.Max.Y = box.Min.Y-grow, box.Max.Y+grow
			}
			drawn = box.Loop()
		}
	}
	if need := needRelief(drawn, takes, radius, cleared); slices.Contains(need, true) {
		relieved, no := p.withRelief(c.Operation, drawn, relieving{need, radius, cleared})
		if no != fits {
			return c, no
		}
		drawn = relieved
	}
	c.Outline = drawn
	return c, fits
}

// relieving is which corners of a cut need relief from a bit of a radius, and what is cleared
// beside the cut.
type relieving struct {
	need    []bool
	radius  float64
	cleared []geom.Ring
}

// withRelief relieves the corners of a cut as its operation is to be.
func (p *preparation) withRelief(operation string, drawn geom.Loop, r relieving) (geom.Loop, obstacle) {
	p.uses(SettingRelief, operation)
	if p.ReliefOf(operation) == ReliefNone {
		return nil, notRelieved
	}
	for i, v := range drawn {
		// The corner itself lies where another pocket is: there a smaller bit does
		// without a relief that would show beyond that pocket.
		if r.need[i] && slices.ContainsFunc(r.cleared, func(r geom.Ring) bool { return reaches(r, v.Point) }) {
			return nil, noRelief
		}
	}
	relieved, ok := relieve(drawn, r.need, r.radius, p.ReliefOf(operation))
	if !ok || !p.staysIn(relieved, drawn) {
		return nil, noRelief
	}
	return relieved, fits
}

// narrowOpen is the narrower extent of a rectangle as drawn where it is open on a
// side across it, else infinite.
func narrowOpen(l geom.Loop, open []bool, drawn geom.Loop) float64 {
	box, ok := drawn.AsRect(touching)
	if !ok {
		return math.Inf(1)
	}
	for i, o := range open {
		a, b := l[i], l[(i+1)%len(l)]
		if upright := math.Abs(a.X-b.X) < touching; o && upright == (box.Width() <= box.Height()) {
			return min(box.Width(), box.Height())
		}
	}
	return math.Inf(1)
}

// over says how far cuts go on that go through.
func (p *preparation) over() {
	for i := range p.work.Cuts {
		c := &p.work.Cuts[i]
		if !c.Through() || c.Operation == Registering {
			continue
		}
		if c.Overcut = p.IntoSpoilboard; !p.FromSpoilboard {
			c.Overcut += p.part.MaxThickness - p.part.Thickness
		}
	}
}

// deepest is how far a cut goes below its face in the thickest board: what goes through goes
// on into the spoilboard.
func (p *preparation) deepest(c Cut) float64 {
	more := p.part.MaxThickness - p.part.Thickness
	switch {
	case c.Operation == Registering:
		return p.part.MaxThickness + PinDepth
	case c.Through():
		return c.Depth + more + p.IntoSpoilboard
	case p.FromSpoilboard:
		return c.Depth + more
	}
	return c.Depth
}

// clearedBeside are the pockets of straight sides on the face of a cut that are at
// least as deep.
func (p *preparation) clearedBeside(c Cut) []geom.Ring {
	var list []geom.Ring
	for i, k := range p.part.Pockets {
		if i != c.Pocket && k.Face == c.Face && k.Depth >= c.Depth-touching && k.Outline.Straight() {
			list = append(list, k.Outline.Flatten(flatWithin))
		}
	}
	return list
}

// enters reports whether a disc gets into a loop everywhere but for its corners: in
// one piece, and as far as it goes in every direction.
func enters(l geom.Loop, radius float64) bool {
	reached, err := sweep.Pocket(l, radius)
	if err != nil || len(reached) != 1 {
		return false
	}
	a, b := l.Bounds(), reached[0].Bounds()
	const near = 1e-3 // chords of arcs keep within this
	return math.Abs(a.Min.X-b.Min.X) < near && math.Abs(a.Min.Y-b.Min.Y) < near && math.Abs(a.Max.X-b.Max.X) < near && math.Abs(a.Max.Y-b.Max.Y) < near
}

// centerline is the way of the bit's center along a slot of its own width.
func centerline(box geom.Rect, radius float64) []geom.Vertex {
	c := box.Center()
	if box.Width() >= box.Height() {
		return []geom.Vertex{{Point: geom.Point{X: box.Min.X + radius, Y: c.Y}}, {Point: geom.Point{X: box.Max.X - radius, Y: c.Y}}}
	}
	return []geom.Vertex{{Point: geom.Point{X: c.X, Y: box.Min.Y + radius}}, {Point: geom.Point{X: c.X, Y: box.Max.Y - radius}}}
}

// staysIn reports whether the relief of a cut keeps within the panel where the cut
// itself does.
func (p *preparation) staysIn(relieved, drawn geom.Loop) bool {
	a, b, panel := relieved.Bounds(), drawn.Bounds(), p.part.Outline.Bounds()
	const lip = 1.0 // mm of wood between a relief and the edge; common practice, no source
	in := func(relieved, drawn, edge float64) bool { return relieved <= drawn || relieved <= edge-lip }
	return in(a.Max.X, b.Max.X, panel.Max.X) && in(a.Max.Y, b.Max.Y, panel.Max.Y) &&
		in(-a.Min.X, -b.Min.X, -panel.Min.X) && in(-a.Min.Y, -b.Min.Y, -panel.Min.Y)
}

// refuse says why no bit makes a cut.
func (p *preparation) refuse(c Cut, why obstacle, b Bit) {
	what := p.what(c.Pocket)
	switch why {
	case tooShort:
		deep := geom.Millimeters(p.deepest(c))
		d := p.failBit(CodeBitReach, b, "%s is %s deep in the thickest board; %s reaches %s",
			what, deep, named{b}, geom.Millimeters(b.Reach))
		d.Measured, d.Limit = deep, geom.Millimeters(b.Reach)
		box := c.Outline.Bounds()
		d.Remedies = []geom.Remedy{p.longer(p.deepest(c), min(box.Width(), box.Height()))}
	case noRelief:
		d := p.failBit("corner-relief", b, "%s has no room for the relief of its corners by %s", what, named{b})
		d.Ask = geom.Sentencef("a smaller bit needs less")
	case notRelieved:
		d := p.found.Fail("corner-relief", SettingRelief, "%s keeps round corners of %s, for its relief is none, "+
			"and a square part goes into them: the box would not go together", what, geom.Millimeters(b.Diameter/2))
		d.Remedies, d.Ask = relieved(c.Operation), geom.Sentencef("let it run through")
	case tooRound:
		least := c.Outline.MinInsideRadius()
		left, radius := geom.Millimeters(b.Diameter/2), geom.Millimeters(least)
		d := p.failBit("bit-radius", b, "%s has an inside radius of %s; %s leaves %s", what, radius, named{b}, left)
		d.Measured, d.Limit = left, radius
		d.Remedies = []geom.Remedy{p.most(SettingBits, KeyDiameter, 2*least)}
	default:
		r := c.Outline.Bounds()
		narrow := math.Min(r.Width(), r.Height())
		d := p.failBit("bit-width", b, "%s, %s wide, is narrower than %s", what, geom.Millimeters(narrow), named{b})
		d.Measured, d.Limit = geom.Millimeters(narrow), geom.Millimeters(b.Diameter)
		d.Ask = geom.Sentencef("use a smaller bit, or make the slot wider")
	}
}
