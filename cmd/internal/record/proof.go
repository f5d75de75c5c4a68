package record

import "fmt"

// Proof is what the drawings of one drawer, read back and cut virtually, make of
// it.
type Proof struct {
	Drawer  string  `json:"drawer"`
	Verdict string  `json:"verdict"` // one of the verdicts below
	Faults  []Fault `json:"faults"`  // of the files
	// FailsWith are the boards with which a box does not go together that does at
	// the mean.
	FailsWith []Reading `json:"fails_with,omitempty"`
	// Remarks say in words what is out of the limits of the fit, or what keeps the
	// box from being one.
	Remarks []string `json:"remarks,omitempty"`
	// The joints, with the least and the greatest over the readings.
	Corners []Corner `json:"corners"`
	Bottom  *Bottom  `json:"bottom,omitempty"`
	// Dividers with what is halved over each other, and drawer fronts.
	Dividers     []Divider     `json:"dividers,omitempty"`
	Crossings    []Crossing    `json:"crossings,omitempty"`
	DrawerFronts []DrawerFront `json:"drawer_fronts,omitempty"`
	// The box as it comes out. Rack is how far the two diagonals can differ before
	// the glue has set.
	Width    Range     `json:"width"` // the wider of front and back
	Taper    Range     `json:"taper"` // the front's width less the back's
	Depth    Range     `json:"depth"`
	Height   Range     `json:"height"`
	Diagonal Range     `json:"diagonal"`
	Rack     Range     `json:"rack"`
	Overlaps []Overlap `json:"overlaps"` // at the mean of the readings
	// Cuts and Assembled are for those who check the proof; a build leaves them out.
	Cuts      []Cut   `json:"cuts,omitempty"`
	Assembled []Piece `json:"assembled,omitempty"`
}

// Verdicts of a proof, from the best to the worst.
const (
	Goes      = "goes together"
	GoesBut   = "goes together, out of limits"
	GoesSome  = "goes together, not with every board"
	GoesNot   = "does not go together"
	FilesFail = "files at fault"
)

// Reading is a thickness of a stock.
type Reading struct {
	Stock     string `json:"stock"`
	Thickness Length `json:"thickness"`
}

// Range is a length at the mean of the readings, and its extremes over them.
type Range struct {
	Mean Length `json:"mean"`
	Min  Length `json:"min"`
	Max  Length `json:"max"`
}

// Fault is a mistake in a drawing.
type Fault struct {
	Code    string `json:"code"`
	Part    string `json:"part"`
	File    string `json:"file"`
	Line    int    `json:"line"` // of the file; 0 where it is about the whole
	Page    int    `json:"page,omitempty"`
	Message string `json:"message"`
	Hint    string `json:"hint"`
}

// Place is where a fault is, as file:line, or the page of a packet.
func (f Fault) Place() string {
	switch {
	case f.Line > 0:
		return fmt.Sprintf("%s:%d", f.File, f.Line)
	case f.Page > 0:
		return fmt.Sprintf("%s, page %d", f.File, f.Page)
	}
	return f.File
}

// Checked is what came of reading one thing back that a build wrote: a sheet's drawings, a
// solid, a scene, a cabinet, a template, a table.
type Checked struct {
	What   string   `json:"what"` // one of the words below
	Name   string   `json:"name"`
	Faults []Fault  `json:"faults"`
	Sheet  *OnSheet `json:"sheet,omitempty"`
}

// What is checked.
const (
	CheckedSheet    = "sheet"
	CheckedSolid    = "solid"
	CheckedBox      = "box"
	CheckedScene    = "scene"
	CheckedCabinet  = "cabinet"
	CheckedTemplate = "template"
	CheckedTable    = "table"
	CheckedDocument = "document"
	CheckedPictures = "pictures"
)

// OnSheet says how the parts of a sheet are held when all is cut.
type OnSheet struct {
	Parts   int `json:"parts"`
	Tied    int `json:"tied,omitempty"`    // that hang by bridges, to the waste or to parts that do
	Bridges int `json:"bridges,omitempty"` // the fewest of them
	Skin    int `json:"skin,omitempty"`    // that an onion skin holds all round
	Loose   int `json:"loose,omitempty"`   // that nothing of the drawings holds
	Marked  int `json:"marked,omitempty"`  // that a program is to hold by tabs, where the drawing marks them
	Marks   int `json:"marks,omitempty"`   // the fewest marks of them
}

