package present

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// heldKeys says to whom nothing holds what keys of the job file do; empty where all is held.
func heldKeys(k record.SheetStock) string {
	for _, s := range k.Sheets {
		for _, p := range s.Placements {
			if p.Held != nil && p.Held.By == "nothing" {
				return "`tabs: {}` in the section router holds parts by tabs; `onion-skin:` those that are smaller " +
					"than `small-part`, or have no room for tabs."
			}
		}
	}
	return ""
}

// SheetNotes say how a router's sheets are laid down and turned over, what holds their
// parts, and where nothing is cut.
func SheetNotes(k record.SheetStock, u geom.Unit) (list []string) {
	if !k.Routed {
		return nil
	}
	say := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	counts, least := make(map[string]int), 0
	for _, s := range k.Sheets {
		for _, p := range s.Placements {
			if p.Held == nil {
				continue
			}
			counts[p.Held.By] += s.Count
			if t := p.Held.Tabs; p.Held.By == "tabs" && (least == 0 || t < least) {
				least = t
			}
		}
	}
	if n := counts["tabs"]; n > 0 {
		say("%s by tabs, each by %d at least: to the waste round the parts, or to a part beside it that is tied to "+
			"that. Leave screws and clamps in the waste until all is cut.", are(n), least)
	}
	if n := counts["onion-skin"]; n > 0 {
		say("%s by an onion skin, which no slot of another part enters.", are(n))
	}
	if n := counts["nothing"]; n > 0 {
		say("%s by nothing in the drawings: hold the sheet down by vacuum, or screw each part down where nothing "+
			"is cut. Tabs would hold them too; an onion skin holds only small parts, and those without room for tabs.",
			are(n))
	}
	zero := "Zero is the lower left corner of the sheet as it lies at first."
	if t := k.FlipOn; t != nil {
		zero += " Keep this zero after turning: where the sheet is shorter than listed, its new corner lies beside it."
		switch {
		case t.On == job.FlipOnStops:
			say("Turn the sheet over end for end on stops: two along its lower edge; one at the left end for the "+
				"first face, and for the second one at the right end, %s from zero, at which the same end lies "+
				"again.", caliper(k.Sizes[firstUsed(k)].Length, u)+" "+u.String())
		default:
			hole, _ := words.Drill(t.HoleDiameter.MM(), u)
			say("Turn the sheet over end for end on %s of %s: REGISTER drills their holes, %s from the ends as "+
				"listed, which leaves wood before the end of the shortest "+
				"sheet.", words.Count(len(t.Pins), "pin", "pins"), hole, caliper(t.Pins[0][0], u))
		}
	}
	list = append(list, zero)
	if len(k.KeepOut) > 0 {
		say("Nothing is cut in %s to keep out of; parts lie in the largest rectangle clear of them.",
			words.Count(len(k.KeepOut), "area", "areas"))
	}
	return list
}

// Unheld says, before a sheet is cut, what is to be done for parts that nothing in the drawings holds; empty where all
// are held.
func Unheld(s record.LaidSheet) string {
	n := 0
	for _, p := range s.Placements {
		if p.Held != nil && p.Held.By == "nothing" {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%s by nothing once the profile is through: before it is cut screw each down where nothing is cut, "+
		"or hold the sheet by vacuum that is enough for the smallest part.", are(n))
}

// HeldBy says in few words what holds some pieces on a sheet: by how many tabs each hangs, and
// how many pieces are held in which way where it is not the same for all.
func HeldBy(pieces []record.SheetPlacement) string {
	count, tabs := make(map[string]int), make(map[string][2]int)
	for _, p := range pieces {
		if p.Held == nil {
			continue
		}
		way := p.Held.Text
		if n := p.Held.Tabs; n > 0 {
			way = p.Held.By
			have, ok := tabs[way]
			if !ok {
				have = [2]int{n, n}
			}
			tabs[way] = [2]int{min(have[0], n), max(have[1], n)}
		}
		count[way]++
	}
	all := slices.Sorted(maps.Keys(count))
	for i, way := range all {
		if t, ok := tabs[way]; ok {
			if all[i] = words.Count(t[1], "tab", "tabs"); t[0] < t[1] {
				all[i] = fmt.Sprintf("%d to %s", t[0], all[i])
			}
			if count[way] > 1 {
				all[i] += " each"
			}
		}
		if len(all) > 1 {
			all[i] = fmt.Sprintf("%d by %s", count[way], all[i])
		}
	}
	return strings.Join(all, "; ")
}

// firstUsed is the place of a size that is used.
func firstUsed(k record.SheetStock) int {
	for i, z := range k.Sizes {
		if z.Used > 0 {
			return i
		}
	}
	return 0
}

func are(n int) string {
	if n == 1 {
		return "1 part is held"
	}
	return fmt.Sprintf("%d parts are held", n)
}
