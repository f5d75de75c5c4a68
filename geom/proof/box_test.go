package proof

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// expected are all values of a box that goes together.
type expected struct {
	play, recess, shoulderGap, floorGap, lap       [4]float64 // front left, front right, back left, back right
	wallPlay, hold                                 [4]float64 // left, right, front, back
	bottomPlay, slackX, slackY                     float64
	widthFront, widthBack, depth, height, greatest float64
	floor                                          [4]bool // it seats on the dado's floor first
	open                                           bool    // corners that capture nothing
}

// asAsked is the box of spec: play 6.35 - 6.1; recess 2 x 6.1 - 12.2; the tongues,
// 6.1 long, end 12.2 - 6.1 from the sides' outside faces; the bottom, 6.35 - 5.9 of
// play, stands 6.1 - 2/2 deep in its grooves.
func asAsked() expected {
	all := func(v float64) [4]float64 { return [4]float64{v, v, v, v} }
	return expected{play: all(0.25), lap: all(6.1), wallPlay: all(0.45), hold: all(5.1), bottomPlay: 0.45, slackX: 2, slackY: 2,
		widthFront: 460, widthBack: 460, depth: 500, height: 140, greatest: 0.25}
}

func add(to *[4]float64, by float64, which ...int) {
	for _, i := range which {
		to[i] += by
	}
}

func (want expected) compare(t *testing.T, b Box) {
	t.Helper()
	if !b.GoesTogether() || len(b.Corners) != 4 || len(b.BottomJoints) != 4 || len(b.Overlaps) != 0 {
		t.Fatalf("it does not go together: %+v", b)
	}
	for i, c := range b.Corners {
		at := c.End + " in " + c.Side + ": "
		same(t, at+"play", c.Clearance, want.play[i])
		same(t, at+"recess", c.Recess, want.recess[i])
		same(t, at+"shoulder gap", c.ShoulderGap, want.shoulderGap[i])
		same(t, at+"floor gap", c.FloorGap, want.floorGap[i])
		same(t, at+"lap", c.Lap, want.lap[i])
		if c.Captured == want.open || c.OnShoulder == want.floor[i] || c.Laps != want.open {
			t.Errorf("%s%+v", at, c)
		}
	}
	for i, w := range b.BottomJoints {
		same(t, w.Name+": clearance of the bottom", w.Clearance, want.wallPlay[i])
		same(t, w.Name+": hold of the bottom", w.Engagement, want.hold[i])
	}
	same(t, "bottom clearance", b.GrooveClearance, want.bottomPlay)
	same(t, "clearance across", b.ClearanceX, want.slackX)
	same(t, "clearance along", b.ClearanceY, want.slackY)
	same(t, "front width", b.WidthFront, want.widthFront)
	same(t, "back width", b.WidthBack, want.widthBack)
	same(t, "depth", b.Depth, want.depth)
	same(t, "height", b.Height, want.height)
	diagonal := math.Hypot((want.widthFront+want.widthBack)/2, want.depth)
	same(t, "diagonal", b.Diagonal, diagonal)
	// Turned by its play over the width, 2 p / W, a corner moves the diagonals by
	// W D / diagonal times that.
	same(t, "rack", b.Racking, 2*want.greatest*want.depth/diagonal)
}

