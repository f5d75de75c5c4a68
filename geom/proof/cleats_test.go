package proof

import (
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// onStrips is a box whose bottom lies on cleats 12.2 thick and 15 high, with 2 of clearance;
// change does something to its pieces before they are put together.
func onStrips(t *testing.T, change func(list []Piece)) Box {
	s := spec()
	s.BottomFit, s.BottomHeight = joinery.BottomCleats, 15
	list := pieces(t, s)
	for i := range list {
		if strings.Contains(list[i].Name, string(joinery.CleatRole)) {
			list[i].Role = Cleat
		}
	}
	change(list)
	return assemble(list)
}

// TestOnCleats, by hand: pushed to the middle, the bottom lies on 12.2 - 1 of every cleat.
func TestOnCleats(t *testing.T) {
	b := onStrips(t, func([]Piece) {})
	if b.BottomFit != OnCleats || !b.GoesTogether() || len(b.Overlaps) > 0 {
		t.Fatalf("%v, %+v", b.BottomFit, b)
	}
	same(t, "slack", b.ClearanceX, 2)
	same(t, "clearance from front to back", b.ClearanceY, 2)
	same(t, "height of the bottom", b.BottomHeight, 15)
	for _, w := range b.BottomJoints {
		same(t, w.Name+" holds", w.Engagement, 12.2-1)
	}
	// Wherever thicker sides come to stand, their cleats go with them.
	b = onStrips(t, func(list []Piece) {
		for i := range 2 {
			list[i].Board.Thickness++
		}
	})
	for _, p := range b.Pieces {
		if p.Role == Cleat && p.Placement.Normal().X > 0.5 {
			_, inside := b.Pieces[left].span(axisX)
			outer, _ := p.span(axisX)
			same(t, "a cleat's face at its wall's", outer, inside)
		}
	}
	// A bottom 3 too long does not go between the sides.
	b = onStrips(t, func(list []Piece) {
		r := list[bottom].Board.Outline.Bounds()
		list[bottom].Board.Outline = ShapeOf(geom.Rectangle(0, 0, r.Max.X+3, r.Max.Y))
	})
	if b.GoesTogether() {
		t.Error("a bottom that is too long goes between the sides")
	}
	same(t, "clearance of one that is too long", b.ClearanceX, -1)
}
