package present

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// frameText says how the web frames of a cabinet are made and fixed, and how much wood they take; nothing without.
func frameText(c record.Cabinet, u geom.Unit) []string {
	find := func(part opening.StripPart) int {
		return slices.IndexFunc(c.Strips, func(s record.Strip) bool { return s.Part == string(part) })
	}
	at := find(opening.BackRail)
	if at < 0 {
		return nil
	}
	rail, panel, panels := c.Strips[at], 0.0, "no panel"
	if i := find(opening.DustPanel); i >= 0 {
		panel, panels = c.Strips[i].Height.MM(), "the dust panel dry"
	}
	behind := c.Opening.Depth - rail.From - rail.Width
	wood, sheet := 0.0, 0.0
	for _, s := range c.Strips {
		face := float64(s.Quantity) * s.Length.MM() * s.Width.MM()
		switch opening.StripPart(s.Part) {
		case opening.FrontRail, opening.BackRail, opening.Runner:
			wood += float64(face * s.Height.MM())
		case opening.DustPanel:
			sheet += face
		}
	}
	quantity, unit := record.Bulk(wood, u)
	takes := fmt.Sprintf("The frames take %g %s of planed wood", quantity, unit)
	if sheet > 0 {
		area, of := words.Area(sheet, u)
		takes += fmt.Sprintf(" and %.2f %s of sheet", area, of)
	}
	return []string{
		fmt.Sprintf("Web frames: front and back rail reach from side to side of the cabinet, one of each to a frame, "+
			"the runners stand between them. A groove %s %s wide and %s deep in the inner edges of all four, in the "+
			"middle of their thickness, takes the runners' stub tenons, which are as long, and %s. Glue the tenons "+
			"with the frame flat and its diagonals equal.",
			caliper(record.Length(opening.FrameGroove(panel, rail.Height.MM())), u), u,
			caliper(record.Length(opening.FrameTenon(u)), u), panels),
		fmt.Sprintf("A frame is screwed to the cabinet through its runners, as below: the front screw holds it, the "+
			"others stand in slots, and nothing of it is glued to the cabinet, so that sides of solid wood can move "+
			"along it. Keep the %s %s behind it free for that.", caliper(behind, u), u),
		takes + ", without waste.",
	}
}
