package paper

import (
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// gutter is between columns, and padding above and below the words of a row of small letters, in
// mm; larger ones stand out by themselves.
const (
	gutter  = 3.0
	padding = 0.8
)

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool // its words are set to the right
}

// Table prints rows under the heads of columns. Words that do not fit are broken into lines;
// the heads come again on every page.
func (b *Book) Table(columns []Column, rows [][]string) { b.TableOf(small, columns, rows) }

// TableOf is Table with letters of a size in mm.
func (b *Book) TableOf(size float64, columns []Column, rows [][]string) {
	t := table{Book: b, size: size, pad: padding * small / size, rows: rows}
	for _, c := range columns {
		t.heads, t.right = append(t.heads, c.Head), append(t.right, c.Right)
	}
	t.measure()
	t.head()
	for _, r := range rows {
		t.row(r)
	}
	b.Space(2.5)
}

type table struct {
	*Book
	size   float64
	pad    float64 // above and below the words of a row
	heads  []string
	right  []bool
	rows   [][]string
	widths []float64
}

// measure gives each column what its longest cell takes; where that is too much, heads are
// broken between their words, and then the widest columns give way down to a common width.
func (t *table) measure() {
	room := t.Width() - gutter*float64(len(t.heads)-1)
	if t.widths = t.wide(func(head string) []string { return []string{head} }); sum(t.widths) > room {
		t.widths = t.wide(strings.Fields)
	}
	low, high := 0.0, room
	for range 40 { // a bisection to less than a micrometer
		most := (low + high) / 2
		taken := 0.0
		for _, w := range t.widths {
			taken += min(w, most)
		}
		if taken > room {
			high = most
		} else {
			low = most
		}
	}
	for i := range t.widths {
		t.widths[i] = min(t.widths[i], low) + 1e-6 // a cell as wide as its column is not broken
	}
}

// wide is how wide the cells of each column are, and the pieces of its head.
func (t *table) wide(pieces func(head string) []string) []float64 {
	widths := make([]float64, len(t.heads))
	for i, h := range t.heads {
		for _, w := range pieces(h) {
			widths[i] = max(widths[i], drawing.Width(drawing.Bold, t.size, w))
		}
	}
	for _, r := range t.rows {
		for i, c := range r {
			widths[i] = max(widths[i], drawing.Width(drawing.Regular, t.size, c))
		}
	}
	return widths
}

func sum(list []float64) (total float64) {
	for _, v := range list {
		total += v
	}
	return total
}

func (t *table) head() {
	t.cells(t.heads, drawing.Bold)
	y := t.cursor + t.pad/2
	t.page.Line(drawing.Medium, geom.Point{X: margin, Y: y}, geom.Point{X: margin + t.total(), Y: y})
}

func (t *table) total() float64 {
	return sum(t.widths) + float64(gutter*float64(len(t.widths)-1))
}

func (t *table) row(r []string) {
	if t.Room() < t.height(r, drawing.Regular) {
		t.Page()
		t.head()
	}
	t.cells(r, drawing.Regular)
	y := t.cursor + t.pad/2
	t.page.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{X: margin, Y: y}, geom.Point{X: margin + t.total(), Y: y})
}

func (t *table) height(r []string, f drawing.Face) float64 {
	n := 1
	for i, c := range r {
		n = max(n, len(drawing.Wrap(f, t.size, t.widths[i], c)))
	}
	return float64(leading*t.size*float64(n)) + 2*t.pad
}

func (t *table) cells(r []string, f drawing.Face) {
	high := t.height(r, f)
	t.need(high)
	x := margin
	for i, c := range r {
		for k, l := range drawing.Wrap(f, t.size, t.widths[i], c) {
			at := geom.Point{X: x, Y: t.cursor - t.pad - t.size - float64(leading*t.size*float64(k))}
			w := drawing.Text{String: l, Size: t.size, Face: f, At: at}
			if t.right[i] {
				w.At.X, w.Align = x+t.widths[i], drawing.Right
			}
			t.page.Write(w)
		}
		x += t.widths[i] + gutter
	}
	t.cursor -= high
}
