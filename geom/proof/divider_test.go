package proof

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Dividers made by hand: boards of 9, up to 80 over the edges, in dados of 9.2 that
// are 4 deep and begin at the groove's upper edge; their ends are 0.5 short of the
// dados' floors.
const (
	divT, divDado, divDeep, divShort = 9.0, 9.2, 4.0, 0.5
	divTop, divFloor                 = 80.0, madeRise + madeTb
)

// across stands a divider between the sides, so far behind the front's inside face,
// and along one between front and back, so far from the left side's.
func across(list []Piece, at float64) []Piece {
	y := madeTf + at
	// A left side's x runs to the back, a right side's to the front.
	list[left].Board.cut(divDeep, y, divFloor, y+divDado, madeH)
	list[right].Board.cut(divDeep, madeD-y-divDado, divFloor, madeD-y, madeH)
	p := Piece{Name: "across", Role: Divider, Board: plank(madeW-2*madeTs+2*(divDeep-divShort), divTop-divFloor, divT)}
	p.Placement = geom.Placement{Origin: geom.Vec3{X: madeTs - divDeep + divShort, Y: y + 0.1 + divT, Z: divFloor}, X: geom.Right, Y: geom.Up}
	return append(list, p)
}

func along(list []Piece, at float64) []Piece {
	x := madeTs + at
	// A front's x runs from right to left, from where it is held; a back's the other way.
	in := madeTs - madeDeep
	list[front].Board.cut(divDeep, madeW-in-x-divDado, divFloor, madeW-in-x, madeH)
	list[back].Board.cut(divDeep, x-in, divFloor, x-in+divDado, madeH)
	p := Piece{Name: "along", Role: Divider, Board: plank(madeD-madeTf-madeTk+2*(divDeep-divShort), divTop-divFloor, divT)}
	p.Placement = geom.Placement{Origin: geom.Vec3{X: x + 0.1, Y: madeTf - divDeep + divShort, Z: divFloor}, X: geom.Back, Y: geom.Up}
	return append(list, p)
}

// slot halves a divider from its upper or its lower edge, around a place along it.
func slot(p *Piece, middle, width float64, upper bool) {
	r := p.Board.Outline.Bounds()
	a, b, h := middle-width/2, middle+width/2, r.Max.Y
	pt := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	if upper {
		p.Board.Outline = ShapeOf(geom.Polygon(pt(0, 0), pt(r.Max.X, 0), pt(r.Max.X, h), pt(b, h), pt(b, h/2), pt(a, h/2), pt(a, h), pt(0, h)))
		return
	}
	p.Board.Outline = ShapeOf(geom.Polygon(pt(0, 0), pt(a, 0), pt(a, h/2), pt(b, h/2), pt(b, 0), pt(r.Max.X, 0), pt(r.Max.X, h), pt(0, h)))
}

var rabbeted = madeBox{front: joinery.Rabbet, back: joinery.Rabbet}

// crossed is a box with one divider across, 100 behind the front, and one along, 150
// from the left, halved over each other with slots of 9.3 and 9.4.
func crossed() []Piece {
	list := along(across(rabbeted.pieces(), 100), 150)
	// The middle of each, from where the other begins.
	slot(&list[5], madeTs+150+divDado/2-(madeTs-divDeep+divShort), 9.3, true)
	slot(&list[6], 100+divDado/2+divDeep-divShort, 9.4, false)
	return list
}

