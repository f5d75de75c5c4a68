package proof

import (
	"fmt"
	"math"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// overlapOf is the volume that two pieces at right angles have in common.
func overlapOf(a, b Piece) float64 {
	var w work
	p, ok := w.join(&a, &b)
	if !ok {
		return 0
	}
	return p.overlap()
}

// TestOverlapAsByCells: two boards of any box, one of them moved anywhere near.
func TestOverlapAsByCells(t *testing.T) {
	apart, within := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d, ok := anyDrawer(t)
		if !ok {
			return
		}
		list := solidsOf(d)
		a, b := list[rapid.IntRange(left, right).Draw(t, "side")], list[rapid.IntRange(front, bottom).Draw(t, "other")]
		far := rapid.Float64Range(-15, 15)
		b.stand.Origin = b.stand.Origin.Add(geom.Vec3{X: far.Draw(t, "x"), Y: far.Draw(t, "y"), Z: far.Draw(t, "z")})
		want := a.shared(b)
		if want > 0 {
			within++
		} else {
			apart++
		}
		// Strips of narrowStrip and pieces thinner than penetration along the common
		// axis are left out: of a face of 100 cm2 that is 10 mm3.
		for i, got := range []float64{overlapOf(a.piece("a"), b.piece("b")), overlapOf(b.piece("b"), a.piece("a"))} {
			if !near(got, want, 1e-6*want+10) {
				t.Fatalf("%g mm3, by cells %g (%d)", got, want, i)
			}
		}
	})
	if apart == 0 || within == 0 {
		t.Errorf("%d pairs apart, %d not", apart, within)
	}
}

// TestOverlapOfBlocks: closed forms, among them boards that look the same way and
// are never in each other's way by this package's rules.
func TestOverlapOfBlocks(t *testing.T) {
	block := func(length, width, thick float64) Board {
		return Board{Outline: ShapeOf(geom.Rectangle(0, 0, length, width)), Thickness: thick}
	}
	wall := Piece{Name: "wall", Board: block(100, 40, 12), Placement: geom.Placement{X: geom.Back, Y: geom.Up}} // 0 to 12 x 0 to 100 x 0 to 40
	shelf := func(x, y, z float64) Piece {                                                                      // 60 x 30 x 6 from there
		return Piece{Name: "shelf", Board: block(60, 30, 6), Placement: geom.Placement{Origin: geom.Vec3{X: x, Y: y, Z: z}, X: geom.Right, Y: geom.Back}}
	}
	for name, c := range map[string]struct {
		shelf Piece
		want  float64
	}{
		"in the wall":         {shelf(10, 20, 10), 2 * 30 * 6},
		"half above it":       {shelf(10, 20, 37), 2 * 30 * 3},
		"half behind it":      {shelf(10, 85, 10), 2 * 15 * 6},
		"right through":       {shelf(-20, 20, 10), 12 * 30 * 6},
		"against it":          {shelf(12, 20, 10), 0},
		"above it":            {shelf(10, 20, 40), 0},
		"behind it":           {shelf(10, 100, 10), 0},
		"a hair's breadth in": {shelf(11.9995, 20, 10), 0.0005 * 30 * 6},
	} {
		for _, got := range []float64{overlapOf(wall, c.shelf), overlapOf(c.shelf, wall)} {
			if !near(got, c.want, 1e-6) {
				t.Errorf("%s: %g mm3, want %g", name, got, c.want)
			}
		}
	}
	if _, ok := new(work).join(&wall, &wall); ok {
		t.Error("boards that look the same way are at right angles")
	}
}

