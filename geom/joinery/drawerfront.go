package joinery

import (
	"math"

	"drawerwright/geom"
)

// FieldDrawerFront is the entry of a [geom.Diagnosis] about a drawer front.
const FieldDrawerFront geom.Setting = "drawer-front"

// Holes for a drawer front, in millimeters; common practice, no source.
const (
	fixingIn      = 40.0  // from the inside faces of the sides
	fixingTwoRows = 110.0 // clear height from which there are two rows of them
	fixingWasher  = 1.5   // under the screws' heads, since the holes are wide
	fixingInto    = 0.75  // of the drawer front's thickness, as far as the screws go in at most
	handleHole    = 5.0   // through the drawer front, unless the job says otherwise; or 3/16 in
	handleClear   = 20.0  // through the box's front behind it, for the screw's head and a driver; or 3/4 in
	handleEdge    = 10.0  // from a hole to the edge of the drawer front
)

// drawerFront adds a front that is screwed on from inside, and the holes for it. It
// stands against the foremost of the box.
func (l *layout) drawerFront() {
	f := l.DrawerFront
	if f == nil {
		return
	}
	t := f.Stock.Thickness.Mean
	front := l.wall(Front)
	// Seen from before, from the box's lower left.
	box := geom.Rect{Min: geom.Point{X: -f.OverhangLeft, Y: -f.OverhangBelow}, Max: geom.Point{X: f.Width - f.OverhangLeft, Y: f.Height - f.OverhangBelow}}
	if !l.standsBefore(box) {
		return
	}
	p := geom.Panel{Outline: geom.Rectangle(0, 0, f.Width, f.Height), Thickness: t}
	// Panel x of both fronts runs from right to left, seen from before the box.
	y := math.Min(0, front.Placements[0].Origin.Y) - t
	stand := geom.Placement{Origin: geom.Vec3{X: box.Max.X, Y: y, Z: -f.OverhangBelow}, X: geom.Right.Scale(-1), Y: geom.Up}
	if gap := front.Placements[0].Origin.Y - (y + t); gap > HopelessGap+settle {
		l.fail(geom.Diagnosis{
			Code: "recess", Subject: about(FieldDrawerFront, DrawerFrontRole),
			Measured: geom.Millimeters(gap), Limit: geom.Millimeters(HopelessGap),
			Fact: geom.Sentencef("the box front stands %s behind the ends of the sides, "+
				"on which the drawer front would bear: its screws would bend it", geom.Millimeters(gap)),
			Ask:      geom.Sentencef("take a box front of twice the fence distance"),
			Remedies: l.fenceWays(Front, l.Front),
		})
		return
	}
	screws := l.boreForScrews(front, box.Grow(-handleEdge))
	if screws == 0 {
		l.fail(geom.Diagnosis{
			Code: "drawer-front", Subject: about(FieldDrawerFront, DrawerFrontRole),
			Fact: geom.Sentencef("no screw from inside the box would meet the drawer front"),
			Ask:  geom.Sentencef("a larger drawer front, or other overhang-left and overhang-below"),
		})
		return
	}
	long := front.Stock.Thickness.Mean + fixingWasher + PilotDepth(t)
	l.takes(l.long("screw", l.screw(fixingScrew).name, long), screws)
	l.takes("large washer for screw "+l.screw(fixingScrew).called(), screws)
	part := Part{Role: DrawerFrontRole, Stock: f.Stock, Panel: p, Placements: []geom.Placement{stand}}
	l.handle(&part, front)
	l.drawer.Parts = append(l.drawer.Parts, part)
}

// PilotDiameter is that of pilot holes in the back of a drawer front, in mm.
func PilotDiameter(u geom.Unit) float64 {
	if u == geom.Inch {
		return fixingScrew[1].pilot
	}
	return fixingScrew[0].pilot
}

// PilotDepth is how deep pilot holes in the back of a drawer front of a thickness may be at most, and how far its screws
// go in, in mm: so that neither comes out at its face.
func PilotDepth(thick float64) float64 { return fixingInto * thick }

// boreForScrews bores the box's front for the screws that hold the drawer front, in one
// row or two, where they meet it within its bounds, and counts them.
func (l *layout) boreForScrews(front *Part, within geom.Rect) (screws int) {
	floor := l.frontFloor(front)
	rows := []float64{(floor + l.Height) / 2}
	if clear := l.Height - floor; clear >= fixingTwoRows {
		rows = []float64{floor + clear/4, floor + clear*3/4}
	}
	screw, inside := l.screw(fixingScrew), l.Width-2*l.Ts
	in := math.Max(math.Min(fixingIn, inside/4), math.Min(l.besideCorners(screw), (inside-holesNearest)/2))
	thick := front.Stock.Thickness.Mean
	lowest := math.Min(l.overBottomScrews(screw), l.Height-handleEdge-screw.hole/2)
	for _, z := range rows {
		z = math.Max(z, lowest)
		for _, x := range []float64{l.Ts + in, l.Width - l.Ts - in} {
			if x > within.Min.X && x < within.Max.X && z > within.Min.Y && z < within.Max.Y {
				at := geom.Point{X: front.along(geom.Vec3{X: x}), Y: z - front.Placements[0].Origin.Z}
				bore(&front.Panel, at, screw.hole)
				l.drive(Front, front.Placements[0].Apply(geom.Vec3{X: at.X, Y: at.Y, Z: thick}), geom.Vec3{Y: -thick},
					screw.thick, screw.hole)
				screws++
			}
		}
	}
	return screws
}

