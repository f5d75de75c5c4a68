package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/geom/joinery"
)

// cutList prints the parts by stock, with the sheets that it is bought in.
func (m maker) cutList() {
	m.Section("Cut list")
	for _, s := range present.CutList(m.report.CutList, m.report.Blanks, m.unit) {
		said := s.Stock + ", " + s.Thickness + " thick"
		if k := m.stock(s.Stock); k.Length > 0 {
			said += fmt.Sprintf(", sheets of %s x %s", m.number(k.Length), m.number(k.Width))
			if s.Grained && k.Length != k.Width {
				said += fmt.Sprintf(" with the grain along the %s", m.number(k.Length))
			}
		}
		if s.Grained {
			said += "; the grain runs along the length"
		}
		m.Heading(2, said)
		t := s.Table.Pick(present.NumberColumn, "pieces", "length", "width", "parts")
		if heads, rows := ticked(t); len(rows) >= longList && m.Across(2, heads, rows) == 2 {
			m.Columns(2, func() { m.ticked(t) })
		} else {
			m.ticked(t)
		}
		for _, said := range s.Blanks {
			m.Text(said + ".")
		}
		if l := present.RoughOf(m.report.Lumber, s.Stock); l != nil {
			m.Heading(2, present.RoughText(*l, m.unit))
			m.ticked(present.RoughTable(*l, m.unit))
			for _, said := range present.RoughNotes(*l, m.unit) {
				m.Text(said)
			}
		}
	}
}

// longList are the rows from which on a list stands in columns, where these have room for its words.
const longList = 8

// buy lists what is bought.
func (m maker) buy() {
	if len(m.report.Buy) > 0 {
		m.Heading(2, "To buy")
		m.ticked(present.BuyTable(m.report.Buy).Pick("kind", "what", "quantity", "unit"))
	}
}

// stock is a stock of the job by name.
func (m maker) stock(name string) joinery.Stock {
	for _, s := range m.batch.Stocks {
		if s.Name == name {
			return s
		}
	}
	return joinery.Stock{} // never: parts are of the job's stocks
}
