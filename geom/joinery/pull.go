package joinery

import (
	"math"

	"drawerwright/geom"
)

// FieldPull is the entry of a [geom.Diagnosis] about a pull.
const FieldPull geom.Setting = "pull"

// Sizes that are chosen, and limits, in millimeters; common practice, no source.
const (
	holeWidth             = 30.0
	halfWidth             = 80.0
	slotWidth, slotHeight = 100.0, 25.0
	pullDown              = 40.0
	slotRadius            = 8.0  // of a slot's inner corners, or the bit's radius and a little if that is more
	minPull               = 20.0 // a finger goes in
	pullEdge              = 8.0  // the least wood over, under and between a pull and other cuts
	pullEnds              = 20.0 // and to the clear ends of the front
	roundRoom             = 1.05 // of an arc's radius over a bit's: a bit of just the radius stands still in it
)

// pull cuts one into the middle of the drawer front, or of the box's front
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
	area, ok := l.pullArea(role)
	if !ok || !l.pullFits(role, area) || l.pullMeets(role, area) {
		return
	}
	l.cutPull(&l.wall(role).Panel, area)
	if l.Cutter.Kind.Fenced() {
		l.note(geom.Diagnosis{ // another tool cuts it
			Code: "pull-by-hand", Subject: about(FieldPull, role),
			Fact: geom.Sentencef("a saw cannot cut the pull, a %s", k.Shape),
			Ask:  geom.Sentencef("bore it, or cut it with a jigsaw or a router and the drawing"),
		})
	}
}

// pullArea is where a pull is cut out of its front, in panel coordinates.
func (l *layout) pullArea(role Role) (area geom.Rect, ok bool) {
	k, box := l.Pull, l.wall(role).Panel.Outline.Bounds()
	defaults := map[PullShape][3]float64{ // width, height, down
		PullHole: {holeWidth, holeWidth, pullDown}, PullHalf: {halfWidth, halfWidth / 2, 0},
		PullSlot: {slotWidth, slotHeight, 0}, PullHandHold: {slotWidth, holeWidth, pullDown},
	}
	usual, known := defaults[k.Shape]
	if !known {
		l.fail(geom.Diagnosis{
			Code: "pull", Subject: about(FieldPull, role),
			Fact: geom.Sentencef("there is no pull called %q", k.Shape),
			Ask:  geom.Sentencef("write %s, %s, %s or %s", PullHole, PullHalf, PullSlot, PullHandHold),
		})
		return area, false
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
		low = box.Max.Y - or(k.FromTop, usual[2]) - height/2
	}
	x := (box.Min.X + box.Max.X) / 2
	return geom.Rect{Min: geom.Point{X: x - width/2, Y: low}, Max: geom.Point{X: x + width/2, Y: low + height}}, true
}

// pullMeets reports whether a pull meets another cut, and says so.
func (l *layout) pullMeets(role Role, area geom.Rect) bool {
	for _, c := range l.wall(role).Panel.Pockets {
		if b := c.Outline.Bounds(); b.Max.X > area.Min.X-pullEdge && b.Min.X < area.Max.X+pullEdge &&
			b.Max.Y > area.Min.Y-pullEdge && b.Min.Y < area.Max.Y+pullEdge {
			ask := geom.Sentencef("move it with from-top, make it smaller, or move what it meets: " +
				"an odd number of dividers from front to back has one in the middle")
			if c.Kind == geom.Rabbet && l.Lip.Top > 0 && (l.Pull.Shape == PullHalf || l.Pull.Shape == PullSlot) {
				ask = geom.Sentencef("write a pull of the shape %s or %s, which has its place under the upper edge",
					PullHole, PullHandHold)
			}
			l.fail(geom.Diagnosis{
				Code: "pull", Subject: about(FieldPull, role),
				Fact: geom.Sentencef("the pull, %s wide and from %s to %s up, meets the %s on the %s face",
					geom.Millimeters(area.Width()), geom.Millimeters(area.Min.Y), geom.Millimeters(area.Max.Y), c.Kind.Noun(), c.Face),
				Ask: ask,
			})
			return true
		}
	}
	return false
}

// cutPull cuts it out of a panel.
func (l *layout) cutPull(p *geom.Panel, area geom.Rect) {
	through := geom.Pocket{Kind: geom.Cutout, Depth: p.Thickness}
	switch a, b := area.Min, area.Max; l.Pull.Shape {
	case PullHole:
		through.Outline = geom.Circle(area.Center(), area.Width()/2)
	case PullHandHold:
		through.Outline = geom.RoundedRectangle(a.X, a.Y, b.X, b.Y, area.Height()/2)
	case PullHalf:
		top := p.Outline.Bounds().Max.Y
		corners := []geom.Vertex{{Point: geom.Point{X: b.X, Y: top}, Bulge: -1}, {Point: geom.Point{X: a.X, Y: top}}}
		cutEdge(p, topEdge(p.Outline), corners)
		p.EdgeCuts = append(p.EdgeCuts, cutOut(geom.PullCut, corners))
	case PullSlot:
		radius := math.Min(math.Max(slotRadius, l.minRound()), math.Min(area.Width()/2, area.Height()))
		l.outlineBit(p, sameRound(radius))
		notchCut{kind: geom.PullCut, top: true, x: area.Across(), y: a.Y, radius: radius}.cut(p)
	}
	if through.Outline != nil {
		p.Pockets = append(p.Pockets, through)
	}
}

