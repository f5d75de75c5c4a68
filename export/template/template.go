// Package template makes marking templates and gauges that a laser or a small router
// cuts from 3 to 6 mm hardboard, for those who cut joints by hand: plates that lie on
// a panel and show a knife where each wall of a dado, groove or rabbet comes, a story
// stick for the lines of slides, blocks to set fence and cutter by, and a gauge.
//
// A [Plate] is what should come out, in millimeters, x to the right and y up, its
// lower left corner at 0, 0. What the cutter takes away is made up for afterward
// (package kerf). [Panels], [Stick], [Blocks] and [Gauge] make plates, [Plate.Split]
// those that fit the bed, [Draw] and [Cut.Picture] their files.
package template

import "drawerwright/geom"

// Plate is one template, gauge or block.
type Plate struct {
	Name     string   // for files
	Title    string   // for people
	Parts    []string // that it serves
	Count    int
	Outline  geom.Loop
	Openings []geom.Loop     // that mark or gauge
	Holes    []Hole          // that a print has no use for
	Engrave  [][]geom.Vertex // open paths, scored
	Words    []Word
	Notes    []string // how it is used
	// Origin is where the panel's lower left corner is, as the face is seen that the
	// plate lies on; of a plate in pieces it can be beyond the piece.
	Origin geom.Point
	// seams are where a plate that is too large may be parted: nothing is cut there.
	seams [2][]float64
	round float64 // radius of the corners of keys
	// Unit is what is said of the plate, and printed on it, in.
	Unit geom.Unit
	// paper is how a print of it is used, nothing where it is of no use, and edges are those of the panel
	// that it lies on, from Origin on, which a print shows: it has neither dowels nor strips.
	paper []string
	edges [][]geom.Vertex
	lip   bool // strips are glued along the edges, which are scored for them
	// dowels is what the notes say of the dowels in its holes, nothing without.
	dowels string
	// stamp is the place for the words that report whether the kerf is made up for.
	stamp Word
}

// Hole is a round hole by which a plate is held.
type Hole struct {
	geom.Loop
	Dowel bool // of a dowel that bears on the panel's edge; else to hang it by
}

// cuts are all loops that are cut out of a plate.
func (p Plate) cuts() []geom.Loop {
	list := make([]geom.Loop, 0, len(p.Holes)+len(p.Openings))
	for _, h := range p.Holes {
		list = append(list, h.Loop)
	}
	return append(list, p.Openings...)
}

// lines are all open paths that are scored, but for letters.
func (p Plate) lines() [][]geom.Vertex {
	if p.lip {
		return append(p.Engrave[:len(p.Engrave):len(p.Engrave)], p.edges...)
	}
	return p.Engrave
}

// Word is a line of letters made of single strokes, on a base line from At; Quarter is
// 1 for one that runs up.
type Word struct {
	Text    string
	At      geom.Point
	Height  float64
	Quarter int
}

// Register is what a template stops against the edges of a panel with.
type Register uint8

const (
	Pins Register = iota // dowels in holes, two at the lower edge and one at the end
	Lip                  // strips glued under the plate
)

// Options of templates. Lengths are in mm.
type Options struct {
	Job       string
	Thickness float64    // of the plates
	MinBridge float64    // the narrowest slot that can be cut: the kerf, or the bit
	Mark      float64    // width of a slot to mark in
	Bed       geom.Point // what the cutter's bed holds, either way round
	Register  Register
	Pin       float64 // diameter of the dowels
	Dowel     string  // what one of that diameter is sold as
	FullHoles bool    // holes are guides for their own drill, not for a pilot
	Unit      geom.Unit
}

// text is a length of what is bought or marked, with its unit; set one that a machine is set to or that
// is checked.
func (o Options) text(mm float64) string { return geom.LengthOf(mm).Text(o.Unit) }
func (o Options) set(mm float64) string {
	return geom.LengthOf(mm).AsSet(o.Unit) + " " + o.Unit.String()
}

// slot is how wide the slots are.
func (o Options) slot() float64 { return max(o.Mark, o.MinBridge+slotRoom) }

// Measures of templates, in mm (common practice, no source).
const (
	slotRoom = 0.2  // a slot is wider than what cuts it
	bridge   = 6.0  // between the parts of a long slot
	minRib   = 2.5  // between any two cuts: more than the least bridge that is warned of
	longest  = 70.0 // part of a slot
	shortest = 4.0  // part of a slot that is worth cutting
	overhang = 14.0 // of the plate over the panel's far end and upper edge
	beside   = 8.0  // of wood about a pin's hole
	pilot    = 2.5  // hole for a pilot bit or an awl
	hangHole = 7.0
	letters  = 6.0 // the largest
	minWord  = 2.5 // the smallest that is engraved
)

// Settings that diagnoses are about; see [Options].
const (
	SettingBed      geom.Setting = "bed"
	SettingPin      geom.Setting = "pin-diameter"
	SettingRegister geom.Setting = "register"
)

// RegisterLip is the word for [Lip] in a remedy of [SettingRegister].
const RegisterLip = "lip"

// codeTemplate is that of all that templates cannot do for a job.
const codeTemplate geom.Code = "template"

// withLip is the remedy that needs no pins.
var withLip = []geom.Remedy{{Changes: []geom.Change{{Setting: SettingRegister, Word: RegisterLip}}}}
