package proof

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// grooveTo lets a side's groove run from one place along the panel to another, square
// or round at its ends.
func grooveTo(p *Piece, from, to float64, round bool) {
	c := &p.Board.Cuts[len(p.Board.Cuts)-1]
	b := c.Shape.Bounds()
	l := geom.Rectangle(from, b.Min.Y, to, b.Max.Y)
	if round {
		r := b.Height() / 2
		l = geom.Loop{
			{Point: geom.Point{X: from + r, Y: b.Min.Y}}, {Point: geom.Point{X: to - r, Y: b.Min.Y}, Bulge: 1},
			{Point: geom.Point{X: to - r, Y: b.Max.Y}}, {Point: geom.Point{X: from + r, Y: b.Max.Y}, Bulge: 1},
		}
	}
	c.Shape = ShapeOf(l)
}

// TestGrooveEnds: where the grooves beside the bottom end before it has come to the
// floors ahead of it. The bottom is 300 - 13 - 11 + 2 x 5 - 1 = 285 long, from 8.5 to
// 293.5, and lies on the lower walls of grooves of 6.2, 6 thick.
func TestGrooveEnds(t *testing.T) {
	const chord = 0.05          // of an arc kept to within 0.01, where it is 0.1 up: 0.01 x 3.1 / 0.78
	raised := func(p []Piece) { // of the front: the bottom lies 0.1 higher
		recut(&p[front], len(p[front].Board.Cuts)-1, geom.Rect{Min: geom.Point{Y: 0.1}, Max: geom.Point{Y: 0.1}})
	}
	// Lying 0.1 over the lower wall, a square edge meets a round of 3.1 that far behind
	// where it begins.
	in := math.Sqrt(3.1*3.1 - 3.0*3.0)
	for name, c := range map[string]struct {
		harm      func([]Piece)
		slack     float64
		tolerance float64
		does      bool
	}{
		"one, 0.3 and 0.1 beyond the bottom":      {func(p []Piece) { grooveTo(&p[left], 8.2, 293.6, false) }, 0.4, rounding, true},
		"one, 7 and 9 nm beyond the bottom":       {func(p []Piece) { grooveTo(&p[left], 8.499993, 293.500009, false) }, 16e-6, rounding, true},
		"both, on one end each":                   {func(p []Piece) { grooveTo(&p[left], 8.2, 300, false); grooveTo(&p[right], 6.4, 300, false) }, 0.4, rounding, true}, // 300 - 6.4 - 293.5
		"one, 0.4 into the bottom as it stands":   {func(p []Piece) { grooveTo(&p[left], 8.9, 300, false) }, 0.1, rounding, true},                                       // 0.5 - 0.4 behind
		"one, too short":                          {func(p []Piece) { grooveTo(&p[left], 8.9, 293.6, false) }, -0.3, rounding, false},
		"both round, just where the bottom is":    {func(p []Piece) { grooveTo(&p[left], 8.2-3.1, 293.6+3.1, true) }, 0.4, 2 * 0.08, true}, // until 0.001 up: sqrt(2 x 3.1 x 0.001) = 0.08
		"both round, and the bottom 0.1 up":       {func(p []Piece) { grooveTo(&p[left], 8.2-3.1+in, 293.6+3.1-in, true); raised(p) }, 0.4, 2 * chord, true},
		"beyond the floors ahead":                 {func(p []Piece) { grooveTo(&p[left], 7.9, 294.1, false) }, 1, rounding, true},
		"square, through a step of 0.1 in height": {func(p []Piece) { p[left].Board.cut(5, 4, 8.1, 292, 14.1) }, 1, rounding, true}, // all of it in the groove
	} {
		t.Run(name, func(t *testing.T) {
			list := madeBox{front: joinery.Butt, back: joinery.Butt}.pieces()
			c.harm(list)
			b := assemble(list)
			if b.GoesTogether() != c.does || !near(b.ClearanceY, c.slack,
				c.tolerance) || c.does && !near(b.ClearanceX, madeSlack, rounding) {
				t.Errorf("goes %t, clearance along %.6f, want %t, %.6f; across %.6f; %+v %+v",
					b.GoesTogether(), b.ClearanceY, c.does, c.slack, b.ClearanceX, b.BottomJoints, b.Overlaps)
			}
		})
	}
	// The grooves of front and back may end too. The back stands from 12 to 388: its
	// groove, from 7.3 + 12 to 370.9 + 12 in the box, has 363.6 for a bottom of 362.5.
	list := madeBox{front: joinery.Butt, back: joinery.Butt}.pieces()
	r := list[bottom].Board.Outline.Bounds()
	list[bottom].Board.Outline = ShapeOf(geom.Rectangle(12.5, 0, r.Max.X-10, r.Max.Y))
	grooveTo(&list[back], 7.3, 370.9, false)
	if b := assemble(list); !near(b.ClearanceX, 1.1, rounding) {
		t.Errorf("clearance across in the back's groove %.6f, want 1.1", b.ClearanceX)
	}
}

