package packet

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// maxRows is how many boxes of one drawer a form has lines for.
const maxRows = 60

// travelers are a form for the readings of all boxes: of each drawer a line with what is right, and one to write on
// for every box.
func (m maker) travelers() {
	if len(m.batch.Drawers) == 0 {
		return
	}
	m.Chapter("Form for readings")
	told := "The lines of a drawer have what is right, in " + unitWords[m.unit] + ", and from what to what a box may " +
		"be; write what it measures below them."
	if slices.ContainsFunc(m.batch.Drawers, func(d batch.Drawer) bool { return d.Strength.Empty > 0 }) {
		told += " Under date stands what an empty box weighs."
	}
	m.Text(told)
	heads := []string{"box", "width, front", "width, back", "depth, left", "depth, right", "height", "diagonal 1",
		"diagonal 2", "apart, at most", "date, by"}
	var rows [][]string
	for _, d := range m.batch.Drawers {
		k := record.StackOf(d)
		name := fmt.Sprintf("%s: %s", d.Spec.Name, words.Count(d.Spec.Count, "box", "boxes"))
		wide, deep, diagonal := m.number(d.Outside.Width), m.number(d.Outside.Depth), m.reported(k.Diagonal)
		right := []string{name, wide, wide, deep, deep, m.number(d.Outside.Height), diagonal, diagonal,
			m.reported(k.MaxDiagonalDifference)}
		if d.Strength.Empty > 0 {
			right = append(right, words.Weight(d.Strength.Empty, m.unit))
		}
		rows = append(rows, right, m.limitsOf(d.Spec.Name))
		for n := range min(d.Spec.Count, maxRows) {
			rows = append(rows, []string{fmt.Sprintf("%d of %d", n+1, d.Spec.Count)})
		}
	}
	m.Form(heads, rows)
}

// limitsOf is the line of the form with the limits of a drawer's box.
func (m maker) limitsOf(drawer string) []string {
	within := make(map[joinery.CheckCode]string)
	for _, f := range m.report.FitOf(drawer) {
		if within[f.Check] == "" {
			within[f.Check] = words.To(m.reported(f.Limits[0]), m.reported(f.Limits[1]))
		}
	}
	wide, deep := within[joinery.CheckOutsideWidth], within[joinery.CheckOutsideDepth]
	diagonal := within[fit.Diagonal]
	return []string{"least to most", wide, wide, deep, deep, within[fit.OutsideHeight], diagonal, diagonal}
}