// A wall with one pocket, and a board that stands in it on its edge. With the
// pocket's middle at 0, 0 the board takes up a rectangle of it.
func inPocket(pocket geom.Loop, deep float64, block geom.Rect, into float64) (wall, board Piece) {
	const size = 100.0 // the wall reaches as far to all sides
	w := Board{Outline: ShapeOf(geom.Rectangle(-size, -size, size, size)), Thickness: 12, Cuts: []Cut{{Face: geom.Inside, Depth: deep, Shape: ShapeOf(pocket)}}}
	wall = Piece{Name: "wall", Board: w, Placement: geom.Placement{X: geom.Back, Y: geom.Up}} // its inside face is at X = 12
	b := Board{Outline: ShapeOf(geom.Rectangle(0, block.Min.Y, size, block.Max.Y)), Thickness: block.Width()}
	// Its x runs away from the wall, its y up: it looks to -Y from where it ends.
	board = Piece{Name: "board", Board: b, Placement: geom.Placement{Origin: geom.Vec3{X: 12 - into, Y: block.Max.X}, X: geom.Right, Y: geom.Up}}
	return wall, board
}

// chord is how far, in millimeters, a joint may be judged off an arc.
const chord = 0.01

// TestOverlapInRoundPockets: what stands in the way is the rectangle without what
// the pocket has of it, in closed form with circle segments. A segment at d from
// the middle of a circle of r has r^2 acos(d/r) - d sqrt(r^2 - d^2).
func TestOverlapInRoundPockets(t *testing.T) {
	segment := func(r, d float64) float64 { return r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d) }
	const into, deep = 5.0, 6.0
	for name, c := range map[string]struct {
		pocket geom.Loop
		block  geom.Rect
		area   float64
		arcs   float64 // their length in the pocket
	}{
		"a block in its circle": { // corners at 8 from the middle
			geom.Circle(geom.Point{}, 10), geom.Rect{Min: geom.Point{X: -4.8, Y: -6.4}, Max: geom.Point{X: 4.8, Y: 6.4}}, 0, 20 * math.Pi},
		"a board over a circle": { // 12 x 40, without the circle between two segments at 6
			geom.Circle(geom.Point{}, 10), geom.Rect{Min: geom.Point{X: -6, Y: -20}, Max: geom.Point{X: 6, Y: 20}},
			480 - (100*math.Pi - 2*segment(10, 6)), 20 * math.Pi},
		"a board over half a circle": { // 30 x 20 from its middle, without half of it
			geom.Circle(geom.Point{}, 10), geom.Rect{Min: geom.Point{X: -15, Y: 0}, Max: geom.Point{X: 15, Y: 20}}, 600 - 50*math.Pi, 20 * math.Pi},
		"beside a circle": { // cuts off a segment at 7: 8 x 30 without it
			geom.Circle(geom.Point{}, 10), geom.Rect{Min: geom.Point{X: 7, Y: -15}, Max: geom.Point{X: 15, Y: 15}}, 240 - segment(10, 7), 20 * math.Pi},
		"square in rounded corners": { // four corners of r^2 (1 - pi / 4)
			geom.RoundedRectangle(-6, -30, 6, 30, 3), geom.Rect{Min: geom.Point{X: -6, Y: -30}, Max: geom.Point{X: 6, Y: 30}}, 4 * 9 * (1 - math.Pi/4), 6 * math.Pi},
		"square in a slot with round ends": {
			geom.RoundedRectangle(-6, -30, 6, 30, 6), geom.Rect{Min: geom.Point{X: -6, Y: -30}, Max: geom.Point{X: 6, Y: 30}}, 4 * 36 * (1 - math.Pi/4), 12 * math.Pi},
	} {
		wall, board := inPocket(c.pocket, deep, c.block, into)
		// A chord takes off up to two thirds of its sagitta along its length.
		tolerance := 2.0/3*chord*c.arcs*into + 1e-6
		for _, got := range []float64{overlapOf(wall, board), overlapOf(board, wall)} {
			if want := c.area * into; !near(got, want, tolerance) {
				t.Errorf("%s: %g mm3, want %g within %g", name, got, want, tolerance)
			}
		}
	}
	// The comparator: all of the block without the pocket, or deeper than it.
	block := geom.Rect{Min: geom.Point{X: -4, Y: -6}, Max: geom.Point{X: 4, Y: 6}}
	wall, board := inPocket(geom.Circle(geom.Point{}, 10), deep, block, 8)
	same(t, "below the floor", overlapOf(wall, board), 8*12*2)
	wall.Board.Cuts = nil
	same(t, "without a pocket", overlapOf(wall, board), 8*12*8)
}

