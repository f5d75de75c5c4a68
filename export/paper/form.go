package paper

import (
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// FormColumn is a column of a form: what is given is printed and shaded, all else is written in by hand.
type FormColumn struct {
	Head  string
	Given bool
}

// Form prints a table to fill in. The first column has the names of the rows, bold the first line of each; a
// cell's lines are parted by "\n". Columns to write in are equally wide.
func (b *Book) Form(columns []FormColumn, rows [][]string) {
	f := form{Book: b, columns: columns}
	f.measure(rows)
	head := make([]string, len(columns))
	for i, c := range columns {
		head[i] = c.Head
	}
	f.Keep(formRow * float64(min(len(rows)+1, 5)))
	f.row(head, true)
	for _, r := range rows {
		if f.Room() < f.height(f.lines(r, false)) {
			f.Page()
			f.row(head, true)
		}
		f.row(r, false)
	}
	b.Space(b.Gap(3))
}

// Measures of a form, in mm: its rows at least, room beside words, the first column at most, and its letters, whose
// capitals are 2.5 high.
const (
	formRow   = 8.0
	formAir   = 1.0
	formFirst = 40.0
)

var formSize = drawing.Capitals(2.5)

type form struct {
	*Book
	columns []FormColumn
	widths  []float64
}

// measure gives the first column and those that are given what their words take, and the others the rest.
func (f *form) measure(rows [][]string) {
	f.widths = make([]float64, len(f.columns))
	rest, open := f.Width(), 0
	for i, c := range f.columns {
		if i > 0 && !c.Given {
			open++
			continue
		}
		for _, word := range strings.Fields(c.Head) {
			f.widths[i] = max(f.widths[i], drawing.Width(drawing.Bold, formSize, word))
		}
		for _, r := range rows {
			if i < len(r) {
				for _, line := range strings.Split(r[i], "\n") {
					f.widths[i] = max(f.widths[i], drawing.Width(drawing.Bold, formSize, line),
						drawing.Width(drawing.Regular, formSize, line))
				}
			}
		}
		f.widths[i] += 2*formAir + 1e-6 // a line as wide as its column is not broken
		if i == 0 {
			f.widths[i] = min(f.widths[i], formFirst)
		}
		rest -= f.widths[i]
	}
	for i, c := range f.columns {
		if i > 0 && !c.Given {
			f.widths[i] = rest / float64(open)
		}
	}
}

// formLine is a line of a cell.
type formLine struct {
	face drawing.Face
	text string
}

// lines are those of the cells of a row.
func (f *form) lines(r []string, head bool) [][]formLine {
	out := make([][]formLine, len(f.columns))
	for i, cell := range r {
		face := drawing.Bold
		for _, part := range strings.Split(cell, "\n") {
			for _, said := range drawing.Wrap(face, formSize, f.widths[i]-2*formAir, part) {
				out[i] = append(out[i], formLine{face, said})
			}
			if !head {
				face = drawing.Regular
			}
		}
	}
	return out
}

// height is that of a row.
func (f *form) height(lines [][]formLine) float64 {
	most := 0
	for _, l := range lines {
		most = max(most, len(l))
	}
	return max(formRow, 0.8+float64(1.2*formSize*float64(most)))
}

// row prints one, its words line by line.
func (f *form) row(r []string, head bool) {
	lines := f.lines(r, head)
	high := f.height(lines)
	x := f.left()
	for i, c := range f.columns {
		fill := drawing.Ink(0)
		switch {
		case head:
			fill = 0.08
		case c.Given:
			fill = 0.05
		}
		f.page.Loops(drawing.Thin, fill, geom.Rectangle(x, f.cursor-high, x+f.widths[i], f.cursor))
		x += f.widths[i]
	}
	for k, more := 0, true; more; k++ {
		more = false
		x := f.left()
		for i := range f.columns {
			if k < len(lines[i]) {
				more = true
				y := f.cursor - 0.6 - formSize - float64(1.2*formSize*float64(k))
				f.page.Words(x+formAir, y, formSize, lines[i][k].face, lines[i][k].text)
			}
			x += f.widths[i]
		}
	}
	f.cursor -= high
}
