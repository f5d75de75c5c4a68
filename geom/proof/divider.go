package proof

import "math"

// Partition is a divider between two uprights.
type Partition struct {
	Name         string
	Joints       [2]PanelJoint // that it stands in
	GoesIn       bool
	Clearance    float64 // between both uprights; below 0 by how much it is too thick
	EndClearance float64 // along its length; below 0 by how much it is too long; 0 where it is too thick
	// Height is how far its lower edge stands above the bottom; below 0 by how much the
	// bottom lifts it.
	Height float64
	Lifts  bool // nothing of the uprights is in its way upward
	// Middle is where its thickness has its middle, along the axis that it looks along; Over how
	// high its upper edge is above the bottom, Under how far that is below the lowest upright's.
	Middle, Over, Under float64
}

// Crossing is where two dividers, or strips of an insert, are halved over each other.
type Crossing struct {
	A, B         string
	GoesTogether bool
	Clearance    float64 // in the tighter of both slots; below 0 by how much a divider is too thick
}

// Fixing is a drawer front on the box's own front.
type Fixing struct {
	Name string
	// Gap is what stays open between the two, Covers the least of what they have in
	// common in width and in height.
	Gap, Covers float64
	Holes       int // through the box's front, behind the drawer front
}

// divide puts the dividers in the dados of their uprights, on the bottom.
func (a *assembly) divide() {
	for _, d := range a.dividers {
		axis, _ := axisOf(d.Placement.Normal())
		list := a.uprights()
		two := list[2:]
		if axis == axisY {
			two = list[:2]
		}
		a.box.Dividers = append(a.box.Dividers, a.divider(d, axis, two))
	}
	a.crossings(a.dividers)
}

// divider finds the place of one that looks along an axis, between two uprights.
func (a *assembly) divider(d *Piece, axis int, uprights []upright) Partition {
	out := Partition{Name: d.Name, GoesIn: true, Lifts: true}
	if a.base != nil {
		low, _ := d.span(axisZ)
		_, over := a.base.span(axisZ)
		if out.Height = low - over; out.Height < 0 && out.Height > -maxLift {
			d.Placement.Origin = shifted(d.Placement.Origin, axisZ, -out.Height)
		}
	}
	place := anywhere
	var joints [2]*pair
	for i, w := range uprights {
		found := PanelJoint{Name: w.Name}
		if p, ok := a.joinWhole(w.Piece, d); ok {
			a.joints = append(a.joints, &p)
			joints[i] = &p
			if hold := d.reach(w.Piece, w.axis); hold > penetration {
				g := around(p.barring(axis, w.out*math.Min(pull, hold/2)))
				found.Clearance = g.width()
				found.GoesIn = found.Clearance > -penetration && !math.IsInf(found.Clearance, 0)
				place = place.and(g)
			}
		}
		out.GoesIn = out.GoesIn && found.GoesIn
		out.Joints[i] = found
	}
	if out.Clearance = place.width(); out.Clearance < -penetration {
		out.GoesIn, out.Lifts = false, false
		return out
	}
	d.Placement.Origin = shifted(d.Placement.Origin, axis, place.nearest(0))
	length := 1 - axis // it runs along the other of X and Y
	var list []barred
	for _, p := range joints {
		if p != nil {
			list = append(list, p.barring(length, 0)...)
		}
	}
	g := around(list)
	if out.EndClearance = g.width(); !math.IsInf(g.low, 0) && !math.IsInf(g.high, 0) {
		d.Placement.Origin = shifted(d.Placement.Origin, length, (g.low+g.high)/2)
	}
	out.GoesIn = out.GoesIn && out.EndClearance > -penetration
	for i, w := range uprights {
		out.Joints[i].Engagement = d.reach(w.Piece, w.axis)
		if p := joints[i]; p != nil {
			out.Lifts = out.Lifts && !ahead(p.barringAlong([3]float64{}))
		}
	}
	a.edges(&out, d, axis)
	return out
}