// TestPlayInRoundPockets: a board that reaches up to d from the end of a slot of
// width w with round ends of r = w / 2 has the chord there to itself, 2 sqrt(r^2 -
// (r - d)^2).
func TestPlayInRoundPockets(t *testing.T) {
	const r, thick = 6.0, 6.0
	for _, d := range []float64{1, 2, 3, 6} {
		wall, board := inPocket(geom.RoundedRectangle(-r, -30, r, 30, r), 6, geom.Rect{Min: geom.Point{X: -thick / 2, Y: -30 + d}, Max: geom.Point{X: thick / 2, Y: 20}}, 5)
		var w work
		p, ok := w.join(&wall, &board)
		if !ok {
			t.Fatal("not near each other")
		}
		g := around(p.barring(axisY, 0))
		want := 2*math.Sqrt(r*r-(r-d)*(r-d)) - thick
		// A chord's sagitta moves the crossing by more where the arc is steep: r / the
		// half chord times.
		if tolerance := 2 * chord * r / (want/2 + thick/2); !near(g.width(), want, tolerance) || !near(g.low+g.high, 0, 1e-9) {
			t.Errorf("%g from the end: from %g to %g, want a clearance of %g within %g", d, g.low, g.high, want,
				tolerance)
		}
	}
}

// TestIsland: what a bit goes round stays wood.
func TestIsland(t *testing.T) {
	around := []geom.Loop{geom.Rectangle(-10, -10, 10, 10), geom.Rectangle(-3, -3, 3, 3).Reverse()}
	for n, want := range map[int]float64{1: 0, 2: 6 * 6 * 5} {
		wall, board := inPocket(nil, 6, geom.Rect{Min: geom.Point{X: -8, Y: -8}, Max: geom.Point{X: 8, Y: 8}}, 5)
		wall.Board.Cuts[0].Shape = ShapeOf(around[:n]...)
		same(t, fmt.Sprintf("with %d loops", n), overlapOf(wall, board), want)
	}
	if b := ShapeOf(around...).Bounds(); b != (geom.Rect{Min: geom.Point{X: -10, Y: -10}, Max: geom.Point{X: 10, Y: 10}}) {
		t.Errorf("bounds %v", b)
	}
}

// TestOverlapIsTold: a piece that is no part of the corners stays where it is, and
// what it has in common with others is reported though every joint goes in.
func TestOverlapIsTold(t *testing.T) {
	fin := func(x, z float64) Piece { // 20 x 10 x 5, looking down
		return Piece{Name: "fin", Board: Board{Outline: ShapeOf(geom.Rectangle(0, 0, 20, 10)), Thickness: 5},
			Placement: geom.Placement{Origin: geom.Vec3{X: x, Y: 300, Z: z}, X: geom.Right, Y: geom.Back.Scale(-1)}}
	}
	list := append(pieces(t, spec()), fin(200, 100))
	if b := assemble(list); !b.GoesTogether() || len(b.Overlaps) != 0 {
		t.Errorf("in the free: %+v", b.Overlaps)
	}
	list[len(list)-1] = fin(-5, 100)
	b := assemble(list)
	if want := 12.2 * 10 * 5; b.GoesTogether() || len(b.Overlaps) != 1 || b.Overlaps[0].A != "left side" || b.Overlaps[0].B != "fin" || !near(b.Overlaps[0].Volume, want, 1e-6) {
		t.Errorf("through the side: %+v, want %g mm3", b.Overlaps, want)
	}
	for _, c := range b.Corners {
		if !c.GoesTogether {
			t.Errorf("%+v", c)
		}
	}
}
