package joinery

import (
	"math"

	"drawerwright/geom"
)

// Screws of an applied bottom; common practice, no source.
const (
	appliedApart = 150.0 // mm: from one screw to the next, at most
	// appliedLength is how deep such a screw goes into the wall.
	appliedLength = 25.0
	appliedEnd    = 30.0 // mm: from the end of a wall to its first screw
)

// checkApplied judges a bottom that is screwed on from below.
func (l *layout) checkApplied() {
	if thin := math.Min(l.Ts, math.Min(l.Tf, l.Tk)); thin < 2*l.screw(bottomScrew).hole {
		l.warn(geom.Diagnosis{
			Code: "applied", Subject: about(SettingBottomFit, Bottom),
			Measured: geom.Millimeters(thin), Limit: geom.Millimeters(2 * l.screw(bottomScrew).hole),
			Fact: geom.Sentencef("the screws of an applied bottom go into edges of %s", geom.Millimeters(thin)),
			Ask:  geom.Sentencef("glue it all round"),
			Remedies: []geom.Remedy{
				l.least(SettingSides, 2*l.screw(bottomScrew).hole),
				l.least(SettingBoxFront, 2*l.screw(bottomScrew).hole),
				l.least(SettingBack, 2*l.screw(bottomScrew).hole),
			},
		})
	}
	if l.Bottom.Solid {
		_, width := l.bottomSize()
		l.warn(geom.Diagnosis{
			Code: "bottom-movement", Subject: about(SettingBottomFit, Bottom),
			Fact: geom.Sentencef("screwed to the sides, the bottom, %s wide across its grain, cannot %s",
				geom.Millimeters(width), l.movement(width)),
			Ask:      geom.Sentencef("take a bottom of sheet stock"),
			Remedies: []geom.Remedy{write(SettingBottomFit, BottomGroovedIn), write(SettingBottomFit, BottomSlideIn)},
		})
	}
}

// movement is how wood of a width moves, in words: in each direction in which it is known to move by
// what can be read.
func (l *layout) movement(width float64) geom.Sentence {
	swells, shrinks := float64(width*l.Bottom.Swelling), float64(width*l.Bottom.Shrinkage)
	least := l.grid() / 2 // less is printed as 0
	switch {
	case swells < least && shrinks < least:
		return geom.Sentencef("swell and shrink")
	case swells < least:
		return geom.Sentencef("shrink by %s", geom.Millimeters(shrinks))
	case shrinks < least:
		return geom.Sentencef("swell by %s", geom.Millimeters(swells))
	}
	return geom.Sentencef("swell by %s and shrink by %s", geom.Millimeters(swells), geom.Millimeters(shrinks))
}

// addApplied makes a bottom as large as the box, with holes for screws along the
// middle of each wall's edge.
func (l *layout) addApplied() {
	length, width := l.bottomSize()
	p := geom.Panel{Outline: geom.Rectangle(0, 0, length, width), Thickness: l.Tb}
	screw := l.screw(bottomScrew)
	hole := func(into Role, x, y float64) {
		bore(&p, geom.Point{X: x, Y: y}, screw.hole)
		l.drive(into, geom.Vec3{X: x, Y: y}, geom.Vec3{Z: l.Tb + appliedLength}, screw.thick, screw.hole)
	}
	front, back := l.toFront-l.Tf/2, l.Depth-l.toBack+l.Tk/2
	for _, y := range evenly(front+appliedEnd, back-appliedEnd, appliedApart) {
		hole(Side, l.Ts/2, y)
		hole(Side, length-l.Ts/2, y)
	}
	end := l.Ts + math.Max(appliedEnd, l.besideCorners(screw))
	for _, x := range evenly(end, length-end, appliedApart) {
		hole(Front, x, front)
		hole(Back, x, back)
	}
	l.takes(l.long("screw", l.screw(bottomScrew).name, l.Tb+appliedLength), len(p.Pockets))
	l.add(Bottom, p, geom.Placement{X: geom.Right, Y: geom.Back})
}

// evenly places screws or dowels from one place to another, both included, no further apart
// than given; one in the middle where two would be too near to each other.
func evenly(from, to, apart float64) []float64 {
	if to-from < holesNearest-settle {
		return []float64{(from + to) / 2}
	}
	n := math.Max(1, math.Ceil((to-from)/apart-settle))
	var list []float64
	for i := 0.0; i <= n; i++ {
		list = append(list, from+float64((to-from)*i/n))
	}
	return list
}
