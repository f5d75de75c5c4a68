package joinery

import (
	"fmt"

	"drawerwright/geom"
)

// CheckCode names a measure of the finished box: stable, for programs and report.json.
type CheckCode string

// The measures that this package checks, and the clearances of bottom and insert, which the
// package fit checks with what lengths are off. All are in mm.
const (
	// of a tongue in its dado: width of the slot less the tongue's thickness
	CheckTongueClearance CheckCode = "tongue-clearance"
	// of front or back behind the ends of the sides, pushed outward; below 0 it is proud
	CheckRecess CheckCode = "recess"
	// of the sides' faces behind the ends of front or back; below 0 they are proud
	CheckLap              CheckCode = "lap"
	CheckBackClearance    CheckCode = "back-clearance"    // of a housed back in its dados
	CheckFingerClearance  CheckCode = "finger-clearance"  // of fingers in their notches
	CheckDividerClearance CheckCode = "divider-clearance" // of a divider in its dados
	CheckGrooveClearance  CheckCode = "groove-clearance"  // of what stands in the bottom's groove
	// of a flush bottom over the lower edges; below 0 it hangs down
	CheckBottomFlush  CheckCode = "bottom-flush"
	CheckOutsideWidth CheckCode = "outside-width" // of the box over its sides
	CheckOutsideDepth CheckCode = "outside-depth" // over its sides, and what stands proud of their ends

	CheckBottomClearance      CheckCode = "bottom-clearance"       // from side to side
	CheckBottomClearanceDepth CheckCode = "bottom-clearance-depth" // from front to back
	CheckInsertClearance      CheckCode = "insert-clearance"       // of a loose insert, from side to side
	CheckInsertClearanceDepth CheckCode = "insert-clearance-depth" // from front to back
)

// BySetting reports whether fence, height and cutter make the measure, and not lengths
// that are cut to the list.
func (c CheckCode) BySetting() bool {
	switch c {
	case CheckTongueClearance, CheckRecess, CheckLap, CheckBackClearance, CheckFingerClearance, CheckGrooveClearance, CheckBottomFlush:
		return true
	}
	return false
}

// CheckID tells the measures of one drawer apart.
type CheckID struct {
	Code CheckCode
	Part Role // empty for the whole box
	// Item is the number in the job, from 1, where several parts of a role have a check
	// each, as dividers; 0 else.
	Item int
	// Seat is how the bottom sits of whose play it is, captured or flush; empty else.
	Seat BottomFit
}

// MarshalText writes an ID as a key of JSON.
func (id CheckID) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "%s/%s/%d/%s", id.Code, id.Part, id.Item, id.Seat), nil
}

// Spreads are by how much measures come out beside what the cuts are set for: Min is 0 or
// below, Max 0 or above.
type Spreads map[CheckID]geom.Interval
