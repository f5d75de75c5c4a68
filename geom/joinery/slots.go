package joinery

import (
	"math"

	"drawerwright/geom"
)

// The holes of a bottom that is slid in, in millimeters; common practice, no source.
const (
	minSlotEdge  = 2.0 // the least wood of the bottom behind a slot
	minScrewEdge = 4.0 // from the middle of a screw to a face of the back
)

// rearScrew is how far before the bottom's rear edge its screws stand: in the middle of
// the back's thickness, or so much nearer to the front that the slots have room for what
// the bottom shrinks.
func (l *layout) rearScrew(shrinks float64) float64 {
	middle := l.Tk / 2
	return math.Max(middle, math.Min(minSlotEdge+l.screw(bottomScrew).hole/2+shrinks, l.Tk-minScrewEdge))
}

// slotRoom is how much a bottom may shrink before its screws reach the rear ends of their
// slots.
func (l *layout) slotRoom(shrinks float64) float64 {
	return l.rearScrew(shrinks) - l.screw(bottomScrew).hole/2 - minSlotEdge
}

// checkSlots judges whether the slots let a bottom of solid wood shrink.
func (l *layout) checkSlots(shrinks float64) {
	if !l.Bottom.Solid || shrinks <= l.slotRoom(shrinks)+settle {
		return
	}
	l.warn(geom.Diagnosis{
		Code: "bottom-movement", Subject: about(SettingBack, Bottom),
		Measured: geom.Millimeters(shrinks), Limit: geom.Millimeters(l.slotRoom(shrinks)),
		Fact:     geom.Sentencef("from front to back the bottom shrinks by %s, and under a back of %s its slots let it by %s: after that it splits or leaves the box front's groove", geom.Millimeters(shrinks), geom.Millimeters(l.Tk), geom.Millimeters(l.slotRoom(shrinks))),
		Ask:      geom.Sentencef("take a bottom of quartersawn boards or of sheet stock, or saw the slots open to the rear edge"),
		Remedies: []geom.Remedy{l.least(SettingBack, shrinks+minSlotEdge+l.screw(bottomScrew).hole/2+minScrewEdge)},
	})
}

// rearHoles are for the screws that hold a bottom which was slid in to the lower edge of
// the back: holes, or for solid wood slots. Fixed at its front edge, wood that swells
// takes the slots backward past the screws, and wood that shrinks forward.
func (l *layout) rearHoles(length, width float64) []geom.Pocket {
	r := l.screw(bottomScrew).hole / 2
	// A slot just as wide as its bit has no room for rounding.
	if bit := l.Cutter.Width / 2; l.Bottom.Solid && l.Cutter.Kind.FollowsDrawing() && bit < r+settle {
		r = math.Max(r, bit+l.SlotRoom/2)
	}
	swells, shrinks := float64(width*l.Bottom.Swelling), float64(width*l.Bottom.Shrinkage)
	y := width - l.Tk/2
	if l.Bottom.Solid {
		y = width - l.rearScrew(shrinks)
	}
	bit := 0.0
	if l.Cutter.Kind.FollowsDrawing() {
		bit = l.cutWith(l.slotBits(2*r, l.Tb, l.Bottom)[0].Diameter)
	}
	var list []geom.Pocket
	origin, screw := l.bottomOrigin(), l.screw(bottomScrew)
	for _, x := range evenly(2*appliedEnd, length-2*appliedEnd, 2*appliedApart) {
		hole := geom.Pocket{Kind: geom.Drill, Depth: l.Tb, Outline: geom.Circle(geom.Point{X: x, Y: y}, r)}
		l.drive(Back, origin.Add(geom.Vec3{X: x, Y: y}), geom.Vec3{Z: l.Tb + appliedLength}, screw.thick, screw.hole)
		if l.Bottom.Solid && swells+shrinks > settle {
			rear := math.Min(y+r+shrinks, width-minSlotEdge)
			hole.Bit = bit
			hole.Kind, hole.Outline = geom.Cutout, geom.RoundedRectangle(x-r, y-r-swells, x+r, rear, r)
		}
		list = append(list, hole)
	}
	return list
}
