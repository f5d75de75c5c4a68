package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// CutGroup is cuts that follow each other at one setting: what is set, and a row for each.
type CutGroup struct {
	Set string
	Table
}

// CutGroups are cuts in order by what is set for them: of each its number, the board, what comes off, and what stays in
// hand, by its size along the cut. Pieces of one part that come off a board one after the other are one row, and
// clean-up cuts of boards that are alike.
func CutGroups(cuts []record.SawCut, u geom.Unit) (list []CutGroup) {
	away := swaps(cuts)
	for i := 0; i < len(cuts); i++ {
		c := cuts[i]
		if i == 0 || setForGroup(c) != setForGroup(cuts[i-1]) || c.SettingChanged {
			t := NewTable(Numbers("cut"), Words("of"), Words("comes off"), Words("rest"))
			set := setInGroup(c, u)
			if away[i] != "" {
				set += "; " + away[i]
			}
			list = append(list, CutGroup{Set: set, Table: t})
		}
		gives := "sawdust"
		switch {
		case c.Trim:
			gives = trimmed(c)
		case c.Yields != nil:
			gives = c.Yields.Short
		}
		of := mark(c.Workpiece.Name)
		number, last := fmt.Sprint(i+1), i
		for last+1 < len(cuts) && goesOn(cuts[last], cuts[last+1]) {
			last++
		}
		if last > i {
			number += fmt.Sprintf("-%d", last+1)
			if c.Trim {
				of += " to " + mark(cuts[last].Workpiece.Name)
			} else {
				gives = strings.Replace(gives, mark(gives), mark(gives)+" to "+mark(cuts[last].Yields.Short), 1)
			}
		}
		if c.Count > 1 {
			of += fmt.Sprintf(", %d boards", c.Count)
		}
		rest := restOf(cuts[last], u)
		if r := cuts[last].Remainder; last > i && !c.Trim && r != nil && !r.Offcut && !r.Waste { // more comes of it
			rest = "last: " + rest
		}
		list[len(list)-1].Add(number, of, gives, rest)
		i = last
	}
	return list
}

// goesOn reports whether a cut does the same to the board of the cut before it, or cleans up the strip after its.
func goesOn(before, c record.SawCut) bool {
	part := func(w *record.Workpiece) string {
		_, part, _ := strings.Cut(w.Short, mark(w.Short))
		return part
	}
	same := !c.SettingChanged && setForGroup(c) == setForGroup(before) && slices.Equal(inHand(before), inHand(c))
	if !same || before.Yields == nil || c.Yields == nil {
		return false
	}
	if c.Trim {
		next := []byte(mark(before.Workpiece.Name))
		next[len(next)-1]++
		return mark(c.Workpiece.Name) == string(next) && before.Count == c.Count && trimmed(before) == trimmed(c) &&
			restOf(before, geom.Millimeter) == restOf(c, geom.Millimeter)
	}
	return before.Workpiece.Name == c.Workpiece.Name && part(before.Yields) == part(c.Yields)
}

// setForGroup is what the cuts of a group have in common.
func setForGroup(c record.SawCut) (of struct {
	kind    string
	trim    bool
	rough   bool
	setting record.Length
}) {
	of.kind, of.trim, of.rough, of.setting = c.Kind, c.Trim, c.Rough, c.Setting
	return of
}

// setInGroup says what is set for the cuts of a group, before the first of them. What was taken away since is set
// again; what stood where it was is still there.
func setInGroup(c record.SawCut, u geom.Unit) string {
	at := byRule(c.Setting, u) + " " + u.String()
	switch {
	case c.Trim && c.Kind == sledCut:
		return "Clean-up on the sled, " + at + " off"
	case c.Trim && c.Kind == handHeld:
		return "Clean-up by a guide, " + at + " off"
	case c.Rough:
		return "Cut along a guide at " + at + ", rough"
	case c.Kind == handHeld:
		return "Cut along a guide at " + at
	}
	device := map[string]string{fenceCut: "Fence", sledCut: "Sled stop"}[c.Kind]
	if c.Trim {
		device = "Clean-up, fence"
	}
	switch {
	case c.SetAsCut > 0:
		return fmt.Sprintf("%s again %s: check with a piece of cut %d", device, at, c.SetAsCut)
	case !c.SettingChanged:
		return device + " still " + at
	}
	return device + " " + at
}

// mark is what is written on a board, without what it is for: 1 on a sheet, 1A on a strip, 1A1 on a piece.
func mark(name string) string {
	called, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimPrefix(name, "strip "), "sheet "), " ")
	return called
}

// restOf is what stays in hand of a cut, and what is to be watched.
func restOf(c record.SawCut, u geom.Unit) string {
	left := "-"
	if !c.Trim && shaves(c) {
		left = shaved(c, u)
	}
	if r := c.Remainder; r != nil {
		left = tape(r.Length, u)
		if r.Width != c.Workpiece.Width {
			left = tape(r.Width, u)
		}
		switch {
		case r.Piece:
			left = mark(r.Name)
			if !c.Trim {
				left += ": measure"
			}
		case r.Offcut:
			left = "offcut, " + left // what one holds, also where no more comes of it
		case r.Waste:
			left = "waste"
		case r.Name != c.Workpiece.Name:
			left = mark(r.Name) + ", " + left
		}
	}
	return strings.Join(append([]string{left}, inHand(c)...), "; ")
}