// TestBox: every value of the box, as it is made and with one thing made otherwise.
func TestBox(t *testing.T) {
	for name, c := range map[string]struct {
		spec func(*joinery.Spec)
		harm func([]Piece)
		want func(*expected)
	}{
		"as asked": {},
		"glue space of 0.2": {
			spec: func(s *joinery.Spec) { s.GlueSpace = 0.2 },
			want: func(w *expected) { w.floorGap = [4]float64{0.2, 0.2, 0.2, 0.2} },
		},
		"a rabbet 0.3 too long": { // the tongue's end stays, its shoulder is 0.3 further in
			harm: func(p []Piece) { recut(&p[front], frontLeftRabbet, sideways(-0.3, 0)) },
			want: func(w *expected) { w.floor[0], w.shoulderGap[0] = true, 0.3 },
		},
		"the front's rabbets 0.3 too short": { // its shoulders keep both sides 0.3 out
			harm: func(p []Piece) {
				recut(&p[front], frontLeftRabbet, sideways(0.3, 0))
				recut(&p[front], frontRightRabbet, sideways(0, -0.3))
			},
			want: func(w *expected) {
				w.floorGap[0], w.floorGap[1] = 0.3, 0.3
				w.widthFront, w.slackX = 460.6, 2.6
				add(&w.lap, 0.3, 0, 1, 2, 3)
				add(&w.hold, -0.3, left, right)
			},
		},
		"all dados 0.2 too shallow": { // 2e wider
			harm: func(p []Piece) {
				for _, side := range []int{left, right} {
					p[side].Board.Cuts[leftFrontDado].Depth -= 0.2
					p[side].Board.Cuts[leftBackDado].Depth -= 0.2
				}
			},
			want: func(w *expected) {
				w.floor = [4]bool{true, true, true, true}
				w.widthFront, w.widthBack, w.slackX = 460.4, 460.4, 2.4
				add(&w.shoulderGap, 0.2, 0, 1, 2, 3)
				add(&w.lap, 0.2, 0, 1, 2, 3)
				add(&w.hold, -0.2, left, right)
			},
		},
		"one dado 0.2 too shallow": { // the box tapers; the bottom is half of it nearer to the right
			harm: func(p []Piece) { p[left].Board.Cuts[leftFrontDado].Depth -= 0.2 },
			want: func(w *expected) {
				w.floor[0], w.shoulderGap[0] = true, 0.2
				w.widthFront, w.slackX = 460.2, 2.2
				add(&w.lap, 0.2, 0, 2)
				add(&w.hold, -0.1, left, right)
			},
		},
		"one dado 1.7 too shallow": { // more than a side is pulled off to feel its play
			harm: func(p []Piece) { p[right].Board.Cuts[leftFrontDado].Depth -= 1.7 },
			want: func(w *expected) {
				w.floor[3], w.shoulderGap[3] = true, 1.7
				w.widthBack, w.slackX = 461.7, 3.7
				add(&w.lap, 1.7, 1, 3)
				add(&w.hold, -0.85, left, right)
			},
		},
		"one dado 4 too shallow": { // more than half of the tongue's length
			harm: func(p []Piece) { p[right].Board.Cuts[leftFrontDado].Depth -= 4 },
			want: func(w *expected) {
				w.floor[3], w.shoulderGap[3] = true, 4
				w.widthBack, w.slackX = 464, 6
				add(&w.lap, 4, 1, 3)
				add(&w.hold, -2, left, right)
			},
		},
		"a cutter height of 9.5": { // tongues that end near the sides' outside faces, and are not meant to reach them
			spec: func(s *joinery.Spec) { s.CutterHeight = 9.5 },
			want: func(w *expected) {
				w.lap, w.hold = [4]float64{2.7, 2.7, 2.7, 2.7}, [4]float64{8.5, 8.5, 8.5, 8.5}
			},
		},
		"a front of 13": { // its tongue is left 6.1 thick: 2 x 6.1 - 13
			spec: func(s *joinery.Spec) { s.FenceDistance, s.Front = 6.1, stock(13) },
			want: func(w *expected) { w.recess[0], w.recess[1], w.depth = -0.8, -0.8, 500.8 },
		},
		"a back of 11.5": {
			spec: func(s *joinery.Spec) { s.FenceDistance, s.Back = 6.1, stock(11.5) },
			want: func(w *expected) { w.recess[2], w.recess[3] = 0.7, 0.7 },
		},
		"tongues 0.05 thinner": { // the rabbets are 0.05 deeper: the outside face is as much nearer to the tongue
			harm: func(p []Piece) {
				p[back].Board.Cuts[frontLeftRabbet].Depth += 0.05
				p[back].Board.Cuts[frontRightRabbet].Depth += 0.05
			},
			want: func(w *expected) { // the tongue lies against the outer wall: its outside face is 0.05 further out
				add(&w.play, 0.05, 2, 3)
				w.recess[2], w.recess[3], w.depth, w.greatest = -0.05, -0.05, 500.05, 0.3
				w.slackY = 2.05
				add(&w.hold, -0.025, front, back)
			},
		},
		"front dados 0.1 further in": { // the front stands 0.1 further back, the bottom half as much
			harm: func(p []Piece) {
				recut(&p[left], leftFrontDado, sideways(0.1, 0.1))
				recut(&p[right], leftBackDado, sideways(-0.1, -0.1))
			},
			want: func(w *expected) {
				w.recess[0], w.recess[1], w.slackY = 0.1, 0.1, 1.9
				add(&w.hold, 0.05, front, back)
			},
		},
		"a dado 0.1 wider inward": {
			harm: func(p []Piece) { recut(&p[left], leftFrontDado, sideways(0, 0.1)) },
			want: func(w *expected) { w.play[0], w.greatest = 0.35, 0.35 },
		},
		"two dados 0.1 apart": { // less than the play: the front lies against the one that is further in
			harm: func(p []Piece) { recut(&p[left], leftFrontDado, sideways(0.1, 0.1)) },
			want: func(w *expected) {
				w.recess[0], w.recess[1], w.slackY = 0.1, 0.1, 1.9
				add(&w.hold, 0.05, front, back)
			},
		},
		"a bottom of 6": {
			spec: func(s *joinery.Spec) { s.Bottom = stock(6) },
			want: func(w *expected) { w.bottomPlay, w.wallPlay = 0.35, [4]float64{0.35, 0.35, 0.35, 0.35} },
		},
		"a flush bottom of 12": { // on a tongue of 12 - 6.1 = 5.9, its shoulders as far from the walls as its edges
			spec: func(s *joinery.Spec) { s.BottomFit, s.Bottom = joinery.BottomFlush, stock(12) },
		},
		"clearance of 0.5": {
			spec: func(s *joinery.Spec) { s.BottomClearance = 0.5 },
			want: func(w *expected) { w.slackX, w.slackY, w.hold = 0.5, 0.5, [4]float64{5.85, 5.85, 5.85, 5.85} },
		},
		"a groove 0.1 higher": {
			harm: func(p []Piece) {
				recut(&p[front], endGroove, geom.Rect{Min: geom.Point{Y: 0.1}, Max: geom.Point{Y: 0.1}})
			},
			want: func(w *expected) { w.bottomPlay = 0.35 },
		},
		"a groove 1.5 too shallow": { // the bottom is pushed 0.75 to the other side
			harm: func(p []Piece) { p[left].Board.Cuts[sideGroove].Depth -= 1.5 },
			want: func(w *expected) {
				w.slackX = 0.5
				add(&w.hold, -0.75, left)
				add(&w.hold, 0.75, right)
			},
		},
		"a flush bottom's shoulder 0.6 further out": { // which takes up as much of the slack
			spec: func(s *joinery.Spec) { s.BottomFit, s.Bottom = joinery.BottomFlush, stock(12) },
			harm: func(p []Piece) { recut(&p[bottom], 0, sideways(0, -0.6)) }, // the rabbet along its left edge
			want: func(w *expected) {
				w.slackX = 1.4
				add(&w.hold, -0.3, left)
				add(&w.hold, 0.3, right)
			},
		},
		"a double rabbet": { // lips 12.2 - 6.1 before the sides' ends; the sides' lips level with the front's ends
			spec: doubled,
			want: wantDoubled,
		},
		"a double rabbet, front 0.3 thicker": { // all of it comes out in front
			spec: doubled,
			harm: func(p []Piece) { p[front].Board.Thickness += 0.3 },
			want: func(w *expected) {
				wantDoubled(w)
				add(&w.recess, -0.3, 0, 1)
				w.depth = 500.3
			},
		},
		"a double rabbet, back 0.3 thicker": {
			spec: doubled,
			harm: func(p []Piece) { p[back].Board.Thickness += 0.3 },
			want: func(w *expected) {
				wantDoubled(w)
				add(&w.recess, -0.3, 2, 3)
				w.depth = 500.3
			},
		},
		"a double rabbet, back 0.3 thinner": {
			spec: doubled,
			harm: func(p []Piece) { p[back].Board.Thickness -= 0.3 },
			want: func(w *expected) {
				wantDoubled(w)
				add(&w.recess, 0.3, 2, 3)
				w.depth = 499.7
			},
		},
		"a double rabbet, left side 0.3 thicker": {
			spec: doubled,
			harm: func(p []Piece) { p[left].Board.Thickness += 0.3 },
			want: func(w *expected) {
				wantDoubled(w)
				add(&w.lap, 0.3, 0, 2)
				w.widthFront, w.widthBack = 460.3, 460.3
			},
		},
	} {
		t.Run(name, func(t *testing.T) {
			s := spec()
			if c.spec != nil {
				c.spec(&s)
			}
			list := pieces(t, s)
			if c.harm != nil {
				c.harm(list)
			}
			want := asAsked()
			if c.want != nil {
				c.want(&want)
			}
			want.compare(t, assemble(list))
		})
	}
}