// TestSlackAsByCells: as far as the bottom can move by the cells of the boards, as they
// stand in the end. The grooves' ends and depths are drawn anew.
func TestSlackAsByCells(t *testing.T) {
	ends, floors := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d, ok := anyDrawer(t)
		if !ok {
			return
		}
		list := solidsOf(d)
		for _, i := range []int{left, right} {
			for k := range list[i].panel.Pockets {
				p := &list[i].panel.Pockets[k]
				if p.Kind != geom.Groove {
					continue
				}
				near, far := list[bottom].stand.Origin.Y, list[bottom].stand.Origin.Y+list[bottom].panel.Width()
				if list[i].stand.X.Y < 0 {
					near, far = list[i].stand.Origin.Y-far, list[i].stand.Origin.Y-near
				}
				r := p.Outline.Bounds()
				off := rapid.Float64Range(0.01, 2)
				p.Outline = geom.Rectangle(near-off.Draw(t, "before"), r.Min.Y, far+off.Draw(t, "behind"), r.Max.Y)
			}
		}
		var all []Piece
		for i, s := range list {
			all = append(all, s.piece([]string{"left", "right", "front", "back", "bottom"}[i]))
		}
		b := assemble(all)
		if !b.GoesTogether() {
			return
		}
		for i := range list {
			list[i].stand = b.Pieces[i].Placement
		}
		place := [2]float64{math.Inf(-1), math.Inf(1)}
		for i, w := range list[:bottom] {
			open := w.openings(list[bottom])
			at := slices.IndexFunc(open, func(o [2]float64) bool { return o[0] <= doubtful && o[1] >= -doubtful })
			if at < 0 {
				t.Fatalf("the bottom is in %s", all[i].Name)
			}
			if i < front && open[at][1]-open[at][0] < b.ClearanceY+doubtful {
				ends++
			} else {
				floors++
			}
			place = [2]float64{math.Max(place[0], open[at][0]), math.Min(place[1], open[at][1])}
		}
		if slack := place[1] - place[0]; !near(b.ClearanceY, slack, doubtful) {
			t.Fatalf("clearance along %.6f, by cells %.6f", b.ClearanceY, slack)
		}
	})
	if ends == 0 || floors == 0 {
		t.Errorf("stopped by the ends of grooves %d times, by their floors %d", ends, floors)
	}
}

// TestProudAndSetBack: at a lapped corner the width is from what is furthest out to what
// is furthest out, whichever each is.
func TestProudAndSetBack(t *testing.T) {
	list := madeBox{front: joinery.BoxJoint, back: joinery.BoxJoint}.pieces()
	list[left].Board.Thickness += 0.4  // 0.4 proud of the fingers' ends
	list[right].Board.Thickness -= 0.3 // and 0.3 behind them
	b := assemble(list)
	if !b.GoesTogether() {
		t.Fatalf("%+v, %+v", b.Corners, b.Overlaps)
	}
	same(t, "lap at the left", b.Corners[0].Lap, 0.4)
	same(t, "lap at the right", b.Corners[1].Lap, -0.3)
	same(t, "front width", b.WidthFront, madeW+0.4)
	same(t, "back width", b.WidthBack, madeW+0.4)
}

// TestBothTooLong: a front that is too long at one end and a back that is too long at
// the other are both moved to the middle.
func TestBothTooLong(t *testing.T) {
	for name, c := range map[string]struct {
		front, back [2]float64 // longer at the left and at the right end, seen from the front
		width       float64
		laps        [4]float64 // more than the 12 of a butt joint
	}{
		"alike":              {[2]float64{0, 0.6}, [2]float64{0.6, 0}, 0.6, [4]float64{}},
		"the front more":     {[2]float64{0, 0.8}, [2]float64{0.6, 0}, 0.8, [4]float64{0, 0, 0, 0.2}}, // 0.6 to spare in all: the back has 0.2, where it was not moved to
		"the back more":      {[2]float64{0, 0.2}, [2]float64{0.6, 0.1}, 0.7, [4]float64{0.5, 0, 0, 0}},
		"both the same way":  {[2]float64{0, 0.6}, [2]float64{0, 0.6}, 0.6, [4]float64{}},
		"one of them":        {[2]float64{0.5, 0.6}, [2]float64{}, 1.1, [4]float64{0, 0, 0.5, 0.6}},
		"at both ends alike": {[2]float64{0.3, 0.3}, [2]float64{0.3, 0.3}, 0.6, [4]float64{}},
	} {
		t.Run(name, func(t *testing.T) {
			for _, mirrored := range []bool{false, true} {
				list := madeBox{front: joinery.Butt, back: joinery.Butt}.pieces()
				want, f, k := c.laps, c.front, c.back
				if mirrored {
					f, k = [2]float64{f[1], f[0]}, [2]float64{k[1], k[0]}
					want = [4]float64{want[1], want[0], want[3], want[2]}
				}
				lengthen(&list[front], -f[1], f[0]) // whose x runs to the left
				lengthen(&list[back], -k[0], k[1])
				b := assemble(list)
				if !b.GoesTogether() {
					t.Fatalf("%+v, %+v", b.Corners, b.Overlaps)
				}
				same(t, "width", math.Max(b.WidthFront, b.WidthBack), madeW+c.width)
				for i, corner := range b.Corners {
					same(t, corner.End+" "+corner.Side+": lap", corner.Lap, madeTs+want[i])
				}
			}
		})
	}
}
