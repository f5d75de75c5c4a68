package proof

import (
	"testing"

	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

func dovetailed(t tester, change func(*joinery.Spec)) []Piece {
	s := spec()
	s.Joint, s.GrooveEnds = joinery.Dovetail, joinery.GrooveStopped
	s.Cutter = joinery.Cutter{Kind: joinery.Hand, Width: 4}
	s.DadoClearance, s.GrooveClearance = 0.2, 0.2
	change(&s)
	return piecesOf(built(t, s))
}

// TestDovetails: any box that joinery lets through goes together with the clearance of its tails, seats on all
// shoulders, comes out as large as asked, and no two boards are in each other.
func TestDovetails(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(from, to float64, what string) float64 { return rapid.Float64Range(from, to).Draw(t, what) }
		bottoms := []joinery.BottomFit{joinery.BottomGroovedIn, joinery.BottomApplied}
		play := number(0.06, 0.39, "play")
		var size joinery.Spec
		b := assemble(dovetailed(t, func(s *joinery.Spec) {
			s.Sides, s.Front = stock(number(9, 13, "sides")), stock(number(9, 20, "front"))
			s.Back = stock(number(9, 20, "back"))
			s.Height, s.DadoClearance = number(90, 300, "height"), play
			s.DovetailSlope = float64(rapid.IntRange(5, 10).Draw(t, "slope"))
			s.BottomFit = rapid.SampledFrom(bottoms).Draw(t, "bottom")
			size = *s
		}))
		if !b.GoesTogether() {
			t.Fatalf("it does not go together: %+v, %+v, %+v", b.Corners, b.BottomJoints, b.Overlaps)
		}
		for _, c := range b.Corners {
			if !c.Fingers || !near(c.Clearance, play, settled) || !c.OnShoulder && c.FloorGap > settled ||
				!near(c.Recess, 0, settled) || !near(c.Lap, 0, settled) || c.Open > settled {
				t.Fatalf("play %g: %+v", play, c)
			}
		}
		if !near(b.WidthFront, size.Width, settled) || !near(b.WidthBack, size.Width, settled) ||
			!near(b.Depth, size.Depth, settled) || !near(b.Height, size.Height, settled) {
			t.Fatalf("%g, %g x %g x %g, not %+v", b.WidthFront, b.WidthBack, b.Height, b.Depth, size)
		}
		for _, o := range b.Overlaps {
			t.Fatalf("%+v", o)
		}
	})
}

// TestDovetailsLost: pins that do not lean, the wrong way, or too little, do not
// go together with the tails.
func TestDovetailsLost(t *testing.T) {
	for name, spoil := range map[string]func([]Piece){
		"straight": func(p []Piece) { p[front].Board.Cuts = p[front].Board.Cuts[8:] },
		"the wrong way": func(p []Piece) {
			for i := range p[front].Board.Cuts {
				p[front].Board.Cuts[i].Lean *= -1
			}
		},
		"too little": func(p []Piece) { // at the outside face they are wider than their sockets
			p[front].Board = dovetailed(t, func(s *joinery.Spec) { s.DovetailSlope = 10 })[front].Board
		},
	} {
		list := dovetailed(t, func(*joinery.Spec) {})
		if b := assemble(list); !b.GoesTogether() {
			t.Fatalf("unspoiled: %+v", b)
		}
		spoil(list)
		if b := assemble(list); b.GoesTogether() {
			t.Errorf("%s: %+v", name, b.Corners)
		}
	}
}
