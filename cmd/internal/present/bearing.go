package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Bearing says in a sentence or two what a drawer weighs, what its slides carry, and how its
// bottom bears the load; empty where nothing of that is known or asked for. It is said of every
// load, not only of one that is too much.
func Bearing(d record.Drawer, u geom.Unit) string {
	var said []string
	if d.Weight > 0 {
		box := "The box weighs " + words.Weight(d.Weight, u)
		if d.Load > 0 {
			box += ", loaded " + words.Weight(d.Weight+d.Load, u)
		}
		if d.Rating > 0 {
			box += "; such slides carry " + words.Rating(d.Rating, u)
		}
		said = append(said, box+".")
	}
	switch s := d.Sag; {
	case s != nil && d.Load > 0:
		said = append(said, fmt.Sprintf("Under %s the bottom sags by %s %s, in years by up to %s; %s is 1/200 of its span.",
			words.Given(d.Load, u), between(s.Clamped, s.Simple, u), u, caliper(s.LongTerm, u), caliper(s.Limit, u)))
	case d.Load > 0:
		said = append(said, "How far the bottom sags is not known: its stock says no material.")
	}
	return strings.Join(said, " ")
}
