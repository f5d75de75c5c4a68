package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
)

// openings prints the slide lines of each opening.
func (m maker) openings() {
	if len(m.report.Cabinets) == 0 {
		return
	}
	m.Chapter("Slides")
	unit := m.unit.String()
	for _, c := range m.report.Cabinets {
		m.Heading(1, fmt.Sprintf("%s: %s %s, %s", c.Name, present.OpeningSize(c, m.unit), unit, c.Slide))
		if c.Packing > 0 {
			m.Text(upper(present.PackingText(c, m.unit)) + ".")
		}
		if c.Shim > 0 {
			m.Text(upper(present.ShimText(c, m.unit)) + ".")
		}
		m.table(present.RowTable(c, m.unit).Pick("drawer", "slide line", "box from", "front from", "front height"))
		if len(c.Spacers) > 0 {
			m.Text("Spacers: " + present.SpacerText(c) + ".")
		}
		for _, s := range c.Spacers {
			m.Item(0, "·", "spacer of "+present.SpacerFor(s, m.unit))
		}
	}
	for _, a := range m.report.SharedSizes {
		m.Text(upper(present.SharedSizeText(a, m.unit)))
	}
	m.Small("Heights are over the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet " +
		"comes first.")
}
