package present

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// SlideInSheet says how bottoms of sheet stock that are slid in from behind are held: pushed further their holes
// would not stand under the middle of the back.
const SlideInSheet = SlideInLevel + " Hold it with screws up into the back. " + EdgeScrews

// SlideInLevel says how far bottoms are slid in.
const SlideInLevel = "Its rear edge comes level with the back's rear face, its clearance stays in the box front's " +
	"groove."

// EdgeScrews says what is bored for screws into the edge of a board, which they split without it: common practice, no
// source.
const EdgeScrews = "For each screw bore a pilot hole into the edge first, in its middle, as wide as the screw's core " +
	"between the threads."

// SlideInSolid says how bottoms of solid wood that are slid in from behind are held, of which one swells out behind
// its back by so much at most.
func SlideInSolid(most record.Length, u geom.Unit) string {
	text := SlideInLevel + " It is of solid wood and has to move: a spot of glue in the middle of the box front's " +
		"groove and " +
		"nowhere else, then pan-head screws with washers through the slots up into the back, " +
		"tight enough to hold and loose enough to slide. " + EdgeScrews
	if most > 0 {
		text += fmt.Sprintf(" In the dampest air it stands out behind the back by up to %s: leave that free.",
			of(most).Text(u))
	}
	return text
}

// slidIn prints how bottoms of solid wood that are slid in are held, where there are any.
func slidIn(out *Printed, r record.Kept) {
	if slices.ContainsFunc(r.Drawers, func(d record.Drawer) bool { return d.SlideInSolid }) {
		most := record.Length(0)
		for _, d := range r.Drawers {
			most = max(most, d.BottomOut)
		}
		fmt.Fprintf(out, "\nThe bottom is slid in when the box is glued. %s\n", SlideInSolid(most, r.Unit()))
	}
}
