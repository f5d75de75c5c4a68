package paper

import (
	"fmt"
	"math"

	"drawerwright/export/drawing"
	"drawerwright/export/layer"
	"drawerwright/geom"
)

// Measures of a print at true size, in mm.
const (
	printMargin = 10.0 // what printers leave white
	lap         = 10.0 // of neighboring sheets
	wording     = 5.0  // height of the line of words on each sheet
	gap         = 10.0
	minText     = 90.0 // width of words that take no more height than the square
)

// checkSide is the side of the square that shows whether a print is true to size, in mm,
// and its name.
func checkSide(u geom.Unit) (side float64, name string) {
	side = layer.Square(u)
	return side * u.MM(), fmt.Sprintf("%g %s", side, u)
}

func actualSize(u geom.Unit) string {
	_, name := checkSide(u)
	return fmt.Sprintf("Print without scaling (\"actual size\"). Then measure the square: it must be %s wide and high, or nothing of this is true to size.", name)
}

// MeasureFirst stands beside the square of everything that is printed at its true
// size.
const MeasureFirst = "measure this before you use it"

// CheckSquare draws the square that shows whether a print is true to size.
func CheckSquare(d *drawing.Drawing, at geom.Point, u geom.Unit) {
	checkSide, name := checkSide(u)
	d.Shapes = append(d.Shapes, drawing.Shape{Paths: [][]geom.Vertex{geom.Rectangle(at.X, at.Y, at.X+checkSide, at.Y+checkSide)}, Closed: true,
		Pen: drawing.Pen{Width: drawing.Thin.Width, Ink: 0.9}, Group: layer.Scale})
	d.Words(at.X+3, at.Y+checkSide/2, body, drawing.Bold, name+" x "+name)
	d.Words(at.X+3, at.Y+checkSide/2-6, body, drawing.Regular, MeasureFirst)
}

// WithSquare is a drawing with a check square and its title beside it, for a print on
// a roll or a screen.
func WithSquare(d drawing.Drawing, title string, u geom.Unit) drawing.Drawing {
	checkSide, _ := checkSide(u)
	out := drawing.Drawing{Width: max(d.Width, checkSide) + 2*gap, Height: d.Height + checkSide + 3*gap + body}
	out.Add(d, geom.Point{X: gap, Y: gap}, 1)
	CheckSquare(&out, geom.Point{X: gap, Y: d.Height + 2*gap}, u)
	out.Words(gap, out.Height-gap, body, drawing.Bold, title)
	return out
}

// RollHolds reports whether a roll of paper is wide enough for a drawing, one way or the
// other.
func RollHolds(width, height, roll float64, u geom.Unit) bool {
	checkSide, _ := checkSide(u)
	return max(min(width, height), checkSide)+2*gap <= roll
}

// OnRoll is one page as wide as a roll of paper with a drawing on it, turned if it has
// to be, and what is to be known beside the square; fits is false where it is too wide
// either way.
func OnRoll(d drawing.Drawing, wide float64, title string, notes []string, u geom.Unit) (page drawing.Page, fits bool) {
	checkSide, _ := checkSide(u)
	out := WithSquare(d, title, u)
	if out.Width > wide {
		if out = WithSquare(d.Turned(), title, u); out.Width > wide {
			return page, false
		}
	}
	out.Width = wide
	x, y := checkSide+4*gap, out.Height-2*gap
	if room := wide - x - gap; room >= minText {
		for _, n := range append([]string{actualSize(u)}, notes...) {
			for _, l := range drawing.Wrap(drawing.Regular, body, room, n) {
				out.Words(x, y, body, drawing.Regular, l)
				y -= leading * body
			}
			y -= 1
		}
	}
	return drawing.Page{Drawing: out, Bookmarks: []drawing.Bookmark{{Name: title}}}, true
}

// Tile prints a drawing at its true size on as many sheets as it takes, which lap by
// 10 mm, after a sheet with the check square, how they lie and what is to be known.
func Tile(d drawing.Drawing, s Size, title string, notes []string, u geom.Unit) []drawing.Page {
	t := tiling{d: d, title: title, size: s, unit: u}
	t.lay()
	turned := tiling{d: d, title: title, size: Size{s.Name, s.Height, s.Width}, unit: u}
	if turned.lay(); turned.columns*turned.rows < t.columns*t.rows {
		t = turned
	}
	pages := t.plan(s, notes)
	for r := range t.rows {
		for c := range t.columns {
			pages = append(pages, drawing.Page{Drawing: t.sheet(c, r)})
		}
	}
	return pages
}

// tiling is how a drawing lies on sheets, columns by rows of them from the upper left.
type tiling struct {
	d             drawing.Drawing
	title         string
	size          Size
	unit          geom.Unit
	wide, high    float64 // of what a sheet shows
	columns, rows int
}

func (t *tiling) lay() {
	t.wide, t.high = t.size.Width-2*printMargin, t.size.Height-2*printMargin-wording
	count := func(long, room float64) int { return max(1, int(math.Ceil((long-lap)/(room-lap)-1e-9))) }
	t.columns, t.rows = count(t.d.Width, t.wide), count(t.d.Height, t.high)
}

