package present

import (
	"slices"
	"strings"
)

// Table is a table as terminal, packet and page print it: all of them take columns and cells
// from here, and none writes a cell of its own.
type Table struct {
	Columns []Column
	Rows    [][]Cell // as long as Columns each; of fewer cells the rest is empty
	// UnitOnce prints a unit at the first of the columns that have it, for all of them.
	UnitOnce bool
}

// Column is a column of a table.
type Column struct {
	Heading string
	Unit    string // of its cells, printed after the heading; empty for none
	Right   bool   // flush right, as numbers are
}

// Cell is one cell, and how it is to be seen.
type Cell struct {
	Text  string
	Level Level
}

// Level says how a cell is to be seen at a glance; empty where there is no verdict on it.
type Level string

const (
	Good Level = "good" // it is right
	Bad  Level = "bad"  // it is not right
)

// Words is a column of words.
func Words(heading string) Column { return Column{Heading: heading} }

// Numbers is a column of numbers, flush right.
func Numbers(heading string) Column { return Column{Heading: heading, Right: true} }

// In is a column of numbers in a unit.
func In(heading, unit string) Column { return Column{Heading: heading, Unit: unit, Right: true} }

// NewTable is a table without rows.
func NewTable(columns ...Column) Table { return Table{Columns: columns} }

// Add adds a row of cells without a verdict.
func (t *Table) Add(texts ...string) {
	row := make([]Cell, len(texts))
	for i, text := range texts {
		row[i].Text = text
	}
	t.Rows = append(t.Rows, row)
}

// Titles are the headings with their units.
func (t Table) Titles() []string {
	list := make([]string, len(t.Columns))
	said := make(map[string]bool)
	for i, c := range t.Columns {
		list[i] = c.Heading
		if c.Unit != "" && !(t.UnitOnce && said[c.Unit]) {
			list[i] = strings.TrimLeft(c.Heading+" "+c.Unit, " ")
		}
		said[c.Unit] = true
	}
	return list
}

// Texts are the texts of the cells.
func (t Table) Texts() [][]string {
	rows := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		rows[i] = make([]string, len(row))
		for k, c := range row {
			rows[i][k] = c.Text
		}
	}
	return rows
}

// Has reports whether a table has a column.
func (t Table) Has(heading string) bool {
	return slices.ContainsFunc(t.Columns, func(c Column) bool { return c.Heading == heading })
}

// Pick is the table of some columns, in the order of the headings given.
func (t Table) Pick(headings ...string) Table {
	out := Table{UnitOnce: t.UnitOnce, Rows: make([][]Cell, len(t.Rows))}
	for _, h := range headings {
		at := slices.IndexFunc(t.Columns, func(c Column) bool { return c.Heading == h })
		out.Columns = append(out.Columns, t.Columns[at])
		for i, row := range t.Rows {
			out.Rows[i] = append(out.Rows[i], row[at])
		}
	}
	return out
}

// Renamed is the table with another heading of one column.
func (t Table) Renamed(heading, instead string) Table {
	t.Columns = slices.Clone(t.Columns)
	for i, c := range t.Columns {
		if c.Heading == heading {
			t.Columns[i].Heading = instead
		}
	}
	return t
}

// Without is the table without the column at a place.
func (t Table) Without(at int) Table {
	var rest []string
	for i, c := range t.Columns {
		if i != at {
			rest = append(rest, c.Heading)
		}
	}
	return t.Pick(rest...)
}

// WithoutBlank is the table without columns of which no cell says more than a dash.
func (t Table) WithoutBlank() Table {
	var said []string
	for i, c := range t.Columns {
		if slices.ContainsFunc(t.Rows, func(row []Cell) bool { return row[i].Text != "-" }) {
			said = append(said, c.Heading)
		}
	}
	return t.Pick(said...)
}
