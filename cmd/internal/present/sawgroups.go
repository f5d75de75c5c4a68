package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// CutGroup is cuts that follow each other at one setting: what is set, and a row for each.
type CutGroup struct {
	Set string
	Table
}

// CutGroups are cuts in order by what is set for them: of each its number, the board, the piece by its name on the
// picture, and what stays in hand, by its size along the cut.
func CutGroups(cuts []record.SawCut, u geom.Unit) (list []CutGroup) {
	goes := fenceGoes(cuts)
	for i, c := range cuts {
		if i == 0 || setForGroup(c) != setForGroup(cuts[i-1]) || c.SettingChanged {
			t := NewTable(Numbers("cut"), Words("of"), Words("piece"), Words("rest"))
			set := setInGroup(c, u)
			if goes[i] {
				set += "; " + fenceAway
			}
			list = append(list, CutGroup{Set: set, Table: t})
		}
		gives := "sawdust"
		switch {
		case c.Trim:
			gives = "trim"
		case c.Yields != nil:
			gives = calledOnSheet(c.Yields.Name)
		}
		board := c.Workpiece.Name
		if c.Count > 1 {
			board += fmt.Sprintf(", %d boards", c.Count)
		}
		list[len(list)-1].Add(fmt.Sprint(i+1), board, gives, restOf(c, u))
	}
	return list
}

// setForGroup is what the cuts of a group have in common.
func setForGroup(c record.SawCut) (of struct {
	kind    string
	trim    bool
	setting record.Length
}) {
	of.kind, of.trim, of.setting = c.Kind, c.Trim, c.Setting
	return of
}

// setInGroup says what is set for the cuts of a group, before the first of them. What was taken away since is set
// again; what stood where it was is still there.
func setInGroup(c record.SawCut, u geom.Unit) string {
	at := byRule(c.Setting, u) + " " + u.String()
	switch {
	case c.Trim && c.Kind == crosscut:
		return "Clean-up on the sled, " + at + " off"
	case c.Trim && c.Kind == handHeld:
		return "Clean-up by a guide, " + at + " off"
	case c.Kind == handHeld:
		return "Cut along a guide at " + at
	}
	device := map[string]string{fenceCut: "Fence", crosscut: "Sled stop"}[c.Kind]
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

// calledOnSheet is the name of a piece on the picture of its sheet, without the part that it is.
func calledOnSheet(name string) string {
	called, _, _ := strings.Cut(name, " ")
	return called
}

// restOf is what stays in hand of a cut, and what is to be watched.
func restOf(c record.SawCut, u geom.Unit) string {
	left := "-"
	if c.Remainder == nil && c.Yields != nil { // the blade takes all that is left beside the piece
		w, p := c.Workpiece, c.Yields
		left = "shave " + tape(w.Length-p.Length+w.Width-p.Width, u)
	}
	if r := c.Remainder; r != nil {
		left = tape(r.Length, u)
		if r.Width != c.Workpiece.Width {
			left = tape(r.Width, u)
		}
		switch {
		case r.Piece:
			left = calledOnSheet(r.Name)
			if !c.Trim {
				left += ": measure"
			}
		case r.Offcut:
			left = "offcut, " + left // what one holds, also where no more comes of it
		case r.Waste:
			left = "waste"
		case r.Name != c.Workpiece.Name:
			left = r.Name + ", " + left
		}
	}
	return strings.Join(append([]string{left}, inHand(c)...), "; ")
}
