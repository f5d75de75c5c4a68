package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
)

// maxRows is how many boxes of one drawer a form has lines for.
const maxRows = 60

// travelers are forms that go with the boxes: what is right, and what came out.
func (m maker) travelers() {
	unit := m.unit.String()
	slides := make(map[string]record.Cabinet)
	for _, c := range m.report.Cabinets {
		for _, r := range c.Rows {
			slides[r.Drawer] = c
		}
	}
	for i, d := range m.batch.Drawers {
		if i == 0 {
			m.Page(drawing.Bookmark{Name: "Travelers"})
		} else {
			m.Keep(110)
		}
		m.Heading(1, fmt.Sprintf("%s: %d of them", d.Spec.Name, d.Spec.Count))
		k := record.StackOf(d)
		facts := present.NewTable(present.Words("what is right"), present.Words(unit))
		facts.Add("outside, width x height x depth", m.size(d.Outside))
		facts.Add("inside", m.size(d.Inside))
		facts.Add("both diagonals",
			fmt.Sprintf("%s, %s apart at most", m.reported(k.Diagonal), m.reported(k.MaxDiagonalDifference)))
		if c, stands := slides[d.Spec.Name]; stands {
			facts.Add("opening", fmt.Sprintf("%s, %s x %s x %s", c.Name, m.reported(c.Opening.Width),
				m.reported(c.Opening.Height), m.reported(c.Opening.Depth)))
			facts.Add("slides", fmt.Sprintf("%s, %s long", c.Slide, m.reported(c.SlideLength)))
		}
		if d.Strength.Empty > 0 {
			facts.Add("weight, empty", words.Weight(d.Strength.Empty, m.unit))
		}
		m.table(facts)
		var rows [][]string
		for n := range min(d.Spec.Count, maxRows) {
			rows = append(rows, []string{fmt.Sprintf("%d of %d", n+1, d.Spec.Count)})
		}
		m.Form([]string{"box", "width, front", "width, back", "depth, left", "depth, right", "height", "diagonal 1", "diagonal 2", "date, by"}, rows)
	}
}
