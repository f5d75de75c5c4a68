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
	// Dividers and an insert with what is halved over each other, and drawer fronts.
	Dividers     []Divider     `json:"dividers,omitempty"`
	Crossings    []Crossing    `json:"crossings,omitempty"`
	Insert       *Insert       `json:"insert,omitempty"`
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
	Kind   string   `json:"kind"` // one of the words below
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
	Parts           int `json:"parts"`
	HeldByTabs      int `json:"held_by_tabs,omitempty"`       // that hang by bridges, to the waste or to parts that do
	MinTabs         int `json:"min_tabs,omitempty"`           // the fewest of them
	HeldByOnionSkin int `json:"held_by_onion_skin,omitempty"` // that an onion skin holds all round
	Loose           int `json:"loose,omitempty"`              // that nothing of the drawings holds
	HeldAtMarks     int `json:"held_at_marks,omitempty"`      // that a program is to hold by tabs, at marks
	MinMarks        int `json:"min_marks,omitempty"`          // the fewest marks of them
}

// Corner is the joint of a front or back with a side.
type Corner struct {
	End         string `json:"end"`
	Side        string `json:"side"`
	Fits        bool   `json:"fits"`
	Interlocked bool   `json:"interlocked"`       // held both ways, with a play
	Fingers     bool   `json:"fingers,omitempty"` // by fingers, up and down
	Clearance   Range  `json:"clearance"`         // below 0: by how much it is too thick
	Seat        string `json:"seat"`              // shoulder or floor, at the mean
	ShoulderGap Range  `json:"shoulder_gap"`
	FloorGap    Range  `json:"floor_gap"`
	Recess      Range  `json:"recess"`            // of the end behind the side's ends; proud below 0
	OpenGap     Range  `json:"open_gap,omitzero"` // at this side's shoulder, where the other side stops the end
	Laps        bool   `json:"laps"`              // the side's face and the end's end are meant to be level
	Lap         Range  `json:"lap"`               // how far the side stands proud there
}

// Bottom is the bottom at the parts about it.
type Bottom struct {
	Fits            bool     `json:"fits"`
	BottomFit       string   `json:"bottom_fit,omitempty"` // slide-in or applied; else in grooves
	Clearance       Range    `json:"clearance"`            // up and down, between all of them
	BottomClearance [2]Range `json:"bottom_clearance"`     // across and along the box
	Engagement      Range    `json:"engagement"`           // how deep it stands in the shallowest groove
	Height          Range    `json:"height"`               // of its underside above the lower edges
	// Gap is what stays open between it and the edges over it, where it is not in a
	// groove; below 0 by how much it lifts a back.
	Gap       Range    `json:"gap,omitzero"`
	BlockedBy []string `json:"blocked_by,omitempty"` // parts in the way of one that is slid in, at the mean
}

// Divider is a board between two parts.
type Divider struct {
	Name         string    `json:"name"`
	Between      [2]string `json:"between"`
	Fits         bool      `json:"fits"`
	Clearance    Range     `json:"clearance"`     // in both dados; below 0: by how much it is too thick
	EndClearance Range     `json:"end_clearance"` // along its length
	Engagement   Range     `json:"engagement"`    // how deep it stands in the shallower dado
	Height       Range     `json:"height"`        // of its lower edge above the bottom; below 0 it is lifted
	Removable    bool      `json:"removable"`     // it can be lifted out
}

// Crossing is where two dividers, or strips of an insert, are halved over each other.
type Crossing struct {
	A         string `json:"a"`
	B         string `json:"b"`
	Fits      bool   `json:"fits"`
	Clearance Range  `json:"clearance"` // in the tighter of the two slots
}

// Insert is a grid that stands loose on the bottom.
type Insert struct {
	Fits      bool     `json:"fits"`
	Clearance [2]Range `json:"clearance"` // across and along the box; below 0: by how much it is too large
	Height    Range    `json:"height"`    // above the bottom, as it was meant to stand
	Removable bool     `json:"removable"` // it can be lifted out
}

// DrawerFront is a front before the box's own.
type DrawerFront struct {
	Gap        Range `json:"gap"`         // that stays open between the two
	MinOverlap Range `json:"min_overlap"` // the least that they have in common, across or up
	ScrewHoles int   `json:"screw_holes"` // for its screws, through the box's front
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
	Placement Placement `json:"placement"`
}

// Cuttable reports whether the verdict lets a shop cut from the files.
func (p Proof) Cuttable() bool {
	return p.Verdict == Goes || p.Verdict == GoesBut || p.Verdict == GoesSome
}
