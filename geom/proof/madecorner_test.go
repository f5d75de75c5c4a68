package proof

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// joined is what a corner is expected to be.
type joined struct {
	captured, fingers, laps, floor bool
	play, recess, lap, open        float64
}

// madeCorner is each corner as it is made by hand: the ends of a rabbet or a dado
// are 12 - 5 from the sides' outside faces, those of a butt joint 12.
func madeCorner(j joinery.Joint) joined {
	switch j {
	case joinery.Rabbet:
		return joined{lap: madeTs - madeDeep, floor: true}
	case joinery.Butt:
		return joined{lap: madeTs}
	case joinery.Housed:
		return joined{captured: true, play: madePlay, recess: madeSetback, lap: madeTs - madeDeep, floor: true}
	}
	return joined{captured: true, fingers: true, laps: true, play: madePlay}
}

func (want joined) compare(t *testing.T, c Corner) {
	t.Helper()
	at := c.End + " in " + c.Side + ": "
	got := joined{c.Captured, c.Fingers, c.Laps, !c.OnShoulder, c.Clearance, c.Recess, c.Lap, c.Open}
	if !c.GoesTogether || got.captured != want.captured || got.fingers != want.fingers || got.laps != want.laps || got.floor != want.floor {
		t.Errorf("%s%+v, want %+v", at, c, want)
	}
	same(t, at+"play", got.play, want.play)
	same(t, at+"recess", got.recess, want.recess)
	same(t, at+"lap", got.lap, want.lap)
	same(t, at+"open", got.open, want.open)
}