func doubled(s *joinery.Spec) { s.Joint = joinery.DoubleRabbet }

func wantDoubled(w *expected) {
	inf := math.Inf(1) // there is no shoulder that the side's face would come to
	*w = expected{recess: [4]float64{-6.1, -6.1, -6.1, -6.1}, shoulderGap: [4]float64{inf, inf, inf, inf}, floor: [4]bool{true, true, true, true}, open: true,
		wallPlay: w.wallPlay, hold: w.hold, bottomPlay: w.bottomPlay, slackX: 2, slackY: 2, widthFront: 460, widthBack: 460, depth: 500, height: 140}
}

// TestBoxDoesNotGo: which joint it is, and by how much.
func TestBoxDoesNotGo(t *testing.T) {
	for name, c := range map[string]struct {
		harm    func([]Piece)
		corners map[int]float64 // that do not go, and their play
		bottom  bool            // it is the bottom
		check   func(*testing.T, Box)
	}{
		"a dado 0.1 narrower than its tongue": {
			harm:    func(p []Piece) { recut(&p[left], leftFrontDado, sideways(0, -0.35)) },
			corners: map[int]float64{0: -0.1},
		},
		"a back's tongue 0.15 thicker than its dado": { // 0.25 - 0.4
			harm:    func(p []Piece) { p[back].Board.Cuts[frontRightRabbet].Depth -= 0.4 },
			corners: map[int]float64{2: -0.15}, // a back's x runs from left to right
		},
		"two dados 0.4 apart": { // neither is too narrow, both together are: 0.25 - 0.4
			harm:    func(p []Piece) { recut(&p[left], leftFrontDado, sideways(0.4, 0.4)) },
			corners: map[int]float64{0: -0.15, 1: -0.15},
		},
		"a bottom of 6.45": {
			harm:   func(p []Piece) { p[bottom].Board.Thickness += 0.55 },
			bottom: true,
			check: func(t *testing.T, b Box) {
				same(t, "bottom clearance", b.GrooveClearance, -0.1)
				for _, w := range b.BottomJoints {
					if w.GoesIn {
						t.Errorf("it goes into the %s", w.Name)
					}
					same(t, w.Name+": clearance", w.Clearance, -0.1)
				}
			},
		},
		"one groove 0.5 higher": { // 0.45 - 0.5, though it would go into each
			harm: func(p []Piece) {
				recut(&p[right], sideGroove, geom.Rect{Min: geom.Point{Y: 0.5}, Max: geom.Point{Y: 0.5}})
			},
			bottom: true,
			check:  func(t *testing.T, b Box) { same(t, "bottom clearance", b.GrooveClearance, -0.05) },
		},
		"a bottom 3 too long": {
			harm: func(p []Piece) {
				b := p[bottom].Board.Outline.Bounds()
				p[bottom].Board.Outline = ShapeOf(geom.Rectangle(-1.5, 0, b.Max.X+1.5, b.Max.Y))
			},
			bottom: true,
			check:  func(t *testing.T, b Box) { same(t, "clearance across", b.ClearanceX, -1) },
		},
		"a bottom too short for its grooves": { // 2 + 12 of slack, more than both are deep
			harm: func(p []Piece) {
				b := p[bottom].Board.Outline.Bounds()
				p[bottom].Board.Outline = ShapeOf(geom.Rectangle(0, 6, b.Max.X, b.Max.Y-6))
			},
			bottom: true,
			check: func(t *testing.T, b Box) {
				if b.BottomJoints[front].GoesIn || b.BottomJoints[back].GoesIn || !b.BottomJoints[left].GoesIn {
					t.Errorf("%+v", b.BottomJoints)
				}
				same(t, "hold", b.BottomJoints[front].Engagement, -0.9) // 6.1 - 14/2
			},
		},
		"a bottom on top of the walls": {
			harm:   func(p []Piece) { p[bottom].Placement.Origin.Z = 120 },
			bottom: true,
		},
		"a bottom below its grooves": {
			harm:   func(p []Piece) { p[bottom].Placement.Origin.Z = -20 },
			bottom: true,
		},
		"no groove in a side": {
			harm: func(p []Piece) {
				p[left].Board.Cuts = p[left].Board.Cuts[:sideGroove]
			},
			bottom: true,
		},
		"a front without its dado": {
			harm:    func(p []Piece) { p[right].Board.Cuts = p[right].Board.Cuts[1:] }, // the one at the back
			corners: map[int]float64{2: 0, 3: 0},
			check: func(t *testing.T, b Box) {
				// Its right end goes nowhere but behind the side, 500 - 487.8 further
				// back than its left end is held.
				same(t, "play", b.Corners[3].Clearance, -12.2)
			},
		},
	} {
		t.Run(name, func(t *testing.T) {
			list := pieces(t, spec())
			c.harm(list)
			b := assemble(list)
			if b.GoesTogether() {
				t.Error("it goes together")
			}
			for i, corner := range b.Corners {
				play, bad := c.corners[i]
				if corner.GoesTogether == bad {
					t.Errorf("the %s in the %s: goes %t", corner.End, corner.Side, corner.GoesTogether)
				}
				if bad && c.check == nil {
					same(t, corner.End+" in "+corner.Side+": clearance", corner.Clearance, play)
				}
			}
			if b.BottomGoesIn() == c.bottom {
				t.Errorf("the bottom goes: %t", !c.bottom)
			}
			if c.check != nil {
				c.check(t, b)
			}
		})
	}
}

