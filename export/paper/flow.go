package paper

import (
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// column is where words run while a page is in columns; the zero value is the whole page.
type column struct {
	of, at     int     // how many there are, and which one it is
	left, wide float64 // from the margin on
	top, floor float64 // the places where it begins, and ends at the latest
	after      float64 // where it ends on the pages after this one
	lowest     float64 // that the columns before it have taken
	short      bool    // it ends above what something needs, though there is more of the page
}

// ColumnGap is between columns, in mm.
const ColumnGap = 6.0

// Columns lays out what draw draws in so many columns beside each other, about as long as each other, and goes on
// below them; where it goes on the next page, they are about as long as each other there. Draw may be called several
// times, to try how it fits.
func (b *Book) Columns(of int, draw func()) {
	if b.page == nil {
		b.Page()
	}
	c := columns{b, of, draw}
	if b.Room() < scarce*b.whole() && c.pages(bottomEdge, bottomEdge) != 0 {
		b.next()
	}
	switch floor := bottomEdge; c.pages(floor, floor) {
	case 0:
		c.run(c.highest(func(floor float64) bool { return c.pages(floor, bottomEdge) == 0 }), bottomEdge)
	case 1:
		c.run(floor, c.highest(func(after float64) bool { return c.pages(floor, after) == 1 }))
	default:
		c.run(floor, floor)
	}
}

// columns are so many beside each other, with what they are filled with.
type columns struct {
	*Book
	of   int
	draw func()
}

// run fills them down to a floor, and on the pages after this one down to another. It gives how many of these there
// are, and whether something needs more room than a column has.
func (c columns) run(floor, after float64) (pages int, short bool) {
	b := c.Book
	number, turns := b.number, b.turns
	b.column = b.columnOf(c.of, 0)
	b.column.floor, b.column.after = floor, after
	c.draw()
	b.cursor = min(b.cursor, b.column.lowest)
	short = b.column.short
	b.column = column{}
	if b.number == number {
		b.turns = turns // columns on one page tear nothing apart
	}
	return b.number - number, short
}

// pages tries how many more pages they go over; -1 where something needs more room than a column has.
func (c columns) pages(floor, after float64) (n int) {
	c.try(func() {
		var short bool
		if n, short = c.run(floor, after); short {
			n = -1
		}
	})
	return n
}

// highest is the highest floor that is right, by bisection: the foot of the page is, its top is not.
func (c columns) highest(right func(floor float64) bool) float64 {
	low, high := bottomEdge, c.Size.Height-margin
	for high-low > 1.5 {
		if middle := (low + high) / 2; right(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// BesideLeast is the room for words beside a drawing, in mm; where less is left they stand below it.
const BesideLeast = 58.0

// Beside puts a drawing at the left, and what draw draws to its right, none of it torn apart where a page has room
// for it. Draw may be called several times.
func (b *Book) Beside(d drawing.Drawing, draw func()) {
	if b.Width()-d.Width-ColumnGap < BesideLeast {
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
	b.Space(b.Gap(afterFigure))
}

// scarce is the part of a page below which columns that do not fit begin on the next one.
const scarce = 0.15

// next begins the next column, or a new page, with the headings that nothing stands below.
func (b *Book) next() {
	if b.endsInHeading() && b.headings.before.cursor >= b.top() && b.floor() > bottomEdge {
		b.column.short = true // else a heading stands alone in a column
	}
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
	at := c.at + 1
	if at == c.of {
		b.Page()
		at, c.top, c.floor, c.lowest = 0, b.cursor, max(bottomEdge, c.after), b.cursor
	}
	b.turns++
	b.cursor = c.top
	if c.of > 1 {
		c.turn(at)
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

// Takes is how much what draw draws takes of the page, or of the column; fits is false where it goes beyond that.
func (b *Book) Takes(draw func()) (high float64, fits bool) {
	if b.page == nil {
		b.next()
	}
	b.try(func() {
		turns, top := b.turns, b.cursor
		draw()
		high, fits = top-b.cursor, b.turns == turns
	})
	return high, fits
}

// TakesIn is [Book.Takes] in one of so many columns of the page.
func (b *Book) TakesIn(of int, draw func()) (high float64, fits bool) {
	if b.page == nil {
		b.next()
	}
	b.try(func() {
		b.column = b.columnOf(of, 0)
		high, fits = b.Takes(draw)
	})
	return high, fits
}

// worthIt is how much of a page, in mm, is worth another way to draw the same.
const worthIt = 3.0

// Shortest is which of some ways to draw the same takes the least of the page, of those that take about as much the
// first; the last one where none goes on it.
func (b *Book) Shortest(ways ...func()) (best func()) {
	least := math.Inf(1)
	best = ways[len(ways)-1]
	for _, draw := range ways {
		if high, fits := b.Takes(draw); fits && high < least-worthIt {
			best, least = draw, high
		}
	}
	return best
}

// Break ends a column: what follows stands in the next one.
func (b *Book) Break() {
	if b.column.of > 0 {
		b.turnColumn()
	}
}

// Fits reports whether what draw draws goes on what is left of the page, or of the column.
func (b *Book) Fits(draw func()) (fits bool) {
	_, fits = b.Takes(draw)
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
