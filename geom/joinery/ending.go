package joinery

import (
	"maps"
	"slices"

	"drawerwright/geom"
)

// ending is how the front or the back meets the sides. Distances in the sides
// run from their end there into them.
type ending struct {
	// short is how much the sides end before the depth of the box does.
	short float64
	cuts  []geom.Pocket // in the sides
	mates bool          // the sides' end bears on this part
	// fingers of the sides, from the bottom edge up; none at a plain end.
	fingers []finger
	// groove is where the bottom's groove in the sides ends; 0 runs out of them.
	// reach is how far the bottom without slack stays from the end.
	groove, reach float64
	panel         geom.Panel
	stand         geom.Placement
}

// assemble adds sides, front, back and bottom. end makes the front's and, where the
// back is not housed, the back's corner.
func (l *layout) assemble(end func(Role) ending) {
	var front, back ending
	l.chooseGrooveBit(func() {
		front = end(Front)
		if l.BackJoint == Housed {
			back = l.housed()
		} else {
			back = end(Back)
		}
	})
	if l.BottomFit.SlidesIn() {
		l.shorten(&back)
	}
	if l.BottomFit == BottomApplied {
		front.stand.Origin.Z += l.Tb
		back.stand.Origin.Z += l.Tb
	}
	l.addSides(front, back)
	l.add(Front, front.panel, front.stand)
	l.add(Back, back.panel, back.stand)
	l.addBottom()
	l.drawer.Inside = Size{l.Width - 2*l.Ts, l.Height - l.bottomTop(), l.Depth - (l.toFront + l.toBack)}
}

// backUnder is how high the lower edge of a back stands under which the thickest
// bottom is slid in.
func (l *layout) backUnder() float64 {
	return l.rise + min(l.groove, l.Bottom.Thickness.Max-l.below()+bottomRoom)
}

// shorten lets the bottom pass under the back; its grooves run out of the sides there.
func (l *layout) shorten(back *ending) {
	under := l.backUnder()
	back.stand.Origin.Z += under
	back.panel.Outline = lowered(back.panel.Outline, under)
	kept := back.panel.Pockets[:0]
	for _, k := range back.panel.Pockets {
		if k.Kind != geom.Groove {
			k.Outline = lowered(k.Outline, under)
			kept = append(kept, k)
		}
	}
	back.panel.Pockets, back.groove = kept, 0
}

// lowered cuts a strip off the lower end of a rectangle.
func lowered(l geom.Loop, by float64) geom.Loop {
	low, top := slices.Clone(l), l.Bounds().Max.Y
	for i := range low {
		if low[i].Y == top {
			low[i].Y -= by
		}
	}
	return low
}

// addSides makes the sides: one panel that serves as both, turned about, where its
// ends are alike; else one for the left and its mirror image for the right.
func (l *layout) addSides(front, back ending) {
	length := l.Depth - front.short - back.short
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, l.wallHeight()), Thickness: l.Ts, Pockets: append([]geom.Pocket(nil), front.cuts...)}
	switch {
	case len(front.fingers) > 0 || len(back.fingers) > 0:
		p.Outline = fingered(length, l.wallHeight(), front.fingers, back.fingers)
		kind := geom.FingerCut
		if l.Joint == Dovetail {
			kind = geom.TailCut
		}
		p.EdgeCuts = fingerCuts(kind, length, front.fingers, back.fingers)
		l.outlineBit(&p, l.sameFingers)
	case front.mates && back.mates:
		p.Outline = p.Outline.With(geom.Mating, 1, 3)
	case front.mates:
		p.Outline = p.Outline.With(geom.Mating, 3)
	}
	for _, k := range back.cuts {
		k.Outline = k.Outline.TurnOver(length)
		if k.Outline.Straight() {
			k.Outline = k.Outline.Bounds().Loop()
		}
		p.Pockets = append(p.Pockets, k)
	}
	if l.BottomFit.Grooved() {
		groove := l.grooved(front.groove, length-back.groove)
		l.runThrough(&groove, length)
		if front.groove > 0 || back.groove > 0 {
			slack := l.ClearanceDepth()
			r0, r1 := front.reach+slack/2, length-back.reach-slack/2 // wherever it lies in its play
			if l.BottomFit.SlidesIn() {
				r0, r1 = front.reach+slack, length
			}
			groove.Takes = geom.Rectangle(r0, l.rise, r1, l.rise+l.groove)
		}
		p.Pockets = append(p.Pockets, groove)
	}
	left := geom.Placement{Origin: geom.Vec3{Y: front.short, Z: l.wallStand()}, X: geom.Back, Y: geom.Up}
	right := geom.Placement{Origin: geom.Vec3{X: l.Width, Y: l.Depth - back.short, Z: l.wallStand()}, X: geom.Back.Scale(-1), Y: geom.Up}
	l.putSides(p, left, right)
}

// putSides adds a left side, and its mirror image where that is another panel.
func (l *layout) putSides(p geom.Panel, left, right geom.Placement) {
	mirror := mirrored(p)
	if alike(p, mirror) {
		l.add(Side, p, left, right)
		return
	}
	n := len(l.drawer.Parts)
	l.add(Side, p, left)
	l.add(Side, mirror, right)
	l.drawer.Parts[n].Label, l.drawer.Parts[n+1].Label = "left", "right"
}

// mirrored is a panel turned over end for end, its inside face again inside.
func mirrored(p geom.Panel) geom.Panel {
	length := p.Length()
	out := p
	out.Outline = p.Outline.TurnOver(length)
	out.EdgeCuts = append([]geom.EdgeCut(nil), p.EdgeCuts...)
	for i := range out.EdgeCuts {
		out.EdgeCuts[i].Area = out.EdgeCuts[i].Area.TurnOver(length)
	}
	out.Pockets = append([]geom.Pocket(nil), p.Pockets...)
	for i := range out.Pockets {
		k := &out.Pockets[i]
		k.Outline = k.Outline.TurnOver(length)
		if len(k.Takes) > 0 {
			k.Takes = k.Takes.TurnOver(length)
		}
		if len(k.Whole) > 0 {
			k.Whole = k.Whole.TurnOver(length)
		}
	}
	return out
}

// alike reports whether two panels, as a panel and its mirror image, are the same but
// for the order of what is in them, to the nanometer.
func alike(p, q geom.Panel) bool {
	type shape struct {
		kind  geom.Kind
		face  geom.Face
		sizes [6]geom.Length
	}
	parts := func(p geom.Panel) map[shape]int {
		m := make(map[shape]int)
		for _, v := range p.Outline {
			m[shape{sizes: [6]geom.Length{geom.LengthOf(v.X), geom.LengthOf(v.Y)}}]++
		}
		m[shape{sizes: [6]geom.Length{geom.LengthOf(p.Thickness), geom.LengthOf(p.Outline.Area())}}]++
		for _, k := range p.Pockets {
			r := k.Outline.Bounds()
			m[shape{k.Kind, k.Face, [6]geom.Length{geom.LengthOf(k.Depth), geom.LengthOf(r.Min.X), geom.LengthOf(r.Min.Y),
				geom.LengthOf(r.Max.X), geom.LengthOf(r.Max.Y), geom.LengthOf(k.Outline.Area())}}]++
		}
		for _, h := range p.Holes {
			r := h.Bounds()
			m[shape{geom.Cutout, geom.Inside, [6]geom.Length{geom.LengthOf(r.Min.X), geom.LengthOf(r.Min.Y), geom.LengthOf(r.Max.X), geom.LengthOf(r.Max.Y)}}]++
		}
		return m
	}
	return maps.Equal(parts(p), parts(q))
}
