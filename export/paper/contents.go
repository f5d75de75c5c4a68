package paper

import (
	"fmt"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// chapter is one with the page on which it begins.
type chapter struct {
	name string
	page int
}

// contentsRow is how high a line of the contents is, in mm.
const contentsRow = 4.8

// Contents leaves room for the list of chapters with their pages, so many lines, which is filled in when the book is
// closed.
func (b *Book) Contents(rows int) {
	high := contentsRow * float64(rows)
	b.Keep(high)
	b.contents = &drawing.Later{Drawing: drawing.Drawing{Width: b.Width(), Height: high}}
	b.cursor -= high
	b.page.Later = append(b.page.Later, drawing.Placed{Later: b.contents, At: geom.Point{X: b.left(), Y: b.cursor}})
	b.Space(2)
}

// listChapters fills the contents, but for the page that they stand on.
func (b *Book) listChapters() {
	d := b.contents
	if d == nil {
		return
	}
	y := d.Height
	for _, c := range b.chapters {
		if c.page == 1 || y < contentsRow/2 {
			continue
		}
		y -= contentsRow
		number := drawing.Text{String: fmt.Sprint(c.page), At: geom.Point{X: d.Width, Y: y + 1.3}, Size: body, Align: drawing.Right}
		d.Write(number)
		d.Words(0, y+1.3, body, drawing.Regular, drawing.Fit(drawing.Regular, body, d.Width-12, c.name))
		d.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{Y: y + 0.3}, geom.Point{X: d.Width, Y: y + 0.3})
	}
}
