package joinery

import (
	"math"

	"drawerwright/geom"
)

// fingerUnder and fingerOver are the least wood of a finger under and over the bottom's
// groove that is in it, in millimeters; common practice, no source.
const fingerUnder, fingerOver = 1.0, 2.0

// planFingers sees to it that the bottom's groove lies in one row of fingers, where a
// saw or a router table cuts them with a jig: all are as wide as its cutter. Where the
// groove is in none, one row is made wider or narrower, which a jig does with a spacer
// before its first notch, or before a later one: the row in which the groove then lies,
// or the lowest, so that the groove is in the middle of one above it, where that changes
// it less. The groove is then in a finger of the front and the back. It comes out at the
// outsides of the box, where slides and cabinet hide it.
func (l *layout) planFingers() {
	pitch, play := l.fingerPitch()
	if !l.Cutter.Kind.Fenced() || !l.BottomFit.Grooved() || l.withinRow(play) {
		return
	}
	row := 2 * int(max(0, math.Floor((l.rise-fingerUnder-play/4)/(2*pitch))))
	best := l.rise + l.groove + play/4 + fingerOver - float64(float64(row)*pitch)
	if l.groove <= pitch-play/2+settle {
		for k := 2.0; ; k += 2 {
			lowest := l.rise - (pitch-l.groove)/2 - float64((k-1)*pitch)
			if lowest < pitch/2 {
				break
			}
			if math.Abs(lowest-pitch) < math.Abs(best-pitch) {
				row, best = 0, lowest
			}
		}
	}
	// The topmost row is one like the others where that makes this one little wider.
	if rest := math.Mod(l.wallHeight()-float64(float64(row)*pitch)-best, pitch); rest > 0 && rest <= pitch/2 && best >= l.rise+l.groove-float64(float64(row)*pitch) {
		best += rest
	}
	s := &l.drawer.Setup
	s.FingerRow, s.FingerHeight = row+1, best
	if at := l.edges(); len(at)-2 <= row { // it runs up to the upper edge
		s.FingerRow, s.FingerHeight = len(at)-1, at[len(at)-1]-at[len(at)-2]
	}
}

// withinRow reports whether the bottom's groove lies in one row of fingers.
func (l *layout) withinRow(play float64) bool {
	at, row := l.edges(), l.rowOf(l.rise)
	return (row == 0 || l.rise >= at[row]+play/4-settle) && l.rise+l.groove <= at[row+1]-play/4+settle
}

// edges are the places between the rows, with the ends of the height.
func (l *layout) edges() []float64 {
	if l.Joint == Dovetail {
		return l.tailEdges()
	}
	pitch, _ := l.fingerPitch()
	row, height := l.drawer.Setup.FingerRow, l.drawer.Setup.FingerHeight
	list := []float64{0}
	for at := 0.0; ; {
		if len(list) == row {
			at += height
		} else {
			at += pitch
		}
		if at >= l.wallHeight()-pitch/2 {
			break
		}
		list = append(list, at)
	}
	return append(list, l.wallHeight())
}

// fingersNeed is the height of a box whose walls have three whole rows of fingers.
func (l *layout) fingersNeed() float64 {
	pitch, _ := l.fingerPitch()
	lowest := pitch
	if l.drawer.Setup.FingerRow == 1 {
		lowest = l.drawer.Setup.FingerHeight
	}
	return lowest + float64(2*pitch) + l.wallStand()
}

// rowOf is the row in which a height lies.
func (l *layout) rowOf(height float64) int {
	at := l.edges()
	row := 0
	for row < len(at)-2 && height >= at[row+1] {
		row++
	}
	return row
}

// checkRows judges the rows against the height of the walls and the bottom's groove.
func (l *layout) checkRows(pitch, play float64) {
	at := l.edges()
	if last := at[len(at)-1] - at[len(at)-2]; l.Cutter.Kind.Fenced() && math.Abs(last-pitch) > sameFence && len(at)-1 != l.drawer.Setup.FingerRow {
		walls := at[len(at)-2] + pitch
		if walls < l.lowUsed()+minAbove-l.wallStand() {
			walls += pitch
		}
		l.warn(geom.Diagnosis{
			Code: "finger-width", Subject: about(SettingOutside, Side),
			Measured: geom.Millimeters(last), Limit: geom.Millimeters(pitch),
			Fact:     geom.Sentencef("the topmost fingers are %s wide, the others %s", geom.Millimeters(last), geom.Millimeters(pitch)),
			Ask:      geom.Sentencef("plane the topmost fingers off, or leave them so"),
			Remedies: []geom.Remedy{l.exactly(SettingOutside, walls+l.wallStand()).Of("height", 0)},
		})
	}
	l.checkGrooveRow(play)
}

// checkGrooveRow judges where the bottom's groove is in the rows, and what of it shows.
func (l *layout) checkGrooveRow(play float64) {
	at := l.edges()
	if !l.BottomFit.Grooved() {
		return
	}
	row := l.rowOf(l.rise)
	switch {
	case l.Joint == Dovetail && (row%2 == 0 || !l.withinRow(play)):
		l.refuse(l.grooveInPin(at, play), true)
	case !l.withinRow(play):
		l.refuse(geom.Diagnosis{
			Code: "bottom-height", Subject: about(SettingBottomHeight, Side),
			Measured: geom.Millimeters(l.rise + l.groove), Limit: geom.Millimeters(at[row+1]),
			Fact:     geom.Sentencef("the bottom's groove, from %s to %s over the edge, crosses from one row of fingers, which ends at %s, into the next", geom.Millimeters(l.rise), geom.Millimeters(l.rise+l.groove), geom.Millimeters(at[row+1])),
			Ask:      geom.Sentencef("take another corner or another bottom"),
			Remedies: l.rowWays(at, play),
		}, true)
	}
	if l.GrooveEnds == GrooveThrough {
		where := "of the box front and the back, on the outsides of the box"
		if row%2 == 1 {
			where = "of the sides, in front and behind"
		}
		ways := []geom.Remedy{write(SettingGrooveEnds, GroovePlugged)}
		if l.Cutter.Kind.Stops() {
			ways = append(ways, write(SettingGrooveEnds, GrooveStopped))
		}
		l.warn(geom.Diagnosis{
			Code: "groove-shows", Subject: about(SettingGrooveEnds, Front),
			Fact: geom.Sentencef("the bottom's groove runs through and shows as holes in the ends of the " +
				l.Joint.teeth() + " " + where),
			Ask:      geom.Sentencef("plug them"),
			Remedies: ways,
		})
	}
}

// rowWays are heights at which the groove keeps within a row, wider fingers, and a bottom
// without a groove.
func (l *layout) rowWays(at []float64, play float64) []geom.Remedy {
	var ways []geom.Remedy
	for row := range len(at) - 1 {
		low, high := at[row]+play/4, at[row+1]-play/4-l.groove
		if l.Joint == Dovetail && row%2 == 0 {
			continue
		}
		if row == 0 {
			low = minRabbet
		}
		if l.advisable(low, high) && len(ways) < 2 {
			ways = append(ways, l.between(SettingBottomHeight, low, high))
		}
	}
	if l.Joint == BoxJoint {
		ways = append(ways, l.between(SettingFingerWidth, l.rise+l.groove+2*minRabbet, l.wallHeight()/3))
	}
	return append(ways, write(SettingBottomFit, BottomApplied), write(SettingBottomFit, BottomCleats))
}