// TestNoBox: pieces that are no box go nowhere.
func TestNoBox(t *testing.T) {
	all := pieces(t, spec())
	for name, list := range map[string][]Piece{
		"nothing":         nil,
		"a bottom alone":  all[bottom:],
		"no back":         {all[left], all[right], all[front], all[bottom]},
		"no side":         {all[front], all[back], all[left]},
		"two left sides":  {all[left], all[left], all[front], all[back]},
		"without outline": {Piece{Placement: all[left].Placement}, Piece{Placement: all[right].Placement}, Piece{Placement: all[front].Placement}, Piece{Placement: all[back].Placement}},
	} {
		if b := assemble(list); b.GoesTogether() || len(b.Pieces) != len(list) {
			t.Errorf("%s: %+v", name, b)
		}
	}
	if b := assemble(all[:bottom]); !b.GoesTogether() || len(b.BottomJoints) != 0 || !b.BottomGoesIn() {
		t.Errorf("a box without a bottom: %+v", b)
	}
}

// TestPiecesAreNotTouched: the pieces given stay where they are.
func TestPiecesAreNotTouched(t *testing.T) {
	list := pieces(t, spec())
	list[left].Board.Cuts[leftFrontDado].Depth -= 0.2
	before := list[left].Placement
	b := assemble(list)
	if list[left].Placement != before {
		t.Errorf("the side was moved from %v to %v", before, list[left].Placement)
	}
	same(t, "where it stands now", b.Pieces[left].Placement.Origin.X, before.Origin.X-0.2)
}