// edges measures where a divider stands, and its upper edge.
func (a *assembly) edges(out *Partition, d *Piece, axis int) {
	near, far := d.span(axis)
	_, top := d.span(axisZ)
	out.Middle, out.Under = (near+far)/2, math.Inf(1)
	for _, w := range a.uprights() {
		_, edge := w.span(axisZ)
		out.Under = math.Min(out.Under, edge-top)
	}
	if a.base != nil {
		_, over := a.base.span(axisZ)
		out.Over = top - over
	}
}

// crossing feels two dividers in each other's slots, if they cross.
func (a *assembly) crossing(d, e *Piece) (c Crossing, cross bool) {
	for axis := range 3 {
		if d.reach(e, axis) < penetration {
			return c, false
		}
	}
	p, ok := a.joinWhole(d, e)
	if !ok {
		return c, false
	}
	a.joints = append(a.joints, &p)
	first, _ := axisOf(d.Placement.Normal())
	second, _ := axisOf(e.Placement.Normal())
	// d is in a slot of e where e has no wood in d's place, and the other way about.
	inE, inD := p.slot(first, second, d, false), p.slot(second, first, e, true)
	c = Crossing{A: d.Name, B: e.Name, Clearance: math.Min(inE.width(), inD.width())}
	list := p.barringAlong([3]float64{})
	c.GoesTogether = c.Clearance > -penetration && !(ahead(list) && behind(list))
	return c, true
}

// slot is the room along an axis that one piece of a pair, whose middle is looked
// at, has in the slot of the other: in those strips in which the other has no wood
// there. Along is the axis that the other looks along.
func (p *pair) slot(axis, along int, in *Piece, second bool) gap {
	from, to := in.span(axis)
	middle := (from + to) / 2
	var list []barred
	for i := range p.strips {
		t := p.strips[i].sections[1]
		thin, slotted := p.w.rects[t.first:t.second], p.w.rects[t.second:t.end]
		if second {
			thin, slotted = slotted, thin
		}
		full := false
		for _, r := range slotted {
			full = full || r.low[axis] < middle && r.high[axis] > middle
		}
		if full {
			continue
		}
		for _, a := range thin {
			for _, b := range slotted {
				if min(a.high[along], b.high[along])-max(a.low[along], b.low[along]) > penetration {
					list = append(list, barred{low: b.low[axis] - a.high[axis], high: b.high[axis] - a.low[axis]})
				}
			}
		}
	}
	return around(list)
}

// face puts a drawer front against the part of the box that is furthest to the front.
func (a *assembly) face(p *Piece) {
	first := math.Inf(1)
	for _, w := range a.uprights() {
		y, _ := w.span(axisY)
		first = math.Min(first, y)
	}
	if a.base != nil { // one below the uprights may stand a hair before them
		y, _ := a.base.span(axisY)
		first = math.Min(first, y)
	}
	_, inside := p.span(axisY)
	p.Placement.Origin = shifted(p.Placement.Origin, axisY, first-inside)
	front, _ := a.front.span(axisY)
	f := Fixing{Name: p.Name, Gap: front - first, Covers: math.Min(p.reach(a.front, axisX), p.reach(a.front, axisZ))}
	for _, c := range a.front.Board.Cuts {
		if c.Depth >= a.front.Board.Thickness && a.opensOn(c, p) {
			f.Holes++
		}
	}
	a.box.DrawerFronts = append(a.box.DrawerFronts, f)
}

// widestScrew is the diameter, in millimeters, above which a hole in the front is no
// screw's; common practice, no source.
const widestScrew = 10.0

// opensOn reports whether a cut of the front is a screw's hole that opens on a piece
// before it.
func (a *assembly) opensOn(c Cut, p *Piece) bool {
	hole := Piece{Board: Board{Outline: c.Shape, Thickness: a.front.Board.Thickness}, Placement: a.front.Placement}
	for _, axis := range [2]int{axisX, axisZ} {
		low, high := hole.span(axis)
		from, to := p.span(axis)
		if high-low > widestScrew || low < from || high > to {
			return false
		}
	}
	return true
}
