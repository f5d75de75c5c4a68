package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/joinery"
)

// OrderOfWork are the steps from boards to boxes, a sentence each, as their numbers and drawings follow in the packet.
func OrderOfWork(r record.Kept, s SetupSheet, boards []record.Board) []string {
	list := []string{measureBoards(r, boards)}
	for _, m := range s.Machines {
		list = append(list, notCut(m)...)
	}
	list = append(list, partsCut(r)...)
	list = append(list, "Each part as it comes off: number and lower edge in pencil on the inside face; its label "+
		"after its last cut.")
	for _, m := range s.Machines {
		list = append(list, machineOrder(m, stocksCut(r, true))...)
	}
	if !slices.ContainsFunc(s.Machines, func(m Machine) bool { return len(m.Settings) > 0 }) {
		list = append(list, "Put one box together dry, and measure.")
	}
	list = append(list, "Take labels off; glue, clamp, square; fill in the forms.")
	if len(r.Cabinets) > 0 {
		list = append(list, "Mount the slides by their lines.")
	}
	if r.HasPart(func(p record.Part) bool { return p.Role == string(joinery.DrawerFrontRole) }) {
		list = append(list, "Hang the drawer fronts when the boxes run.")
	}
	return list
}

// measureBoards says what is measured before anything is cut, and between what it is right: the forecast reckons with
// such boards.
func measureBoards(r record.Kept, boards []record.Board) string {
	var list []string
	for _, g := range r.CutList {
		thick := of(g.Thickness).Text(r.Unit())
		if i := slices.IndexFunc(boards, func(b record.Board) bool { return b.Stock == g.Stock }); i >= 0 {
			thick = words.Within(boards[i].Min.MM(), boards[i].Max.MM(), r.Unit()) + " " + r.Unit().String()
		}
		if b := fmt.Sprintf("%s (%s)", thick, g.Stock); !slices.Contains(list, b) {
			list = append(list, b)
		}
	}
	return "Measure boards: " + strings.Join(list, ", ") + "; else run the job anew."
}

// notCut says which cuts a machine cannot make.
func notCut(m Machine) []string {
	if len(m.Refused) == 0 {
		return nil
	}
	return []string{"Not on this " + joinery.CutterKind(m.Machine).Machine() + ": " +
		strings.Join(kindsOf(m.Refused), ", ") + ". See its setups before anything is cut."}
}

// partsCut is how parts come from boards.
func partsCut(r record.Kept) (list []string) {
	var sawn, routed []string
	for _, k := range r.Sheets {
		n := 0
		for _, one := range k.Sheets {
			n += one.Count
		}
		if k.Routed {
			routed = append(routed, fmt.Sprintf("%s %d", k.Stock, n))
		} else {
			sawn = append(sawn, k.Stock+" "+words.Count(len(k.Cuts), "cut", "cuts"))
		}
	}
	blanks, sized := stocksCut(r, true), stocksCut(r, false)
	switch {
	case len(sized) > 0 && len(blanks)+len(r.Sheets) > 0:
		list = append(list, "Cut the parts of "+words.And(sized)+" to length and width by the cut list.")
	case len(sized) > 0:
		list = append(list, "Cut the parts to length and width by the cut list.")
	}
	if len(blanks) > 0 {
		list = append(list, "Cut blanks for the router by the cut list, larger than the parts: "+words.And(blanks)+".")
	}
	if len(sawn) > 0 {
		list = append(list, "Cut the sheets apart: "+strings.Join(sawn, ", ")+".")
	}
	if len(routed) > 0 {
		list = append(list, "Router: a test corner from waste first; measure it.", "Router, sheets by their run "+
			"cards: "+strings.Join(routed, ", ")+".")
	}
	return list
}

// stocksCut are the stocks of which parts are cut one by one: out of blanks by a router, or sawn to size. Those of
// sheets are neither.
func stocksCut(r record.Kept, blanks bool) (list []string) {
	for _, g := range r.CutList {
		onSheets := slices.ContainsFunc(r.Sheets, func(k record.SheetStock) bool { return k.Stock == g.Stock })
		if !onSheets && (g.Blank != nil) == blanks && !slices.Contains(list, g.Stock) {
			list = append(list, g.Stock)
		}
	}
	return list
}

// machineOrder are the settings of a machine in their order, and what is done elsewhere afterward. Blanks are the
// stocks of blanks that a router cuts parts out of.
func machineOrder(m Machine, blanks []string) (list []string) {
	name, first := upper(joinery.CutterKind(m.Machine).Machine()), "change the cutter"
	if joinery.CutterKind(m.Machine) == joinery.Hand {
		first = "set gauge and plow plane"
	}
	switch n := len(m.Settings); {
	case n == 1:
		list = append(list, name+": "+first+", cut and measure a test piece; then the FIRST box (dry fit, "+
			"measure), then the rest.")
	case n > 1:
		list = append(list, name+": "+first+". Settings are made twice: for test piece and FIRST box "+
			"(dry fit, measure), then for the rest. Keep their spacers and test pieces.")
	}
	for i, s := range m.Settings {
		list = append(list, fmt.Sprintf("%s, setting %d: %s.", name, i+1, strings.Join(kindsOf(s.Cuts), ", ")))
	}
	if len(m.Files) > 0 && len(blanks) > 0 {
		list = append(list, name+", blanks of "+words.And(blanks)+": cut the drawings in the order of their list; "+
			"they cut the parts to size.")
	}
	for i := 0; i < len(m.Separate); {
		at, k := m.Separate[i].Place(m.Machine), i
		for k < len(m.Separate) && m.Separate[k].Place(m.Machine) == at {
			k++
		}
		list = append(list, fmt.Sprintf("%s: %s.", upper(at), strings.Join(kindsOf(m.Separate[i:k]), ", ")))
		i = k
	}
	return list
}

// kindsOf are the kinds of some cuts, each once.
func kindsOf(cuts []CutStep) (kinds []string) {
	for _, c := range cuts {
		if !slices.Contains(kinds, c.Kind) {
			kinds = append(kinds, c.Kind)
		}
	}
	return kinds
}

// FigureParts are a number as it is read at arm's length, and what stands in small letters beside its name: its unit,
// of inches the nearest 64th, and what it is set for.
func (f Figure) FigureParts() (number, beside string) {
	number, near, _ := strings.Cut(f.Value, " (")
	number, beside, _ = strings.Cut(number, " ")
	if near != "" {
		beside += " (" + near
	}
	if f.Of != "" {
		beside += ", " + f.Of
	}
	return number, beside
}
