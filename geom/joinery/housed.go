package joinery

import (
	"math"

	"drawerwright/geom"
)

// UsualBackSetback is how far a housed back stands before the ends of the sides, in mm, round in the
// unit of a job: twice what it needs behind it; common practice, no source.
func UsualBackSetback(u geom.Unit) float64 { return u.Usual(12, 1.0/2) }

// housed lays out a back at its full thickness in dados of the sides, its outside
// face the setback s before their ends. Against the dados' rear walls:
//
//	side   dado from s to s + w from the rear end, h deep (and the glue room)
//	back   W - 2 Ts + 2 h long
func (l *layout) housed() ending {
	w, deep := l.housing(), l.h+l.GlueSpace
	length := l.Width - 2*l.Ts + 2*l.h
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, l.wallHeight()).With(geom.Mating, 1, 3), Thickness: l.Tk}
	if l.BottomFit.Grooved() {
		p.Pockets = append(p.Pockets, l.grooved(0, length))
	}
	e := ending{
		cuts:   []geom.Pocket{{Kind: geom.Dado, Depth: deep, Outline: geom.Rectangle(l.BackSetback, 0, l.BackSetback+w, l.wallHeight())}},
		panel:  p,
		stand:  geom.Placement{Origin: geom.Vec3{X: l.Ts - l.h, Y: l.Depth - l.BackSetback}, X: geom.Right, Y: geom.Up},
		reach:  l.toBack - l.h,
		groove: 0,
	}
	if l.GrooveEnds == GrooveStopped {
		// In the dado, which is as deep as the groove at least.
		e.groove = l.BackSetback + w/2
		l.roundsWithin(w / 2)
		if e.groove > e.reach { // the bottom goes into the back further than that
			e.groove = math.Max(l.BackSetback, e.reach)
		}
	}
	return e
}

// housing is the width of the dado for a back at its full thickness.
func (l *layout) housing() float64 {
	if l.Cutter.Kind.MadeToFit() {
		return l.DadoWidth(l.Tk, l.DadoClearance)
	}
	return math.Max(l.Cutter.Width, l.Tk+l.sawnClearance())
}

// sawnPlay is what a dado cut in several passes is made wider than the board that goes into
// it, in millimeters: the middle of the limits, as of the fingers.
func (l *layout) sawnClearance() float64 {
	return l.printed((l.Limits.TongueClearance.Min + l.Limits.TongueClearance.Max) / 2)
}

// checkHoused judges a housed back and plans how its dados are cut. It sets where
// the back's inside face is.
func (l *layout) checkHoused() {
	if l.BackJoint != Housed {
		return
	}
	l.toBack = l.BackSetback + l.Tk
	w := l.housing()
	if l.BackSetback < minBackSetback-settle {
		l.refuse(geom.Diagnosis{
			Code: "back-setback", Subject: about(SettingBackSetback, Back),
			Measured: geom.Millimeters(l.BackSetback), Limit: geom.Millimeters(minBackSetback),
			Fact:     geom.Sentencef("%s of wood behind the back's dados break off", geom.Millimeters(l.BackSetback)),
			Ask:      geom.Sentencef("make the box deeper"),
			Remedies: []geom.Remedy{l.least(SettingBackSetback, minBackSetback)},
		}, l.BackSetback > settle)
	}
	c := l.check(Check{CheckID: CheckID{Code: CheckBackClearance, Part: Back}, Name: "back clearance in its dados", Nominal: w - l.Tk,
		LowerLimit: l.Limits.TongueClearance.Min, UpperLimit: l.Limits.TongueClearance.Max, Verdicts: ClearanceVerdicts}, l.Back.Thickness, -1)
	if c.Verdict == WillNot || l.setWrong(c) {
		least, most := l.usual(c)
		field, ways := SettingBack, []geom.Remedy{l.between(SettingBack, w-most, w-least), l.most(SettingCutter, l.Tk+most)}
		if l.Cutter.Kind.MadeToFit() {
			field, ways = SettingDadoClearance, append([]geom.Remedy{l.between(SettingDadoClearance, least, most)}, ways...)
		}
		l.say(c.Misfit(geom.Diagnosis{
			Code: "back-clearance", Level: refused(c.Verdict == WillNot), Subject: about(field, Back),
			Fact:     l.clearanceFact("the back", "its dados", c),
			Ask:      unlikeBoards,
			Remedies: ways,
		}))
	}
	s := &l.drawer.Setup
	s.BackFence, s.BackPasses, s.LastBackFence = l.BackSetback, 1, l.BackSetback
	if l.Cutter.Kind.Fenced() && w > l.Cutter.Width+settle {
		s.BackPasses = int(math.Ceil((w - settle) / l.Cutter.Width))
		s.LastBackFence = l.BackSetback + w - l.Cutter.Width
		l.note(geom.Diagnosis{ // passes more make them
			Code: "back-setup", Subject: about(SettingBackJoint, Back),
			Measured: geom.Millimeters(w), Limit: geom.Millimeters(l.Cutter.Width),
			Fact: geom.Sentencef("the back's dados are %s wide and take %d passes of a cutter of %s", geom.Millimeters(w), s.BackPasses, geom.Millimeters(l.Cutter.Width)),
			Ask:  geom.Sentencef("set the fence at %s from the rear end for the first and %s for the last", geom.Millimeters(l.BackSetback), geom.Millimeters(s.LastBackFence)),
		})
	}
}
