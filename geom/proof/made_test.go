package proof

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// A box made by hand from closed forms: 400 x 100 x 300 outside, sides of 12, a
// front of 13, a back of 11, a bottom of 6 in grooves of 6.2 that begin 8 over the
// edges; all cuts are 5 deep.
const (
	madeW, madeH, madeD        = 400.0, 100.0, 300.0
	madeTs, madeTf, madeTk     = 12.0, 13.0, 11.0
	madeTb, madeRise, madeSlot = 6.0, 8.0, 6.2
	madeDeep, madeSlack        = 5.0, 1.0
	madeField                  = 3.0       // how deep rabbets of a fielded bottom are
	madePlay, madeSetback      = 0.2, 15.0 // of a housed back, and of fingers
)

// Corners of the front, and of the back.
type madeBox struct {
	front, back joinery.Joint
	bottom      joinery.BottomFit
}

func plank(length, width, thick float64) Board {
	return Board{Outline: ShapeOf(geom.Rectangle(0, 0, length, width)), Thickness: thick}
}

func (b *Board) cut(depth, x0, y0, x1, y1 float64) {
	b.Cuts = append(b.Cuts, Cut{Face: geom.Inside, Depth: depth, Shape: ShapeOf(geom.Rectangle(x0, y0, x1, y1))})
}

func (b *Board) drill(depth, x, y, diameter float64) {
	b.Cuts = append(b.Cuts, Cut{Face: geom.Inside, Depth: depth, Shape: ShapeOf(geom.Circle(geom.Point{X: x, Y: y}, diameter/2))})
}

// fingers is an outline with five rows of 20 at both ends: those whose number is
// odd, or is not, stand in by so much, and are wider by the play; 0 is a plain end.
func fingers(length, play float64, odd int, left, right float64) geom.Loop {
	row := func(i int) (low, high, in float64) {
		low, high = float64(20*i), float64(20*i+20)
		grow := -play / 4
		if i%2 == odd {
			in, grow = 1, play/4
		}
		if i > 0 {
			low -= grow
		}
		if i < 4 {
			high += grow
		}
		return low, high, in
	}
	var ring []geom.Point
	for i := range 5 {
		low, high, in := row(i)
		ring = append(ring, geom.Point{X: length - right*in, Y: low}, geom.Point{X: length - right*in, Y: high})
	}
	for i := 4; i >= 0; i-- {
		low, high, in := row(i)
		ring = append(ring, geom.Point{X: left * in, Y: high}, geom.Point{X: left * in, Y: low})
	}
	return geom.Polygon(ring...)
}

