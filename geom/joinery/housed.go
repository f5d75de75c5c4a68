package joinery

import (
	"math"

	"drawerwright/geom"
)

// DefaultSetback is how far a housed back stands before the ends of the sides, in
// millimetres: twice what it needs behind it; common practice, no source.
const DefaultSetback = 12.0

// housed lays out a back at its full thickness in dados of the sides, its outside
// face the setback s before their ends. Against the dados' rear walls:
//
//	side   dado from s to s + w from the rear end, h deep (and the glue room)
//	back   W - 2 Ts + 2 h long
func (l *layout) housed() ending {
	w, deep := l.housing(), l.h+l.GlueRoom
	length := l.Width - 2*l.Ts + 2*l.h
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, l.wallHeight()).With(geom.Mating, 1, 3), Thickness: l.Tk}
	if l.BottomFit.Grooved() {
		p.Pockets = append(p.Pockets, l.grooved(0, length))
	}
	e := ending{
		cuts:   []geom.Pocket{{Kind: geom.Dado, Depth: deep, Outline: geom.Rectangle(l.Setback, 0, l.Setback+w, l.wallHeight())}},
		panel:  p,
		stand:  geom.Placement{Origin: geom.Vec3{X: l.Ts - l.h, Y: l.Depth - l.Setback}, X: geom.Right, Y: geom.Up},
		reach:  l.toBack - l.h,
		groove: 0,
	}
	if l.GrooveEnds == GrooveStopped {
		// In the dado, which is as deep as the groove at least.
		e.groove = l.Setback + w/2
		l.roundsWithin(w / 2)
		if e.groove > e.reach { // the bottom goes into the back further than that
			e.groove = math.Max(l.Setback, e.reach)
		}
	}
	return e
}

// housing is the width of the dado for a back at its full thickness.
func (l *layout) housing() float64 {
	if l.Cutter.Kind.MadeToFit() {
		return l.DadoWidth(l.Tk, l.DadoPlay)
	}
	return math.Max(l.Cutter.Width, l.Tk+l.sawnPlay())
}

// sawnPlay is what a dado cut in several passes is made wider than the board that goes into
// it, in millimetres: the middle of the limits, as of the fingers.
func (l *layout) sawnPlay() float64 {
	return l.printed((l.Limits.TonguePlay.Min + l.Limits.TonguePlay.Max) / 2)
}

// checkHoused judges a housed back and plans how its dados are cut. It sets where
// the back's inside face is.
func (l *layout) checkHoused() {
	if l.BackJoint != Housed {
		return
	}
	l.toBack = l.Setback + l.Tk
	w := l.housing()
	if l.Setback < minSetback-settle {
		l.fail(geom.Diagnosis{
			Code: "setback", Subject: about(SettingSetback, Back),
			Measured: geom.Millimetres(l.Setback), Limit: geom.Millimetres(minSetback),
			Fact:     geom.Sentencef("%s of wood behind the back's dados break off", geom.Millimetres(l.Setback)),
			Ask:      geom.Sentencef("make the box deeper"),
			Remedies: []geom.Remedy{l.least(SettingSetback, minSetback)},
		})
	}
	c := l.check(Check{CheckID: CheckID{Code: CheckBackPlay, Part: Back}, Name: "back play in its dados", Nominal: w - l.Tk,
		LowerLimit: l.Limits.TonguePlay.Min, UpperLimit: l.Limits.TonguePlay.Max, Verdicts: PlayVerdicts}, l.Back.Thickness, -1)
	if c.Verdict == WillNot || l.setWrong(c) {
		least, most := l.usual(c)
		field, ways := SettingBack, []geom.Remedy{l.between(SettingBack, w-most, w-least), l.most(SettingCutter, l.Tk+most)}
		if l.Cutter.Kind.MadeToFit() {
			field, ways = SettingDadoPlay, append([]geom.Remedy{l.between(SettingDadoPlay, least, most)}, ways...)
		}
		l.say(c.Misfit(geom.Diagnosis{
			Code: "back-play", Level: refused(c.Verdict == WillNot), Subject: about(field, Back),
			Fact:     geom.Sentencef("the back has %s of play in its dados: %s; %s to %s is usual", l.ranged(c), c.Verdict, geom.Millimetres(c.LowerLimit), geom.Millimetres(c.UpperLimit)),
			Ask:      unlikeBoards,
			Remedies: ways,
		}))
	}
	s := &l.drawer.Setup
	s.BackFence, s.BackPasses = l.Setback, 1
	if l.Cutter.Kind.Fenced() && w > l.Cutter.Width+settle {
		s.BackPasses = int(math.Ceil((w - settle) / l.Cutter.Width))
		l.note(geom.Diagnosis{ // passes more make them
			Code: "back-setup", Subject: about(SettingBackJoint, Back),
			Measured: geom.Millimetres(w), Limit: geom.Millimetres(l.Cutter.Width),
			Fact: geom.Sentencef("the back's dados are %s wide and take %d passes of a cutter of %s", geom.Millimetres(w), s.BackPasses, geom.Millimetres(l.Cutter.Width)),
			Ask:  geom.Sentencef("set the fence at %s from the rear end for the first and %s for the last", geom.Millimetres(l.Setback), geom.Millimetres(l.Setback+w-l.Cutter.Width)),
		})
	}
}
