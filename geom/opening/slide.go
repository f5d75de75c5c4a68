package opening

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Kind is a way for a drawer to run.
type Kind string

const (
	SideMount   Kind = "side-mount"    // a pair between the box's sides and the cabinet's
	Undermount  Kind = "undermount"    // a pair under the box, hooked into its back
	CenterMount Kind = "center-mount"  // one under the middle of the bottom
	Wooden      Kind = "wooden-runner" // strips of wood in the cabinet
	NoSlide     Kind = "none"          // the box slides on the cabinet's own floor
)

// Kinds are all of them.
var Kinds = []Kind{SideMount, Undermount, CenterMount, Wooden, NoSlide}

// Slide is what a drawer runs on, as its maker's sheet has it.
type Slide struct {
	Name string
	Kind Kind
	// Clearance at each side between box and opening. The box may come out wider by
	// Plus and narrower by Minus, in all.
	Clearance, ClearancePlus, ClearanceMinus float64
	// ClearanceAbove and Below are what a box keeps free in its row.
	ClearanceAbove, ClearanceBelow float64
	// InsideDeduction is what an undermount slide's box is narrower inside than the
	// opening; 0 for others. MaxSideThickness is the thickest side that goes beside it.
	InsideDeduction, MaxSideThickness float64
	// BottomRecess is how high the underside of the bottom has to stand.
	BottomRecess float64
	// Lengths of the series, each as long as its box is deep; none for runners that
	// are cut to length. Behind is what a slide needs beyond its length.
	Lengths         []float64
	ClearanceBehind float64
	// NotchWidth, NotchHeight and the hook's fields are the notches and bores in the box's back, in mm.
	NotchWidth, NotchHeight                        float64
	HookDiameter, HookDepth, HookHeight, HookInset float64
	Load                                           float64 // rating of a pair in kg; 0 when not known
	// ScrewLine is how high the slide's screw line is over the box's lower edge; Height is
	// the slide's own, half of it below the line.
	ScrewLine, Height float64
	// Setback is from the cabinet's front edge to the first hole, Pitch from one hole
	// to the next; a Setback of 0 has none.
	Setback, HolePitch float64
	// RunnerWidth is how wide wooden runners are; WearStrip is how thick the strips on them are, which are of
	// their Height; 0 for none.
	RunnerWidth, WearStrip float64
}

// Pair reports whether the drawer runs on a pair of slides at its sides.
func (s Slide) Pair() bool { return s.Kind == SideMount || s.Kind == Undermount || s.Kind == Wooden }

// BuiltIn is a generic slide with the measures that are usual in the trade; common
// practice, no source: the slide maker's sheet comes first. Its series is in steps of
// 50 mm, or of 2 in for an inch job, and what a shop decides is round in the unit. The
// pitch of holes, and what hooks into a box, are of hardware made in millimeters, and the
// same in both.
func BuiltIn(k Kind, u geom.Unit) (Slide, bool) {
	s := Slide{Name: string(k), Kind: k}
	if k == SideMount || k == Undermount || k == CenterMount {
		s.Lengths = series(u)
	}
	switch k {
	case SideMount:
		s.Clearance, s.ClearanceMinus = 12.7, geom.InchMM/16 // no plus: a box too wide binds
		s.ClearanceAbove, s.ClearanceBelow = u.Usual(10, 3.0/8), u.Usual(10, 3.0/8)
		s.ClearanceBehind, s.Load = u.Usual(3, 1.0/8), u.UsualLoad(45, 100)
		s.ScrewLine, s.Height, s.Setback, s.HolePitch = u.Usual(35, 1+3.0/8), u.Usual(45, 1+3.0/4), 37, 32
	case Undermount:
		s.InsideDeduction, s.MaxSideThickness, s.ClearanceMinus = 42, 16, 1
		s.ClearanceAbove, s.ClearanceBelow = u.Usual(7, 5.0/16), u.Usual(14, 9.0/16)
		s.BottomRecess, s.ClearanceBehind = u.Usual(13, 1.0/2), u.Usual(10, 3.0/8)
		s.NotchWidth, s.NotchHeight = u.Usual(35, 1+3.0/8), u.Usual(13, 1.0/2)
		s.HookDiameter, s.HookDepth, s.HookHeight, s.HookInset = 6, 10, 27, 7
		s.Load = u.UsualLoad(35, 75)
		s.ScrewLine, s.Height, s.Setback, s.HolePitch = u.Usual(6, 1.0/4), u.Usual(40, 1+9.0/16), 37, 32
	case CenterMount:
		s.Clearance, s.ClearanceMinus = u.Usual(2.75, 7.0/64), u.Usual(1, 3.0/64)
		s.ClearanceAbove, s.ClearanceBelow = u.Usual(6, 1.0/4), u.Usual(6, 1.0/4)
		s.BottomRecess, s.ClearanceBehind, s.Load = u.Usual(10, 3.0/8), u.Usual(10, 3.0/8), u.UsualLoad(15, 35)
	case Wooden:
		s.Clearance, s.ClearanceMinus = u.Usual(0.75, 1.0/32), u.Usual(0.5, 1.0/32)
		// The box stands on the strip, within its row.
		s.ClearanceAbove, s.ClearanceBelow = u.Usual(5, 3.0/16), u.Usual(20, 3.0/4)
		s.ClearanceBehind = u.Usual(5, 3.0/16)
		s.ScrewLine, s.Height = u.Usual(-10, -3.0/8), u.Usual(20, 3.0/4)
		s.Setback, s.HolePitch = u.Usual(37, 1+1.0/2), u.Usual(64, 2+1.0/2)
		s.RunnerWidth = UsualRunner(u)
	case NoSlide:
		s.Clearance, s.ClearanceMinus = u.Usual(0.75, 1.0/32), u.Usual(0.5, 1.0/32)
		s.ClearanceAbove, s.ClearanceBehind = u.Usual(3, 1.0/8), u.Usual(5, 3.0/16)
	default:
		return Slide{}, false
	}
	return s, true
}

// series are the lengths in which slides are sold, in mm.
func series(u geom.Unit) (list []float64) {
	from, to, by := u.Usual(250, 10), u.Usual(550, 22), u.Usual(50, 2)
	for v := from; v <= to+settle; v += by {
		list = append(list, v)
	}
	return list
}

// Length is how deep a box on the slide is with so much room for both, in mm: the longest of the
// series that fits, or what is cut to length in whole millimeters or sixteenths of an inch. ok is
// false where none of the series fits.
func (s Slide) Length(room float64, u geom.Unit) (length float64, ok bool) {
	if len(s.Lengths) > 0 {
		return s.pick(room)
	}
	step := 1.0
	if u == geom.Inch {
		step = geom.InchMM / 16
	}
	return math.Floor(room/step+settle) * step, true
}

// pick is the longest of a series that fits; ok is false where none does.
func (s Slide) pick(room float64) (length float64, ok bool) {
	for _, l := range s.Lengths {
		if l <= room+settle && l > length {
			length, ok = l, true
		}
	}
	return length, ok
}

// shortest of the series.
func (s Slide) shortest() float64 { return slices.Min(s.Lengths) }
