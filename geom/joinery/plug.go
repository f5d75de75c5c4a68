package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// OpenEnds are ends of the bottom's grooves that show at the corners of a box front or a back.
type OpenEnds struct {
	At   Role
	Plug Item // that closes one, and how many of them
	// InSides says that they show in the outside faces of the sides, where no drawer front is before them.
	InSides bool
}

// plugs finds the open ends of the bottom's grooves, and the pieces that close them: as wide and as deep
// as a groove and no longer than leaves the bottom its clearance. Where they are wished for the box takes
// them: they are cut from a strip and glued in when it is together.
func (l *layout) plugs() {
	if l.GrooveEnds == GrooveStopped || !l.BottomFit.Grooved() {
		return
	}
	inFinger := l.Joint.Interlocks() && l.rowOf(l.rise)%2 == 0
	for _, r := range []Role{Front, Back} {
		put := func(length float64, count int) {
			if length <= settle {
				return
			}
			name := fmt.Sprintf("plug %s x %s, %s long", l.text(l.groove), l.text(l.h), geom.AtMost(length).In(l.Units))
			l.drawer.OpenEnds = append(l.drawer.OpenEnds, OpenEnds{At: r, Plug: Item{Name: name, Count: count, Offcut: true},
				InSides: inFinger})
		}
		stock, _ := l.stockOf(r)
		t := stock.Thickness.Mean
		switch {
		case r == Back && l.BottomFit.SlidesIn(): // it fills the grooves to their ends
		case r == Back && l.BackJoint == Housed:
			put(min(l.BackSetback, l.toBack-l.h), 2)
		case inFinger: // through the fingers of front and back
			put(l.Ts-l.h, 2)
		case l.Joint == DadoRabbet: // before the tongues
			put(min(l.f, 2*l.f-l.h), 2)
		case l.Joint == Butt, l.Joint.Interlocks():
			put(t-l.h, 2)
		} // else front and back cover them
	}
	if l.GrooveEnds != GroovePlugged {
		return
	}
	for _, e := range l.drawer.OpenEnds {
		l.takes(e.Plug.Name, e.Plug.Count)
		for i := range l.drawer.Hardware {
			l.drawer.Hardware[i].Offcut = l.drawer.Hardware[i].Offcut || l.drawer.Hardware[i].Name == e.Plug.Name
		}
	}
}
