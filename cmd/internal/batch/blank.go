package batch

import (
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/merge"
)

// Blank is what a shop saws as one size and gives the same grooves, dados and rabbets in
// one setting, before its parts get holes and notches of their own.
type Blank struct {
	Groups   []Group // of parts that differ only in what comes later; two at least
	Quantity int
}

// Blanks finds the blanks from which parts of several groups are made, in their order; none
// for a router that follows drawings, which cuts each part out of its sheet.
func Blanks(groups []Group) (list []Blank) {
	var parts []merge.Part
	for _, g := range groups {
		parts = append(parts, merge.Part{Stock: g.Parts[0].Stock.Name, Setting: g.Setup, Panel: g.Parts[0].Panel})
	}
	for _, of := range merge.CommonBlanks(parts) {
		var b Blank
		for _, i := range of {
			b.Groups = append(b.Groups, groups[i])
			b.Quantity += groups[i].Quantity
		}
		list = append(list, b)
	}
	return list
}

// Blank is the least length and width of the piece that a router cuts a part out of; ok is false where it comes out of
// a sheet, or is sawn to size: then they are the part's own.
func (p Part) Blank() (length, width float64, ok bool) {
	if len(p.Bits) == 0 || p.Stock.Length > 0 {
		return p.Panel.Length(), p.Panel.Width(), false
	}
	length, width = p.Work().Blank(p.Panel)
	return length, width, true
}

// Later says what a part gets after the cuts of the common setting; empty for nothing.
func Later(p geom.Panel) string {
	n := merge.LaterOn(p)
	var list []string
	say := func(n int, one, many string) {
		if n > 0 {
			list = append(list, words.Count(n, one, many))
		}
	}
	say(n.Holes, "hole", "holes")
	say(n.Openings, "opening", "openings")
	say(n.Mortises, "mortise", "mortises")
	say(n.Notches, "notch", "notches")
	say(n.Slots, "crossing slot", "crossing slots")
	say(n.Pulls, "cut-out for the hand", "cut-outs for the hand")
	return strings.Join(list, " and ")
}