// TestDividers: their plays, clearance and stand, as made and with something made
// otherwise.
func TestDividers(t *testing.T) {
	type measured struct {
		goes               bool
		play, slack, stand float64
		hold               [2]float64
		lifts              bool
	}
	// 9.2 - 9; 0.5 at each end; 4 - 0.5 deep in each dado.
	asMade := measured{goes: true, play: 0.2, slack: 1, hold: [2]float64{3.5, 3.5}, lifts: true}
	for name, c := range map[string]struct {
		harm func([]Piece)
		want func(*measured)
	}{
		"as made": {},
		"0.15 thick": {
			harm: func(p []Piece) { p[5].Board.Thickness += 0.15 },
			want: func(w *measured) { w.play = 0.05 }},
		"0.3 thick": {
			harm: func(p []Piece) { p[5].Board.Thickness += 0.3 },
			want: func(w *measured) { w.goes, w.play, w.slack, w.hold = false, -0.1, 0, [2]float64{} }},
		"dados 0.15 apart": {
			harm: func(p []Piece) { recut(&p[left], len(p[left].Board.Cuts)-1, sideways(0.15, 0.15)) },
			want: func(w *measured) { w.play = 0.05 }},
		"dados 0.5 apart": {
			harm: func(p []Piece) { recut(&p[left], len(p[left].Board.Cuts)-1, sideways(0.5, 0.5)) },
			want: func(w *measured) { w.goes, w.play, w.slack, w.hold = false, -0.3, 0, [2]float64{} }},
		"a dado 0.6 too shallow": { // it is pushed 0.3 to the right
			harm: func(p []Piece) { p[left].Board.Cuts[len(p[left].Board.Cuts)-1].Depth -= 0.6 },
			want: func(w *measured) { w.slack, w.hold = 0.4, [2]float64{3.2, 3.8} }},
		"1.4 too long": { // 0.7 at each end
			harm: func(p []Piece) { lengthen(&p[5], -0.7, 0.7) },
			want: func(w *measured) { w.goes, w.slack, w.hold = false, -0.4, [2]float64{4.2, 4.2} }},
		"6 too short": { // 3 at each end: it falls out when it is pushed to one
			harm: func(p []Piece) { lengthen(&p[5], 3, -3) },
			want: func(w *measured) { w.slack, w.hold = 7, [2]float64{0.5, 0.5} }},
		"8 too short": { // it reaches no dado
			harm: func(p []Piece) { lengthen(&p[5], 4, -4) },
			want: func(w *measured) { w.goes, w.slack, w.hold, w.play = false, 9, [2]float64{-0.5, -0.5}, 0 }},
		"no dado in a side": {
			harm: func(p []Piece) { p[right].Board.Cuts = p[right].Board.Cuts[:len(p[right].Board.Cuts)-1] },
			want: func(w *measured) { w.goes = false }},
		"a bottom 0.1 thick": {
			harm: func(p []Piece) { p[bottom].Board.Thickness += 0.1 },
			want: func(w *measured) { w.stand = -0.1 }},
		"3 higher": {
			harm: func(p []Piece) { p[5].Placement.Origin.Z += 3 },
			want: func(w *measured) { w.stand = 3 }},
		"a dado that stops below the edge": { // at 79.5: the divider was put in before
			harm: func(p []Piece) {
				recut(&p[left], len(p[left].Board.Cuts)-1, geom.Rect{Max: geom.Point{Y: -20}})
			},
			want: func(w *measured) { w.lifts = false }},
	} {
		t.Run(name, func(t *testing.T) {
			list, want := across(rabbeted.pieces(), 100), asMade
			if c.harm != nil {
				c.harm(list)
				c.want(&want)
			}
			b := assemble(list)
			d := b.Dividers[0]
			if len(b.Dividers) != 1 || d.GoesIn != want.goes || b.GoesTogether() != want.goes {
				t.Fatalf("goes %t, want %t: %+v, %+v", b.GoesTogether(), want.goes, b.Dividers, b.Overlaps)
			}
			if name == "no dado in a side" { // its wood is all in the way
				return
			}
			if want.goes && d.Lifts != want.lifts {
				t.Errorf("it can be lifted: %t", d.Lifts)
			}
			if d.Joints[0].GoesIn {
				same(t, "play", d.Clearance, want.play)
			}
			same(t, "stand", d.Height, want.stand)
			same(t, "slack", d.EndClearance, want.slack)
			for i, w := range d.Joints {
				same(t, w.Name+": hold", w.Engagement, want.hold[i])
			}
		})
	}
}

// TestDividerEdges: where dividers stand, and their upper edges, 80 over the lower ones of the box.
func TestDividerEdges(t *testing.T) {
	b := assemble(crossed())
	for i, middle := range []float64{madeTf + 100 + divDado/2, madeTs + 150 + divDado/2} {
		d := b.Dividers[i]
		if math.Abs(d.Middle-middle) > 1e-6 || math.Abs(d.Over-(divTop-divFloor)) > 1e-6 ||
			math.Abs(d.Under-(madeH-divTop)) > 1e-6 {
			t.Errorf("%+v", d)
		}
	}
}

