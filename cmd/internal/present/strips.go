package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// StripTable is the strips of wood for the drawers of a cabinet on wooden runners, from the top down.
func StripTable(c record.Cabinet, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("strip"), Words("for"), Numbers("pieces"), In("length", unit), In("width", unit),
		In("height", unit), In("lower edge at", unit), In("front end at", unit))
	t.UnitOnce = true
	for _, s := range c.Strips {
		t.Add(s.Part, s.Drawer, fmt.Sprint(s.Quantity), byRule(s.Length, u), byRule(s.Width, u), byRule(s.Height, u),
			byRule(s.Bottom, u), byRule(s.From, u))
	}
	return t
}

// StripText says how strips lie, and how they are fixed.
func StripText(c record.Cabinet, u geom.Unit) []string {
	said := []string{"Strips are of straight wood, its grain along their length, half of them for each side. Heights " +
		"are over the opening's lower edge, front ends behind the cabinet's front edge."}
	said = append(said, frameText(c, u)...)
	if !slices.ContainsFunc(c.Strips, func(s record.Strip) bool {
		return s.Part == string(opening.Kicker) && s.Drawer == c.Rows[0].Drawer
	}) {
		said[0] += " The uppermost box tips against what is over the opening: it has to reach over the boxes' sides."
	}
	if len(SeasonTable(c, u).Rows) > 0 {
		said = append(said, "A drawer that is pulled out by half drops by as much as is free over it, up to the "+
			"kicker or runner above.")
	}
	if len(c.Slots) < 2 {
		return append(said, "Where the cabinet's sides are of solid wood they move along the runners: a round hole "+
			"for the front screw alone, slots for the others, and no glue behind it.")
	}
	var long []string
	for _, s := range c.Slots[1:] {
		long = append(long, caliper(s, u))
	}
	return append(said, "The cabinet's sides of solid wood move along runners and kickers: a round hole for the front "+
		"screw, slots for the others, from the front to the back longer than the screw is thick by "+
		strings.Join(long, ", ")+" "+u.String()+"; no glue behind the front screw.")
}

// SeasonTable is what is free over the boxes of a cabinet on wooden runners.
func SeasonTable(c record.Cabinet, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("drawer"), In("free over it now", unit), In("in the dampest air", unit),
		In("in the driest air", unit))
	t.UnitOnce = true
	for _, r := range c.Rows {
		if o := r.Over; o != nil {
			t.Add(r.Drawer, caliper(o.Now, u), caliper(o.Dampest, u), caliper(o.Driest, u))
		}
	}
	return t
}