// window is the part of the drawing that is on a sheet.
func (t *tiling) window(column, row int) geom.Rect {
	x, y := float64(float64(column)*(t.wide-lap)), float64(float64(t.rows-1-row)*(t.high-lap))
	return geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + t.wide, Y: y + t.high}}
}

func name(column, row int) string { return fmt.Sprintf("%c%d", 'A'+row%26, column+1) }

// sheet is one of them, with lines to lap along and a bar to measure.
func (t *tiling) sheet(column, row int) drawing.Drawing {
	p := drawing.Drawing{Width: t.size.Width, Height: t.size.Height}
	o := geom.Point{X: printMargin, Y: printMargin + wording}
	p.Add(t.d.Clip(t.window(column, row)), o, 1)
	edge := drawing.Pen{Width: 0.1, Ink: 0.5, Dash: []float64{4, 2}}
	right, top := o.X+t.wide, o.Y+t.high
	cross := func(x, y float64) {
		p.Line(drawing.Thin, geom.Point{X: x - 3, Y: y}, geom.Point{X: x + 3, Y: y})
		p.Line(drawing.Thin, geom.Point{X: x, Y: y - 3}, geom.Point{X: x, Y: y + 3})
	}
	if column > 0 {
		p.Line(edge, geom.Point{X: o.X + lap/2, Y: o.Y}, geom.Point{X: o.X + lap/2, Y: top})
		cross(o.X+lap/2, o.Y+t.high/2)
	}
	if column < t.columns-1 {
		p.Line(edge, geom.Point{X: right - lap/2, Y: o.Y}, geom.Point{X: right - lap/2, Y: top})
		cross(right-lap/2, o.Y+t.high/2)
	}
	if row > 0 {
		p.Line(edge, geom.Point{X: o.X, Y: top - lap/2}, geom.Point{X: right, Y: top - lap/2})
		cross(o.X+t.wide/2, top-lap/2)
	}
	if row < t.rows-1 {
		p.Line(edge, geom.Point{X: o.X, Y: o.Y + lap/2}, geom.Point{X: right, Y: o.Y + lap/2})
		cross(o.X+t.wide/2, o.Y+lap/2)
	}
	checkSide, measured := checkSide(t.unit)
	said := fmt.Sprintf("sheet %s of %s, true size", name(column, row), t.title)
	p.Words(printMargin, printMargin, small, drawing.Regular,
		drawing.Fit(drawing.Regular, small, t.size.Width-2*printMargin-checkSide-6, said))
	from, to := t.size.Width-printMargin-checkSide, t.size.Width-printMargin
	p.Line(drawing.Thin, geom.Point{X: from, Y: printMargin + 2}, geom.Point{X: from, Y: printMargin}, geom.Point{X: to, Y: printMargin}, geom.Point{X: to, Y: printMargin + 2})
	p.Write(drawing.Text{String: measured + ": " + MeasureFirst, At: geom.Point{X: (from + to) / 2, Y: printMargin + 0.9}, Size: 2.4, Align: drawing.Middle})
	return p
}

// plan shows how the sheets lie.
func (t *tiling) plan(s Size, notes []string) []drawing.Page {
	var pages []drawing.Page
	b := Book{Size: s, Title: t.title, Out: func(p drawing.Page) { pages = append(pages, p) }}
	b.Chapter(t.title)
	b.Text(actualSize(t.unit))
	if t.columns*t.rows > 1 {
		b.Text(fmt.Sprintf("Cut or fold the sheets along the dashed lines and join them cross on cross; they lap "+
			"by %s.", geom.LengthOf(lap).Text(t.unit)))
	}
	for _, n := range notes {
		b.Text(n)
	}
	p := &b.page.Drawing
	checkSide, _ := checkSide(t.unit)
	CheckSquare(p, geom.Point{X: margin, Y: b.cursor - checkSide - 4}, t.unit)
	room := geom.Point{X: s.Width - 2*margin, Y: b.cursor - checkSide - 14 - margin}
	k := min(0.5, room.X/max(t.d.Width, 1), room.Y/max(t.d.Height, 1))
	if k > 0 {
		o := geom.Point{X: margin, Y: margin}
		p.Add(drawing.Drawing{Shapes: t.d.Shapes}, o, k)
		for r := range t.rows {
			for c := range t.columns {
				w := t.window(c, r)
				p.Loops(drawing.Pen{Width: 0.18, Ink: 0.5, Dash: []float64{2, 1}}, 0, geom.Rectangle(o.X+float64(k*w.Min.X), o.Y+float64(k*w.Min.Y), o.X+float64(k*min(w.Max.X, t.d.Width)), o.Y+float64(k*min(w.Max.Y, t.d.Height))))
				p.Words(o.X+float64(k*w.Min.X)+1.5, o.Y+float64(k*min(w.Max.Y, t.d.Height))-5, 4,
					drawing.Bold, name(c, r))
			}
		}
	}
	b.foot = footNone // the drawing goes down to where the title block would be
	b.Close()
	return pages
}