// TestMadeCorners: every pair of corners, as made and with one thing made otherwise.
func TestMadeCorners(t *testing.T) {
	type measured struct {
		corners       [4]joined
		width, back   float64
		depth, slackY float64
	}
	for name, c := range map[string]struct {
		made madeBox
		harm func([]Piece)
		want func(*measured)
	}{
		"rabbet":                    {made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet}},
		"butt":                      {made: madeBox{front: joinery.Butt, back: joinery.Butt}},
		"box joint":                 {made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint}},
		"rabbet and housed back":    {made: madeBox{front: joinery.Rabbet, back: joinery.Housed}},
		"butt and housed back":      {made: madeBox{front: joinery.Butt, back: joinery.Housed}},
		"box joint and housed back": {made: madeBox{front: joinery.BoxJoint, back: joinery.Housed}},
		"a rabbet's front 0.3 thick": {made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet}, // proud by as much
			harm: func(p []Piece) { p[front].Board.Thickness += 0.3 },
			want: func(w *measured) {
				w.corners[0].recess, w.corners[1].recess, w.depth = -0.3, -0.3, madeD+0.3
			}},
		"a rabbet 1.5 too long": { // the front stops at the other side's shoulder
			made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet},
			harm: func(p []Piece) { recut(&p[left], 0, sideways(0, 1.5)) },
			want: func(w *measured) { w.corners[0].open = 1.5 }},
		"a back's rabbet 1.5 too long": {
			made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet},
			harm: func(p []Piece) { recut(&p[right], 1, sideways(0, 1.5)) },
			want: func(w *measured) { w.corners[3].open = 1.5 }},
		"a rabbet 0.4 too shallow": { // the side stays out by as much, at the back too
			made: madeBox{front: joinery.Rabbet, back: joinery.Rabbet},
			harm: func(p []Piece) { p[left].Board.Cuts[0].Depth -= 0.4 },
			want: func(w *measured) {
				w.width += 0.4
				w.corners[0].lap, w.corners[2].lap = w.corners[0].lap+0.4, w.corners[2].lap+0.4
			}},
		"a butt's front 0.6 too long": { // it stands 0.3 in each side before they are pushed off
			made: madeBox{front: joinery.Butt, back: joinery.Butt},
			harm: func(p []Piece) {
				lengthen(&p[front], -0.3, 0.3)
			},
			want: func(w *measured) {
				w.width += 0.6
				for i := range w.corners[:2] { // 0.3 longer, and pushed off by 0.3
					w.corners[i+2].lap += 0.3
				}
			}},
		"a butt's front 0.6 too long at one end": {
			made: madeBox{front: joinery.Butt, back: joinery.Butt},
			harm: func(p []Piece) {
				lengthen(&p[front], 0, 0.6)
			},
			want: func(w *measured) { // the front's x runs to the left
				w.width += 0.6
				w.corners[2].lap += 0.6
			}},
		"a butt box 0.6 too narrow": { // the sides are pushed on until they meet
			made: madeBox{front: joinery.Butt, back: joinery.Butt},
			harm: func(p []Piece) {
				for _, i := range []int{front, back} {
					lengthen(&p[i], 0.3, -0.3)
				}
			},
			want: func(w *measured) { w.width, w.back = w.width-0.6, w.back-0.6 }},
		"fingers with 0.05 less clearance": { // the left side's notches are as much narrower
			made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint},
			harm: func(p []Piece) { p[left].Board.Outline = ShapeOf(fingers(madeD, madePlay-0.1, 0, madeTf, madeTk)) },
			want: func(w *measured) { w.corners[0].play, w.corners[2].play = madePlay-0.05, madePlay-0.05 }},
		"notches of the left side 1.5 too deep": { // the front stops at the right side's
			made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint},
			harm: func(p []Piece) { p[left].Board.Outline = ShapeOf(fingers(madeD, madePlay, 0, madeTf+1.5, madeTk)) },
			want: func(w *measured) { w.corners[0].open = 1.5 }},
		"left side 0.4 thick": { // proud of the fingers' ends
			made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint},
			harm: func(p []Piece) { p[left].Board.Thickness += 0.4 },
			want: func(w *measured) {
				w.corners[0].lap, w.corners[2].lap = 0.4, 0.4
				w.width, w.back = w.width+0.4, w.back+0.4
			}},
		"front 0.4 thin": { // behind the fingers' ends
			made: madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint},
			harm: func(p []Piece) { p[front].Board.Thickness -= 0.4 },
			want: func(w *measured) { w.corners[0].recess, w.corners[1].recess = 0.4, 0.4 }},
		"a housed back 0.05 thin": { // with its outside face at the outer wall still
			made: madeBox{front: joinery.Rabbet, back: joinery.Housed},
			harm: func(p []Piece) { p[back].Board.Thickness -= 0.05 },
			want: func(w *measured) {
				w.corners[2].play, w.corners[3].play = madePlay+0.05, madePlay+0.05
				w.slackY += 0.05
			}},
		"a housed back's dados 0.4 too shallow": {
			made: madeBox{front: joinery.Rabbet, back: joinery.Housed},
			harm: func(p []Piece) { p[left].Board.Cuts[1].Depth -= 0.4; p[right].Board.Cuts[1].Depth -= 0.4 },
			want: func(w *measured) {
				w.back += 0.8
				for i := range w.corners {
					w.corners[i].lap += 0.4
				}
			}},
	} {
		t.Run(name, func(t *testing.T) {
			f, k := madeCorner(c.made.front), madeCorner(c.made.back)
			want := measured{[4]joined{f, f, k, k}, madeW, madeW, madeD, madeSlack}
			if c.want != nil {
				c.want(&want)
			}
			list := c.made.pieces()
			if c.harm != nil {
				c.harm(list)
			}
			b := assemble(list)
			if !b.GoesTogether() {
				t.Fatalf("it does not go together: %+v, %+v", b.Corners, b.Overlaps)
			}
			for i, w := range want.corners {
				w.compare(t, b.Corners[i])
			}
			turns := 0.0 // by what holds an end both ways along the box, not up and down
			for _, w := range want.corners {
				if w.captured && !w.fingers {
					turns = w.play
				}
			}
			same(t, "rack", b.Racking, 2*turns*b.Depth/b.Diagonal)
			same(t, "front width", b.WidthFront, want.width)
			same(t, "back width", b.WidthBack, want.back)
			same(t, "depth", b.Depth, want.depth)
			same(t, "height", b.Height, madeH)
			same(t, "bottom clearance", b.GrooveClearance, madeSlot-madeTb)
		})
	}
}

