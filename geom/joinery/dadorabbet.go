package joinery

import "drawerwright/geom"

// dadoRabbet lays out the corner with dados in the sides and rabbets on the
// outside of front and back. With T the measured thicknesses, f the fence
// distance, h the cutter height and w the slot's width:
//
//	side          D x H; dado from f to f+w from each end, h deep (and the glue room)
//	front, back   W - 2 Ts + 2 h long, H high; rabbet h long and T - f deep, leaving a tongue f thick
//	bottom        (W - 2 Ts + 2 h - clearance) x (D - 4 f + 2 h - clearance)
//
// The outside size is taken with the tongues against their dados' outer walls.
func (l *layout) dadoRabbet() {
	l.dado = l.slotFor(l.f)
	l.drawer.Setup.FlatTongues = l.Cutter.Kind.Fenced() && !l.standsOnEnd(l.Width-2*l.Ts+2*l.h, l.endWidth())
	l.toFront, l.toBack = 2*l.f, 2*l.f
	l.minSlot, l.maxSlot = l.f+l.Limits.TongueClearance.Min, l.f+l.Limits.TongueClearance.Max
	l.drawer.Outside.Depth += max(0, l.Tf-2*l.f)
	if l.BackJoint != Housed {
		l.drawer.Outside.Depth += max(0, l.Tk-2*l.f)
	}
	l.lay(func() {
		l.checkSetting()
		l.checkHoused()
	}, func() {
		l.checkTongues()
		l.chooseBottom()
		if c := l.outsideDepth(); l.setWrong(c) {
			var ways []geom.Remedy
			for _, r := range l.ends() {
				stock, _ := l.stockOf(r)
				ways = append(ways, l.fenceWays(r, stock)...)
			}
			l.warn(c.Misfit(geom.Diagnosis{
				Code: "outside-depth", Subject: about(SettingOutside, ""),
				Fact: geom.Sentencef("the box %s, %s; %s is right", c.comesOut("too "+string(c.Verdict)),
					l.ranged(c), geom.RightIs{Interval: c.Limits()}),
				Ask:      geom.Sentencef("take a thinner box front, or leave the box so deep where there is room behind it"),
				Remedies: ways,
			}))
		}
		l.outsideWidth()
		l.checkProportions()
	}, l.tongued)
}

// DadoWidth is the width of a dado for what goes into it with a play, where slots are
// made to fit, and of every dado where they are as wide as the cutter. Only a bit sets
// how narrow it can be: a dado that is knifed and sawn has any width.
func (s Spec) DadoWidth(thick, play float64) float64 {
	switch {
	case s.Cutter.Kind == Hand:
		return thick + play
	case s.Cutter.Kind.MadeToFit():
		return max(s.Cutter.Width+s.SlotRoom, thick+play)
	}
	return s.Cutter.Width
}

// slotFor is the width of a dado for a tongue.
func (l *layout) slotFor(tongue float64) float64 { return l.DadoWidth(tongue, l.DadoClearance) }

// tongued is the corner of front or back.
func (l *layout) tongued(r Role) ending {
	stock, _ := l.stockOf(r)
	length, t := l.Width-2*l.Ts+2*l.h, stock.Thickness.Mean
	e := ending{
		cuts:  []geom.Pocket{{Kind: geom.Dado, Depth: l.h + l.GlueSpace, Outline: geom.Rectangle(l.f, 0, l.f+l.dado, l.wallHeight())}},
		reach: 2*l.f - l.h,
	}
	if l.GrooveEnds == GrooveStopped {
		// Into the middle of the dados; on to where the bottom reaches when its
		// grooves are deeper than the tongues are thick.
		e.groove = l.f + l.dado/2
		l.roundsWithin(l.dado / 2)
		if e.reach < l.f {
			// In the lips that the ends' shoulders cover, where the bottom's square
			// corners need relief from a round bit.
			e.groove = e.reach
			if e.reach-l.corner()-reliefRoom < minLip-settle {
				e.groove, l.unsuited = 0, true
				l.warnOnce(geom.Diagnosis{
					Code: "groove-ends", Subject: about(SettingGrooveEnds, Side),
					Measured: geom.Millimeters(e.reach - l.corner() - reliefRoom), Limit: geom.Millimeters(minLip),
					Fact:     geom.Sentencef("the bottom reaches to %s from the side's ends: its groove cannot stop and runs through", geom.Millimeters(e.reach)),
					Ask:      geom.Sentencef("let it run through: it shows at the ends"),
					Remedies: []geom.Remedy{l.most(SettingCutterHeight, l.f), write(SettingGrooveEnds, GrooveThrough)},
				})
			}
		}
	}
	tongue := l.h + l.shoulderRoom()
	e.panel = geom.Panel{
		Outline:   geom.Rectangle(0, 0, length, l.wallHeight()).With(geom.Mating, 1, 3), // the tongues' ends
		Thickness: t,
	}
	if l.BottomFit.Grooved() {
		groove := l.grooved(0, length)
		groove.MayMeet = true // it crosses the tongues, behind which the rabbets are
		e.panel.Pockets = append(e.panel.Pockets, groove)
	}
	e.panel.Pockets = append(e.panel.Pockets,
		geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: t - l.f, Outline: geom.Rectangle(0, 0, tongue, l.wallHeight())},
		geom.Pocket{Kind: geom.Rabbet, Face: geom.Outside, Depth: t - l.f, Outline: geom.Rectangle(length-tongue, 0, length, l.wallHeight())})
	e.stand = geom.Placement{Origin: geom.Vec3{X: l.Width - l.Ts + l.h, Y: 2*l.f - t}, X: geom.Right.Scale(-1), Y: geom.Up}
	if r == Back {
		e.stand = geom.Placement{Origin: geom.Vec3{X: l.Ts - l.h, Y: l.Depth - 2*l.f + t}, X: geom.Right, Y: geom.Up}
	}
	return e
}