// pieces of the box; the left side is seen with its front to the left, the right
// one the other way, the front from behind.
func (m madeBox) pieces() []Piece {
	edge := 0.0 // of the walls
	if m.bottom == joinery.BottomApplied {
		edge = madeTb
	}
	height := madeH - edge
	toFront, toBack := madeTf, madeTk
	var sides [2]Board
	ends := map[joinery.Joint]float64{joinery.Rabbet: madeTs - madeDeep, joinery.Butt: madeTs, joinery.BoxJoint: 0, joinery.Housed: madeTs - madeDeep}
	fingersAt := [2]float64{}
	for i, j := range []joinery.Joint{m.front, m.back} {
		if j == joinery.BoxJoint {
			fingersAt[i] = []float64{madeTf, madeTk}[i]
		}
	}
	for k := range sides {
		s := plank(madeD, height, madeTs)
		// From a distance to the front, or to the rear end, to another.
		place := func(i int, from, to float64) (float64, float64) {
			if i == k {
				return from, to
			}
			return madeD - to, madeD - from
		}
		if fingersAt != [2]float64{} {
			s.Outline = ShapeOf(fingers(madeD, madePlay, 0, fingersAt[k], fingersAt[1-k]))
		}
		for i, j := range []joinery.Joint{m.front, m.back} {
			t := []float64{madeTf, madeTk}[i]
			switch j {
			case joinery.Rabbet:
				from, to := place(i, 0, t)
				s.cut(madeDeep, from, 0, to, height)
			case joinery.Housed:
				from, to := place(i, madeSetback, madeSetback+t+madePlay)
				s.cut(madeDeep, from, 0, to, height)
				toBack = madeSetback + t
			case joinery.Butt:
				from, to := place(i, 0, t)
				s.drill(madeTs, (from+to)/2, 30, 4)
				s.drill(9, (from+to)/2, 70, 6)
			}
		}
		sides[k] = s
	}
	end := func(j joinery.Joint, t float64) (Board, float64) {
		in := ends[j]
		b := plank(madeW-2*in, height, t)
		if j == joinery.BoxJoint {
			b.Outline = ShapeOf(fingers(madeW, madePlay, 1, madeTs, madeTs))
		}
		return b, in
	}
	front, frontIn := end(m.front, madeTf)
	back, backIn := end(m.back, madeTk)
	clear := madeD - toFront - toBack
	bottom := plank(madeW-2*madeTs+2*madeDeep-madeSlack, clear+2*madeDeep-madeSlack, madeTb)
	at := geom.Vec3{X: madeTs - madeDeep + madeSlack/2, Y: toFront - madeDeep + madeSlack/2, Z: madeRise}
	backEdge := edge
	grooved := []*Board{&sides[0], &sides[1], &front, &back}
	switch m.bottom {
	case joinery.BottomApplied:
		grooved, bottom, at = nil, plank(madeW, madeD, madeTb), geom.Vec3{}
	case joinery.BottomSlideIn, joinery.BottomFielded: // the back ends where the groove does
		grooved, backEdge = grooved[:3], madeRise+madeSlot
		back.Outline = ShapeOf(geom.Rectangle(0, 0, madeW-2*backIn, madeH-backEdge))
		bottom = plank(madeW-2*madeTs+2*madeDeep-madeSlack, clear+madeDeep-madeSlack+madeTk, madeTb)
		at.Y = toFront - madeDeep + madeSlack
	}
	if m.bottom == joinery.BottomFielded { // as slid in, and so much thicker below, but for its three edges
		r := bottom.Outline.Bounds()
		bottom.Thickness, at.Z = madeTb+madeField, madeRise-madeField
		for _, k := range []geom.Rect{
			{Max: geom.Point{X: madeDeep, Y: r.Max.Y}}, {Min: geom.Point{X: r.Max.X - madeDeep}, Max: r.Max},
			{Max: geom.Point{X: r.Max.X, Y: madeDeep}},
		} {
			bottom.Cuts = append(bottom.Cuts, Cut{Face: geom.Outside, Depth: madeField, Shape: ShapeOf(k.Loop())})
		}
	}
	for _, b := range grooved {
		b.cut(madeDeep, 0, madeRise, b.Outline.Bounds().Max.X, madeRise+madeSlot)
	}
	return []Piece{
		{Name: "left side", Board: sides[0], Placement: geom.Placement{Origin: geom.Vec3{Z: edge}, X: geom.Back, Y: geom.Up}, Role: Side},
		{Name: "right side", Board: sides[1], Placement: geom.Placement{Origin: geom.Vec3{X: madeW, Y: madeD, Z: edge}, X: geom.Back.Scale(-1), Y: geom.Up}, Role: Side},
		{Name: "front", Board: front, Placement: geom.Placement{Origin: geom.Vec3{X: madeW - frontIn, Z: edge}, X: geom.Right.Scale(-1), Y: geom.Up}, Role: Front},
		{Name: "back", Board: back, Placement: geom.Placement{Origin: geom.Vec3{X: backIn, Y: madeD - (toBack - madeTk), Z: backEdge}, X: geom.Right, Y: geom.Up}, Role: Back},
		{Name: "bottom", Board: bottom, Placement: geom.Placement{Origin: at, X: geom.Right, Y: geom.Back}, Role: Bottom},
	}
}
