package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// FieldPull is the entry of a [Problem] about a pull.
const FieldPull Field = "pull"

// Sizes that are chosen, and limits, in millimetres; common practice, no source.
const (
	holeWidth             = 30.0
	halfWidth             = 80.0
	slotWidth, slotHeight = 100.0, 25.0
	pullDown              = 40.0
	slotRadius            = 8.0  // of a slot's inner corners, or the bit's radius and a little if that is more
	leastPull             = 20.0 // a finger goes in
	pullEdge              = 8.0  // the least wood over, under and between a pull and other cuts
	pullEnds              = 20.0 // and to the clear ends of the front
	roundRoom             = 1.05 // of an arc's radius over a bit's: a bit of just the radius stands still in it
)

// pull cuts a hand hold into the middle of the drawer front, or of the box's front
// where there is none.
func (l *layout) pull() {
	k := l.Pull
	if k.Shape == NoPull {
		return
	}
	role := Front
	if l.DrawerFront != nil {
		role = DrawerFrontRole
	}
	part := l.wall(role)
	p := &part.Panel
	box := p.Outline.Bounds()
	defaults := map[PullShape][3]float64{ // width, height, down
		PullHole: {holeWidth, holeWidth, pullDown}, PullHalf: {halfWidth, halfWidth / 2, 0},
		PullSlot: {slotWidth, slotHeight, 0}, PullHandHold: {slotWidth, holeWidth, pullDown},
	}
	usual, known := defaults[k.Shape]
	if !known {
		l.fail("pull", FieldPull, role, fmt.Sprintf("there is no pull called %q", k.Shape), fmt.Sprintf("write %s, %s, %s or %s", PullHole, PullHalf, PullSlot, PullHandHold))
		return
	}
	or := func(v, usual float64) float64 {
		if v > 0 {
			return v
		}
		return usual
	}
	width := or(k.Width, usual[0])
	height := or(k.Height, usual[1])
	switch k.Shape {
	case PullHole:
		height = width
	case PullHalf:
		height = width / 2
	}
	low := box.Max.Y - height // of the cut
	if usual[2] > 0 {
		low = box.Max.Y - or(k.Down, usual[2]) - height/2
	}
	high := low + height
	if !l.pullFits(role, width, height, low, high) {
		return
	}
	x := (box.Min.X + box.Max.X) / 2
	for _, c := range p.Pockets {
		if b := c.Outline.Bounds(); b.Max.X > x-width/2-pullEdge && b.Min.X < x+width/2+pullEdge && b.Max.Y > low-pullEdge && b.Min.Y < high+pullEdge {
			l.fail("pull", FieldPull, role, fmt.Sprintf("the pull, %s wide and from %s to %s up, meets the %s on the %s face", l.text(width), l.text(low), l.text(high), c.Kind, c.Face),
				"move it with down, make it smaller, or move what it meets: an odd number of dividers from front to back has one in the middle")
			return
		}
	}
	through := geom.Pocket{Kind: geom.Cutout, Depth: p.Thickness}
	switch k.Shape {
	case PullHole:
		through.Outline = geom.Circle(geom.Point{X: x, Y: low + width/2}, width/2)
	case PullHandHold:
		through.Outline = geom.RoundedRectangle(x-width/2, low, x+width/2, high, height/2)
	case PullHalf:
		top := geom.Point{X: x + width/2, Y: box.Max.Y}
		corners := []geom.Vertex{{Point: top, Bulge: -1}, {Point: geom.Point{X: x - width/2, Y: box.Max.Y}}}
		cutEdge(p, topEdge(p.Outline), corners)
		p.EdgeCuts = append(p.EdgeCuts, cutOut(geom.PullCut, corners))
	case PullSlot:
		radius := math.Min(math.Max(slotRadius, l.leastRound()), math.Min(width/2, height))
		l.outlineBit(p, sameRound(radius))
		notch(p, geom.PullCut, true, x-width/2, x+width/2, low, radius)
	}
	if through.Outline != nil {
		p.Pockets = append(p.Pockets, through)
	}
	if l.Cutter.Kind.Fenced() {
		l.warn("pull-by-hand", FieldPull, role, fmt.Sprintf("a saw cannot cut the %s", k.Shape), "bore it, or cut it with a jigsaw or a router and the drawing")
	}
}

// leastRound is the least radius of an inner corner that the router's bit gets into.
func (l *layout) leastRound() float64 {
	if l.Cutter.Kind.FollowsDrawing() {
		return l.Cutter.Width / 2 * roundRoom
	}
	return 0
}

// higherPull are what leaves wood enough under a pull: higher up where it has a place of
// its own, else lower.
func (l *layout) higherPull(top, floor, height float64) []Remedy {
	room := top - floor - pullEdge
	switch l.Pull.Shape {
	case PullHalf:
		return []Remedy{l.between(FieldPull, leastPull, 2*room).of("width", 0)}
	case PullSlot:
		return []Remedy{l.between(FieldPull, leastPull/2, room).of("height", 0)}
	case PullHole:
		return []Remedy{l.between(FieldPull, pullEdge+height/2, room-height/2).of("down", 0), l.between(FieldPull, leastPull, 2*(room-pullDown)).of("width", 0)}
	}
	return []Remedy{l.between(FieldPull, pullEdge+height/2, room-height/2).of("down", 0), l.between(FieldPull, leastPull/2, 2*(room-pullDown)).of("height", 0)}
}

// pullFits judges where a pull comes.
func (l *layout) pullFits(role Role, width, height, low, high float64) bool {
	p := l.wall(role).Panel
	box := p.Outline.Bounds()
	clear, floor := box.Width(), box.Min.Y
	if role == Front {
		clear = l.Width - 2*l.Ts
		switch {
		case l.BottomFit == BottomCleats:
			floor = l.bottomTop()
		case l.BottomFit.Grooved():
			floor = l.rise + l.groove
		}
	}
	switch {
	case width < leastPull-settle || height < leastPull/2-settle:
		l.fail("pull", FieldPull, role, fmt.Sprintf("a pull of %s x %s is too small for fingers", l.text(width), l.text(height)),
			"make the pull larger", l.between(FieldPull, leastPull, clear-2*pullEnds).of("width", 0))
	case width > clear-2*pullEnds+settle:
		l.fail("pull", FieldPull, role, fmt.Sprintf("a pull of %s is too wide for a front with %s between its ends", l.text(width), l.text(clear)),
			"take a finger hole", l.between(FieldPull, leastPull, clear-2*pullEnds).of("width", 0))
	case low < floor+pullEdge-settle:
		l.fail("pull", FieldPull, role, fmt.Sprintf("the pull comes down to %s over the lower edge; there has to be %s of wood under it", l.text(low), l.text(floor+pullEdge)), "take a higher front", l.higherPull(box.Max.Y, floor, height)...)
	case high < box.Max.Y-settle && high > box.Max.Y-pullEdge+settle || high > box.Max.Y+settle:
		l.fail("pull", FieldPull, role, fmt.Sprintf("the pull leaves %s of wood over it, at least %s is needed", l.text(box.Max.Y-high), l.text(pullEdge)), "take another pull",
			l.between(FieldPull, pullEdge+height/2, box.Max.Y-floor-pullEdge-height/2).of("down", 0))
	default:
		return true
	}
	return false
}
