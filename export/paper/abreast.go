package paper

// Abreast draws things beside each other in columns of the same width, each in one piece, for which there is room on
// the page, and goes on below the longest.
func (b *Book) Abreast(things ...func(*Book)) {
	if b.page == nil {
		b.Page()
	}
	top, low, turns := b.cursor, b.cursor, b.turns
	begin := top + 1 // within a page, where headings have some space above them
	if top >= b.top() {
		begin = top
	}
	for i, draw := range things {
		b.column = b.columnOf(len(things), i)
		b.column.top = begin
		b.cursor = top
		draw(b)
		low = min(low, b.cursor)
		b.turns++ // a heading of one column is none of the next
	}
	b.column, b.cursor, b.turns = column{}, low, turns
}

// columnOf is one of so many columns, which begins here.
func (b *Book) columnOf(of, at int) column {
	c := column{of: of, wide: b.ColumnWidth(of), top: b.cursor, lowest: b.cursor}
	c.turn(at)
	return c
}

// turn makes it another one of them.
func (c *column) turn(at int) { c.at, c.left = at, float64(at)*(c.wide+ColumnGap) }

// HeightIn is [Book.Height] in one of so many columns.
func (b *Book) HeightIn(of int, write func(*Book)) float64 {
	return b.Height(func(trial *Book) {
		trial.column = trial.columnOf(of, 0)
		trial.column.top++
		write(trial)
	})
}

// TableWidth is how wide a table is where none of its words are broken, in mm.
func TableWidth(columns []Column, rows [][]string) float64 {
	t := table{Book: &Book{}, size: tableSize, columns: columns, rows: rows}
	for _, c := range columns {
		t.heads = append(t.heads, c.Head)
	}
	t.widths = t.wide(whole, whole)
	return t.total()
}
