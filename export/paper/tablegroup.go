package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Group is rows of a table below a line that holds for all of them; no line where Head is empty.
type Group struct {
	Head string
	Rows [][]string
}

// goesOn is said where a group is broken.
const goesOn = ", goes on"

// someRows of a long table stay together where it begins and where it ends.
const someRows = 3

// Groups prints groups of rows under common heads of columns. Where a page or a column of it ends, the heads come
// again, with the line of the group that goes on.
func (b *Book) Groups(columns []Column, groups []Group) {
	var all [][]string
	for _, g := range groups {
		all = append(all, g.Rows...)
	}
	t := newTable(b, columns, all)
	t.Keep(t.kept(groups))
	t.head()
	left := len(all)
	for _, g := range groups {
		for i, r := range g.Rows {
			high, head := t.height(r, drawing.Regular), g.Head
			if i == 0 && head != "" {
				high += t.groupHigh(head)
			}
			if left--; t.Room() < high+t.last(g.Rows[i+1:], left) {
				t.next()
				if i > 0 && head != "" {
					high += t.groupHigh(head + goesOn)
				}
				t.Keep(t.height(t.heads, drawing.Bold) + high) // else a column may be too short for them
				t.head()
				if i > 0 && head != "" {
					t.groupHead(head + goesOn)
				}
			}
			if i == 0 && head != "" {
				t.groupHead(head)
			}
			t.row(r)
		}
	}
	b.Space(b.Gap(AfterTable))
}

// last is what the rows after this one take that stay with it, all of one group: the last few of a long table, and the
// last of any but the shortest, which would stand on its page alone.
func (t *table) last(rows [][]string, left int) (high float64) {
	few := 1
	if len(t.rows) > 2*someRows {
		few = someRows - 1
	}
	if left != few || left != len(rows) || len(t.rows) <= 2 {
		return 0
	}
	for _, r := range rows {
		high += t.height(r, drawing.Regular)
	}
	return high
}

// kept is how much of a table stays together: all of a short one, else its head with some rows.
func (t *table) kept(groups []Group) float64 {
	const short = 45.0
	all, first, n := t.height(t.heads, drawing.Bold), 0.0, 0
	for _, g := range groups {
		if g.Head != "" {
			all += t.groupHigh(g.Head)
		}
		for _, r := range g.Rows {
			if all += t.height(r, drawing.Regular); n < someRows {
				first = all
			}
			if n++; all > short {
				return first
			}
		}
	}
	return all
}

// groupLines are the lines of what stands over a group.
func (t *table) groupLines(s string) []string {
	return drawing.Wrap(drawing.Bold, t.size, max(t.total(), t.Width()), s)
}

func (t *table) groupHigh(s string) float64 {
	return float64(tableLeading*t.size*float64(len(t.groupLines(s)))) + 2*t.pad()
}

// groupHead writes what holds for the rows below it.
func (t *table) groupHead(s string) {
	high := t.groupHigh(s)
	t.need(high)
	for k, l := range t.groupLines(s) {
		t.page.Words(t.left(), t.cursor-t.pad()-t.size-float64(tableLeading*t.size*float64(k)), t.size, drawing.Bold, l)
	}
	t.cursor -= high
	y := t.cursor + t.pad()/2
	t.page.Line(drawing.Thin, geom.Point{X: t.left(), Y: y}, geom.Point{X: t.left() + t.total(), Y: y})
}
