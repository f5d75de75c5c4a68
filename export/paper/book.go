// Package paper lays out what goes to the bench on paper: text, tables, drawings of
// parts with their sizes, of joints and of cuts at the machine, forms to fill in
// and labels; and plates at their true size over as many sheets as they take.
//
// A [Book] takes them one after the other and breaks pages; everything ends up as
// [drawing.Page] values, in millimeters.
package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Size of a sheet, upright, in mm.
type Size struct {
	Name          string
	Width, Height float64
}

// Sheets: ISO 216, and Letter of ANSI/ASME Y14.1 (8.5 x 11 in), from memory.
var (
	A4     = Size{"A4", 210, 297}
	A3     = Size{"A3", 297, 420}
	Letter = Size{"Letter", 215.9, 279.4}
)

// SizeOf is the sheet of a name.
func SizeOf(name string) (Size, bool) {
	for _, s := range []Size{A4, A3, Letter} {
		if s.Name == name {
			return s, true
		}
	}
	return Size{}, false
}

// Measures of a page, in mm.
const (
	margin  = 15.0
	body    = 3.3 // letters
	small   = 2.7
	warns   = 3.0
	leading = 1.4 // from base line to base line, in sizes
)

// afterText and afterFigure are gaps below paragraphs and figures, in mm.
const afterText, afterFigure = 0.8, 2.0

// Book is a document in the making. Pages go out as they are full, so that a long
// one takes no more memory than a short one.
type Book struct {
	Size     Size
	Title    string
	Block    Block // the rest of what stands at the foot of every page
	Out      func(drawing.Page)
	Tight    bool          // what is laid out takes less of the page, as [Book.Gap] has it
	page     *drawing.Page // that is being filled, if any
	foot     foot          // what stands at its foot
	trial    bool          // drawings are left out: what is laid out is thrown away
	number   int           // of the page
	turns    int           // how often the page or the column ended
	cursor   float64       // the lowest place that is taken on it, or in its column
	column   column
	headings headings
	about    []string  // the chapters on the page
	chapters []chapter // so far
	contents *drawing.Later
	// contentsWide is how wide a column of the contents is.
	contentsWide float64
	scales       []string // of the drawings on the page
	total        *drawing.Later
	open         tagging
	under        string // the last heading
	depth        int    // of it
}

// left is where lines begin, in mm from the left edge of the sheet.
func (b *Book) left() float64 { return margin + b.column.left }

// Width is what lines have room for.
func (b *Book) Width() float64 {
	if b.column.of > 0 {
		return b.column.wide
	}
	return b.fullWidth()
}

// fullWidth is that of the page between its margins.
func (b *Book) fullWidth() float64 { return b.Size.Width - 2*margin }

// Room is how much is left on the page, or in its column.
func (b *Book) Room() float64 {
	if b.page == nil {
		return 0
	}
	return b.cursor - b.floor()
}

// floor is the lowest place that may be taken.
func (b *Book) floor() float64 { return max(bottomEdge, b.column.floor) }

// top is the highest.
func (b *Book) top() float64 {
	if b.column.of > 0 {
		return b.column.top
	}
	return b.Size.Height - margin
}

// whole is how much a new page has.
func (b *Book) whole() float64 { return b.Size.Height - margin - bottomEdge }

// Page begins a new page, with entries in the list of contents.
func (b *Book) Page(entries ...drawing.Bookmark) {
	b.turn()
	b.page = &drawing.Page{Drawing: drawing.Drawing{Width: b.Size.Width, Height: b.Size.Height}}
	b.open.since = drawing.Count{}
	b.cursor = b.Size.Height - margin
	b.number++
	b.turns++
	b.enter(entries)
}

// enter notes entries of the list of contents that begin on this page.
func (b *Book) enter(entries []drawing.Bookmark) {
	b.page.Bookmarks = append(b.page.Bookmarks, entries...)
	for _, e := range entries {
		if e.Level == 0 {
			if b.cursor >= b.Size.Height-margin {
				b.about = nil // the one before has ended
			}
			b.about = append(b.about, e.Name)
			b.chapters = append(b.chapters, chapter{e.Name, b.number})
		}
	}
}

// need makes sure of some room, in the next column or on a new page if there is none.
func (b *Book) need(height float64) {
	if b.page != nil && b.Room() < height && b.cursor >= b.top() {
		switch {
		case b.floor() > bottomEdge:
			b.column.short = true
		case b.top() < b.Size.Height-margin: // no column has the room as far down as they begin
			b.column.at = b.column.of - 1
			b.next()
		}
		return
	}
	if b.page == nil || b.Room() < height {
		if b.endsInHeading() { // which goes along
			height += b.headings.before.cursor - b.headings.end
		}
		if b.column.of > 0 && b.floor() <= bottomEdge && b.top() < b.Size.Height-margin && b.top()-bottomEdge < height {
			b.column.at = b.column.of - 1 // the next column of this page has no more room
		}
		b.next()
	}
}

// Keep makes sure that what follows is not torn apart.
func (b *Book) Keep(height float64) { b.need(min(height, b.whole())) }

// Space leaves some.
func (b *Book) Space(height float64) { b.cursor -= height }

// line writes a line of text and moves below it.
func (b *Book) line(x, size float64, f drawing.Face, s string) {
	b.need(b.lead(size))
	b.page.Words(b.left()+x, b.cursor-size, size, f, s)
	b.cursor -= b.lead(size)
}

// Text is a paragraph.
func (b *Book) Text(s string) { b.paragraph(set{size: body}, s) }

