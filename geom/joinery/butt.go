package joinery

import (
	"math"

	"drawerwright/geom"
)

// Screws, dowels and loose tenons of a butt joint, in millimeters; common practice, no source.
const (
	dowelRoom   = 2.0  // of the two holes beyond the dowel's ends, for glue
	screwLength = 30.0 // of the pilot hole in the end of the front or back, or 1 1/4 in
	dowelMost   = 8.0  // the thickest dowel; half the thickness of the end at most
	dowelLength = 25.0 // of the hole in the end
	dowelShare  = 2.0 / 3
	holesApart  = 75.0 // from one to the next, at most
	holesEdge   = 20.0 // from the edges of the side and from the groove
	// holesNearest is from one to the next, at least: where there is less room one in the middle does.
	holesNearest = 20.0
)

// butt lays out the corner with front and back between plain sides:
//
//	side          D x H, holes or mortises in the middle of the ends' thickness
//	front, back   W - 2 Ts long, plain ends
//
// Nothing but glue and fasteners holds it.
func (l *layout) butt() {
	l.toFront, l.toBack = l.Tf, l.Tk
	l.maxSlot = math.Inf(1) // no tongue to suit
	l.lay(func() {
		l.dropGlueSpace()
		l.Fasteners = l.Fastened()
		if l.BottomFit.Grooved() || l.BackJoint == Housed {
			l.checkSideDepth()
		}
		l.checkGrooveDepth()
		l.checkHoused()
	}, func() {
		l.level()
		l.chooseBottom()
		l.checkFasteners()
		l.buttedWidth()
		l.checkProportions()
	}, l.butted)
}

// Fastened is what holds the corners beside glue: screws in a butt joint that does not say; none in other joints.
func (s Spec) Fastened() Fastener {
	switch {
	case s.Joint != Butt:
		return ""
	case s.Fasteners == "":
		return Screws
	}
	return s.Fasteners
}

func (l *layout) butted(r Role) ending {
	stock, _ := l.stockOf(r)
	t := stock.Thickness.Mean
	e := ending{reach: t - l.h, panel: l.plainEnd(r, l.Width-2*l.Ts), stand: l.placed(r, l.Ts)}
	if l.GrooveEnds == GrooveStopped {
		e.groove = l.stopBefore(e.reach)
	}
	heights := l.holeHeights(t)
	hole := geom.Pocket{Kind: geom.Drill, Depth: l.Ts}
	screw := l.screw(cornerScrew)
	thick, wide := l.cornerFastener(t)
	bore := Bore{Part: r, Diameter: screw.pilot, Depth: l.inEnd(), FromOutside: t / 2}
	if l.Fasteners != Screws {
		bore.Diameter, hole.Depth = wide, l.Ts*dowelShare
		bore.Depth = l.soldLength(hole.Depth+bore.Depth-dowelRoom) + dowelRoom - hole.Depth
	}
	tall := 0.0 // by how much a tenon is wider than thick
	if l.Fasteners == Tenons {
		hole.Kind, bore.Lengths = geom.Mortise, l.mortises(t, len(heights))
		tall = l.tenonWidth(t) - thick
	}
	middle := t / 2 // of the end, from the front of the box
	if r == Back {
		middle = l.Depth - t/2
	}
	for _, y := range heights {
		hole.Outline = geom.Circle(geom.Point{X: t / 2, Y: y}, wide/2)
		if hole.Kind == geom.Mortise {
			hole.Outline = l.mortise(geom.Point{X: t / 2, Y: y}, thick, tall+thick)
		}
		e.cuts = append(e.cuts, hole)
		in, low := hole.Depth+bore.Depth, l.wallStand()+y-tall/2
		l.drive(r, geom.Vec3{X: l.Ts - hole.Depth, Y: middle, Z: low}, geom.Vec3{X: in, Z: tall}, thick, wide)
		l.drive(r, geom.Vec3{X: l.Width - l.Ts + hole.Depth, Y: middle, Z: low}, geom.Vec3{X: -in, Z: tall},
			thick, wide)
		if r == Back && l.BottomFit.SlidesIn() {
			y -= l.backUnder() // over the back's own lower edge
		}
		bore.Heights = append(bore.Heights, y)
	}
	l.drawer.Bores = append(l.drawer.Bores, bore)
	l.takes(l.cornerItem(bore, hole.Depth), 2*len(heights))
	return e
}

// cornerItem is what is bought for the holes of a corner, by its size.
func (l *layout) cornerItem(b Bore, inSide float64) string {
	size := geom.LengthOf(b.Diameter).Number(l.Units)
	switch room := inSide + b.Depth - dowelRoom; l.Fasteners {
	case Dowels:
		return l.long("dowel", size, room)
	case Tenons:
		return l.long("loose tenon", size+" x "+geom.LengthOf(b.Lengths[0]).Number(l.Units), room)
	}
	return l.long("screw", l.screw(cornerScrew).name, b.Depth+l.Ts)
}

