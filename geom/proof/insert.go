package proof

import "math"

// Insert is the strips of a grid that stands loose in a box, as one.
type Insert struct {
	// Clearance is what they can be moved along X and Y between the uprights; below 0 they do
	// not go in.
	Clearance [2]float64
	// Height is how far the lowest of them stands above the bottom, as it was meant to.
	Height float64
	Lifts  bool     // nothing of the uprights is in their way upward
	Fallen []string // strips that no other crosses: nothing stands them up
}

// GoesIn reports whether it goes between the uprights.
func (n *Insert) GoesIn() bool {
	return n.Clearance[axisX] > -penetration && n.Clearance[axisY] > -penetration
}

// standInsert stands the strips on the bottom, in the middle between the uprights.
func (a *assembly) standInsert() {
	if len(a.strips) == 0 {
		return
	}
	out := Insert{Lifts: true}
	low := math.Inf(1)
	for _, s := range a.strips {
		z, _ := s.span(axisZ)
		low = math.Min(low, z)
	}
	if a.base != nil {
		_, over := a.base.span(axisZ)
		if out.Height = low - over; math.Abs(out.Height) < maxLift {
			a.moveInsert(axisZ, -out.Height)
		}
	}
	for axis := range out.Clearance {
		room := a.insertRoom(axis)
		out.Clearance[axis] = room.width()
		a.moveInsert(axis, (room.low+room.high)/2)
	}
	for _, w := range a.uprights() {
		for _, s := range a.strips {
			if p, ok := a.joinWhole(w.Piece, s); ok {
				out.Lifts = out.Lifts && !ahead(p.barringAlong([3]float64{}))
			}
		}
	}
	out.Fallen = a.crossings(a.strips)
	a.box.Insert = &out
}

// insertRoom is what all strips can be moved along an axis. A wall that is so far from them that the
// sections do not show it stops them with its inside face.
func (a *assembly) insertRoom(axis int) gap {
	room, far := anywhere, anywhere
	for _, w := range a.uprights() {
		if w.axis != axis {
			continue
		}
		low, high := w.span(axis)
		for _, s := range a.strips {
			from, to := s.span(axis)
			if w.out < 0 {
				far.low = math.Max(far.low, high-from)
			} else {
				far.high = math.Min(far.high, low-to)
			}
			if p, ok := a.joinWhole(w.Piece, s); ok {
				room = room.and(around(p.barring(axis, 0)))
			}
		}
	}
	if math.IsInf(room.low, 0) {
		room.low = far.low
	}
	if math.IsInf(room.high, 0) {
		room.high = far.high
	}
	return room
}

// moveInsert moves all strips along an axis.
func (a *assembly) moveInsert(axis int, by float64) {
	for _, s := range a.strips {
		s.Placement.Origin = shifted(s.Placement.Origin, axis, by)
	}
}

// crossings feels boards in each other's slots, and names those that cross none.
func (a *assembly) crossings(boards []*Piece) (alone []string) {
	crosses := make(map[*Piece]bool)
	for i, d := range boards {
		for _, e := range boards[i+1:] {
			if c, cross := a.crossing(d, e); cross {
				a.box.Crossings = append(a.box.Crossings, c)
				crosses[d], crosses[e] = true, true
			}
		}
	}
	for _, d := range boards {
		if !crosses[d] {
			alone = append(alone, d.Name)
		}
	}
	return alone
}
