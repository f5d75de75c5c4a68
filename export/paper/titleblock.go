package paper

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Block is what the title block says beside title, chapter, scale and page: fields of ISO 7200 in general terms.
// An empty field is left out.
type Block struct {
	Code   string // identifies the job as it is now
	Boards string // the thickness used of each stock
	Units  string // of lengths
	Date   string // of issue
}

// foot is what stands at the foot of a page.
type foot uint8

const (
	footBlock foot = iota // the title block
	footStrip             // a line of it below what goes down nearly to the edge
	footNone
)

// Measures of the title block, in mm: it is as wide as lines are, and its lower edge keeps off that of the sheet
// what printers cannot print, with some to spare.
const (
	blockLow   = 9.0
	blockRow   = 5.5
	blockAir   = 3.0 // between the page's contents and the block
	blockBold  = 3.3
	blockSmall = 2.7
	codeWide   = 30.0
	pageWide   = 34.0
	ofAt       = 19.0 // of the field of the page: where "of" begins
)

// bottomEdge is the lowest place of a page's contents, in mm.
const bottomEdge = blockLow + 2*blockRow + blockAir

// Scale notes the scale of a drawing on this page, such as 1:5, for the title block.
func (b *Book) Scale(s string) {
	if !slices.Contains(b.scales, s) {
		b.scales = append(b.scales, s)
	}
}

// scale is that of the page's drawing; where there are several each has its own beside it.
func (b *Book) scale() string {
	switch len(b.scales) {
	case 0:
		return ""
	case 1:
		return "scale " + b.scales[0]
	}
	return "scales as noted"
}

// titleBlock draws the block at the foot of the page: title and chapter, code and page above; boards, unit, scale
// and date below.
func (b *Book) titleBlock() {
	d, right := b.page, margin+b.fullWidth()
	low, mid, high := blockLow, blockLow+blockRow, blockLow+2*blockRow
	d.Loops(drawing.Thick, 0, geom.Rectangle(margin, low, right, high))
	d.Line(drawing.Thin, geom.Point{X: margin, Y: mid}, geom.Point{X: right, Y: mid})
	page := right - pageWide
	title := b.Title
	if len(b.about) > 0 {
		title += ": " + strings.Join(b.about, ", ")
	}
	edge := page
	if b.Block.Code != "" {
		edge -= codeWide
		b.blockField(edge, mid, codeWide, drawing.Bold, "code "+b.Block.Code)
	}
	b.blockField(margin, mid, edge-margin, drawing.Bold, title)
	d.Line(drawing.Thin, geom.Point{X: page, Y: mid}, geom.Point{X: page, Y: high})
	b.pageOf(geom.Point{X: page + ofAt, Y: mid + blockBase(blockBold)})
	edge = right
	for _, s := range []string{b.Block.Date, b.scale(), b.Block.Units} {
		if s == "" {
			continue
		}
		wide := drawing.Width(drawing.Regular, blockSmall, s) + 3
		edge -= wide
		b.blockField(edge, low, wide, drawing.Regular, s)
	}
	b.blockField(margin, low, edge-margin, drawing.Regular, b.Block.Boards)
}

// blockBase is how far the base line of letters is over the lower edge of their row.
func blockBase(size float64) float64 { return (blockRow - 0.72*size) / 2 }

// blockField writes words into a field from a place on; but for the first a line parts it from the one before.
func (b *Book) blockField(x, y, wide float64, f drawing.Face, s string) {
	size := blockSmall
	if f == drawing.Bold {
		size = blockBold
	}
	if x > margin {
		b.page.Line(drawing.Thin, geom.Point{X: x, Y: y}, geom.Point{X: x, Y: y + blockRow})
	}
	b.page.Words(x+1.5, y+blockBase(size), size, f, drawing.Fit(f, size, wide-2.5, s))
}

// titleStrip writes title, code and page below what a sheet of labels has; a title that is too long is cut short.
func (b *Book) titleStrip() {
	const low, of = 4.6, 14.0
	code := ""
	if b.Block.Code != "" {
		code = ", code " + b.Block.Code
	}
	room := b.fullWidth() - pageWide - drawing.Width(drawing.Regular, blockBold, code)
	said := drawing.Fit(drawing.Regular, blockBold, room, b.Title)
	b.page.Words(margin, low, blockBold, drawing.Regular, said+code)
	b.pageOf(geom.Point{X: margin + b.fullWidth() - of, Y: low})
}

// pageOf writes which page it is to the left of a place, and to its right, once that is known, of how many.
func (b *Book) pageOf(at geom.Point) {
	b.page.Write(drawing.Text{String: fmt.Sprintf("page %d", b.number), At: geom.Point{X: at.X - 0.6, Y: at.Y},
		Size: blockBold, Align: drawing.Right, Face: drawing.Bold})
	if b.total == nil {
		b.total = &drawing.Later{Drawing: drawing.Drawing{Width: pageWide - ofAt, Height: blockRow}}
	}
	b.page.Later = append(b.page.Later, drawing.Placed{Later: b.total, At: geom.Point{X: at.X, Y: at.Y - 1},
		Tag: drawing.Artifact})
}

// countPages writes of how many pages each is one.
func (b *Book) countPages() {
	if b.total != nil {
		b.total.Words(0.4, 1, blockBold, drawing.Bold, fmt.Sprintf("of %d", b.number))
	}
}
