package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// doubleRabbet lays out the corner with a rabbet on the inside face of either
// part, so that no part is turned over. With T the measured thicknesses (s side,
// f front, k back), h the cutter height and f the fence distance:
//
//	side          D - (Tf - h) - (Tk - h) long, H high; at each end a rabbet h long and h deep
//	front, back   W long, H high; at each end a rabbet Ts - h long and h deep, leaving a lip T - h thick
//	bottom        (W - 2 Ts + 2 h - clearance) x (D - Tf - Tk + 2 h - clearance)
//	grooves       from f above the bottom edge, h deep
//
// The front's lip laps over the side's end, and the side's lip, Ts - h thick,
// stands in the front's rabbet. Across the box the front's shoulder meets the
// floor of the side's rabbet; along it the side's end meets the floor of the
// front's. Nothing is captured: the corner has no play, is glued on two faces,
// and wants clamps both ways.
//
// Rabbets and grooves are equally deep, so that a groove which runs through ends
// in a rabbet's floor and does not show.
func (l *layout) doubleRabbet() {
	l.toFront, l.toBack = l.Tf, l.Tk
	l.maxSlot = math.Inf(1) // no tongue to suit
	l.lay(func() {
		l.dropGlueSpace()
		l.checkLappedSetting()
		l.checkHoused()
	}, func() {
		l.checkRabbets()
		l.laps()
		l.chooseBottom()
		l.lappedDepth()
		l.lappedWidth()
		l.checkProportions()
	}, l.lappedEnd)
}

// lappedEnd is the corner of front or back. The bottom reaches without clearance to the
// end of the sides, and Ts - h from those of front and back.
func (l *layout) lappedEnd(r Role) ending {
	stock, _ := l.stockOf(r)
	t, rabbet := stock.Thickness.Mean, l.h+l.lapRoom()
	e := ending{
		short:  t - l.h,
		mates:  true, // the lips of front and back bear on them
		cuts:   []geom.Pocket{{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(0, 0, rabbet, l.wallHeight())}},
		groove: l.stopInRabbet(rabbet),
		stand:  l.placed(r, 0),
	}
	across := l.Ts - l.h
	e.panel = geom.Panel{
		Outline:   geom.Rectangle(0, 0, l.Width, l.wallHeight()),
		Thickness: t,
		Pockets: []geom.Pocket{
			{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(0, 0, across, l.wallHeight())},
			{Kind: geom.Rabbet, Depth: l.h, Outline: geom.Rectangle(l.Width-across, 0, l.Width, l.wallHeight())},
		},
	}
	if l.BottomFit.Grooved() {
		end := l.stopInRabbet(across)
		groove := l.grooved(end, l.Width-end)
		if end > 0 {
			at := across + l.BottomClearance/2
			groove.Takes = geom.Rectangle(at, l.rise, l.Width-at, l.rise+l.groove) // wherever it lies in its play
		}
		e.panel.Pockets = append(e.panel.Pockets, groove)
	}
	return e
}

// stopInRabbet is where a stopped groove ends in a rabbet that is as deep: in its
// middle, or nearer to the end, so that what a round bit leaves in the groove's
// corners has gone with the rabbet. A groove that runs through ends at 0.
func (l *layout) stopInRabbet(rabbet float64) float64 {
	if l.GrooveEnds != GrooveStopped {
		return 0
	}
	l.roundsWithin(rabbet / 2)
	return max(0, min(rabbet/2, rabbet-l.corner()))
}

// dropGlueRoom leaves out what has no meaning without dados.
func (l *layout) dropGlueSpace() {
	if l.BackJoint == Housed {
		return
	}
	if l.GlueSpace > 0 {
		l.warn(geom.Diagnosis{
			Code: "glue-space", Subject: about(SettingGlueSpace, ""),
			Fact:     geom.Sentencef("a %s has no dados: the glue-space of %s changes nothing", l.Joint, geom.Millimeters(l.GlueSpace)),
			Ask:      geom.Sentencef("leave glue-space out"),
			Remedies: []geom.Remedy{l.exactly(SettingGlueSpace, 0)},
		})
	}
	l.GlueSpace, l.drawer.Setup.DadoHeight = 0, 0
}

// checkLappedSetting judges f and h against the boards. With h between the least
// rabbet and the thinnest side less that, the rabbets h and Ts - h long, and the
// lips, are long and thick enough.
func (l *layout) checkLappedSetting() {
	l.checkSideDepth()
	for _, r := range l.ends() {
		l.checkEndDepth(r)
	}
	if l.f < minRabbet-settle {
		field := SettingBoxFront // half of which it is
		if l.FenceDistance != 0 {
			field = SettingFenceDistance
		}
		l.refuse(geom.Diagnosis{
			Code: "fence-distance", Subject: about(field, ""),
			Measured: geom.Millimeters(l.f), Limit: geom.Millimeters(minRabbet),
			Fact:     geom.Sentencef("a fence distance of %s leaves as much wood under the grooves, at least %s is needed", geom.Millimeters(l.f), geom.Millimeters(minRabbet)),
			Ask:      geom.Sentencef("take a thicker box front"),
			Remedies: []geom.Remedy{l.least(SettingFenceDistance, minRabbet)},
		}, l.f > settle)
	}
}

// checkPasses plans how a saw cuts rabbets of these lengths: flat on the table, the
// end against the fence, from the end to the shoulder.
func (l *layout) checkPasses(lengths []float64) {
	if !l.Cutter.Kind.Fenced() {
		return
	}
	longest := slices.Max(lengths)
	rest := longest - l.Cutter.Width
	l.drawer.Setup.LastFence = max(0, rest)
	if rest > settle {
		n := 1 + int(math.Ceil((rest-settle)/l.Cutter.Width))
		l.drawer.Setup.RabbetPasses = n
		l.note(geom.Diagnosis{ // a pass more takes it
			Code: "rabbet-passes", Subject: about(SettingCutter, Front),
			Measured: geom.Millimeters(longest), Limit: geom.Millimeters(l.Cutter.Width),
			Fact: geom.Sentencef("one pass leaves %s of rabbets that are %s long", geom.Millimeters(rest), geom.Millimeters(longest)),
			Ask:  geom.Sentencef("take %d passes, the first along the end, the fence moved out by at most %s each time, the last at %s", n, geom.AtMost(l.Cutter.Width), geom.Millimeters(rest)),
		})
	}
}

// checkRabbets plans the rabbets of the sides, h long, and of front and back.
func (l *layout) checkRabbets() {
	l.checkPasses([]float64{l.h, l.Ts - l.h})
	if l.Cutter.Kind.Fenced() && math.Abs(l.Ts-2*l.h) > sameFence {
		l.note(geom.Diagnosis{ // the fence is set once more
			Code: "rabbet-setup", Subject: about(SettingCutterHeight, Side),
			Measured: geom.Millimeters(l.h), Limit: geom.Millimeters(l.Ts - l.h),
			Fact: geom.Sentencef("the rabbets of the sides are %s long, those of box front and back %s: each length takes a fence of its own",
				geom.Millimeters(l.h), geom.Millimeters(l.Ts-l.h)),
			Ask:      geom.Sentencef("set the fence once for the sides of all drawers, then once for their box fronts and backs"),
			Remedies: []geom.Remedy{l.exactly(SettingCutterHeight, l.Ts/2)},
		})
	}
}