// minRound is the least radius of an inner corner that the router's bit gets into.
func (l *layout) minRound() float64 {
	if l.Cutter.Kind.FollowsDrawing() {
		return l.Cutter.Width / 2 * roundRoom
	}
	return 0
}

// higherPull are what leaves wood enough under a pull: higher up where it has a place of
// its own, else lower.
func (l *layout) higherPull(top, floor, height float64) []geom.Remedy {
	room := top - floor - pullEdge
	switch l.Pull.Shape {
	case PullHalf:
		return []geom.Remedy{l.between(FieldPull, minPull, 2*room).Of("width", 0)}
	case PullSlot:
		return []geom.Remedy{l.between(FieldPull, minPull/2, room).Of("height", 0)}
	case PullHole:
		return []geom.Remedy{l.between(FieldPull, pullEdge+height/2, room-height/2).Of("from-top", 0), l.between(FieldPull, minPull, 2*(room-pullDown)).Of("width", 0)}
	}
	return []geom.Remedy{l.between(FieldPull, pullEdge+height/2, room-height/2).Of("from-top", 0), l.between(FieldPull, minPull/2, 2*(room-pullDown)).Of("height", 0)}
}

// pullFits judges where a pull comes.
func (l *layout) pullFits(role Role, area geom.Rect) bool {
	width, height, low, high := area.Width(), area.Height(), area.Min.Y, area.Max.Y
	box := l.wall(role).Panel.Outline.Bounds()
	clear, floor := box.Width(), box.Min.Y
	if role == Front {
		clear = l.Width - 2*l.Ts - math.Abs(l.Lip.Left-l.Lip.Right)
		switch {
		case l.BottomFit == BottomCleats:
			floor = l.Lip.Bottom + l.bottomTop()
		case l.BottomFit.Grooved():
			floor = l.Lip.Bottom + l.rise + l.groove
		}
	}
	switch {
	case width < minPull-settle || height < minPull/2-settle:
		l.fail(geom.Diagnosis{
			Code: "pull", Subject: about(FieldPull, role),
			Measured: geom.Millimeters(width), Limit: geom.Millimeters(minPull),
			Fact:     geom.Sentencef("a pull of %s x %s is too small for fingers", geom.Millimeters(width), geom.Millimeters(height)),
			Ask:      geom.Sentencef("make the pull larger"),
			Remedies: []geom.Remedy{l.between(FieldPull, minPull, clear-2*pullEnds).Of("width", 0)},
		})
	case width > clear-2*pullEnds+settle:
		l.fail(geom.Diagnosis{
			Code: "pull", Subject: about(FieldPull, role),
			Measured: geom.Millimeters(width), Limit: geom.Millimeters(clear - 2*pullEnds),
			Fact:     geom.Sentencef("a pull of %s is too wide for a front with %s between its ends", geom.Millimeters(width), geom.Millimeters(clear)),
			Ask:      geom.Sentencef("take a pull of the shape hole"),
			Remedies: []geom.Remedy{l.between(FieldPull, minPull, clear-2*pullEnds).Of("width", 0)},
		})
	case low < floor+pullEdge-settle:
		l.fail(geom.Diagnosis{
			Code: "pull", Subject: about(FieldPull, role),
			Measured: geom.Millimeters(low), Limit: geom.Millimeters(floor + pullEdge),
			Fact:     geom.Sentencef("the pull comes down to %s over the lower edge; there has to be %s of wood under it", geom.Millimeters(low), geom.Millimeters(floor+pullEdge)),
			Ask:      geom.Sentencef("take a higher box front"),
			Remedies: l.higherPull(box.Max.Y, floor, height),
		})
	case high < box.Max.Y-settle && high > box.Max.Y-pullEdge+settle || high > box.Max.Y+settle:
		l.fail(geom.Diagnosis{
			Code: "pull", Subject: about(FieldPull, role),
			Measured: geom.Millimeters(box.Max.Y - high), Limit: geom.Millimeters(pullEdge),
			Fact:     geom.Sentencef("the pull leaves %s of wood over it, at least %s is needed", geom.Millimeters(box.Max.Y-high), geom.Millimeters(pullEdge)),
			Ask:      geom.Sentencef("take another pull"),
			Remedies: []geom.Remedy{l.between(FieldPull, pullEdge+height/2, box.Max.Y-floor-pullEdge-height/2).Of("from-top", 0)},
		})
	default:
		return true
	}
	return false
}
