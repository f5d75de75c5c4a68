package geom

import (
	"fmt"
	"math"
	"slices"
)

// Face is a side of a panel, named for the box that the panel becomes part of.
type Face uint8

const (
	Inside  Face = iota // z = thickness
	Outside             // z = 0
)

func (f Face) String() string {
	if f == Outside {
		return "outside"
	}
	return "inside"
}

// Kind says what a pocket is for.
type Kind uint8

const (
	Dado    Kind = iota // a channel across the grain
	Groove              // a channel along the grain
	Rabbet              // a step along an edge
	Drill               // a round hole, blind or through
	Cutout              // an opening through the panel
	Mortise             // a blind slot with round ends, for a loose tenon
	Flank               // the leaning wall of a dovetail's pin
)

var kindNames = [...]string{"dado", "groove", "rabbet", "drill", "cutout", "mortise", "flank"}

// Noun is what a person calls a cut of the kind.
func (k Kind) Noun() string {
	if k == Drill {
		return "hole"
	}
	return k.String()
}

func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return fmt.Sprintf("kind %d", uint8(k))
}

// Pocket is material taken away from one face, straight down to a depth.
type Pocket struct {
	Kind    Kind
	Face    Face
	Depth   float64 // mm from its face; the panel's thickness or more goes through
	Outline Loop    // counter-clockwise, in panel coordinates whichever the face
	// Lean is which way a floor that is not level goes down along y: 1 to the pocket's greatest y, -1 to
	// its least. There it is as deep as Depth, at the other end as nothing. 0 is a level floor.
	Lean int
	// MayMeet says that the joint wants this pocket to open into one on the
	// other face, so that meeting it is no fault.
	MayMeet bool
	// Takes is the outline of the part with square corners that goes into the
	// pocket and does not leave it through the panel's edge, in panel coordinates:
	// where a round cutter leaves wood in its way, the corner needs relief. Empty
	// where nothing like it goes in.
	Takes Loop
	// Whole is its outline on the blank, where more was cut than is left of it when the
	// panel's edges have been cut too; empty where that is Outline.
	Whole Loop
	// Bit is the diameter of the bit for which it is laid out, where a wider one would
	// want it otherwise; 0 where any will do that gets in.
	Bit float64
}

// OnBlank is what is cut of the blank, before the panel's edges are.
func (p Pocket) OnBlank() Loop {
	if len(p.Whole) > 0 {
		return p.Whole
	}
	return p.Outline
}

// EdgeKind says what is cut out of a panel's edges.
type EdgeKind uint8

const (
	FingerCut   EdgeKind = iota // between two fingers of a box joint
	NotchCut                    // for a slide or another fitting
	CrossingCut                 // for a part that crosses this one, half and half
	PullCut                     // by which a drawer is pulled open
	TailCut                     // between two tails
	PinCut                      // between two pins
)

var edgeKindNames = [...]string{"finger", "notch", "crossing", "pull", "tail", "pin"}

// Interlocks reports whether it is cut between fingers, tails or pins of a corner.
func (k EdgeKind) Interlocks() bool { return k == FingerCut || k == TailCut || k == PinCut }

func (k EdgeKind) String() string {
	if int(k) < len(edgeKindNames) {
		return edgeKindNames[k]
	}
	return fmt.Sprintf("edge kind %d", uint8(k))
}

// EdgeCut is a piece cut through the edge of a panel's blank.
type EdgeCut struct {
	Kind EdgeKind
	Area Loop // counter-clockwise, within the blank
}

// Through reports whether the pocket goes through a panel of a thickness.
func (p Pocket) Through(thickness float64) bool { return p.Lean == 0 && p.Depth >= thickness }

// DepthAt is how deep the pocket is at a y within it.
func (p Pocket) DepthAt(y float64) float64 {
	if p.Lean == 0 {
		return p.Depth
	}
	b := p.Outline.Bounds()
	share := (y - b.Min.Y) / b.Height()
	if p.Lean < 0 {
		share = 1 - share
	}
	return p.Depth * min(1, max(0, share))
}

// Panel is a flat part: an outline with a thickness, holes through it, and
// pockets on its faces. The order of pockets has no meaning; they may overlap.
type Panel struct {
	Outline   Loop    // counter-clockwise, with marks of what others do at it
	Holes     []Loop  // counter-clockwise too
	Thickness float64 // mm
	Pockets   []Pocket
	// EdgeCuts are what was cut out of the blank, the rectangle of Length and Width, to
	// give the outline; a panel whose outline came about otherwise has none.
	EdgeCuts []EdgeCut
	// Bit is the diameter of the widest bit for which the outline is laid out; 0 where any
	// will do that gets in.
	Bit float64
}

// Length and Width are the panel's extents along x and y.
func (p Panel) Length() float64 { return p.Outline.Bounds().Width() }
func (p Panel) Width() float64  { return p.Outline.Bounds().Height() }

// Shaped reports whether the outline is more than a rectangle: it has fingers, notches or slots.
func (p Panel) Shaped() bool { return len(p.Outline) > 4 }

// OutsideOutline is the outline as the outside face has it, where walls that lean give it another one.
func (p Panel) OutsideOutline() Loop {
	out := slices.Clone(p.Outline)
	for _, k := range p.Pockets {
		b := k.Outline.Bounds()
		deep, shallow := b.Max.Y, b.Min.Y
		switch {
		case k.Lean == 0:
			continue
		case k.Lean < 0:
			deep, shallow = shallow, deep
		}
		for i, v := range p.Outline {
			if math.Abs(v.Y-deep) < Settle && v.X > b.Min.X-Settle && v.X < b.Max.X+Settle {
				out[i].Y = shallow
			}
		}
	}
	return out
}

// CutOn reports whether a pocket is cut from a face: through cuts from the one that
// they are stored on. Holes and the outline are not asked for.
func (p Panel) CutOn(f Face) bool {
	for _, k := range p.Pockets {
		if k.Face == f {
			return true
		}
	}
	return false
}
