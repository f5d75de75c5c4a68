package joinery

import (
	"math"

	"drawerwright/geom"
)

// rabbet lays out the corner with front and back in rabbets across the ends of the
// sides. With T the measured thicknesses and h the cutter height:
//
//	side          D x H; at each end of the inside face a rabbet as long as the front (back) is thick, h deep
//	front, back   W - 2 Ts + 2 h long, plain ends
//
// The front's outside face is level with the sides' ends. It meets the rabbets'
// shoulders from before, and their floors with its ends.
func (l *layout) rabbet() {
	l.toFront, l.toBack = l.Tf, l.Tk
	l.maxSlot = math.Inf(1) // no tongue to suit
	l.lay(func() {
		l.dropGlueSpace()
		l.checkSideDepth()
		l.checkGrooveDepth()
		l.checkHoused()
	}, func() {
		l.checkPasses(l.rabbetLengths())
		l.level()
		l.chooseBottom()
		l.rabbetedWidth()
		l.checkProportions()
	}, l.inRabbet)
}

// inRabbet is the corner of a front or a back in rabbets of the sides.
func (l *layout) inRabbet(r Role) ending {
	stock, _ := l.stockOf(r)
	t, length := stock.Thickness.Mean, l.Width-2*l.Ts+2*l.h
	return ending{
		cuts:   []geom.Pocket{{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(0, 0, t, l.wallHeight())}},
		reach:  t - l.h,
		panel:  l.plainEnd(r, length),
		stand:  l.placed(r, l.Ts-l.h),
		groove: l.stopInRabbet(t),
	}
}

// rabbetLengths are those of the sides' rabbets.
func (l *layout) rabbetLengths() []float64 {
	if l.BackJoint == Housed {
		return []float64{l.Tf}
	}
	return []float64{l.Tf, l.Tk}
}

// plainEnd is a front or back without cuts but for the bottom's groove.
func (l *layout) plainEnd(r Role, length float64) geom.Panel {
	stock, _ := l.stockOf(r)
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, l.wallHeight()).With(geom.Mating, 1, 3), Thickness: stock.Thickness.Mean}
	if l.BottomFit.Grooved() {
		p.Pockets = append(p.Pockets, l.grooved(0, length))
	}
	return p
}

// placed is where a front or back stands whose ends are in from the outside of the
// sides, its outside face level with their ends.
func (l *layout) placed(r Role, in float64) geom.Placement {
	if r == Front {
		return geom.Placement{Origin: geom.Vec3{X: l.Width - in}, X: geom.Right.Scale(-1), Y: geom.Up}
	}
	return geom.Placement{Origin: geom.Vec3{X: in, Y: l.Depth}, X: geom.Right, Y: geom.Up}
}

// checkGrooveDepth judges h against front and back, in which only the bottom's
// groove is cut.
func (l *layout) checkGrooveDepth() {
	if !l.BottomFit.Grooved() {
		return
	}
	for _, r := range []Role{Front, Back} {
		if r == Back && (l.Front.Same(l.Back) || l.BottomFit.SlidesIn()) {
			continue
		}
		l.checkEndDepth(r)
	}
}

// level is how front and back stand to the ends of the sides: what a board
// is thicker than its mean is proud, and makes the box deeper.
func (l *layout) level() {
	proud := 0.0
	for _, r := range []Role{Front, Back} {
		if stock, _ := l.stockOf(r); r == Front || l.BackJoint != Housed { // which is between the sides
			proud += stock.Thickness.Max - stock.Thickness.Mean
		}
	}
	for _, r := range l.ends() {
		l.levelEnd(r)
	}
	l.judge(l.depthOf(l.Depth, l.Depth, l.Depth+proud))
}

// levelEnd is how front or back stands to the ends of the sides.
func (l *layout) levelEnd(r Role) {
	stock, _ := l.stockOf(r)
	l.check(Check{CheckID: CheckID{Code: CheckRecess, Part: r},
		Name: r.String() + " recess at the side ends (proud below 0)", Nominal: 0,
		LowerLimit: -l.Limits.Flush, UpperLimit: l.Limits.Flush, Verdicts: RecessVerdicts}, stock.Thickness, -1)
}

// rabbetedWidth changes with both sides where the rabbets' floors are h below the
// inside faces, and not where the wood left under them is the same.
func (l *layout) rabbetedWidth() Check {
	factor := 2.0
	if l.fromSpoilboard() {
		factor = 0
	}
	return l.check(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width,
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts}, l.Sides.Thickness, factor)
}
