package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// plugs lists the pieces that close the open ends of the bottom's grooves, where they
// are wished for: as wide and as deep as a groove and no longer than leaves the bottom
// its clearance. They are cut from a strip and glued in when the box is together.
func (l *layout) plugs() {
	if l.GrooveEnds != GroovePlugged || !l.BottomFit.Grooved() {
		return
	}
	put := func(length float64, count int) {
		if length > settle {
			name := fmt.Sprintf("plug %s x %s, %s long", l.text(l.groove), l.text(l.h), geom.AtMost(length).In(l.Units))
			l.takes(name, count)
			for i := range l.drawer.Hardware {
				l.drawer.Hardware[i].Offcut = l.drawer.Hardware[i].Offcut || l.drawer.Hardware[i].Name == name
			}
		}
	}
	inFinger := l.Joint == BoxJoint && l.rowOf(l.rise)%2 == 0
	for _, r := range []Role{Front, Back} {
		stock, _ := l.stockOf(r)
		t := stock.Thickness.Mean
		switch {
		case r == Back && l.BottomFit == BottomSlideIn: // it fills the grooves to their ends
		case r == Back && l.BackJoint == Housed:
			put(min(l.BackSetback, l.toBack-l.h), 2)
		case inFinger: // through the fingers of front and back
			put(l.Ts-l.h, 2)
		case l.Joint == DadoRabbet: // before the tongues
			put(min(l.f, 2*l.f-l.h), 2)
		case l.Joint == Butt, l.Joint == BoxJoint:
			put(t-l.h, 2)
		} // else front and back cover them
	}
}
