package joinery

import (
	"math"

	"drawerwright/geom"
)

// SettingLip is the entry of a [geom.Diagnosis] about lips.
const SettingLip geom.Setting = "lip"

// Lip is how far a [RabbetedFront] stands out beyond its box, in mm: what is left of it before
// rabbets round its inside face covers the edges of the opening that the box goes into. Left and
// right are as seen from before.
type Lip struct{ Left, Right, Top, Bottom float64 }

// Ends reports whether the front stands out at its ends, where the sides are not level with it then.
func (p Lip) Ends() bool { return p.Left > 0 && p.Right > 0 }

// LipThickness is what the rabbets of a [RabbetedFront] leave of it: how far the box stands out
// before what its lips bear on.
func (s Spec) LipThickness() float64 { return math.Max(0, s.Front.Thickness.Mean-s.cutterHeight()) }

// DiagonalDepth is how deep a box is over the corners from which its diagonals are taken: lips at the ends of
// its front leave those of the sides.
func (d Drawer) DiagonalDepth() float64 {
	if d.Spec.Lip.Ends() {
		return d.Dimensions.Walls.SideLen
	}
	return d.Spec.Depth
}

// checkLip judges lips: the box goes into its opening with all of its height.
func (l *layout) checkLip() {
	if l.Lip == (Lip{}) {
		return
	}
	if l.BottomFit == BottomApplied {
		l.refuse(geom.Diagnosis{
			Code: "lip", Subject: about(SettingBottomFit, Bottom),
			Fact: geom.Sentencef("an applied bottom reaches under the front, where the front's lip is to bear on " +
				"the cabinet"),
			Ask: geom.Sentencef("take another bottom"),
			Remedies: []geom.Remedy{
				write(SettingBottomFit, BottomGroovedIn), write(SettingBottomFit, BottomCleats),
			},
		}, true)
	}
	if (l.Lip.Left > 0) != (l.Lip.Right > 0) {
		l.refuse(geom.Diagnosis{
			Code: "lip", Subject: about(SettingLip, Front),
			Fact: geom.Sentencef("the front has a lip of %s at its left end and of %s at its right one: "+
				"the side at the other end would show", geom.Millimeters(l.Lip.Left), geom.Millimeters(l.Lip.Right)),
			Ask: geom.Sentencef("give both ends a lip, or none"),
		}, true)
	}
	if l.Cutter.Kind.Fenced() && l.Lip.Bottom > 0 && l.BottomFit.Grooved() {
		l.note(geom.Diagnosis{ // the fence is set once more
			Code: "lip-setup", Subject: about(SettingLip, Front),
			Measured: geom.Millimeters(l.Lip.Bottom + l.rise), Limit: geom.Millimeters(l.rise),
			Fact: geom.Sentencef("over its lower lip, the box front's groove is %s from its lower edge, that of the "+
				"other walls %s: it takes a fence distance of its own",
				geom.Millimeters(l.Lip.Bottom+l.rise), geom.Millimeters(l.rise)),
			Ask: geom.Sentencef("cut the grooves of all box fronts in one go"),
		})
	}
}

// lipRabbets are the rabbets of the front along its upper and its lower edge.
func (l *layout) lipRabbets(p *geom.Panel) {
	low, length := l.Lip.Bottom, p.Length()
	top := low + l.wallHeight()
	for _, r := range []geom.Loop{geom.Rectangle(0, top, length, top+l.Lip.Top), geom.Rectangle(0, 0, length, low)} {
		if r.Bounds().Height() > 0 {
			p.Pockets = append(p.Pockets, geom.Pocket{Kind: geom.Rabbet, Depth: l.h, Outline: r})
		}
	}
}

// lippedLengths are how long the front's rabbets are from the edges to their shoulders.
func (l *layout) lippedLengths() []float64 {
	return []float64{l.Ts + math.Max(l.Lip.Left, l.Lip.Right), l.Lip.Top, l.Lip.Bottom}
}

// sidesOnShoulders judges the width of a box whose sides stand on the front's shoulders within its
// lips: it changes with both.
func (l *layout) sidesOnShoulders() {
	l.check(Check{CheckID: CheckID{Code: CheckOutsideWidth}, Name: "outside width", Nominal: l.Width,
		LowerLimit: l.Width - l.Limits.Width, UpperLimit: l.Width + l.Limits.Width, Verdicts: WidthVerdicts},
		l.Sides.Thickness, 2)
}
