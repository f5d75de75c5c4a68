package paper

import (
	"cmp"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// tagging is what is being written: an element of a page, which may go on over the next ones.
type tagging struct {
	kind  drawing.Kind // none where nothing is said
	since drawing.Count
}

// as writes an element of a kind, such as a heading or a paragraph, of all texts that write writes and that are not
// within another element.
func (b *Book) as(kind drawing.Kind, write func()) {
	if b.trial {
		write()
		return
	}
	before := b.open
	b.open = tagging{kind: kind}
	if b.page != nil {
		b.open.since = b.page.Count()
	}
	write()
	b.tagOpen()
	b.open = before
}

// tagOpen gives what is being written the texts that it has on this page.
func (b *Book) tagOpen() {
	if b.open.kind != "" && b.page != nil {
		b.page.TagTexts(b.open.since, b.open.kind)
	}
}

// put draws a drawing on the page with its lower left corner at a place. Who does not see it is told its own words, or
// else what it stands under.
func (b *Book) put(d drawing.Drawing, at geom.Point) {
	if b.trial {
		return
	}
	since := b.page.Count()
	tag := b.page.Element(drawing.Illustration, cmp.Or(d.Alt, "drawing: "+b.under), 0)
	b.page.Add(d, at, 1)
	b.page.Tag(since, tag)
}
