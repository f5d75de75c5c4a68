package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Form prints a table with boxes to fill in: rows that have some of them given are shaded and bold; of the others the
// first cell is given.
func (b *Book) Form(heads []string, rows [][]string) {
	f := form{Book: b, heads: heads}
	f.first = min(formFirst, b.Width()/4)
	f.wide = (b.Width() - f.first) / float64(len(heads)-1)
	f.Keep(formRow * float64(min(len(rows)+1, 8)))
	f.row(heads, drawing.Bold, 0.06)
	for i, r := range rows {
		given := len(r) > 1
		if lines := min(len(rows)-i, 2); given && f.Room() < formRow*float64(lines) || f.Room() < formRow {
			f.Page()
			f.row(heads, drawing.Bold, 0.06)
		}
		if given {
			f.row(r, drawing.Bold, 0.03)
		} else {
			f.row(r, drawing.Regular, 0)
		}
	}
	b.Space(3)
}

// Measures of a form, in mm: its rows, and its first column.
const (
	formRow   = 9.0
	formFirst = 42.0
)

type form struct {
	*Book
	heads       []string
	first, wide float64 // of the first column, and of each other
}

// edge is where a column begins.
func (f *form) edge(i int) float64 {
	if i == 0 {
		return f.left()
	}
	return f.left() + f.first + float64(f.wide*float64(i-1))
}

// row prints one, its words line by line; it is as high as they need.
func (f *form) row(r []string, face drawing.Face, fill drawing.Ink) {
	const size = 2.9
	d, most := f.page, 0
	lines := make([][]string, len(r))
	for i := range r {
		lines[i] = drawing.Wrap(face, size, f.edge(i+1)-f.edge(i)-2, r[i])
		most = max(most, len(lines[i]))
	}
	high := max(formRow, 2+float64(1.2*size*float64(most)))
	for i := range f.heads {
		d.Loops(drawing.Thin, fill, geom.Rectangle(f.edge(i), f.cursor-high, f.edge(i+1), f.cursor))
	}
	for k := range most {
		for i := range lines {
			if k < len(lines[i]) {
				y := f.cursor - 1 - size - float64(1.2*size*float64(k))
				d.Words(f.edge(i)+1, y, size, face, lines[i][k])
			}
		}
	}
	f.cursor -= high
}
