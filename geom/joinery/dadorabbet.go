package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// dadoRabbet lays out the corner with dados in the sides and rabbets on the
// outside of front and back. With T the measured thicknesses, f the fence
// distance, h the cutter height and w the slot's width:
//
//	side          D x H; dado from f to f+w from each end, h deep (and the glue room)
//	front, back   W - 2 Ts + 2 h long, H high; rabbet h long and T - f deep, leaving a tongue f thick
//	bottom        (W - 2 Ts + 2 h - slack) x (D - 4 f + 2 h - slack)
//
// The outside size is taken with the tongues against their dados' outer walls.
func (l *layout) dadoRabbet() {
	l.dado = l.slotFor(l.f)
	l.toFront, l.toBack = 2*l.f, 2*l.f
	l.leastSlot, l.mostSlot = l.f+leastTonguePlay, l.f+mostTonguePlay
	for _, t := range []float64{l.Tf, l.Tk} {
		l.drawer.Outside.Depth += max(0, t-2*l.f)
	}
	l.checkSetting()
	if !l.failed() { // else they would only repeat it in other words
		l.checkTongues()
		l.chooseBottom()
		l.outsideDepth() // the recess has been told of
		l.checkWidth(l.outsideWidth())
		l.checkProportions()
	}
	l.checkRoom()
	if l.failed() {
		return
	}
	l.addSides()
	l.addEnd(Front, geom.Placement{
		Origin: geom.Vec3{X: l.Width - l.Ts + l.h, Y: 2*l.f - l.Tf}, X: geom.Right.Scale(-1), Y: geom.Up,
	})
	l.addEnd(Back, geom.Placement{
		Origin: geom.Vec3{X: l.Ts - l.h, Y: l.Depth - 2*l.f + l.Tk}, X: geom.Right, Y: geom.Up,
	})
	l.addBottom()
	l.drawer.Inside = Size{l.Width - 2*l.Ts, l.Height - l.bottomStand() - l.Tb, l.Depth - (l.toFront + l.toBack)}
}

// slotFor is the width of a dado for a tongue.
func (l *layout) slotFor(tongue float64) float64 {
	if l.Cutter.Kind == Router {
		return max(l.Cutter.Width+l.SlotRoom, tongue+l.DadoPlay)
	}
	return l.Cutter.Width
}

func (l *layout) addSides() {
	deep := l.h + l.GlueRoom
	g0, g1 := 0.0, l.Depth
	if l.GrooveEnds == GrooveStopped {
		// Into the middle of the dados; on to where the bottom reaches when its
		// grooves are deeper than the tongues are thick.
		g0 = l.f + l.dado/2
		if reach := 2*l.f - l.h; reach < l.f {
			// In the lips that the ends' shoulders cover, where the bottom's square
			// corners need relief from a round bit.
			g0 = reach
			if reach-l.Cutter.Width/2-reliefRoom < leastLip-settle {
				g0 = 0
				l.warn("groove-ends", FieldGrooveEnds, Side, fmt.Sprintf("the bottom reaches to %s from the side's ends: its groove cannot stop and runs through", l.text(reach)),
					fmt.Sprintf("a cutter-height of %s or less, the fence distance, lets it stop in the dados", l.atMost(l.f)))
			}
		}
		g1 = l.Depth - g0
	}
	groove := l.grooved(g0, g1)
	if g0 > 0 {
		reach := 2*l.f - l.h + l.BottomSlack/2
		groove.Takes = geom.Rectangle(reach, l.f, l.Depth-reach, l.f+l.groove) // wherever it lies in its play
	}
	l.add(Side, geom.Panel{
		Outline:   geom.Rectangle(0, 0, l.Depth, l.Height),
		Thickness: l.Ts,
		Pockets: []geom.Pocket{
			{Kind: geom.Dado, Depth: deep, Outline: geom.Rectangle(l.f, 0, l.f+l.dado, l.Height)},
			{Kind: geom.Dado, Depth: deep, Outline: geom.Rectangle(l.Depth-l.f-l.dado, 0, l.Depth-l.f, l.Height)},
			groove,
		},
	}, // the left side, then the right one: the same panel, turned about
		geom.Placement{X: geom.Back, Y: geom.Up},
		geom.Placement{Origin: geom.Vec3{X: l.Width, Y: l.Depth}, X: geom.Back.Scale(-1), Y: geom.Up},
	)
}

// addEnd makes the front or the back.
func (l *layout) addEnd(r Role, stand geom.Placement) {
	stock, _ := l.stockOf(r)
	length, t := l.Width-2*l.Ts+2*l.h, stock.Thickness.Mean
	tongue := l.h + l.shoulderRoom()
	groove := l.grooved(0, length)
	groove.MayMeet = true // it crosses the tongues, behind which the rabbets are
	l.add(r, geom.Panel{
		Outline:   geom.Rectangle(0, 0, length, l.Height),
		Thickness: t,
		Mating:    []int{1, 3}, // the tongues' ends
		Pockets: []geom.Pocket{
			groove,
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: t - l.f, Outline: geom.Rectangle(0, 0, tongue, l.Height)},
			{Kind: geom.Rabbet, Face: geom.Outside, Depth: t - l.f, Outline: geom.Rectangle(length-tongue, 0, length, l.Height)},
		},
	}, stand)
}
