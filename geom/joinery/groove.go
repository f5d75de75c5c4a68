package joinery

import (
	"math"

	"drawerwright/geom"
)

// maxPasses is how many passes of a cutter for grooves are advised at most, and
// narrowestBlade the narrowest saw blade, in mm; common practice, no source.
const (
	maxPasses      = 3.0
	narrowestBlade = 1.5
)

// ownGrooves reports whether a saw or a router table has a cutter for the bottom's
// grooves, which are then made as wide as the bottom wants, in passes.
func (l *layout) ownGrooves() bool { return l.Cutter.Kind.Fenced() && l.Cutter.Groove > 0 }

// groovesFit reports whether the bottom's grooves are made as wide as the bottom wants.
func (l *layout) groovesFit() bool { return l.Cutter.Kind.MadeToFit() || l.ownGrooves() }

// minGroove is the narrowest groove that the machine makes.
func (l *layout) minGroove() float64 {
	if l.ownGrooves() {
		return l.Cutter.Groove
	}
	return l.Cutter.Width + l.SlotRoom
}

// noise is what sums of lengths may differ by without a difference, in mm: lengths are
// whole nanometers. A pass more costs nothing; wood that is left between two does.
const noise = 1e-9

// planGroove works out the passes of a cutter for grooves: none further from the next
// than the cutter is wide.
func (l *layout) planGroove() {
	if l.ownGrooves() {
		l.drawer.Setup.GrooveWidth = l.groove
		l.drawer.Setup.GroovePasses = max(1, int(math.Ceil((l.groove-noise)/l.Cutter.Groove)))
	}
}

// OwnGroove reports whether the bottom's grooves take a setting of their own: another
// fence distance, another cutter, or more than one pass.
func (s Setup) OwnGroove() bool {
	return s.GrooveFence > 0 || s.GroovePasses > 1 || s.GroovePasses == 1 && s.Cutter.Groove != s.Cutter.Width
}

// GrooveCutter is the width of the slot that one pass over the bottom's grooves cuts.
func (s Setup) GrooveCutter() float64 {
	if s.GroovePasses > 0 {
		return s.Cutter.Groove
	}
	return s.Cutter.Width
}

// GrooveFences are the fence distances of the bottom's grooves, one for each pass, from
// the lower wall of the groove to its upper one.
func (s Setup) GrooveFences() []float64 {
	first := s.GrooveFence
	if first == 0 {
		first = s.FenceDistance
	}
	list := []float64{first}
	for i := 1; i < s.GroovePasses; i++ {
		list = append(list, first+float64((s.GrooveWidth-s.Cutter.Groove)*float64(i))/float64(s.GroovePasses-1))
	}
	return list
}

// grooveWay is a cutter for grooves that gives a bottom the usual play; none where the
// machine has no use for one. A bottom that is not asked to be flush is then captured.
func (l *layout) grooveWay() geom.Remedy {
	if !l.Cutter.Kind.Fenced() || l.ownGrooves() {
		return geom.Remedy{}
	}
	stands, factor := l.Tb, 1.0
	switch l.BottomFit {
	case BottomFlush:
		stands, factor = l.Tb-l.rise, 0
	case BottomFielded:
		stands, factor = l.inGroove(), 0
	}
	t, play := l.Bottom.Thickness, l.Limits.GrooveClearance
	least, most := play.Min+factor*(t.Max-t.Mean), play.Max-factor*(t.Mean-t.Min)
	if l.GrooveClearance >= least-settle && l.GrooveClearance <= most+settle {
		return l.between(SettingGrooveCutter, math.Max(narrowestBlade, (stands+l.GrooveClearance)/maxPasses),
			stands+most)
	}
	wished := (least + most) / 2
	return l.between(SettingGrooveCutter, math.Max(narrowestBlade, (stands+wished)/maxPasses),
		stands+most).With(l.exactly(SettingGrooveClearance, wished))
}
