// Package mill turns a panel into what a router has to cut: which bit makes each
// pocket, how far the cuts run past the panel's edge, where a corner needs relief,
// how the panel is held and how it is turned over. [Prepare] is the one entry.
//
// Everything is in panel coordinates and millimeters, whichever the face; the
// drawing turns the outside face over.
package mill

import (
	"strconv"

	"drawerwright/geom"
)

// Bit is a round router bit.
type Bit struct {
	Name     string
	Diameter float64
	Reach    float64 // how deep it can cut; 0 when not said
	Flutes   int     // 0 when not said
	Tool     int     // its number in the machine; 0 when not said
	Engraves bool    // it cuts numbers, and nothing else
	Feeds
}

// ToolName is T and its number, or its name where it has none.
func (b Bit) ToolName() string {
	if b.Tool > 0 {
		return "T" + strconv.Itoa(b.Tool)
	}
	return b.Name
}

// Relief is the shape that lets a square corner into a corner cut by a round bit.
type Relief string

const (
	ReliefDogbone Relief = "dogbone" // a round on the corner's bisector: the least wood
	ReliefTBone   Relief = "t-bone"  // a round through the shorter side: hidden where that side is
	ReliefNone    Relief = "none"    // the corner stays round, so that no square part may go there
)

// Relieved are the operations whose corners may take a square part.
var Relieved = []string{geom.Dado.String(), geom.Groove.String(), geom.Rabbet.String(), geom.Cutout.String(), Profile}

// Slots says how a slot is drawn that is just as wide as its bit.
type Slots string

const (
	SlotsWidened    Slots = "widened"    // as a pocket, [SlotRoom] wider than the bit
	SlotsCenterline Slots = "centerline" // as the line that the bit's center follows
)

// Place says where registration holes are.
type Place string

const (
	PlaceWaste      Place = "waste"      // beyond both ends of the panel
	PlaceCenterline Place = "centerline" // on the panel, on the axis about which it is turned over
)

// Register are the two holes that a panel is put down on when it has been turned
// over. A Diameter or Distance of 0 is chosen.
type Register struct {
	Place    Place
	Diameter float64
	Distance float64 // from the panel's edge to the hole's center
}

// Settings of a router.
type Settings struct {
	Bits           []Bit             // none for a panel that is sawn, which is drawn as it is
	Overcut        float64           // how much further than its radius a bit runs past the edge
	Relief         Relief            // of all operations but for
	Reliefs        map[string]Relief // those that have one of their own; nil for none
	Slots          Slots
	FromSpoilboard bool // depths are given as the wood left
	Register       Register
	Tabs           Tabs
	OnionSkin      float64   // left under the outline of small panels; 0 is none
	SmallPart      float64   // the side of the square below whose area a panel is small
	PartSpacing    float64   // between panels on a sheet; 0 when not said
	IntoSpoilboard float64   // how far cuts that go through go on into the spoilboard
	Engrave        Engrave   // numbers
	Unit           geom.Unit // in which lengths are chosen and remedies are round
}

// ReliefOf is the relief of an operation's corners.
func (s Settings) ReliefOf(operation string) Relief {
	if own, said := s.Reliefs[operation]; said {
		return own
	}
	return s.Relief
}

// Part is a panel with the least and the greatest thickness of its boards.
type Part struct {
	geom.Panel
	MinThickness, MaxThickness float64
	Engraving                  *Engraving // nil for none
}

// Operations beside the kinds of pockets.
const (
	Profile     = "profile"  // the outline, cut outside the line
	Registering = "register" // holes to put the turned panel down on
	Slotting    = "slot"     // right through beside the outline, between tabs and after it
)

// Cut is one closed line, or one open path of a bit's center, on one face.
type Cut struct {
	Operation string // a pocket's kind, or one of the operations above
	Face      geom.Face
	Depth     float64 // from its face
	Remaining float64 // of the wood under it; 0 where it goes through
	Below     float64 // how far it goes on into the spoilboard, where its depth includes that
	// Overcut is how far below a board of the panel's thickness a cut that goes through has to
	// end, so that it does in the thickest: that much more, and into the spoilboard. Where
	// depths are from the spoilboard it is that last alone.
	Overcut float64
	Bit     int // index into Settings.Bits; -1 for a saw
	Outline geom.Loop
	Path    []geom.Vertex // instead of an outline
	Pocket  int           // index into the panel's pockets; -1 where it is none of them
}

// IntoSpoilboard reports whether the cut goes through the panel.
func (c Cut) Through() bool { return c.Remaining == 0 }

// Operations is a panel ready for the router.
type Operations struct {
	// Cuts of both faces; the outline is the last, but for the slots between tabs.
	Cuts []Cut
	// Faces in the order in which they are cut. A panel cut on both is turned
	// over once, and cut out of its sheet last.
	Faces []geom.Face
	// Beyond is how far the pockets reach past the panel's bounds at most, Reach how far
	// these or the bit that cuts the panel out do, and Gap the room for that as it is
	// drawn. Panels lie [MinWaste] further apart than Reach.
	Beyond, Reach, Gap float64
	// EndGap is Gap beyond the panel's ends, where registration holes may be. Pins
	// are these holes, for the faces that are cut when pins stand in them.
	EndGap float64
	Pins   []geom.Loop
	// Tabs are where tabs are to stand that a program makes, beside the outline.
	Tabs  []geom.Loop
	Small bool
	// Engraved is where the panel's engraving is, nil where none was asked for.
	Engraved *Engraved
	// Uses are the settings that had a say in the work, each once.
	Uses []Use
	// Sides are where tabs may stand on the sides of the box about the panel, from its
	// lower left corner, along x or y: the bottom, the right, the top and the left one. None for a panel
	// that is not held by tabs.
	Sides [4][]geom.Interval
}

// TurnedOver reports whether the panel has to be turned over.
func (w Operations) TurnedOver() bool { return len(w.Faces) == 2 }

// preparation gathers a panel's work.
type preparation struct {
	Settings
	part    Part
	bits    []int     // indices into Bits, the widest first
	outline int       // the bit that cuts the panel out; -1 for none
	drawn   geom.Loop // the outline with its relief
	work    Operations
	found   geom.Diagnoses
}

// Prepare works a panel out for a router. With an error among the diagnoses the work
// is not to be cut; their remedies have not been tried. The panel keeps the rules of
// [geom.Panel.Check].
func Prepare(part Part, s Settings) (Operations, []geom.Diagnosis) {
	p := &preparation{Settings: s, part: part}
	p.sortBits()
	p.faces()
	for i := range part.Pockets {
		p.pocket(i)
	}
	for _, h := range part.Holes {
		p.hole(h)
	}
	p.outline, p.drawn = -1, part.Outline
	if len(p.bits) > 0 {
		p.outline = p.outlineBit()
		p.beyond()
		if p.work.TurnedOver() {
			p.register()
		}
		p.checkSpacing()
	}
	p.engrave()
	p.profile()
	p.over()
	p.frays()
	return p.work, p.found
}
