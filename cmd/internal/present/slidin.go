package present

import (
	"bytes"
	"fmt"
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// SlidInSheet says how bottoms of sheet stock that are slid in from behind are held.
const SlidInSheet = "Hold it with screws up into the back."

// SlidInSolid says how bottoms of solid wood that are slid in from behind are held.
func SlidInSolid(b batch.Batch) string {
	text := "It is of solid wood and has to move: a spot of glue in the middle of the front's groove and nowhere else, then pan-head screws with washers through the slots up into the back, tight enough to hold and loose enough to slide."
	if out := bottomOut(b); out > 0 {
		text += fmt.Sprintf(" In the dampest air it stands out behind the back by up to %s: leave that free.", geom.LengthOf(out).Text(b.Units))
	}
	return text
}

// bottomOut is the most by which a bottom of the batch swells out behind its back.
func bottomOut(b batch.Batch) (most float64) {
	for _, d := range b.Drawers {
		if d.Spec.Bottom.Solid {
			most = math.Max(most, d.BottomOut)
		}
	}
	return most
}

// slidIn prints how bottoms of solid wood that are slid in are held, where there are any.
func slidIn(out *bytes.Buffer, b batch.Batch) {
	for _, d := range b.Drawers {
		if d.Spec.BottomFit == joinery.BottomSlidIn && d.Spec.Bottom.Solid {
			fmt.Fprintf(out, "\nThe bottom is slid in when the box is glued. %s\n", SlidInSolid(b))
			return
		}
	}
}
