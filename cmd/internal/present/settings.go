package present

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// SettingTables are the settings of routers, and those of machines with a fence or by hand,
// a table each where there are any.
func SettingTables(setups []record.Setup, u geom.Unit) (list []SettingTable) {
	var routed, others []record.Setup
	for _, s := range setups {
		if joinery.CutterKind(s.Machine) == joinery.Router {
			routed = append(routed, s)
		} else {
			others = append(others, s)
		}
	}
	if len(routed) > 0 {
		list = append(list, routedSettings(routed, u))
	}
	if len(others) > 0 {
		list = append(list, fencedSettings(others, u))
	}
	return list
}

// SettingTable is a table of settings with the headings of the columns of fence distance and
// cutter height: a router has neither, and keeps its distance from the edge.
type SettingTable struct {
	Table
	Fence, Height string
	cutter        bool // parts.txt has the column too
	notes         []string
}

// CannotCut heads what a machine cannot make at a setting, where there is any.
const CannotCut = "cannot be cut"

// settings prints the tables of settings.
func settings(out *Printed, r record.Kept, u geom.Unit) {
	for _, t := range SettingTables(r.Setups, u) {
		var shown []string
		for _, c := range t.Columns {
			if c.Heading != "cutter" || t.cutter {
				shown = append(shown, c.Heading)
			}
		}
		t.Pick(shown...).WithoutBlank().Print(out, "")
		for _, note := range t.notes {
			fmt.Fprintln(out, note)
		}
		fmt.Fprintln(out)
	}
}

// routedSettings are of a router, which follows its drawings.
func routedSettings(setups []record.Setup, u geom.Unit) SettingTable {
	unit := u.String()
	t := SettingTable{Fence: "slots from edge", Height: "slots deep"}
	t.Columns = []Column{Words("machine"), In("cutter", unit), In(t.Fence, unit), In(t.Height, unit)}
	own := slices.ContainsFunc(setups, func(s record.Setup) bool { return s.GrooveFence > 0 || s.BackFence > 0 })
	if own {
		t.Columns = append(t.Columns, In("grooves from edge", unit), In("backs from end", unit))
	}
	t.Columns = append(t.Columns, Words("drawers"))
	said := func(v record.Length) string {
		if v == 0 {
			return "-"
		}
		return caliper(v, u)
	}
	for _, s := range setups {
		row := []string{s.Machine, said(s.CutterWidth), said(s.FenceDistance), slotHeight(s, u)}
		if own {
			row = append(row, said(s.GrooveFence), said(s.BackFence))
		}
		t.Add(append(row, strings.Join(s.Drawers, ", "))...)
	}
	return t
}

// slotHeight is the cutter height, and that of dados where it is another.
func slotHeight(s record.Setup, u geom.Unit) string {
	height := caliper(s.CutterHeight, u)
	if s.DadoHeight > 0 {
		height += " (dados " + caliper(s.DadoHeight, u) + ")"
	}
	return height
}

// fencedSettings are of machines with a fence, and of cuts by hand.
func fencedSettings(setups []record.Setup, u geom.Unit) SettingTable {
	unit := u.String()
	t := SettingTable{Fence: "fence distance", Height: "cutter height", cutter: true}
	t.Columns = []Column{Words("machine"), In("cutter", unit), In(t.Fence, unit), In(t.Height, unit),
		Words("passes for the rabbets"), Words("fence for bottoms on tongues")}
	own := slices.ContainsFunc(setups, func(s record.Setup) bool {
		return s.GrooveFence > 0 || len(s.GrooveFences) > 0 || s.BackFence > 0
	})
	if own {
		t.Columns = append(t.Columns, Words("fence for grooves"), Words("fence for housed backs"))
	}
	refused := slices.ContainsFunc(setups, func(s record.Setup) bool { return len(s.Cannot) > 0 })
	if refused {
		t.Columns = append(t.Columns, Words(CannotCut))
	}
	t.Columns = append(t.Columns, Words("drawers"))
	for _, s := range setups {
		row := []string{s.Machine, caliper(s.CutterWidth, u), caliper(s.FenceDistance, u),
			slotHeight(s, u), rabbetPasses(s, u), bottomFence(s, u)}
		if own {
			row = append(row, grooveFence(s, u), backFence(s, u))
		}
		if refused {
			row = append(row, cmp.Or(strings.Join(s.Cannot, "; "), "-"))
		}
		t.Add(append(row, strings.Join(s.Drawers, ", "))...)
		if s.FingerRow > 0 {
			t.notes = append(t.notes, strings.Join(s.Drawers, ", ")+": "+fingerRow(s, u))
		}
	}
	return t
}

// rabbetPasses says how many passes the rabbets take; a dash by hand, where they are pared.
func rabbetPasses(s record.Setup, u geom.Unit) string {
	passes := "-"
	if joinery.CutterKind(s.Machine).Fenced() {
		passes = "1"
	}
	if s.RabbetPasses > 1 {
		passes = fmt.Sprintf("%d, the last at %s", s.RabbetPasses, caliper(s.LastFence, u))
	}
	if s.FlatTongues {
		passes += ", lying flat"
	}
	return passes
}

// bottomFence is the fence distance for the rabbets of bottoms on tongues.
func bottomFence(s record.Setup, u geom.Unit) string {
	switch {
	case s.BottomHeight > 0:
		return "lies flat, cutter " + caliper(s.BottomHeight, u) + " high"
	case s.BottomFence > 0:
		return caliper(s.BottomFence, u)
	}
	return "-"
}

// grooveFence is the fence distance for grooves at a height of their own.
func grooveFence(s record.Setup, u geom.Unit) string {
	switch {
	case len(s.GrooveFences) > 0:
		return groovePasses(s, u)
	case s.GrooveFence > 0:
		return caliper(s.GrooveFence, u)
	}
	return "-"
}

// backFence is the fence distance for the dados of housed backs.
func backFence(s record.Setup, u geom.Unit) string {
	if s.BackFence == 0 {
		return "-"
	}
	back := caliper(s.BackFence, u)
	if s.BackPasses > 1 && joinery.CutterKind(s.Machine).Fenced() {
		back += fmt.Sprintf(", %d passes, the last at %s", s.BackPasses, caliper(s.LastBackFence, u))
	}
	return back
}

// groovePasses are the fence distances of a cutter for grooves.
func groovePasses(s record.Setup, u geom.Unit) string {
	var at []string
	for _, f := range s.GrooveFences {
		at = append(at, caliper(f, u))
	}
	return fmt.Sprintf("%s, cutter %s", strings.Join(at, " and "), caliper(s.GrooveCutter, u))
}

// fingerRow says which row of fingers a jig makes higher or lower than the others.
func fingerRow(s record.Setup, u geom.Unit) string {
	row := "the lowest row"
	if s.FingerRow > 1 {
		row = fmt.Sprintf("row %d from below", s.FingerRow)
	}
	return fmt.Sprintf("%s of fingers is %s high, for the bottom's groove: "+
		"a spacer in the jig sets it off on all four parts, and its notches take several passes", row,
		words.Length(s.FingerHeight.MM(), u))
}
