package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// column is where words run while a page is in columns; the zero value is the whole page.
type column struct {
	of, at     int     // how many there are, and which one it is
	left, wide float64 // from the margin on
	top, floor float64 // the places where it begins, and ends at the latest
	lowest     float64 // that the columns before it have taken
	short      bool    // it ends above what something needs, though there is more of the page
}

// ColumnGap is between columns, in mm.
const ColumnGap = 6.0

// Columns lays out what draw draws in so many columns beside each other, about as long as each other, and goes on
// below them. Draw may be called several times, to try how it fits.
func (b *Book) Columns(of int, draw func()) {
	if b.page == nil {
		b.Page()
	}
	var top float64
	run := func(floor float64) (short bool) {
		number, turns := b.number, b.turns
		b.column = column{of: of, top: top, floor: floor, lowest: top}
		b.column.wide = b.ColumnWidth(of)
		draw()
		b.cursor = min(b.cursor, b.column.lowest)
		short = b.column.short
		b.column = column{}
		if b.number == number {
			b.turns = turns // columns on one page tear nothing apart
		}
		return short
	}
	fits := func(floor float64) (ok bool) {
		b.try(func() {
			number := b.number
			short := run(floor)
			ok = b.number == number && !short
		})
		return ok
	}
	floor := bottomEdge
	if top = b.cursor; b.Room() < scarce*b.whole() && !fits(floor) {
		b.next()
		top = b.cursor
	}
	if fits(floor) {
		low, high := bottomEdge, top // it fits down to the first, and not down to the second
		for high-low > 1.5 {
			if middle := (low + high) / 2; fits(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		floor = low
	}
	run(floor)
}

// besideLeast is the room for words beside a drawing, in mm; where less is left they stand below it.
const besideLeast = 60.0

// Beside puts a drawing at the left, and what draw draws to its right, none of it torn apart where a page has room
// for it. Draw may be called several times.
func (b *Book) Beside(d drawing.Drawing, draw func()) {
	if b.Width()-d.Width-ColumnGap < besideLeast {
		b.Figure(d, "")
		draw()
		return
	}
	b.Keep(d.Height)
	all, high := b.column, 0.0
	at := column{of: 1, left: all.left + d.Width + ColumnGap, wide: b.Width() - d.Width - ColumnGap, floor: all.floor}
	run := func() {
		at.top = b.cursor
		at.lowest = b.cursor - d.Height
		b.column = at
		draw()
		b.cursor = min(b.cursor, b.column.lowest)
		all.short = all.short || b.column.short
		b.column = all
	}
	b.try(func() {
		top, turns := b.cursor, b.turns
		if run(); b.turns == turns {
			high = top - b.cursor
		}
	})
	if high == 0 { // it does not fit below what is there
		b.Keep(b.whole())
	}
	b.put(d, geom.Point{X: b.left(), Y: b.cursor - d.Height})
	run()
	b.Space(2)
}

// scarce is the part of a page below which columns that do not fit begin on the next one.
const scarce = 0.4

// next begins the next column, or a new page, with the headings that nothing stands below.
func (b *Book) next() {
	along := b.takeAlong()
	b.turnColumn()
	for _, draw := range along {
		b.headed(draw)
	}
}

func (b *Book) turnColumn() {
	c := &b.column
	if c.of == 0 {
		b.Page()
		return
	}
	c.lowest = min(c.lowest, b.cursor)
	if c.at++; c.at == c.of {
		b.Page()
		c.at, c.top, c.floor, c.lowest = 0, b.cursor, bottomEdge, b.cursor
	}
	b.turns++
	b.cursor = c.top
	if c.of > 1 {
		c.left = float64(c.at) * (c.wide + ColumnGap)
	}
}

// try draws what leaves no trace.
func (b *Book) try(draw func()) {
	saved := *b
	page := drawing.Page{Drawing: drawing.Drawing{Width: b.Size.Width, Height: b.Size.Height}}
	b.Out, b.headings, b.trial = func(drawing.Page) {}, headings{}, true
	if b.page != nil {
		b.page = &page
	}
	draw()
	*b = saved
}

// ColumnWidth is the width of each of so many columns.
func (b *Book) ColumnWidth(of int) float64 {
	return (b.fullWidth() - float64(ColumnGap*float64(of-1))) / float64(of)
}

// Fits reports whether what draw draws goes on what is left of the page, or of the column.
func (b *Book) Fits(draw func()) (fits bool) {
	if b.page == nil {
		b.next()
	}
	b.try(func() {
		turns := b.turns
		draw()
		fits = b.turns == turns
	})
	return fits
}

// Together keeps what draw draws on one page, or in one column: where too little is left it begins on the next
// one. What is longer than a page begins on one of its own. Draw may be called several times.
func (b *Book) Together(draw func()) {
	if !b.Fits(draw) && b.cursor < b.top() {
		b.next()
	}
	draw()
}
