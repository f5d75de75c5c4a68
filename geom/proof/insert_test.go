package proof

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
)

// gridded is a box with an insert of two strips of 9, as high as the dividers: one across, 100
// behind the front, and one along, 150 from the left, 2 shorter than the inside, halved over each
// other with slots of 9.3 and 9.4. They can be longer at their right and rear ends.
func gridded(wider, deeper float64) []Piece {
	list := rabbeted.pieces()
	across := Piece{Name: "across", Role: Strip, Board: plank(madeW-2*madeTs-2+wider, divTop-divFloor, divT),
		Placement: geom.Placement{Origin: geom.Vec3{X: madeTs + 1, Y: madeTf + 100 + divT, Z: divFloor}, X: geom.Right, Y: geom.Up}}
	along := Piece{Name: "along", Role: Strip, Board: plank(madeD-madeTf-madeTk-2+deeper, divTop-divFloor, divT),
		Placement: geom.Placement{Origin: geom.Vec3{X: madeTs + 150, Y: madeTf + 1, Z: divFloor}, X: geom.Back, Y: geom.Up}}
	slot(&across, 150+divT/2-1, 9.3, true)
	slot(&along, 100+divT/2-1, 9.4, false)
	return append(list, across, along)
}

// TestInsert: its clearances, as made and with something made otherwise.
func TestInsert(t *testing.T) {
	type measured struct {
		goes, lifts      bool
		x, y, up, across float64
		fallen           []string
	}
	asMade := measured{goes: true, lifts: true, x: 2, y: 2, across: 0.3}
	for name, c := range map[string]struct {
		wider, deeper float64
		harm          func([]Piece)
		want          func(*measured)
	}{
		"as made":        {},
		"1.5 longer":     {wider: 1.5, want: func(w *measured) { w.x = 0.5 }},
		"3 longer":       {deeper: 3, want: func(w *measured) { w.goes, w.lifts, w.y = false, false, -1 }}, // and in the walls
		"0.3 higher":     {harm: func(p []Piece) { p[5].Placement.Origin.Z += 0.3; p[6].Placement.Origin.Z += 0.3 }, want: func(w *measured) { w.up = 0.3 }},
		"a thick bottom": {harm: func(p []Piece) { p[bottom].Board.Thickness += 0.2 }, want: func(w *measured) { w.up = -0.2 }},
		"a thick strip": {harm: func(p []Piece) { p[5].Board.Thickness += 0.5 },
			want: func(w *measured) { w.goes, w.across = false, -0.1 }},
		"a strip that reaches no other": {harm: func(p []Piece) { p[6].Placement.Origin.Y += 200; lengthen(&p[6], 0, -200) }, // nor the box front
			want: func(w *measured) { w.fallen, w.y = []string{"across", "along"}, 101 }},
		"a lip over it": {harm: func(p []Piece) { // of a back that stands 3 further out, and is as thick above it
			p[back].Board.Thickness += 3
			p[back].Board.cut(3, 0, 0, p[back].Board.Outline.Bounds().Max.X, divTop+1)
		}, want: func(w *measured) { w.lifts, w.y = false, 5 }},
	} {
		t.Run(name, func(t *testing.T) {
			list, want := gridded(c.wider, c.deeper), asMade
			if c.harm != nil {
				c.harm(list)
			}
			if c.want != nil {
				c.want(&want)
			}
			b := assemble(list)
			n := b.Insert
			if n == nil || n.GoesIn() && b.GoesTogether() != want.goes || !n.GoesIn() && want.goes {
				t.Fatalf("goes %t, want %t: %+v, %+v", b.GoesTogether(), want.goes, n, b.Overlaps)
			}
			near := func(what string, got, want float64) {
				if got != want && !(math.Abs(got-want) < 1e-6) {
					t.Errorf("%s is %g, by hand %g", what, got, want)
				}
			}
			near("from side to side", n.Clearance[0], want.x)
			near("from front to back", n.Clearance[1], want.y)
			near("above the bottom", n.Height, want.up)
			if len(b.Crossings) > 0 {
				near("in the slots", b.Crossings[0].Clearance, want.across)
			}
			if n.Lifts != want.lifts || !slices.Equal(n.Fallen, want.fallen) {
				t.Errorf("%+v, want %+v", n, want)
			}
			low, _ := b.Pieces[5].span(axisZ)
			if _, over := b.Pieces[bottom].span(axisZ); math.Abs(low-over) > 1e-9 {
				t.Errorf("it stands %g above the bottom", low-over)
			}
		})
	}
}
