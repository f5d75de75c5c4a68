package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
)

// templates lists the plates and how they are used.
func (m maker) templates() {
	list := m.report.Templates
	if len(list) == 0 {
		return
	}
	m.Chapter("Templates")
	said := fmt.Sprintf("Plates of %s. Files that say AS DRAWN have the lines as the plates should come out: let the "+
		"cutter's program make up for what it takes away, or use those that say KERF, in which it is made up for; "+
		"never both.", list[0].Stock)
	m.Text(said)
	t := present.TemplateTable(list, m.unit).Pick("plate", "pieces", "length", "width", "parts")
	m.table(t.Renamed("parts", "serves"))
	told := make(map[string]bool)
	for _, t := range list {
		for _, n := range t.Notes {
			if !told[n] {
				told[n] = true
				m.Item(0, "·", n)
			}
		}
	}
	for _, c := range present.TemplateCautions {
		m.Item(0, "!", c.Cited())
	}
}
