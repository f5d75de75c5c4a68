package paper

import "drawerwright/export/drawing"

// Height is how much of pages something takes that is not torn apart, in mm.
func (b *Book) Height(write func(*Book)) float64 {
	const endless = 1e6 // mm
	trial := &Book{Size: Size{Width: b.Size.Width, Height: endless}, Title: b.Title, Out: func(drawing.Page) {}, Tight: b.Tight, trial: true}
	trial.Page()
	trial.Space(1) // within a page, where headings have some space above them
	from := trial.cursor
	write(trial)
	return from - trial.cursor
}

// Whole is how much a new page has room for, in mm.
func (b *Book) Whole() float64 { return b.whole() }

// Entry puts the page that is being filled into the list of contents.
func (b *Book) Entry(entries ...drawing.Bookmark) {
	if b.page == nil {
		b.Page()
	}
	b.enter(entries)
}
