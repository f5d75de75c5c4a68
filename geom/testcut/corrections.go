package testcut

import (
	"math"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Cutter is the width of the cut. No move of a machine changes it: another cutter does.
const Cutter Setting = "cutter"

// settings are all that a machine moves.
var settings = []Setting{Fence, Height, DadoHeight, EndPlace, RabbetHeight}

// Correction is the one setting that moves a reading, by as much as it is moved itself: up with it or, where it is
// Opposite, down.
type Correction struct {
	Setting  Setting
	Opposite bool
}

// Of is the move of the setting that makes up for a reading which is off by so many mm.
func (c Correction) Of(off float64) Move {
	if c.Opposite {
		off = -off
	}
	return Move{Setting: c.Setting, By: -off}
}

// Corrections are those of the readings of drawers that are cut at one setting, by their kinds: the same dependence on
// the machine that [Model.Advise] solves for. A reading has none that no setting moves, or more than one, or one by
// more or less than it is moved itself; nor one that drawers do not agree on.
func Corrections(drawers []joinery.Drawer) map[fit.ReadingKind]Correction {
	found, not := make(map[fit.ReadingKind]Correction), make(map[fit.ReadingKind]bool)
	for _, d := range drawers {
		by := unknownsOf(d.Spec.Cutter.Kind.FollowsDrawing())
		for _, r := range fit.Readings(d, fit.AccuracyOf(d.Spec.Cutter.Kind)) {
			c, one := by.correction(r)
			if c.Setting == Cutter && !onePass(d, r) {
				one = false
			}
			had, twice := found[r.Kind]
			not[r.Kind] = not[r.Kind] || !one || twice && had != c
			found[r.Kind] = c
		}
	}
	for k, none := range not {
		if none {
			delete(found, k)
		}
	}
	return found
}

// correction is that of one reading; false where nothing is certain.
func (by unknowns) correction(r fit.Reading) (c Correction, one bool) {
	f := by.form(r.Of)
	slope := f.by[ofCutter]
	c.Setting = Cutter
	for _, s := range settings {
		v := f.by[unknownOf(s)]
		if v == 0 {
			continue
		}
		if c.Setting != Cutter {
			return c, false
		}
		c.Setting, slope = s, v
	}
	c.Opposite = slope < 0
	return c, math.Abs(math.Abs(slope)-1) < geom.Settle
}

// onePass reports whether a slot is as wide as the cutter that makes it or, on a router, whether a bit goes around it:
// of a slot that a fence makes in several passes, where the fence stands for each counts too.
func onePass(d joinery.Drawer, r fit.Reading) bool {
	if !d.Spec.Cutter.Kind.Fenced() {
		return true
	}
	return math.Abs(r.Target-d.Setup.Cutter.Width) < geom.Settle ||
		r.Kind == fit.GrooveWidth && math.Abs(r.Target-d.Setup.GrooveCutter()) < geom.Settle
}