// Small is a paragraph in small letters.
func (b *Book) Small(s string) {
	b.as(drawing.Paragraph, func() {
		for _, l := range drawing.Wrap(drawing.Regular, small, b.Width(), s) {
			b.line(0, small, drawing.Regular, l)
		}
	})
	b.Space(b.Gap(afterText))
}

// Item is a paragraph behind a sign, such as a number or an exclamation mark; level
// sets it further in.
func (b *Book) Item(level int, sign, s string) {
	b.paragraph(set{size: body, x: float64(6 * level), hang: 6, sign: sign}, s)
}

// Tick is a paragraph behind a box to tick.
func (b *Book) Tick(level int, s string) {
	b.paragraph(set{size: body, x: float64(6 * level), hang: 6, sign: boxToTick}, s)
}

// boxToTick stands for a box that is drawn, not written.
const boxToTick = "\u2610"

// Strong is a paragraph in bold letters.
func (b *Book) Strong(s string) {
	const size = 4.2
	b.as(drawing.Paragraph, func() {
		for _, l := range drawing.Wrap(drawing.Bold, size, b.Width(), s) {
			b.line(0, size, drawing.Bold, l)
		}
	})
	b.Space(b.Gap(afterText))
}

// Caution is an item that says what can hurt, where many stand close: in letters between those of the text and small
// ones.
func (b *Book) Caution(level int, s string) {
	b.paragraph(set{size: warns, x: float64(6 * level), hang: 6, sign: "!"}, s)
}

// Note is an item of a list that says how something is done, in letters as large as those of cautions.
func (b *Book) Note(s string) { b.paragraph(set{size: warns, hang: 3, sign: "·"}, s) }

// SmallItem is an item in small letters.
func (b *Book) SmallItem(level int, sign, s string) {
	b.paragraph(set{size: small, x: float64(6 * level), hang: 6, sign: sign}, s)
}

// set is how a paragraph looks: from x on, its lines by hang further in than the sign before it.
type set struct {
	size, x, hang float64
	sign          string
}

func (b *Book) paragraph(w set, s string) {
	lines := drawing.Wrap(drawing.Regular, w.size, b.Width()-w.x-w.hang, s)
	b.Keep(b.lead(w.size) * float64(min(len(lines), 3)))
	b.as(drawing.Paragraph, func() { b.lines(w, lines) })
	b.Space(b.Gap(afterText))
}

// lines writes those of a paragraph.
func (b *Book) lines(w set, lines []string) {
	for i, l := range lines {
		b.need(b.lead(w.size))
		switch at := b.left() + w.x; {
		case i == 0 && w.sign == boxToTick:
			tickBox(&b.page.Drawing, geom.Point{X: at, Y: b.cursor - w.size - 0.6})
		case i == 0 && w.sign != "":
			b.page.Words(at, b.cursor-w.size, w.size, drawing.Bold, w.sign)
		}
		b.line(w.x+w.hang, w.size, drawing.Regular, l)
	}
}

// Figure puts a drawing in the middle, with words under it, if any.
func (b *Book) Figure(d drawing.Drawing, words string) {
	lines := drawing.Wrap(drawing.Regular, small, b.Width(), words)
	b.Keep(d.Height + b.lead(small)*float64(len(lines)) + b.Gap(afterFigure))
	b.put(d, geom.Point{X: b.left() + (b.Width()-d.Width)/2, Y: b.cursor - d.Height})
	b.cursor -= d.Height
	for _, l := range lines {
		b.line(0, small, drawing.Regular, l)
	}
	b.Space(b.Gap(afterFigure))
}

// Figure is a drawing with words under it.
type Figure struct {
	drawing.Drawing
	Words string
}

// Figures puts drawings beside each other, as many as a line has room for.
func (b *Book) Figures(list []Figure) {
	for len(list) > 0 {
		n, wide := 1, list[0].Width
		for n < len(list) && wide+gutter+list[n].Width <= b.Width() {
			wide += gutter + list[n].Width
			n++
		}
		b.figureLine(list[:n])
		list = list[n:]
	}
}

// figureLine puts drawings, which have room for it, into one line.
func (b *Book) figureLine(list []Figure) {
	high, under := 0.0, 0
	for _, f := range list {
		high = max(high, f.Height)
		under = max(under, len(drawing.Wrap(drawing.Regular, small, f.Width, f.Words)))
	}
	b.Keep(high + b.lead(small)*float64(under) + b.Gap(afterFigure))
	x := b.left()
	for _, f := range list {
		b.put(f.Drawing, geom.Point{X: x, Y: b.cursor - high})
		for i, l := range drawing.Wrap(drawing.Regular, small, f.Width, f.Words) {
			b.page.Words(x, b.cursor-high-small-float64(b.lead(small)*float64(i)), small, drawing.Regular, l)
		}
		x += f.Width + gutter
	}
	b.Space(high + b.lead(small)*float64(under) + b.Gap(afterFigure))
}

// Close ends the book: what its pages say of all of them is known.
func (b *Book) Close() {
	b.turn()
	b.countPages()
	b.listChapters()
}

// turn lets the page go, with its title block.
func (b *Book) turn() {
	if b.page == nil {
		return
	}
	b.tagOpen()
	since := b.page.Count()
	switch b.foot {
	case footBlock:
		b.titleBlock()
	case footStrip:
		b.titleStrip()
	}
	b.page.Tag(since, drawing.Artifact)
	b.Out(*b.page)
	b.page, b.foot, b.scales = nil, footBlock, nil
	b.about = b.about[max(0, len(b.about)-1):]
}
