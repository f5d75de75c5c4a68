package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/lumber"
)

// RoughOf is what the parts of a stock are sawn from; nil where it is not bought in rough boards.
func RoughOf(list []record.Lumber, stock string) *record.Lumber {
	i := slices.IndexFunc(list, func(l record.Lumber) bool { return l.Stock == stock })
	if i < 0 {
		return nil
	}
	return &list[i]
}

// RoughTable is the rough size of what each part is sawn from, by its number in the cut list.
func RoughTable(l record.Lumber, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Numbers(NumberColumn), Numbers("pieces"), Numbers("boards of each"), In("rough length", unit),
		In("rough width", unit), Words("parts"))
	t.UnitOnce = true
	for _, p := range l.Parts {
		t.Add(fmt.Sprint(p.Number), fmt.Sprint(p.Quantity), fmt.Sprint(p.Boards), words.Tape(p.Length.MM(), u),
			words.Tape(p.Width.MM(), u), strings.Join(p.Parts, ", "))
	}
	return t
}

// RoughText says which rough boards a stock is bought in, and how much of them.
func RoughText(l record.Lumber, u geom.Unit) string {
	return fmt.Sprintf("%s, rough boards %s thick and %s wide: %v %s, with %.0f %% "+
		"added for waste", l.Stock, tapeIn(l.Thickness, u), tapeIn(l.Width, u), l.Quantity, l.Unit,
		100*l.Waste)
}

// RoughLines are what stands of rough boards where there is no room for a table.
func RoughLines(l record.Lumber, u geom.Unit) []string {
	list := []string{RoughText(l, u) + "."}
	for _, p := range l.Parts {
		list = append(list, fmt.Sprintf("Rough, no. %d: %s %s x %s %s.", p.Number,
			words.Count(p.Quantity*p.Boards, "board,", "boards,"), words.Tape(p.Length.MM(), u),
			words.Tape(p.Width.MM(), u), u))
		if p.Boards > 1 {
			list[len(list)-1] += fmt.Sprintf(" Each piece is glued up of %d.", p.Boards)
		}
	}
	return append(list, RoughNotes(l, u)...)
}

func tapeIn(v record.Length, u geom.Unit) string { return words.Tape(v.MM(), u) + " " + u.String() }

// RoughNotes say what is done with rough boards; common practice, no source.
func RoughNotes(l record.Lumber, u geom.Unit) []string {
	in := func(mm float64) string { return tapeIn(record.Length(mm), u) }
	said := []string{fmt.Sprintf("Rough sizes are %s longer than what is cut from them, for snipe and checks, and "+
		"boards %s wider, for two straight edges: common practice.", in(lumber.Ends(u)), in(lumber.Edges(u)))}
	if slices.ContainsFunc(l.Parts, func(p record.Rough) bool { return p.Boards > 1 }) {
		said = append(said, fmt.Sprintf("Parts of several boards are glued edge to edge, %s too wide, and sawn when "+
			"they are planed. Alternate the growth rings, so that cups of boards cancel; or keep them alike where "+
			"one face shows and the box holds the part flat: common practice.", in(lumber.Trim(u))))
	}
	if slices.ContainsFunc(l.Parts, func(p record.Rough) bool { return p.Length.MM() < lumber.ShortestPlaned(u) }) {
		said = append(said, fmt.Sprintf("Plane and joint what is shorter than %s as one long board, and cut it "+
			"afterward: short pieces are thrown.", in(lumber.ShortestPlaned(u))))
	}
	return said
}