// bore drills a hole through a panel.
func bore(p *geom.Panel, at geom.Point, diameter float64) {
	p.Pockets = append(p.Pockets,
		geom.Pocket{Kind: geom.Drill, Depth: p.Thickness, Outline: geom.Circle(at, diameter/2)})
}

// frontFloor is how high over the box's lower edge the box's front is free of the bottom.
func (l *layout) frontFloor(front *Part) float64 {
	switch {
	case l.BottomFit == BottomCleats:
		return l.bottomTop()
	case l.BottomFit.Grooved():
		return l.rise + l.groove
	}
	return front.Placements[0].Origin.Z
}

// standsBefore reports whether a drawer front stands before the box, and says so where it
// does not.
func (l *layout) standsBefore(front geom.Rect) bool {
	if front.Min.X <= l.Ts+fixingIn && front.Max.X >= l.Width-l.Ts-fixingIn &&
		front.Min.Y <= l.Height/2 && front.Max.Y >= l.Height/2 {
		return true
	}
	mm := func(v float64) geom.Millimeters { return geom.Millimeters(v) }
	l.fail(geom.Diagnosis{
		Code: "drawer-front", Subject: about(FieldDrawerFront, DrawerFrontRole),
		Fact: geom.Sentencef("a drawer front from %s to %s across and %s to %s up does not stand before a box of %s x %s",
			mm(front.Min.X), mm(front.Max.X), mm(front.Min.Y), mm(front.Max.Y), mm(l.Width), mm(l.Height)),
		Ask: geom.Sentencef("overhang-left and overhang-below say how far it stands out beyond the box"),
	})
	return false
}

// HandleHole is the diameter in mm of the holes for the screws of handles, as shops of a unit drill them.
func HandleHole(u geom.Unit) float64 {
	l := layout{Spec: Spec{Units: u}}
	return l.sized(handleHole, 12)
}

// handle bores for a knob or a handle, through both fronts where they meet.
func (l *layout) handle(drawerFront, front *Part) {
	f, stand, floor := l.DrawerFront, drawerFront.Placements[0], l.frontFloor(front)
	if f.Handles == 0 {
		return
	}
	d, down := f.HandleDiameter, f.HandleFromTop
	if d == 0 {
		d = HandleHole(l.Units)
	}
	if down == 0 {
		down = f.Height / 2
	}
	places := []float64{f.Width / 2}
	if f.Handles == 2 {
		places = []float64{(f.Width - f.HandleSpacing) / 2, (f.Width + f.HandleSpacing) / 2}
	}
	for _, x := range places {
		room := math.Min(math.Min(x, f.Width-x), math.Min(down, f.Height-down)) - d/2
		if room < handleEdge-settle {
			l.fail(geom.Diagnosis{
				Code: "handle", Subject: about(FieldDrawerFront, DrawerFrontRole),
				Measured: geom.Millimeters(room), Limit: geom.Millimeters(handleEdge),
				Fact: geom.Sentencef("a handle's hole comes within %s of the edge of a drawer front of %s x %s",
					geom.Millimeters(room), geom.Millimeters(f.Width), geom.Millimeters(f.Height)),
				Ask: geom.Sentencef("other handle-spacing or handle-from-top"),
			})
			return
		}
		bore(&drawerFront.Panel, geom.Point{X: x, Y: f.Height - down}, d)
		at := geom.Vec3{X: stand.Origin.X - x, Z: stand.Origin.Z + f.Height - down}
		behind := geom.Point{X: front.along(at), Y: at.Z - front.Placements[0].Origin.Z}
		clear := l.sized(handleClear, 48)
		r := clear / 2
		switch {
		case at.X < l.Ts || at.X > l.Width-l.Ts || at.Z > l.Height || at.Z < 0: // beside the box
		case at.X < l.Ts+r+2 || at.X > l.Width-l.Ts-r-2 || at.Z < floor+r+2 || at.Z > l.Height-r-2:
			l.warn(geom.Diagnosis{
				Code: "handle", Subject: about(FieldDrawerFront, Front),
				Fact: geom.Sentencef("behind a handle's hole, %s over the box's lower edge, the box front has no room "+
					"for a hole of %s: its screw cannot be reached from inside", geom.Millimeters(at.Z), geom.Millimeters(clear)),
				Ask: geom.Sentencef("sink the screw's head into the drawer front's back before it is screwed on, " +
					"or move the handle"),
			})
		default:
			bore(&front.Panel, behind, clear)
		}
	}
	through := " for a drawer front " + l.text(f.Stock.Thickness.Mean) + " thick"
	name := "knob, with its screw" + through
	if f.Handles == 2 {
		name = "handle, " + l.text(f.HandleSpacing) + " between its holes, with its screws" + through
	}
	l.takes(name, 1)
}
