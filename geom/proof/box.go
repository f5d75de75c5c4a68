package proof

import (
	"math"
)

// Box is what became of a box's pieces when they were put together.
type Box struct {
	Corners      []Corner
	BottomJoints []PanelJoint // of the bottom; none without one
	// Play of the bottom up and down between all its uprights, and its clearance along X
	// and Y; below 0 it does not go in.
	GrooveClearance, ClearanceX, ClearanceY float64
	// BottomHeight is how far its underside stands above the uprights' lower edges.
	BottomHeight float64
	BottomFit    BottomFit
	Blocked      []string // uprights in the way of a bottom that is slid in

	Dividers     []Partition
	Crossings    []Crossing
	Insert       *Insert // nil without
	DrawerFronts []Fixing
	// WidthFront, WidthBack, Depth and Height are outside.
	WidthFront, WidthBack, Depth, Height float64
	// Diagonal is the outside distance between opposite corners; Rack how far the
	// two can differ before the glue has set, by the play of the joints.
	Diagonal, Racking float64
	Overlaps          []Overlap // of all pieces as they stand, in the order of the pieces
	Pieces            []Piece   // where they stand now
}

// Corner is the joint of a front or back with a side.
type Corner struct {
	End, Side    string // names of the pieces
	GoesTogether bool
	Captured     bool    // the end is held both ways, as a tongue in its dado or fingers in their notches
	Fingers      bool    // it is held by fingers, up and down
	Clearance    float64 // of a captured end; below 0 by how much it is too thick
	// Open is how far an end that is pushed inward on the sides' shoulders stays off
	// this side's, because the other side stops it.
	Open float64
	// OnShoulder says what stops the side when it is pushed on: its inside face on the
	// end's shoulder, or else the floor of its cut. The gaps are what stays open at each.
	OnShoulder            bool
	ShoulderGap, FloorGap float64
	// Recess is how far the end's outside face stands back from the ends of the
	// sides; below 0 it is proud.
	Recess float64
	// Lap is how far the side's outside face stands proud of the end's own end,
	// where they are meant to be level (Laps): with fingers, or a lip over the side.
	Laps bool
	Lap  float64
}

// PanelJoint is the joint of the bottom with one upright, in the order of left, right, front
// and back; or of a divider.
type PanelJoint struct {
	Name       string
	GoesIn     bool
	Clearance  float64 // of the bottom in the upright's groove; below 0 by how much it is too thick
	Engagement float64 // how deep the bottom stands in it, under it, or on its cleat, when it lies in the middle
	// Gap is what stays open between the bottom and the edge of an upright that it lies
	// under, or the upright's cleat; below 0 by how much it lifts that upright, or is too thick.
	Gap float64
}

// Overlap is what two pieces have in common.
type Overlap struct {
	A, B   string
	Volume float64 // cubic millimeters
}

// GoesTogether reports whether the box goes together. Pieces that are no box do not.
func (b *Box) GoesTogether() bool {
	if len(b.Corners) == 0 {
		return false
	}
	for _, c := range b.Corners {
		if !c.GoesTogether {
			return false
		}
	}
	if !b.BottomGoesIn() {
		return false
	}
	for _, d := range b.Dividers {
		if !d.GoesIn {
			return false
		}
	}
	if b.Insert != nil && !b.Insert.GoesIn() {
		return false
	}
	for _, c := range b.Crossings {
		if !c.GoesTogether {
			return false
		}
	}
	for _, o := range b.Overlaps {
		if o.Volume > MaxOverlap {
			return false
		}
	}
	return true
}

// BottomGoesIn reports whether the bottom goes where it belongs, if there is one.
func (b *Box) BottomGoesIn() bool {
	if len(b.Blocked) > 0 {
		return false
	}
	for _, w := range b.BottomJoints {
		if !w.GoesIn {
			return false
		}
	}
	return len(b.BottomJoints) == 0 ||
		b.ClearanceX > -penetration && b.ClearanceY > -penetration && b.GrooveClearance > -penetration
}

// MaxOverlap is the volume, in cubic millimeters, that two pieces may have in
// common where their faces meet: rounding of a few microns over a joint's faces.
const MaxOverlap = 1.0

// assembly is a box while it is put together.
type assembly struct {
	*work
	box                            Box
	left, right, front, back, base *Piece
	dividers, faces, cleats        []*Piece
	strips                         []*Piece // of an insert
	// seats are how far out a side stays on the front and on the back.
	seats [2][2]float64
	// lift is how far the back can be put higher than it is meant to stand.
	lift float64
	// joints are the pairs of ends with sides, and of uprights with the bottom.
	joints []*pair
}

// Assembler puts boxes together, with memory that it keeps between them. The zero
// value is ready; it is for one goroutine at a time.
type Assembler struct{ work work }

