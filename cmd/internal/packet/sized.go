package packet

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/paper"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// ofBox are the measures that parts cut to their lengths make, which differ from drawer to drawer, how the bottom's
// groove goes round the box, and how the back stands on one that is slid in. They stand in a table with figures; all
// others are of one joint, the same for all of a group, and are drawn.
var ofBox = []joinery.CheckCode{joinery.CheckOutsideWidth, joinery.CheckOutsideDepth, fit.OutsideHeight, fit.Diagonal,
	fit.SlideClearance, joinery.CheckBottomClearance, joinery.CheckBottomClearanceDepth,
	joinery.CheckInsertClearance, joinery.CheckInsertClearanceDepth, fit.GrooveStep, fit.BackOverBottom}

// forecasts are the measures of a drawer's joints, as they are drawn.
func (m maker) forecasts(d batch.Drawer) (rows []paper.ForecastRow) {
	for _, f := range m.report.FitOf(d.Spec.Name) {
		if slices.Contains(ofBox, f.Check) {
			continue
		}
		row := present.FitRow(f, m.unit)
		row.Help = present.PlusMinus(row.Help)
		row.Numbers = "right " + present.FitLimits(f, m.unit) + ", " + row.Numbers
		rows = append(rows, row)
	}
	return rows
}

// sized is a measure of boxes with the drawers of which it is alike.
type sized struct {
	drawers []string
	row     []string
	name    string
}

// listedDrawers are how many drawers of a group the table of sizes has at most: of more, the first and those of which
// something is wrong; the form for readings has the limits of all.
const listedDrawers = 12

// listed are how many drawers of a group have their sizes in its table.
func (m maker) listed(group []batch.Drawer) int {
	if len(group) > listedDrawers {
		return 1
	}
	return len(group)
}

// sizedAll are the measures of the boxes of each group.
func (m maker) sizedAll(groups [][]batch.Drawer) [][]sized {
	type place struct{ group, drawer int }
	at := make(map[string]place)
	for i, g := range groups {
		for k, d := range g {
			at[d.Spec.Name] = place{i, k}
		}
	}
	list := make([][]sized, len(groups))
	for _, f := range m.report.Fit.All() {
		p, known := at[f.Drawer]
		if !known || !slices.Contains(ofBox, f.Check) {
			continue
		}
		if right := joinery.Verdict(f.Verdict).Right(); p.drawer < m.listed(groups[p.group]) || !right {
			list[p.group] = m.withSize(list[p.group], f)
		}
	}
	for _, of := range list { // a measure after the other
		order := make(map[string]int)
		for i, s := range of {
			if _, known := order[s.name]; !known {
				order[s.name] = i
			}
		}
		slices.SortStableFunc(of, func(a, b sized) int { return order[a.name] - order[b.name] })
	}
	return list
}

// boxSizes says what is right of the sizes of the boxes of each group, and what is likely.
func (m maker) boxSizes() {
	var heads []paper.Column
	var list []paper.Group
	groups, short := m.alike(), false
	for i, sizes := range m.sizedAll(groups) {
		if len(sizes) == 0 {
			continue
		}
		t, of := m.sizedTable(sizes, groups[i]), paper.Group{}
		if of.Rows = t.Texts(); len(groups) > 1 {
			of.Head = names(drawerNames(groups[i]))
		}
		heads, list = columns(t), append(list, of)
		short = short || m.listed(groups[i]) < len(groups[i])
	}
	if len(list) == 0 {
		return
	}
	m.Heading(1, "Sizes of the boxes")
	m.Groups(heads, list)
	if short {
		m.Text("The form for readings has the limits of the other drawers' sizes.")
	}
}

// withSize adds a measure of a drawer, to those of which it is alike.
func (m maker) withSize(list []sized, f record.Fit) []sized {
	odds := f.Of1000
	if !joinery.Verdict(f.Verdict).Right() {
		odds = "! " + present.FitVerdict(f) + ", " + odds
	}
	row := []string{present.FitLimits(f, m.unit), present.FitSet(f, m.unit), present.FitLikely(f, m.unit), odds}
	alike := func(s sized) bool { return s.name == f.Short() && slices.Equal(s.row, row) }
	if i := slices.IndexFunc(list, alike); i >= 0 {
		list[i].drawers = append(list[i].drawers, f.Drawer)
		return list
	}
	return append(list, sized{[]string{f.Drawer}, row, f.Short()})
}

// sizedTable lists measures of boxes: of which drawers, where those of a group differ, what is right and what is
// likely.
func (m maker) sizedTable(list []sized, group []batch.Drawer) present.Table {
	unit := m.unit.String()
	t := present.NewTable(present.Words("of the box"), present.In("right", unit), present.In("as set", unit),
		present.In("likely", unit), present.Words("of 1,000"))
	t.UnitOnce = true
	for _, s := range list {
		of := s.name
		if len(s.drawers) < len(group) {
			of += ", " + names(s.drawers)
		}
		t.Add(append([]string{of}, s.row...)...)
	}
	return t
}