// stopBefore is where a groove begins whose square bottom reaches to a distance
// from the end: a bit's radius nearer to the end, so that its round clears the
// corner, hidden behind the front. Where there is no room for that it runs through.
func (l *layout) stopBefore(reach float64) float64 {
	at := reach - l.corner() - reliefRoom
	if at < minLip-settle {
		l.unsuited = true
		l.warnOnce(geom.Diagnosis{
			Code: "groove-ends", Subject: about(SettingGrooveEnds, Side),
			Measured: geom.Millimeters(at), Limit: geom.Millimeters(minLip),
			Fact: geom.Sentencef("the bottom reaches to %s from the side's ends: its groove cannot stop and runs through", geom.Millimeters(reach)),
			Ask:  geom.Sentencef("let it run through: it shows at the ends"),
			Remedies: []geom.Remedy{
				l.most(SettingCutter, 2*(reach-reliefRoom-minLip)),
				l.most(SettingCutterHeight, l.h+reach-minLip-reliefRoom-l.Cutter.Width/2),
				write(SettingGrooveEnds, GrooveThrough),
			},
		})
		return 0
	}
	return at
}

// dowel is the thickest dowel that is sold for an end of a thickness; 0 for none.
func (l *layout) dowel(t float64) float64 {
	return l.sold(metricDowels, inchDowels, math.Min(dowelMost, t/2))
}

// holeHeights are those of the middles of what holds an end of a thickness, over the bottom edge.
func (l *layout) holeHeights(t float64) []float64 {
	if l.Fasteners == Tenons {
		return l.tenonHeights(t)
	}
	return evenly(l.lowest(holesEdge), l.wallHeight()-holesEdge, holesApart)
}

// lowest is as far as given over the edge or the bottom's groove, and clear of the screws of cleats.
func (l *layout) lowest(edge float64) float64 {
	switch {
	case l.BottomFit.Grooved():
		return edge + l.rise + l.groove
	case l.BottomFit == BottomCleats:
		return math.Max(edge, l.rise)
	}
	return edge
}

// checkFasteners judges whether the boards take the holes.
func (l *layout) checkFasteners() {
	for _, r := range l.ends() {
		stock, field := l.stockOf(r)
		switch t := stock.Thickness.Mean; {
		case l.Fasteners == Tenons:
			l.checkTenon(r)
		case l.Fasteners == Dowels && l.dowel(t) == 0:
			l.fail(geom.Diagnosis{
				Code: "fasteners", Subject: about(field, r),
				Measured: geom.Millimeters(t), Limit: geom.Millimeters(2 * l.sized(metricDowels[0], inchDowels[0])),
				Fact:     geom.Sentencef("the %s is %s thick: no dowel of %s or more has as much wood beside it", r, geom.Millimeters(t), geom.Millimeters(l.sized(metricDowels[0], inchDowels[0]))),
				Ask:      geom.Sentencef("take screws"),
				Remedies: []geom.Remedy{l.least(field, 2*l.sized(metricDowels[0], inchDowels[0])), write(SettingFasteners, Screws)},
			})
		case l.Fasteners == Screws && t < 2.5*l.screw(cornerScrew).hole:
			l.warn(geom.Diagnosis{
				Code: "fasteners", Subject: about(field, r),
				Measured: geom.Millimeters(t), Limit: geom.Millimeters(2.5 * l.screw(cornerScrew).hole),
				Fact:     geom.Sentencef("%s screws into the end of a %s of %s may split it", l.screw(cornerScrew).called(), r, geom.Millimeters(t)),
				Ask:      geom.Sentencef("bore the pilot holes, or take thinner screws"),
				Remedies: []geom.Remedy{l.least(field, 2.5*l.screw(cornerScrew).hole), write(SettingFasteners, Dowels)},
			})
		}
	}
	if l.Fasteners == Tenons {
		return
	}
	if needs := l.lowest(holesEdge) + holesNearest + holesEdge; l.wallHeight() < needs-settle {
		l.warn(geom.Diagnosis{
			Code: "fasteners", Subject: about(SettingOutside, Side),
			Measured: geom.Millimeters(l.wallHeight()), Limit: geom.Millimeters(needs),
			Fact:     geom.Sentencef("sides of %s take one screw or dowel at each corner", geom.Millimeters(l.wallHeight())),
			Ask:      geom.Sentencef("another corner holds better"),
			Remedies: []geom.Remedy{l.least(SettingOutside, needs+l.wallStand()).Of("height", 0)},
		})
	}
}

// buttedWidth is the front between two sides, whatever they are thick.
func (l *layout) buttedWidth() Check {
	return l.check(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width,
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts}, l.Sides.Thickness, 2)
}
