package packet

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/firstbox"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// maxRows is how many boxes of one drawer a form has lines for.
const maxRows = 60

// formColumns are those of the form for readings: the sizes of a box, as the form of the first one has them.
func formColumns() []paper.FormColumn {
	list := []paper.FormColumn{{Head: "box", Given: true}}
	for _, s := range firstbox.Sizes {
		list = append(list, paper.FormColumn{Head: s.Name, Given: true})
		for _, p := range s.Places {
			list = append(list, paper.FormColumn{Head: p})
		}
	}
	return append(list, paper.FormColumn{Head: "most apart", Given: true}, paper.FormColumn{Head: "apart"})
}

// travelers are a form for the readings of all boxes, a line for each: what is right, by how much a box may differ
// from it, and room to write what it measures.
func (m maker) travelers() {
	if len(m.batch.Drawers) == 0 {
		return
	}
	rows := m.formRows()
	draw := func() {
		m.Section("Form for readings")
		m.Small("Shaded: what is right, in " + unitWords[m.unit] + ", and by how much a box may be off. Check the " +
			"box dry by it, and write what it measures once the glue has set: width at front and back, depth at left " +
			"and right, both diagonals over the ends of the sides. " + m.boardsTogether() + m.behindLips())
		m.Form(formColumns(), rows)
	}
	if len(rows) > wholeForm {
		m.Keep(formBegins)
		draw()
		return
	}
	m.Together(draw)
}

// behindLips says what the width and the height of a box are whose front stands out beyond it; nothing without.
func (m maker) behindLips() string {
	if !slices.ContainsFunc(m.batch.Drawers, func(d batch.Drawer) bool { return d.Spec.Lip != joinery.Lip{} }) {
		return ""
	}
	return " Of a front with lips the width is taken over the sides behind it, the height at the sides, the " +
		"diagonals from the front ends of the sides, the depth over all."
}

// A form of so many lines stays whole; of a longer one the words over it stay with its first lines, in mm about.
const (
	wholeForm  = 14
	formBegins = 60.0
)

// formRows are the lines of the form, one for each box.
func (m maker) formRows() (rows [][]string) {
	for _, d := range m.batch.Drawers {
		right := m.right(d)
		for n := range min(d.Spec.Count, maxRows) {
			box := fmt.Sprintf("%s\n%d of %d", d.Spec.Name, n+1, d.Spec.Count)
			if d.Strength.Empty > 0 {
				box += ", " + words.Weight(d.Strength.Empty, m.unit)
			}
			rows = append(rows, append([]string{box}, right...))
		}
	}
	return rows
}

// right is what the form gives of a drawer's boxes, in its columns after the first: what is right, and below it the
// limits of the job.
func (m maker) right(d batch.Drawer) (row []string) {
	limits := make(map[joinery.CheckCode][2]record.Length)
	for _, f := range m.report.FitOf(d.Spec.Name) {
		if _, known := limits[f.Check]; !known {
			limits[f.Check] = f.Limits
		}
	}
	given := func(text string, right float64, c joinery.CheckCode) string {
		if within, known := limits[c]; known {
			return text + "\n" + m.around(right, within)
		}
		return text
	}
	size, k := d.Outside, record.StackOf(d)
	mm := map[joinery.CheckCode]float64{joinery.CheckOutsideWidth: size.Width, joinery.CheckOutsideDepth: size.Depth,
		fit.OutsideHeight: size.Height, fit.Diagonal: k.Diagonal.MM()}
	for _, s := range firstbox.Sizes {
		print := m.number
		if s.Code == fit.Diagonal {
			print = m.ruled
		}
		row = append(row, given(print(mm[s.Code]), mm[s.Code], s.Code))
		row = append(row, make([]string, len(s.Places))...)
	}
	return append(row, words.OffBy(k.MaxDiagonalDifference.MM(), m.unit), "")
}

// around is by how much what is right may be missed either way where that is the same, else by how much below and
// above.
func (m maker) around(right float64, limits [2]record.Length) string {
	below := words.OffBy(right-limits[0].MM(), m.unit)
	above := words.OffBy(limits[1].MM()-right, m.unit)
	if below == above {
		return "±" + above
	}
	return "-" + below + "\n+" + above
}

// boardsTogether says what two sides and a box front measure when they are held together, drawers of which it is
// the same together.
func (m maker) boardsTogether() string {
	said := "Two sides and a box front together in one caliper: "
	for i, group := range setup.Together(m.batch.Drawers, func(d batch.Drawer) string {
		return m.threeBoards(d)
	}) {
		var all []string
		for _, d := range group {
			all = append(all, d.Spec.Name)
		}
		if i > 0 {
			said += "; "
		}
		said += m.threeBoards(group[0])
		if len(all) < len(m.batch.Drawers) {
			said += " for " + names(all)
		}
	}
	return said + "; else the stock is not what was measured."
}

// threeBoards is between what two sides and a box front of a drawer measure together.
func (m maker) threeBoards(d batch.Drawer) string {
	k := record.StackOf(d).SidesAndFrontRange
	return words.Within(k[0].MM(), k[1].MM(), m.unit)
}
