package prove

import (
	"fmt"

	"drawerwright/geom/proof"
)

// lossText says what does not hold a box any more.
func (w *Worker) lossText(l proof.Loss) string {
	measured, slack := w.text(l.Measured), w.text(l.Clearance)
	switch l.Kind {
	case proof.NotHeld:
		return fmt.Sprintf("nothing holds the %s in the %s", l.Piece, l.At)
	case proof.MuchClearance:
		return fmt.Sprintf("the %s has %s of clearance in the %s: more than glue fills", l.Piece, measured, l.At)
	case proof.ShoulderOpen:
		return fmt.Sprintf("between %s and %s a shoulder stays open by %s: more than glue bridges",
			l.Piece, l.At, measured)
	case proof.OffShoulder:
		return fmt.Sprintf("the %s stays off the shoulder of the %s by %s: more than glue bridges",
			l.Piece, l.At, measured)
	case proof.OffCleat:
		return fmt.Sprintf("the bottom lies on %s of the cleat of the %s and drops off it when it is pushed away: "+
			"its clearance is %s",
			measured, l.At, slack)
	case proof.NotUnder:
		return fmt.Sprintf("the bottom does not reach under the %s", l.At)
	case proof.GapOver:
		return fmt.Sprintf("between the bottom and the edge of the %s a gap stays open by %s: more than glue bridges",
			l.At, measured)
	case proof.NotInGroove:
		return fmt.Sprintf("the bottom does not reach the groove of the %s", l.At)
	case proof.DropsOut:
		return fmt.Sprintf("the bottom stands %s deep in the %s and drops out when it is pushed away: its clearance is %s",
			measured, l.At, slack)
	case proof.DividerDrops:
		return fmt.Sprintf("the %s stands %s deep in the %s and drops out when it is pushed away: its clearance is %s",
			l.Piece, measured, l.At, slack)
	case proof.DividerClearance:
		return fmt.Sprintf("the %s has %s of clearance in its dados", l.Piece, measured)
	case proof.DividerStands:
		return fmt.Sprintf("the %s stands %s above the bottom", l.Piece, measured)
	case proof.DividerStays:
		return fmt.Sprintf("the %s is loose and cannot be lifted out", l.Piece)
	case proof.RailsApart:
		return fmt.Sprintf("the middles of %s and %s are %s apart, and the hooks of the folders are not", l.Piece, l.At,
			measured)
	case proof.FolderDrags:
		return fmt.Sprintf("the upper edge of %s is %s over the bottom: the folders touch it", l.Piece, measured)
	case proof.FolderProud:
		return fmt.Sprintf("the upper edge of %s is %s below the box's: the folders stand out over it", l.Piece,
			measured)
	case proof.StripFalls:
		return fmt.Sprintf("nothing crosses the %s and stands it up", l.Piece)
	case proof.InsertStands:
		return fmt.Sprintf("the insert stands %s above the bottom", measured)
	case proof.InsertStays:
		return "the insert cannot be lifted out"
	case proof.FrontOff:
		return "the drawer front does not lie on the box front"
	case proof.FrontGap:
		return fmt.Sprintf("between drawer front and box front a gap stays open by %s", measured)
	}
	return "the box front has no hole for a screw behind the drawer front"
}
