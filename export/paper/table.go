package paper

import (
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// gutter is between columns, padding above and below the words of a row, and AfterTable below a table, in mm.
const (
	gutter       = 3.0
	narrow       = 2.0 // in a page of several columns
	padding      = 0.7
	tightPadding = 0.5
	AfterTable   = 2.5
)

// pad is what a row has above and below its words.
func (b *Book) pad() float64 {
	if b.Tight {
		return tightPadding
	}
	return padding
}

// tableLeading is from one base line of a cell to the next, in sizes.
const tableLeading = 1.3

// tableSize is the size of the letters of tables, in mm: capitals are 2.5 high. It is never less: words that find no
// room are broken into lines.
var tableSize = drawing.Capitals(2.5)

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool // its words are set to the right
	Tick  bool // it has a box to tick in each row
	Fill  bool // it takes the room that is left, to write in
}

// Table prints rows under the heads of columns. Words that do not fit are broken into lines;
// the heads come again on every page.
func (b *Book) Table(columns []Column, rows [][]string) { b.Groups(columns, []Group{{Rows: rows}}) }

type table struct {
	*Book
	size    float64
	columns []Column
	heads   []string
	right   []bool
	rows    [][]string // of all groups
	widths  []float64
	on      *drawing.Page // on which its element is
	tag     drawing.Tag
}

// tagRow makes the elements of the cells of a row, in the table's on this page.
func (t *table) tagRow(kind drawing.Kind) []drawing.Tag {
	list := make([]drawing.Tag, len(t.heads))
	if t.trial {
		return list
	}
	if t.on != t.page {
		t.on, t.tag = t.page, t.page.Element(drawing.Grid, "", 0)
	}
	row := t.page.Element(drawing.GridRow, "", t.tag)
	for i := range list {
		list[i] = t.page.Element(kind, "", row)
	}
	return list
}

// newTable is a table of some rows with its columns measured, not drawn yet.
func newTable(b *Book, columns []Column, rows [][]string) table {
	t := table{Book: b, size: tableSize, columns: columns, rows: rows}
	for _, c := range columns {
		t.heads, t.right = append(t.heads, c.Head), append(t.right, c.Right)
	}
	t.measure()
	return t
}

// measure gives each column what its longest cell takes; where that is too much, heads are broken between their words,
// and then the widest columns give way down to a common width, none below its longest word where that can be.
func (t *table) measure() {
	room := t.Width() - t.gap()*float64(len(t.heads)-1)
	if t.widths = t.wide(whole, whole); sum(t.widths) > room {
		t.widths = t.wide(strings.Fields, whole)
	}
	least := t.least()
	if sum(least) > room {
		least = t.wide(strings.Fields, strings.Fields)
	}
	if sum(least) > room {
		clear(least)
	}
	low, high := 0.0, room
	for range 40 { // a bisection to less than a micrometer
		most := (low + high) / 2
		taken := 0.0
		for i, w := range t.widths {
			taken += max(least[i], min(w, most))
		}
		if taken > room {
			high = most
		} else {
			low = most
		}
	}
	for i := range t.widths {
		t.widths[i] = max(least[i], min(t.widths[i], low)) + 1e-6 // a cell as wide as its column is not broken
	}
	for i, c := range t.columns {
		if c.Fill {
			t.widths[i] += max(0, t.Width()-t.total())
		}
	}
}

// whole is a text as one piece.
func whole(s string) []string { return []string{s} }

// fillLeast is the least width of a column to write in, in mm.
const fillLeast = 13.0

// wide is how wide the pieces of the heads and cells of each column are.
func (t *table) wide(heads, cells func(string) []string) []float64 {
	widths := make([]float64, len(t.heads))
	for i, h := range t.heads {
		switch c := t.columns[i]; {
		case c.Tick:
			widths[i] = tickSide
		case c.Fill:
			widths[i] = fillLeast
		}
		for _, w := range heads(h) {
			widths[i] = max(widths[i], drawing.Width(drawing.Bold, t.size, w))
		}
	}
	for _, r := range t.rows {
		for i, c := range r {
			for _, w := range cells(c) {
				widths[i] = max(widths[i], drawing.Width(drawing.Regular, t.size, w))
			}
		}
	}
	return widths
}

