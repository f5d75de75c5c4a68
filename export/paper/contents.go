package paper

import (
	"fmt"
	"math"

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

// Contents leaves room for the list of so many chapters with their pages, in columns beside each other, which is filled
// in when the book is closed.
func (b *Book) Contents(chapters, columns int) {
	high := contentsRow * math.Ceil(float64(chapters)/float64(columns))
	b.Keep(high)
	b.contents = &drawing.Later{Drawing: drawing.Drawing{Width: b.Width(), Height: high}}
	b.contentsWide = (b.Width() - float64(ColumnGap*float64(columns-1))) / float64(columns)
	b.cursor -= high
	b.page.Later = append(b.page.Later, drawing.Placed{Later: b.contents, At: geom.Point{X: b.left(), Y: b.cursor},
		Tag: b.page.Element(drawing.Paragraph, "", 0)})
	b.Space(b.Gap(2))
}

// listChapters fills the contents, but for the page that they stand on.
func (b *Book) listChapters() {
	d := b.contents
	if d == nil {
		return
	}
	x, y, wide := 0.0, d.Height, b.contentsWide
	for _, c := range b.chapters {
		if c.page == 1 {
			continue
		}
		if y < contentsRow/2 {
			x, y = x+wide+ColumnGap, d.Height
		}
		if x >= d.Width {
			return
		}
		y -= contentsRow
		d.Write(drawing.Text{String: fmt.Sprint(c.page), At: geom.Point{X: x + wide, Y: y + 1.3}, Size: body,
			Align: drawing.Right})
		d.Words(x, y+1.3, body, drawing.Regular, drawing.Fit(drawing.Regular, body, wide-8, c.name))
		d.Line(drawing.Pen{Width: 0.1, Ink: 0.5}, geom.Point{X: x, Y: y + 0.3}, geom.Point{X: x + wide, Y: y + 0.3})
	}
}
