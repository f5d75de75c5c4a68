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
}

// Pair reports whether the drawer runs on a pair of slides at its sides.
func (s Slide) Pair() bool { return s.Kind == SideMount || s.Kind == Undermount || s.Kind == Wooden }

// BuiltIn is a generic slide with the measures that are usual in the trade; common
// practice, no source: the slide maker's sheet comes first. Its series is in steps of
// 50 mm, or of 2 in for an inch job.
func BuiltIn(k Kind, u geom.Unit) (Slide, bool) {
	series := func(from, to, by float64) (list []float64) {
		for v := from; v <= to; v += by {
			list = append(list, v)
		}
		return list
	}
	lengths := series(250, 550, 50)
	if u == geom.Inch {
		lengths = series(10*geom.InchMM, 22*geom.InchMM+settle, 2*geom.InchMM)
	}
	s := Slide{Name: string(k), Kind: k}
	switch k {
	case SideMount:
		s.Clearance, s.ClearanceMinus = 12.7, geom.InchMM/16 // no plus: a box too wide binds
		s.ClearanceAbove, s.ClearanceBelow = 10, 10
		s.Lengths, s.ClearanceBehind = lengths, 3
		s.Load = 45
		s.ScrewLine, s.Height, s.Setback, s.HolePitch = 35, 45, 37, 32
	case Undermount:
		s.InsideDeduction, s.MaxSideThickness, s.ClearanceMinus = 42, 16, 1
		s.ClearanceAbove, s.ClearanceBelow, s.BottomRecess = 7, 14, 13
		s.Lengths, s.ClearanceBehind = lengths, 10
		s.NotchWidth, s.NotchHeight = 35, 13
		s.HookDiameter, s.HookDepth, s.HookHeight, s.HookInset = 6, 10, 27, 7
		s.Load = 35
		s.ScrewLine, s.Height, s.Setback, s.HolePitch = 6, 40, 37, 32
	case CenterMount:
		s.Clearance, s.ClearanceMinus = 2.75, 1
		s.ClearanceAbove, s.ClearanceBelow, s.BottomRecess = 6, 6, 10
		s.Lengths, s.ClearanceBehind = lengths, 10
		s.Load = 15
	case Wooden:
		s.Clearance, s.ClearanceMinus = 0.75, 0.5
		s.ClearanceAbove, s.ClearanceBelow = 5, 20 // the box stands on the strip, within its row
		s.ClearanceBehind = 5
		s.ScrewLine, s.Height, s.Setback, s.HolePitch = -10, 20, 37, 64
	case NoSlide:
		s.Clearance, s.ClearanceMinus = 0.75, 0.5
		s.ClearanceAbove, s.ClearanceBehind = 3, 5
	default:
		return Slide{}, false
	}
	return s, true
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