// least is the width under which words of a column are broken, and of one that is set to the right, its numbers.
func (t *table) least() []float64 {
	least, numbers := t.wide(strings.Fields, strings.Fields), t.wide(strings.Fields, whole)
	for i, c := range t.columns {
		if c.Right {
			least[i] = numbers[i]
		}
	}
	return least
}

// Across is in how many columns of the page, at most, a table has room for every word, and for every cell of those that
// are set to the right.
func (b *Book) Across(most int, columns []Column, rows [][]string) int {
	saved := b.column
	defer func() { b.column = saved }()
	for of := most; of > 1; of-- {
		b.column = b.columnOf(of, 0)
		t := newTable(b, columns, rows)
		if sum(t.least())+float64(t.gap()*float64(len(columns)-1)) <= b.column.wide {
			return of
		}
	}
	return 1
}

func sum(list []float64) (total float64) {
	for _, v := range list {
		total += v
	}
	return total
}

func (t *table) head() {
	t.cells(t.heads, drawing.Bold, false)
	y := t.cursor + t.pad()/2
	t.page.Line(drawing.Thick, geom.Point{X: t.left(), Y: y}, geom.Point{X: t.left() + t.total(), Y: y})
}

// gap is between columns.
func (t *table) gap() float64 {
	if t.column.of > 1 {
		return narrow
	}
	return gutter
}

func (t *table) total() float64 {
	return sum(t.widths) + float64(t.gap()*float64(len(t.widths)-1))
}

func (t *table) row(r []string) {
	t.cells(r, drawing.Regular, true)
	y := t.cursor + t.pad()/2
	t.page.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{X: t.left(), Y: y}, geom.Point{X: t.left() + t.total(), Y: y})
}

func (t *table) height(r []string, f drawing.Face) float64 {
	n := 1
	for i, c := range r {
		n = max(n, len(drawing.Wrap(f, t.size, t.widths[i], c)))
	}
	return float64(tableLeading*t.size*float64(n)) + 2*t.pad()
}

// cells prints a row, line by line, so that its words follow each other as they are read; a row of the body has
// its boxes to tick.
func (t *table) cells(r []string, f drawing.Face, ticks bool) {
	high := t.height(r, f)
	t.need(high)
	lines, most, in := make([][]string, len(r)), 0, make([]float64, len(r))
	for i, c := range r {
		lines[i] = drawing.Wrap(f, t.size, t.widths[i], c)
		most = max(most, len(lines[i]))
		in[i] = t.setIn(i, f, lines[i])
	}
	kind := drawing.GridCell
	if !ticks {
		kind = drawing.GridHead
	}
	tags := t.tagRow(kind)
	for k := range most {
		x, y := t.left(), t.cursor-t.pad()-t.size-float64(tableLeading*t.size*float64(k))
		for i := range r {
			if k < len(lines[i]) {
				t.page.Write(drawing.Text{String: lines[i][k], Size: t.size, Face: f, Tag: tags[i],
					At: geom.Point{X: x + in[i], Y: y}})
			}
			x += t.widths[i] + t.gap()
		}
	}
	x := t.left()
	for i, c := range t.columns {
		if ticks && c.Tick {
			tickBox(&t.page.Drawing, geom.Point{X: x, Y: t.cursor - t.pad() - t.size - 0.4})
		}
		x += t.widths[i] + t.gap()
	}
	t.cursor -= high
}

// setIn is how far the lines of a cell are set in: in a column that is set to the right the longest of them ends at
// its right, and the others begin where it does, as what goes on there.
func (t *table) setIn(column int, f drawing.Face, lines []string) float64 {
	if !t.right[column] {
		return 0
	}
	longest := 0.0
	for _, l := range lines {
		longest = max(longest, drawing.Width(f, t.size, l))
	}
	return t.widths[column] - longest
}

// tickBox draws a box to tick with its lower left corner at a place.
func tickBox(d *drawing.Drawing, at geom.Point) {
	d.Loops(drawing.Pen{Width: 0.25, Ink: 1}, 0, geom.Rectangle(at.X, at.Y, at.X+tickSide, at.Y+tickSide))
}

// tickSide is the side of a box to tick, in mm.
const tickSide = 3.6
