package sheet

import (
	"drawerwright/geom/hold"
	"drawerwright/geom/mill"
)

// HeldBy is how a part's own drawing holds it in its sheet.
func HeldBy(w mill.Operations) hold.Kind {
	if len(w.Tabs) > 0 { // as marks
		return hold.Tabs
	}
	for _, c := range w.Cuts {
		if c.Operation == mill.Slotting {
			return hold.Tabs
		}
	}
	if OnionSkinUnder(w) > 0 {
		return hold.OnionSkin
	}
	return hold.Loose
}

// OnionSkinUnder is what the cut along a part's outline leaves under it, in mm.
func OnionSkinUnder(w mill.Operations) (left float64) {
	for _, c := range w.Cuts {
		if c.Operation == mill.Profile {
			left = c.Remaining
		}
	}
	return left
}
