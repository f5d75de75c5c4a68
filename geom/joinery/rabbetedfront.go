package joinery

import (
	"math"

	"drawerwright/geom"
)

// rabbetedFront lays out the corner whose front is that of the drawer too: it runs the
// whole width and hides the ends of the sides, which stand in rabbets of its inside
// face. The back is as that of the [Rabbet]. With T the measured thicknesses and h the
// cutter height:
//
//	side    D - (Tf - h) long, H high; at the rear end a rabbet as long as the back is thick, h deep
//	front   W long, H high; at each end a rabbet Ts long and h deep, leaving a lip Tf - h thick
//	back    W - 2 Ts + 2 h long, plain ends
//	bottom  (W - 2 Ts + 2 h - clearance) x (D - Tf - Tk + 2 h - clearance)
//
// With a [Lip] the front is longer and higher by it, the rabbets at its ends are longer, and there are
// others along its upper and lower edge: the box has its size behind the lips.
//
// Rabbets and grooves are equally deep, so that the sides' groove ends on the floor of
// the front's rabbet, and the front's groove in it.
func (l *layout) rabbetedFront() {
	l.toFront, l.toBack = l.Tf, l.Tk
	l.maxSlot = math.Inf(1) // no tongue to suit
	l.lay(func() {
		l.dropGlueSpace()
		l.checkLip()
		l.checkSideDepth()
		if l.BottomFit.Grooved() {
			l.checkGrooveDepth()
		} else {
			l.checkEndDepth(Front)
		}
		l.checkHoused()
	}, func() {
		l.checkPasses(l.frontRabbetLengths())
		if !l.Lip.Ends() {
			l.lap(Front, -1)
		}
		if l.BackJoint != Housed {
			l.levelEnd(Back)
		}
		l.chooseBottom()
		l.frontedDepth()
		if l.Lip.Ends() {
			l.sidesOnShoulders()
		} else {
			l.fingeredWidth() // the front's length, and what thick sides stand proud of it
		}
		l.checkProportions()
	}, func(r Role) ending {
		if r == Back {
			return l.inRabbet(r)
		}
		return l.overSides()
	})
}

// frontRabbetLengths are those of the front's rabbets, and of the sides' at the back.
func (l *layout) frontRabbetLengths() []float64 {
	if l.BackJoint == Housed {
		return l.lippedLengths()
	}
	return append(l.lippedLengths(), l.Tk)
}

// overSides is the corner of the front. The bottom reaches without clearance to the ends
// of the sides, and Ts - h from those of the front.
func (l *layout) overSides() ending {
	lip := l.Lip
	length, height := l.Width+lip.Left+lip.Right, l.wallHeight()+lip.Top+lip.Bottom
	e := ending{
		short: l.Tf - l.h,
		mates: true, // on the floors of the front's rabbets
		stand: l.placed(Front, -lip.Right),
		panel: geom.Panel{
			Outline:   geom.Rectangle(0, 0, length, height),
			Thickness: l.Tf,
			Pockets: []geom.Pocket{
				{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(0, 0, l.Ts+lip.Right, height)},
				{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(length-l.Ts-lip.Left, 0, length, height)},
			},
		},
	}
	e.stand.Origin.Z -= lip.Bottom
	l.lipRabbets(&e.panel)
	if !l.BottomFit.Grooved() {
		return e
	}
	bottom := l.Ts - l.h
	from, to := 0.0, length
	end := min(l.stopInRabbet(l.Ts), bottom)
	if end > 0 {
		from, to = lip.Right+end, length-lip.Left-end
	}
	groove, rise := l.grooved(from, to), lip.Bottom+l.rise
	groove.Outline = geom.Rectangle(from, rise, to, rise+l.groove)
	if end > 0 {
		at := bottom + l.BottomClearance/2
		// wherever it lies in its play
		groove.Takes = geom.Rectangle(lip.Right+at, rise, length-lip.Left-at, rise+l.groove)
	}
	e.panel.Pockets = append(e.panel.Pockets, groove)
	return e
}

// frontedDepth is the side's length, the front's lip, and a back that is proud.
func (l *layout) frontedDepth() Check {
	front, least, most := l.Front.Thickness, l.Depth, l.Depth
	if !l.fromSpoilboard() {
		least, most = least+(front.Min-front.Mean), most+(front.Max-front.Mean)
	}
	if l.BackJoint != Housed {
		most += l.Back.Thickness.Max - l.Back.Thickness.Mean
	}
	return l.judge(l.depthOf(l.Depth, least, most))
}