// Assemble puts a box together. Pieces are told apart by their roles, and by where
// their inside faces look: sides along X, front and back along Y, the bottom up.
// Others are left where they are. A box without two sides, a front and a back is
// given back as it is.
func (m *Assembler) Assemble(pieces []Piece) Box {
	m.work.begin(pieces)
	a := assembly{work: &m.work}
	a.box.Pieces = append([]Piece(nil), pieces...)
	for i := range a.box.Pieces {
		a.tell(&a.box.Pieces[i])
	}
	if a.left == nil || a.right == nil || a.front == nil || a.back == nil {
		return a.box
	}
	a.corners()
	if a.base != nil {
		a.bottom()
	}
	a.divide()
	a.standInsert()
	for _, f := range a.faces {
		a.face(f)
	}
	a.measure()
	return a.box
}

// measure takes the sizes of the finished box, and what its pieces have in common.
func (a *assembly) measure() {
	a.sizes()
	play := 0.0
	for i := range a.box.Corners {
		c := &a.box.Corners[i]
		if c.Captured && !c.Fingers {
			play = math.Max(play, c.Clearance)
		}
		a.flush(c, i)
	}
	a.box.Racking = 2 * play * a.box.Depth / a.box.Diagonal
	all := a.box.Pieces
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			if v := a.overlap(&all[i], &all[j]); v > minOverlap {
				a.box.Overlaps = append(a.box.Overlaps, Overlap{all[i].Name, all[j].Name, v})
			}
		}
	}
}

// sizes are those outside, and how high the bottom stands.
func (a *assembly) sizes() {
	a.box.WidthFront, a.box.WidthBack = a.width(0, a.front), a.width(1, a.back)
	l0, l1 := a.left.span(axisY)
	r0, r1 := a.right.span(axisY)
	front, _ := a.front.span(axisY)
	_, back := a.back.span(axisY)
	a.box.Depth = math.Max(math.Max(l1, r1), back) - math.Min(math.Min(l0, r0), front)
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range []*Piece{a.left, a.right, a.front, a.back} {
		z0, z1 := p.span(axisZ)
		low, high = math.Min(low, z0+p.Lips.Z[0]), math.Max(high, z1-p.Lips.Z[1])
	}
	if a.base != nil {
		under, over := a.base.span(axisZ)
		a.box.BottomHeight = under - low
		low, high = math.Min(low, under), math.Max(high, over)
	}
	a.box.Height = high - low
	outer := (a.box.WidthFront + a.box.WidthBack) / 2
	a.box.Diagonal = math.Hypot(outer, a.box.Depth)
	if a.front.Lips.X != a.back.Lips.X { // which cover the front corners but for the sides
		a.box.Diagonal = math.Hypot(outer, math.Max(l1, r1)-math.Min(l0, r0))
	}
}

// width is the box's outside width at the front, 0, or at the back. At each corner it is
// the side, where that seats there, or an end that laps over it, which of both is further
// out; within lips it is the side.
func (a *assembly) width(which int, end *Piece) float64 {
	x0, _ := a.left.span(axisX)
	_, x1 := a.right.span(axisX)
	e0, e1 := end.span(axisX)
	left, right := x0+a.stays(0)-a.seats[which][0], x1-a.stays(1)+a.seats[which][1]
	if end.Lips.X[0] == 0 {
		left = math.Min(left, e0)
	}
	if end.Lips.X[1] == 0 {
		right = math.Max(right, e1)
	}
	return right - left
}

// flush takes how far the outside faces of a corner's pieces stand off the ends of the
// other, but where a lip covers them: corners are in the order of front left, front right, back left and back right.
func (a *assembly) flush(c *Corner, corner int) {
	atBack, atRight := corner >= 2, corner%2 == 1
	end, side := a.front, a.left
	if atBack {
		end = a.back
	}
	lip := end.Lips.X[0]
	if atRight {
		side, lip = a.right, end.Lips.X[1]
	}
	if lip > 0 { // it is meant to stand before both
		return
	}
	e0, e1 := end.span(axisY)
	s0, s1 := side.span(axisY)
	c.Recess = e0 - s0
	if atBack {
		c.Recess = s1 - e1
	}
	ex0, ex1 := end.span(axisX)
	sx0, sx1 := side.span(axisX)
	c.Lap = ex0 - sx0
	if atRight {
		c.Lap = sx1 - ex1
	}
}

// overlap is the volume in two pieces as they stand. The sections of a joint serve
// again, unless its pieces have been moved along them.
func (a *assembly) overlap(p, q *Piece) float64 {
	for _, joint := range a.joints {
		same := joint.a == p && joint.b == q || joint.a == q && joint.b == p
		if same && math.Abs(joint.moved(joint.common)) < stirred {
			return joint.overlap()
		}
	}
	for axis := range 3 {
		if p.reach(q, axis) <= 0 {
			return 0
		}
	}
	joint, ok := a.join(p, q)
	if !ok {
		return 0
	}
	return joint.overlap()
}

// stirred is how far, in millimeters, pieces may have moved along their common axis
// and still show the same sections.
const stirred = 1e-6

// minOverlap is rounding: a micron over a face of a few square centimeters.
const minOverlap = 0.1
