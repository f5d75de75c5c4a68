package joinery

import (
	"math"

	"drawerwright/geom"
)

// Cleats are strips glued and screwed to the insides of the walls, level with their
// lower edges, on which a bottom lies that is in no groove. In millimeters; common
// practice, no source.
const (
	cleatHeight    = 12.0 // unless the bottom's height is given
	minCleat       = 10.0 // less has no room for a screw's head
	minCleatLength = 40.0
	cleatShort     = 2.0   // of the room that there is, so that no strip is forced in
	cleatEnd       = 25.0  // from its end to the first screw
	cleatApart     = 150.0 // from one screw to the next, at most
	cleatHold      = 2.0 / 3
)

// CleatRole is that of such a strip.
const CleatRole Role = "cleat"

// Grooved reports whether a bottom stands in grooves of the walls.
func (f BottomFit) Grooved() bool { return f != BottomApplied && f != BottomCleats }

// SlidesIn reports whether a bottom comes in from behind, under a back that ends above it.
func (f BottomFit) SlidesIn() bool { return f == BottomSlideIn || f == BottomFielded }

// checkCleats judges a bottom that lies on cleats.
func (l *layout) checkCleats() {
	if l.rise < minCleat-settle {
		l.refuse(geom.Diagnosis{
			Code: "bottom-height", Subject: about(SettingBottomHeight, Bottom),
			Measured: geom.Millimeters(l.rise), Limit: geom.Millimeters(minCleat),
			Fact:     geom.Sentencef("cleats %s high have no room for screws, %s is needed", geom.Millimeters(l.rise), geom.Millimeters(minCleat)),
			Ask:      geom.Sentencef("make them higher"),
			Remedies: []geom.Remedy{l.least(SettingBottomHeight, minCleat)},
		}, l.rise > settle)
	}
	if l.Undermount != nil {
		l.refuse(geom.Diagnosis{
			Code: "bottom-fit", Subject: about(SettingBottomFit, Bottom),
			Fact:     geom.Sentencef("slides under the box run where the cleats are"),
			Ask:      geom.Sentencef("take slides beside the box"),
			Remedies: []geom.Remedy{write(SettingBottomFit, BottomGroovedIn)},
		}, true)
	}
	for _, c := range []struct {
		what       string
		size, room float64
	}{{"width", l.Width, l.Width - 4*l.Ts - cleatShort}, {"depth", l.Depth, l.Depth - l.toFront - l.toBack - cleatShort}} {
		if c.room < minCleatLength-settle {
			l.refuse(geom.Diagnosis{
				Code: "cleats", Subject: about(SettingOutside, CleatRole),
				Measured: geom.Millimeters(c.room), Limit: geom.Millimeters(minCleatLength),
				Fact: geom.Sentencef("a box %s in %s has room for cleats %s long, at least %s is needed", geom.Millimeters(c.size), c.what, geom.Millimeters(c.room), geom.Millimeters(minCleatLength)),
				Ask:  geom.Sentencef("take another bottom"),
				Remedies: []geom.Remedy{
					l.least(SettingOutside, c.size-c.room+minCleatLength).Of(c.what, 0),
					write(SettingBottomFit, BottomApplied),
				},
			}, c.room > settle)
		}
	}
	if !l.clearanceFails() {
		l.checkClearance()
		l.checkMovement()
	}
}

// addCleats makes the strips and the bottom that lies on them. The strips are of the
// sides' stock. Screws hold each to its wall, half-way up; others hold a bottom of sheet
// down between those, one of solid wood along the front alone, so that it can move.
func (l *layout) addCleats() {
	t := l.Ts
	length, width := l.bottomSize()
	bottom := geom.Panel{Outline: geom.Rectangle(0, 0, length, width), Thickness: l.Tb}
	wallScrews, downScrews := 0, 0
	var cleats []Part
	screw := l.screw(bottomScrew)
	into := cleatHold * math.Min(l.Ts, math.Min(l.Tf, l.Tk)) // the wall
	put := func(label string, wall Role, long float64, stands ...geom.Placement) (between []float64) {
		p := geom.Panel{Outline: geom.Rectangle(0, 0, long, l.rise), Thickness: t}
		end := math.Min(cleatEnd, long/4)
		at := evenly(end, long-end, cleatApart)
		for i, x := range at {
			bore(&p, geom.Point{X: x, Y: l.rise / 2}, screw.hole)
			for _, s := range stands {
				l.drive(wall, s.Apply(geom.Vec3{X: x, Y: l.rise / 2, Z: t}), s.Normal().Scale(-t-into), screw.thick, screw.hole)
			}
			if i > 0 {
				between = append(between, (at[i-1]+x)/2)
			}
		}
		wallScrews += len(at) * len(stands)
		cleats = append(cleats, Part{Role: CleatRole, Label: label, Stock: l.Sides, Panel: p, Placements: stands})
		return between
	}
	from := geom.Vec3{X: l.Ts + l.BottomClearance/2, Y: l.toFront + l.ClearanceDepth()/2, Z: l.rise}
	hold := func(x, y float64) {
		bore(&bottom, geom.Point{X: x, Y: y}, screw.hole)
		l.drive(CleatRole, from.Add(geom.Vec3{X: x, Y: y, Z: l.Tb}), geom.Vec3{Z: -l.Tb - float64(cleatHold*l.rise)},
			screw.thick, screw.hole)
		downScrews++
	}
	// Along the sides from front to back, and between those strips along front and back.
	deep := l.Depth - l.toFront - l.toBack
	alongSide, alongEnd := deep-cleatShort, l.Width-2*l.Ts-2*t-cleatShort
	y, x := l.toFront+cleatShort/2, l.Ts+t+cleatShort/2
	beside := put("side", Side, alongSide,
		geom.Placement{Origin: geom.Vec3{X: l.Ts, Y: y}, X: geom.Back, Y: geom.Up},
		geom.Placement{Origin: geom.Vec3{X: l.Width - l.Ts, Y: y + alongSide}, X: geom.Back.Scale(-1), Y: geom.Up})
	before := put("end", Front, alongEnd,
		geom.Placement{Origin: geom.Vec3{X: x + alongEnd, Y: l.toFront}, X: geom.Right.Scale(-1), Y: geom.Up},
		geom.Placement{Origin: geom.Vec3{X: x, Y: l.Depth - l.toBack}, X: geom.Right, Y: geom.Up})
	in, inDeep := (t-l.BottomClearance/2)/2, (t-l.ClearanceDepth()/2)/2 // the middle of what lies on a strip
	for _, at := range before {
		hold(x+at-from.X, inDeep)
		if !l.Bottom.Solid {
			hold(x+at-from.X, width-inDeep)
		}
	}
	for _, at := range beside {
		if !l.Bottom.Solid {
			hold(in, y+at-from.Y)
			hold(length-in, y+at-from.Y)
		}
	}
	l.takes(l.long("screw", screw.name, t+into), wallScrews)
	l.takes(l.long("screw", screw.name, l.Tb+float64(cleatHold*l.rise)), downScrews)
	l.add(Bottom, bottom, geom.Placement{Origin: from, X: geom.Right, Y: geom.Back})
	l.drawer.Parts = append(l.drawer.Parts, cleats...)
}