// TestCrossing: two dividers halved over each other.
func TestCrossing(t *testing.T) {
	for name, c := range map[string]struct {
		harm  func([]Piece)
		goes  bool
		play  float64
		other bool // it is not told by the crossing
	}{
		"as made":                    {goes: true, play: 0.3},
		"the one along 0.15 thick":   {harm: func(p []Piece) { p[6].Board.Thickness += 0.15 }, goes: true, play: 0.15},
		"a slot of 8.9":              {harm: func(p []Piece) { slot(&p[6], 100+divDado/2+divDeep-divShort, 8.9, false) }, play: -0.1},
		"both slots from above":      {harm: func(p []Piece) { slot(&p[6], 100+divDado/2+divDeep-divShort, 9.4, true) }, other: true},
		"the one along with no slot": {harm: func(p []Piece) { p[6].Board.Outline = ShapeOf(p[6].Board.Outline.rectangle()) }, other: true},
	} {
		t.Run(name, func(t *testing.T) {
			list := crossed()
			if c.harm != nil {
				c.harm(list)
			}
			b := assemble(list)
			if len(b.Crossings) != 1 || len(b.Dividers) != 2 || b.GoesTogether() != c.goes {
				t.Fatalf("goes %t: %+v, %+v, %+v", b.GoesTogether(), b.Crossings, b.Dividers, b.Overlaps)
			}
			for _, d := range b.Dividers {
				if !d.GoesIn {
					t.Errorf("%+v", d)
				}
			}
			if !c.other {
				same(t, "play", b.Crossings[0].Clearance, c.play)
			}
		})
	}
	// Two that only stand side by side do not cross.
	if b := assemble(across(across(rabbeted.pieces(), 60), 160)); !b.GoesTogether() || len(b.Crossings) != 0 || len(b.Dividers) != 2 || len(b.Corners) != 4 {
		t.Errorf("two across: %+v, %+v", b.Dividers, b.Overlaps)
	}
}

// rectangle is the loop about a shape.
func (s Shape) rectangle() geom.Loop {
	return geom.Rectangle(s.box.Min.X, s.box.Min.Y, s.box.Max.X, s.box.Max.Y)
}

// TestDrawerFront: a front of 420 x 120 before the box, 10 beyond it on all sides,
// and the holes for its screws.
func TestDrawerFront(t *testing.T) {
	make := func() []Piece {
		list := rabbeted.pieces()
		list[front].Board.drill(madeTf, 60, 50, 4.5)
		list[front].Board.drill(madeTf, 300, 50, 4.5)
		return append(list, Piece{Name: "drawer front", Role: DrawerFront, Board: plank(420, 120, 19),
			Placement: geom.Placement{Origin: geom.Vec3{X: madeW + 10, Y: -19, Z: -10}, X: geom.Right.Scale(-1), Y: geom.Up}})
	}
	inFront := madeW - 2*(madeTs-madeDeep) // the box's front is as long
	for name, c := range map[string]struct {
		harm        func([]Piece)
		gap, covers float64
		holes       int
	}{
		"as made":           {covers: madeH, holes: 2},
		"2 thick":           {harm: func(p []Piece) { p[5].Board.Thickness = 2 }, covers: madeH, holes: 2},
		"a front 0.4 thin":  {harm: func(p []Piece) { p[front].Board.Thickness -= 0.4 }, gap: 0.4, covers: madeH, holes: 2},
		"recessed by 0.5":   {harm: func(p []Piece) { recessed(p, 0.5) }, gap: 0.5, covers: madeH, holes: 2},
		"a hole for a pull": {harm: func(p []Piece) { p[front].Board.drill(madeTf, 193, 50, 30) }, covers: madeH, holes: 2},
		"a blind hole":      {harm: func(p []Piece) { p[front].Board.drill(5, 193, 50, 4) }, covers: madeH, holes: 2},
		"beside the box": {harm: func(p []Piece) { p[5].Placement.Origin.X += 320 }, // its left end is at 310, the front runs from 7
			covers: 7 + inFront - 310, holes: 1},
	} {
		t.Run(name, func(t *testing.T) {
			list := make()
			if c.harm != nil {
				c.harm(list)
			}
			b := assemble(list)
			if !b.GoesTogether() || len(b.DrawerFronts) != 1 || b.DrawerFronts[0].Holes != c.holes {
				t.Fatalf("%+v, %+v", b.DrawerFronts, b.Overlaps)
			}
			same(t, "gap", b.DrawerFronts[0].Gap, c.gap)
			same(t, "covers", b.DrawerFronts[0].Covers, c.covers)
			_, y := b.Pieces[5].span(axisY)
			if y != 0 {
				t.Errorf("its inside face is at %g", y)
			}
		})
	}
}

// recessed makes the front's rabbets longer, so that it stands back.
func recessed(p []Piece, by float64) {
	recut(&p[left], 0, sideways(0, by))
	recut(&p[right], 0, sideways(-by, 0))
}
