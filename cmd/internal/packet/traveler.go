package packet

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
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
	m.Text("The line of a drawer has what is right, in " + unitWords[m.unit] + "; write what a box measures below " +
		"it. Under date stands what an empty box weighs, where that is known.")
	heads := []string{"box", "width, front", "width, back", "depth, left", "depth, right", "height", "diagonal 1",
		"diagonal 2", "diagonals apart", "date, by"}
	var rows [][]string
	for _, d := range m.batch.Drawers {
		k := record.StackOf(d)
		name := fmt.Sprintf("%s: %s", d.Spec.Name, words.Count(d.Spec.Count, "box", "boxes"))
		wide, deep, diagonal := m.number(d.Outside.Width), m.number(d.Outside.Depth), m.reported(k.Diagonal)
		right := []string{name, wide, wide, deep, deep, m.number(d.Outside.Height), diagonal, diagonal,
			"max " + m.reported(k.MaxDiagonalDifference)}
		if d.Strength.Empty > 0 {
			right = append(right, words.Weight(d.Strength.Empty, m.unit))
		}
		rows = append(rows, right)
		for n := range min(d.Spec.Count, maxRows) {
			rows = append(rows, []string{fmt.Sprintf("%d of %d", n+1, d.Spec.Count)})
		}
	}
	m.Form(heads, rows)
}