// Corner is the joint of a front or back with a side.
type Corner struct {
	End         string `json:"end"`
	Side        string `json:"side"`
	Goes        bool   `json:"goes"`
	Captured    bool   `json:"captured"`          // held both ways, with a play
	Fingers     bool   `json:"fingers,omitempty"` // by fingers, up and down
	Play        Range  `json:"play"`              // below 0: by how much it is too thick
	Seat        string `json:"seat"`              // shoulder or floor, at the mean
	ShoulderGap Range  `json:"shoulder_gap"`
	FloorGap    Range  `json:"floor_gap"`
	Recess      Range  `json:"recess"`        // of the end behind the side's ends; proud below 0
	Open        Range  `json:"open,omitzero"` // between the end and this side's shoulder, where the other side stops it
	Laps        bool   `json:"laps"`          // the side's face and the end's end are meant to be level
	Lap         Range  `json:"lap"`           // how far the side stands proud there
}

// Bottom is the bottom at its walls.
type Bottom struct {
	Goes   bool     `json:"goes"`
	Fit    string   `json:"fit,omitempty"` // slide-in or applied; else in grooves
	Play   Range    `json:"play"`          // up and down, between all its walls
	Slack  [2]Range `json:"slack"`         // across and along the box
	Hold   Range    `json:"hold"`          // how deep it stands in the shallowest groove
	Height Range    `json:"stand"`         // of its underside above the lower edges
	// Gap is what stays open between it and the edges over it, where it is not in a
	// groove; below 0 by how much it lifts a back.
	Gap     Range    `json:"gap,omitzero"`
	Blocked []string `json:"blocked,omitempty"` // walls in the way of one that is slid in, at the mean
}

// Divider is a board between two walls.
type Divider struct {
	Name   string    `json:"name"`
	Walls  [2]string `json:"walls"`
	Goes   bool      `json:"goes"`
	Play   Range     `json:"play"`  // in both dados; below 0: by how much it is too thick
	Slack  Range     `json:"slack"` // along its length
	Hold   Range     `json:"hold"`  // how deep it stands in the shallower dado
	Height Range     `json:"stand"` // of its lower edge above the bottom; below 0 it is lifted
	Lifts  bool      `json:"lifts"` // it can be lifted out
}

// Crossing is where two dividers are halved over each other.
type Crossing struct {
	A    string `json:"a"`
	B    string `json:"b"`
	Goes bool   `json:"goes"`
	Play Range  `json:"play"` // in the tighter of the two slots
}

// DrawerFront is a front before the box's own.
type DrawerFront struct {
	Gap    Range `json:"gap"`    // that stays open between the two
	Covers Range `json:"covers"` // the least that they have in common, across or up
	Holes  int   `json:"holes"`  // for its screws, through the box's front
}

// Overlap is what two pieces have in common where they stand.
type Overlap struct {
	A      string  `json:"a"`
	B      string  `json:"b"`
	Volume float64 `json:"volume_mm3"`
}

// Cut is one virtual cut: what was drawn within the panel, the part of it that the bit
// reached, in square millimeters, and how far it reaches past the panel's edges.
type Cut struct {
	File    string  `json:"file"`
	Layer   string  `json:"layer"`
	Line    int     `json:"line"`
	Bit     Length  `json:"bit"`
	Drawn   float64 `json:"drawn_mm2"`
	Reached float64 `json:"reached_mm2"`
	Swept   float64 `json:"swept_mm2"` // beyond the panel too
	Beyond  Length  `json:"beyond"`
}

// Piece is a part as it stands in the assembled box.
type Piece struct {
	Name      string    `json:"name"`
	Part      string    `json:"part"`
	Placement Placement `json:"stand"`
}

// Cuttable reports whether the verdict lets a shop cut from the files.
func (p Proof) Cuttable() bool {
	return p.Verdict == Goes || p.Verdict == GoesBut || p.Verdict == GoesSome
}
