package packet

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/setup"
)

// strips lists the strips of wooden runners of all openings.
func (m maker) strips() {
	var with []record.Cabinet
	var strips, seasons present.Table
	for _, c := range m.report.Cabinets {
		if len(c.Strips) == 0 {
			continue
		}
		with = append(with, c)
		s, over := present.StripTable(c, m.unit), present.SeasonTable(c, m.unit)
		s.Rows, over.Rows = slices.Concat(strips.Rows, s.Rows), slices.Concat(seasons.Rows, over.Rows)
		strips, seasons = s, over
	}
	if len(with) == 0 {
		return
	}
	m.Heading(2, "Wooden runners")
	m.table(strips)
	for _, group := range setup.Together(with, func(c record.Cabinet) string {
		return strings.Join(present.StripText(c, m.unit), "\n")
	}) {
		if len(group) < len(with) {
			m.Strong(names(openingNames(group)))
		}
		for _, said := range present.StripText(group[0], m.unit) {
			m.Text(said)
		}
	}
	if len(seasons.Rows) > 0 {
		m.table(seasons)
	}
}
