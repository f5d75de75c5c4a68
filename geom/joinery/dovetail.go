package joinery

import (
	"math"

	"drawerwright/geom"
)

// Measures of dovetails, in millimeters; common practice, no source.
const (
	usualSlope = 8.0 // 1:8, for hardwood and plywood
	minPinTip  = 4.0 // a pin where it is narrowest: a chisel gets between two tails
	minHalfPin = 6.0 // the pin at an edge, where it is widest
	tailUnder  = 3.0 // the wood of a tail under the bottom's groove in it
	tailPerPin = 3.0 // how much wider than a pin a tail is about
)

// dovetail lays out tails on the sides, as long as front and back are thick, and pins between them on
// front and back, as long as the sides are thick. As in the [BoxJoint] the walls' height is divided
// into rows, from the lowest, a half pin, to the topmost, another one. The rows are those at the
// inside faces of front and back, where pins are widest: toward the outside each flank of a
// tail runs 1 aside for the slope along. The bottom's groove is in a tail: in front and back it runs
// out into the sockets, which tails fill, and in the sides it stops in the tails.
//
//	side          D x H
//	front, back   W x H
func (l *layout) dovetail() {
	l.interlocked(l.checkByHand, l.checkTails)
}

func (l *layout) slope() float64 {
	if l.DovetailSlope > 0 {
		return l.DovetailSlope
	}
	return usualSlope
}

// run is how much a flank leans aside in the thicker of front and back.
func (l *layout) run() float64 { return math.Max(l.Tf, l.Tk) / l.slope() }

// pin and halfPin are how wide pins are at the inside faces.
func (l *layout) pin() float64 { return math.Max(l.Ts, minPinTip+2*l.run()) }
func (l *layout) halfPin() float64 {
	return math.Max(minHalfPin, math.Max(l.pin()/2, minPinTip+l.run()))
}

// tails are how many there are.
func (l *layout) tails() int {
	if l.Tails > 0 {
		return l.Tails
	}
	pin := l.pin()
	n := math.Round((l.wallHeight() - 2*l.halfPin() + pin) / (tailPerPin*pin + pin))
	return int(math.Max(1, n))
}

// tail is how wide a tail is where it is narrowest, at the inside face of the front.
func (l *layout) tail() float64 { return l.tailOf(l.tails()) }

func (l *layout) tailOf(n int) float64 {
	return (l.wallHeight() - 2*l.halfPin() - float64(float64(n-1)*l.pin())) / float64(n)
}

// riseInTail is where the bottom's groove stands in the lowest tail.
func (l *layout) riseInTail() float64 { return l.halfPin() + l.DadoClearance/4 + tailUnder }

// tailEdges are the places between the rows, with the ends of the height.
func (l *layout) tailEdges() []float64 {
	list, at := []float64{0}, l.halfPin()
	for range l.tails() {
		list = append(list, at, at+l.tail())
		at += l.tail() + l.pin()
	}
	return append(list, l.wallHeight())
}

// splayed is a stretch of a side's end beside or on a tail, which gets wider toward the end by a run at either
// flank; below and above say at which of its ends there is a flank.
func (f finger) splayed(run float64, below, above bool) finger {
	if f.in == 0 {
		f.low, f.high = f.low-run, f.high+run
		return f
	}
	if below {
		f.lowRun = run
	}
	if above {
		f.highRun = run
	}
	return f
}

// flanks are what leaning walls take off the pins at both ends of a front or a back of a thickness, from
// nothing at the inside face.
func (l *layout) flanks(ends []finger, thick float64) (list []geom.Pocket) {
	run := thick / l.slope()
	add := func(low, high float64, lean int) {
		for _, x := range [2]float64{0, l.Width - l.Ts} {
			list = append(list, geom.Pocket{Kind: geom.Flank, Face: geom.Outside, Depth: thick, Lean: lean,
				Outline: geom.Rectangle(x, low, x+l.Ts, high)})
		}
	}
	for i, f := range ends {
		if f.in > 0 {
			continue
		}
		if i > 0 {
			add(f.low, f.low+run, -1)
		}
		if i < len(ends)-1 {
			add(f.high-run, f.high, 1)
		}
	}
	return list
}

// checkByHand refuses machines that have no setup for leaning walls.
func (l *layout) checkByHand() {
	if l.Cutter.Kind == Hand {
		return
	}
	why := "a CNC router's bit cuts straight down, and the pins' walls lean through the thickness of box front and back"
	switch l.Cutter.Kind {
	case Saw:
		why = "a table saw would need its blade tilted for the tails and the miter gauge turned for the pins, and " +
			"there is no setup for that here"
	case RouterTable:
		why = "a router table would need a jig with a bit of its own for them, and there is no setup for that here"
	}
	l.fail(geom.Diagnosis{
		Code: "dovetail", Subject: about(SettingJoint, Side),
		Fact:     geom.Sentencef("these dovetails are cut by hand, with cutter: {kind: hand}: " + why),
		Ask:      geom.Sentencef("write that cutter for this drawer, or take a corner that this machine cuts"),
		Remedies: []geom.Remedy{write(SettingJoint, BoxJoint), write(SettingJoint, DadoRabbet)},
	})
}

// checkTails judges tails and pins against the height, the chisel and the bottom's groove.
func (l *layout) checkTails() {
	pin, tail := l.pin(), l.tail()
	l.checkInterlocked(l.DadoClearance)
	if tail < pin-settle {
		need := 2*l.halfPin() + float64(float64(2*l.tails()-1)*pin) + l.wallStand()
		ask := "make the box higher, or take another corner"
		if l.tails() > 1 {
			ask = "write fewer tails, or make the box higher"
		}
		l.refuse(geom.Diagnosis{
			Code: "tails", Subject: about(SettingTails, Side),
			Measured: geom.Millimeters(tail), Limit: geom.Millimeters(pin),
			Fact: geom.Sentencef("on sides of %s the tails, %d at each end, would be %s wide where they are "+
				"narrowest, less than the pins between them, %s",
				geom.Millimeters(l.wallHeight()), l.tails(), geom.Millimeters(tail), geom.Millimeters(pin)),
			Ask:      geom.Sentencef(ask),
			Remedies: []geom.Remedy{l.least(SettingOutside, need).Of("height", 0), write(SettingJoint, DadoRabbet)},
		}, tail > 0)
		return
	}
	l.checkGrooveRow(l.DadoClearance)
}

// grooveInPin is what is said of a groove that is not in a tail altogether.
func (l *layout) grooveInPin(at []float64, play float64) geom.Diagnosis {
	return geom.Diagnosis{
		Code: "bottom-height", Subject: about(SettingBottomHeight, Side),
		Measured: geom.Millimeters(l.rise), Limit: geom.Millimeters(at[1] + play/4),
		Fact: geom.Sentencef("the bottom's groove, from %s to %s over the edge, is not in a tail altogether: it would "+
			"come out through a pin's end, on the outside of the box; the lowest tail begins at %s",
			geom.Millimeters(l.rise), geom.Millimeters(l.rise+l.groove), geom.Millimeters(at[1])),
		Ask:      geom.Sentencef("move the groove into a tail, or take another bottom"),
		Remedies: l.rowWays(at, play),
	}
}