// TestMadeCornersDoNotGo: which corner, and by how much.
func TestMadeCornersDoNotGo(t *testing.T) {
	for name, c := range map[string]struct {
		made    madeBox
		harm    func([]Piece)
		corners map[int]float64 // and their play
	}{
		"fingers 0.3 too wide": { // 0.2 of play, a quarter of 1.2 less at each of two edges
			made:    madeBox{front: joinery.BoxJoint, back: joinery.Housed},
			harm:    func(p []Piece) { p[front].Board.Outline = ShapeOf(fingers(madeW, -0.8, 1, madeTs, madeTs)) },
			corners: map[int]float64{0: -0.3, 1: -0.3}},
		"fingers of both sides apart": { // by 0.3, with 0.2 of play
			made:    madeBox{front: joinery.BoxJoint, back: joinery.Housed},
			harm:    func(p []Piece) { p[left].Board.Outline = p[left].Board.Outline.Moved(0, 0.3); cutsUp(&p[left], 0) },
			corners: map[int]float64{0: -0.1, 1: -0.1}},
		"a housed back 0.3 too thick": {
			made:    madeBox{front: joinery.Butt, back: joinery.Housed},
			harm:    func(p []Piece) { p[back].Board.Thickness += 0.3 },
			corners: map[int]float64{2: -0.1, 3: -0.1}},
	} {
		t.Run(name, func(t *testing.T) {
			list := c.made.pieces()
			c.harm(list)
			b := assemble(list)
			for i, corner := range b.Corners {
				play, bad := c.corners[i]
				if corner.GoesTogether == bad {
					t.Errorf("%+v", corner)
				}
				if bad {
					same(t, corner.End+" in "+corner.Side+": clearance", corner.Clearance, play)
				}
			}
			if b.GoesTogether() {
				t.Error("it goes together")
			}
		})
	}
	// A notch that was not cut: the side's finger is in the front's wood.
	list := madeBox{front: joinery.BoxJoint, back: joinery.Housed}.pieces()
	list[front].Board.Outline = ShapeOf(geom.Rectangle(0, 0, madeW, madeH))
	if b := assemble(list); b.GoesTogether() || b.Corners[0].GoesTogether || b.Corners[1].GoesTogether {
		t.Errorf("a front without notches: %+v", b.Corners)
	}
}

// TestFingersOutOfLevel: a front that stands 0.3 too high is put down to where its
// fingers go in, 0.1 too high: half of its play.
func TestFingersOutOfLevel(t *testing.T) {
	list := madeBox{front: joinery.BoxJoint, back: joinery.Housed}.pieces()
	list[front].Placement.Origin.Z += 0.3
	b := assemble(list)
	if !b.GoesTogether() {
		t.Fatalf("%+v, %+v", b.Corners, b.Overlaps)
	}
	want := madeCorner(joinery.BoxJoint)
	want.compare(t, b.Corners[0])
	want.compare(t, b.Corners[1])
	same(t, "height", b.Height, madeH+0.1)
	same(t, "bottom clearance", b.GrooveClearance, madeSlot-madeTb-0.1)
}

// TestRoles: a piece that has a role is no other, wherever it looks; one that does
// not look where its role has it is none.
func TestRoles(t *testing.T) {
	list := madeBox{front: joinery.Rabbet, back: joinery.Rabbet}.pieces()
	for _, x := range []geom.Vec3{geom.Back, geom.Right} {
		list = append(list, Piece{Name: "other", Role: Other, Board: plank(40, 20, 5), Placement: geom.Placement{Origin: geom.Vec3{X: 100, Y: 100, Z: 50}, X: x, Y: geom.Up}})
	}
	list[6].Placement.Origin.Y += 60
	if b := assemble(list); !b.GoesTogether() || b.Corners[0].Side != "left side" || b.Corners[2].End != "back" {
		t.Errorf("with others: %+v, %+v", b.Corners, b.Overlaps)
	}
	list[left].Role = Bottom
	if b := assemble(list); len(b.Corners) != 0 || b.GoesTogether() {
		t.Errorf("with a bottom for a side: %+v", b.Corners)
	}
}

// lengthen moves both ends of a panel and of all its cuts, as far as is said.
func lengthen(p *Piece, low, high float64) {
	r := p.Board.Outline.Bounds()
	p.Board.Outline = ShapeOf(geom.Rectangle(r.Min.X+low, r.Min.Y, r.Max.X+high, r.Max.Y))
	for i := range p.Board.Cuts {
		recut(p, i, sideways(low, high))
	}
}

func cutsUp(p *Piece, by float64) {
	for i := range p.Board.Cuts {
		recut(p, i, geom.Rect{Min: geom.Point{Y: by}, Max: geom.Point{Y: by}})
	}
}
