package paper

import "drawerwright/export/drawing"

// headings are those at the end of a page so far, with nothing below them yet. What follows them and finds no room
// takes them along, so that no heading stands alone at the foot of a page.
type headings struct {
	list     []func()  // each draws one
	before   pageState // all of them
	end      float64   // the lowest place that they take
	page     *drawing.Page
	turns    int
	inColumn bool
}

// pageState is how far a page has come.
type pageState struct {
	texts, shapes, marks, chapters, about, depth int
	cursor                                       float64
}

func (b *Book) state() pageState {
	return pageState{len(b.page.Texts), len(b.page.Shapes), len(b.page.Bookmarks), len(b.chapters), len(b.about), b.depth,
		b.cursor}
}

// headed draws a heading for which there is room, and remembers how.
func (b *Book) headed(draw func()) {
	h := &b.headings
	if !b.endsInHeading() {
		*h = headings{before: b.state()}
	}
	turns, page := b.turns, b.page
	draw()
	if b.turns != turns || b.page != page { // it goes over pages itself
		*h = headings{}
		return
	}
	h.list, h.end, h.page, h.turns = append(h.list, draw), b.cursor, b.page, b.turns
	h.inColumn = b.column.of > 0
}

// endsInHeading reports whether nothing stands below the last heading.
func (b *Book) endsInHeading() bool {
	h := b.headings
	same := h.page == b.page && h.turns == b.turns && h.inColumn == (b.column.of > 0)
	return len(h.list) > 0 && h.end == b.cursor && same
}

// takeAlong takes the headings at the end of the page off it, and gives them, unless nothing stands above them.
func (b *Book) takeAlong() []func() {
	h := b.headings
	if b.page == nil || !b.endsInHeading() || h.before.cursor >= b.top() {
		return nil
	}
	b.page.Texts, b.page.Shapes = b.page.Texts[:h.before.texts], b.page.Shapes[:h.before.shapes]
	b.page.Bookmarks, b.chapters = b.page.Bookmarks[:h.before.marks], b.chapters[:h.before.chapters]
	b.about, b.cursor, b.headings = b.about[:h.before.about], h.before.cursor, headings{}
	b.depth = h.before.depth
	return h.list
}

// Heading of a chapter (level 0) or a part of one.
func (b *Book) Heading(level int, s string) {
	size := [...]float64{6, 4.4, 3.6}[min(level, 2)]
	b.Keep(b.lead(size) + 4*b.lead(body))
	b.headed(func() { b.writeHeading(level, size, s) })
}

func (b *Book) writeHeading(level int, size float64, s string) {
	b.under, b.depth = s, min(level, b.depth+1, len(drawing.Headings)-1) // no level is passed over
	if b.cursor < b.top() {
		b.Space(b.Gap(size / 2))
	}
	b.as(drawing.Headings[b.depth], func() {
		for _, l := range drawing.Wrap(drawing.Bold, size, b.Width(), s) {
			b.line(0, size, drawing.Bold, l)
		}
	})
	b.Space(b.Gap(1))
}

// Chapter begins one: on a new page, unless enough of this one is left.
func (b *Book) Chapter(name string) {
	if b.page == nil || b.Room() < shareOfPage*b.whole() {
		b.Page()
	}
	b.headed(func() {
		if b.cursor < b.top() {
			b.Space(b.Gap(5))
		}
		b.enter([]drawing.Bookmark{{Name: name}})
		b.writeHeading(0, 6, name)
	})
}

// shareOfPage is the part of a page that has to be left for a chapter to begin on it.
const shareOfPage = 0.22

// Section begins a chapter wherever there is room for its heading.
func (b *Book) Section(name string) {
	b.Keep(30)
	b.headed(func() {
		b.enter([]drawing.Bookmark{{Name: name}})
		b.writeHeading(0, 4.4, name)
	})
}
