package paper

import (
	"fmt"
	"math"

	"drawerwright/export/drawing"
	"drawerwright/geom"

	qr "github.com/piglig/go-qr"
)

// Grid is a sheet of labels: columns and rows of equal labels, centered on the sheet; 1 by 1 is one
// label a page. Without a size, labels touch and fill the page, and have outlines along which they
// are cut.
type Grid struct {
	Columns, Rows  int
	Wide, High     float64 // of a label of a sheet that is sold so, in mm; rows touch
	Aside, Between float64 // from the edge to the first column, and between columns
}

// cells are the sizes of the labels of a grid on a page, and where its upper left one begins.
func (g Grid) cells(page Size) Grid {
	if g.Wide == 0 {
		g.Wide, g.High = (page.Width-2*pageOfLabels)/float64(g.Columns), (page.Height-2*pageOfLabels)/float64(g.Rows)
		g.Aside = pageOfLabels
	}
	return g
}

// at is the lower left corner of the n-th label of a page, row by row.
func (g Grid) at(n int, page Size) geom.Point {
	top := (page.Height + float64(g.High*float64(g.Rows))) / 2
	return geom.Point{X: g.Aside + float64((g.Wide+g.Between)*float64(n%g.Columns)),
		Y: top - float64(g.High*float64(n/g.Columns+1))}
}

// Label is what is stuck on a piece.
type Label struct {
	Drawer, Part string
	Number       int    // of the part in the cut list; 0 for none
	Piece, Of    int    // of the pieces of that name
	Box          string // of the drawer's boxes, the one that it is for
	Hand         string // LEFT or RIGHT, where it applies
	Board        string // what the cuts of its sheet call it; none where no saw cuts it
	Facts        string // size, stock and sheet
	Face         string // the face that it goes on
	Edge         string // the edge that its arrow points to; none without
	Job          string // the code of the job, if any
	Grain        bool   // that runs along the part
	// Place is where the piece stands in the row of a set, from the left, of Set
	// pieces; 0 for one that is in no row.
	Place, Set int
	low        bool // it is lower than usual
}

// Code is what a label's square code holds: drawer, if any, and part, a line each.
func (l Label) Code() string {
	if l.Drawer == "" {
		return "part: " + l.Part
	}
	return fmt.Sprintf("drawer: %s\npart: %s", l.Drawer, l.Part)
}

// pageOfLabels is how far labels keep off the edge of the sheet, in mm.
const pageOfLabels = 8.0

// Labels ends the book with labels on sheets of a grid, from the upper left on. These
// pages have a strip in place of a title block.
func (b *Book) Labels(list []Label, g Grid) error {
	g, cut := g.cells(b.Size), g.Wide == 0
	b.turn()
	coded, code := "", square{} // the last one: pieces of a part follow each other
	for i, l := range list {
		n := i % (g.Columns * g.Rows)
		if n == 0 {
			if b.Page(); i == 0 {
				b.enter([]drawing.Bookmark{{Name: "Labels"}})
			}
			b.foot = footStrip
		}
		if l.Code() != coded {
			var err error
			if code, err = squareOf(l.Code()); err != nil {
				return err
			}
			coded = l.Code()
		}
		at := g.at(n, b.Size)
		if cut {
			b.page.Loops(drawing.Pen{Width: 0.1, Ink: 0.3}, 0, geom.Rectangle(at.X, at.Y, at.X+g.Wide, at.Y+g.High))
		}
		b.as(drawing.Paragraph, func() { b.page.Put(label(l, code, g.Wide, g.High), at, 1) })
	}
	b.Close()
	return nil
}

// square is a QR code (ISO/IEC 18004) without its quiet zone, in modules, y up.
type square struct {
	side int
	dark []geom.Rect // what is dark of a row, from one light module to the next
}

// squareOf is the code that holds a text.
func squareOf(text string) (square, error) {
	code, err := qr.EncodeText(text, qr.Medium)
	if err != nil {
		return square{}, fmt.Errorf("square code of %q: %w", text, err)
	}
	n := code.Size()
	s := square{side: n, dark: make([]geom.Rect, 0, n*n/4)}
	for y := range n {
		for x := 0; x < n; x++ {
			from := x
			for x < n && code.Module(x, y) {
				x++
			}
			if x > from {
				s.dark = append(s.dark, geom.Rect{Min: geom.Point{X: float64(from), Y: float64(n - 1 - y)},
					Max: geom.Point{X: float64(x), Y: float64(n - y)}})
			}
		}
	}
	return s, nil
}

// draw draws the code with its lower left corner at a place, its modules so many mm wide.
func (s square) draw(d *drawing.Drawing, at geom.Point, module float64) {
	corners, loops := make(geom.Loop, 0, 4*len(s.dark)), make([]geom.Loop, len(s.dark))
	for i, r := range s.dark {
		for _, p := range [4]geom.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}} {
			corners = append(corners, geom.Vertex{Point: at.Along(p, module)})
		}
		loops[i] = corners[4*i : 4*i+4 : 4*i+4]
	}
	d.Loops(drawing.Pen{}, 1, loops...)
}

// quiet is the empty zone about a code in modules, as ISO/IEC 18004 asks for.
const quiet = 4

// Measures of a label, in mm: how far what is printed keeps off its edge; a module of its code at least where there is
// room for the triangle below it (common practice, no source: 0.5 mm is read by every telephone).
const (
	labelEdge   = 2.5
	leastModule = 0.5
	mostCode    = 45.0
	codeShare   = 0.34 // of the label's width
	triangleLow = 5.0  // of the triangle below the code, in mm at least
	labelPage   = 100  // what is higher is a page of its own
	labelLow    = 30.0 // what is lower, of ten in a column, has its rows closer together
)

// Letters of a label: their capitals are 2.5 mm high where it has room for them, and 1.8 at least on any grid. Rather
// than in smaller letters a name is cut short, and the last lines are left out, but for the arrow and the foot.
var labelLetters, minLetters = drawing.Capitals(2.5), drawing.Capitals(1.8)

// label draws one: the part's name over all of it with its board's at the right, the code at the left with the joiner's
// triangle below it, and at the right what else there is. What is at the foot has its room first: words are as large as
// the rest of the room lets them.
func label(l Label, code square, wide, high float64) drawing.Drawing {
	d := drawing.Drawing{Width: wide, Height: high}
	l.low = high < labelLow
	y := l.heading(&d)
	modules := float64(code.side + 2*quiet)
	side := min(y-labelEdge, max(codeShare*wide, leastModule*modules), wide/2, mostCode)
	below := geom.Rect{Min: geom.Point{X: labelEdge, Y: labelEdge}}
	if tall := y - labelEdge - side; l.Set > 1 {
		if tall < triangleLow && (y-labelEdge-triangleLow) >= leastModule*modules {
			side, tall = y-labelEdge-triangleLow, triangleLow
		}
		if tall >= triangleLow {
			tall = min(tall, side/2)
			below.Max = geom.Point{X: side - 1, Y: labelEdge + tall - 0.5}
			triangle(&d, below, l.Place, l.Set)
			l.Set = 0
		}
	}
	module := side / modules
	code.draw(&d, geom.Point{X: float64(module * quiet), Y: y - side + float64(module*quiet)}, module)
	body := min(labelLetters, (y-labelEdge)/5)
	if high > labelPage {
		body = 2 * labelLetters // it is read from further off
	}
	unbroken := l.needs(1, math.Inf(1)) // at least: what is too large for that need not be broken into lines
	for body > minLetters && (unbroken*body > y-labelEdge || l.needs(body, wide-side-labelEdge) > y-labelEdge) {
		body = max(minLetters, body-0.05)
	}
	l.words(&d, geom.Rect{Min: geom.Point{X: side, Y: labelEdge}, Max: geom.Point{X: wide - labelEdge, Y: y}}, body)
	return d
}

// heading writes the part's name over a label, and in a frame at the right what the cuts call the board; it gives how
// high the room below is.
func (l Label) heading(d *drawing.Drawing) float64 {
	size := min(5, d.Height/7)
	switch {
	case d.Height > labelPage:
		size = 10
	case l.low:
		size = d.Height / 8
	}
	name, room := l.name(), d.Width-2*labelEdge
	if l.Board != "" {
		size *= 0.85
		wide := drawing.Width(drawing.Bold, size, l.Board) + 2
		right := d.Width - labelEdge
		y := d.Height - labelEdge - size
		d.Loops(drawing.Pen{Width: 0.25, Ink: 1}, 0, geom.Rectangle(right-wide, y-0.25*size, right, y+0.95*size))
		d.Words(right-wide+1, y, size, drawing.Bold, l.Board)
		room -= wide + 1.5
	}
	y := d.Height - labelEdge - size
	letters := size
	for letters > minLetters && drawing.Width(drawing.Bold, letters, name) > room {
		letters = max(minLetters, letters-0.1)
	}
	d.Words(labelEdge, y, letters, drawing.Bold, drawing.FitMiddle(drawing.Bold, letters, room, name))
	return y - 0.3*size
}

// name is the part's, after its number.
func (l Label) name() string {
	if l.Number == 0 {
		return l.Part
	}
	return fmt.Sprintf("%d  %s", l.Number, l.Part)
}

// labelRows are how high the rows of a label's words are, in heights of their letters.
type labelRows struct{ text, arrow, foot float64 }

func (l Label) rows() labelRows {
	if l.low {
		return labelRows{1.15, 1.3, 1.7}
	}
	return labelRows{1.25, 1.6, 2}
}

// labelLine is a line of a label's words.
type labelLine struct {
	face drawing.Face
	text string
}

// lines are the words of a label, broken for letters of a size in mm and the width of their room.
func (l Label) lines(body, room float64) (list []labelLine) {
	add := func(f drawing.Face, s string) {
		if s == "" {
			return
		}
		for _, one := range drawing.Wrap(f, body, room, s) {
			list = append(list, labelLine{f, one})
		}
	}
	piece := fmt.Sprintf("piece %d of %d", l.Piece, l.Of)
	if l.Hand != "" {
		piece = l.Hand + ", " + piece
	}
	add(drawing.Bold, piece)
	add(drawing.Regular, l.Facts)
	of := l.Drawer
	if l.Box != "" {
		of += ", " + l.Box
	}
	add(drawing.Regular, of)
	if l.Edge == "" || !l.besideArrow(body, room) {
		add(drawing.Bold, l.Face)
	}
	if !l.codeInFoot(body, room) {
		add(drawing.Regular, l.coded())
	}
	return list
}

// coded is the code of the job, in words.
func (l Label) coded() string {
	if l.Job == "" {
		return ""
	}
	return "code " + l.Job
}

// Widths at the foot of a label, in heights of its letters: of the grain's arrow and word, and of a
// piece of the triangle.
const (
	grainWide    = 5.0
	triangleWide = 1.1
)

// codeInFoot reports whether the code of the job has room between grain and triangle.
func (l Label) codeInFoot(body, room float64) bool {
	taken := float64((grainWide + triangleWide*float64(l.Set)) * body)
	return taken+drawing.Width(drawing.Regular, body, l.coded()) <= room
}

// besideArrow reports whether the face has room beside the edge that the arrow points to.
func (l Label) besideArrow(body, room float64) bool {
	return drawing.Width(drawing.Bold, body, l.arrow()+", "+l.Face) <= room-body
}

// arrow is what the arrow of the label points to.
func (l Label) arrow() string { return l.Edge + " down" }

// foot reports whether something stands at the foot of the label.
func (l Label) foot() bool { return l.Grain || l.Set > 1 || l.Job != "" }

// needs is the height that a label's words, arrow and foot take, in mm.
func (l Label) needs(body, room float64) float64 {
	row := l.rows()
	rows := float64(row.text * float64(len(l.lines(body, room))))
	if l.Edge != "" {
		rows += row.arrow
	}
	if l.foot() {
		rows += row.foot
	}
	return rows * body
}

// words prints them into their room: what does not fit into it is left out, the last lines
// first, never the arrow and the foot.
func (l Label) words(d *drawing.Drawing, room geom.Rect, body float64) {
	low, row := room.Min.Y, l.rows()
	if l.foot() {
		foot := geom.Point{X: room.Min.X, Y: low + float64(0.2*body)}
		if l.Grain {
			grain(d, foot, body)
		}
		if l.codeInFoot(body, room.Width()) {
			after := 0.0
			if l.Grain {
				after = grainWide * body
			}
			d.Words(foot.X+after, foot.Y+float64(0.15*body), body, drawing.Regular, l.coded())
		}
		if l.Set > 1 {
			wide := float64(triangleWide * body * float64(l.Set))
			triangle(d, geom.Rect{Min: geom.Point{X: room.Max.X - wide, Y: low},
				Max: geom.Point{X: room.Max.X, Y: low + float64((row.foot-0.4)*body)}}, l.Place, l.Set)
		}
		low += float64(row.foot * body)
	}
	if l.Edge != "" {
		low += float64(row.arrow * body)
	}
	x, y := room.Min.X, room.Max.Y
	for _, one := range l.lines(body, room.Width()) {
		if y-float64(row.text*body) < low {
			break
		}
		y -= float64(row.text * body)
		d.Words(x, y, body, one.face, one.text)
	}
	if y -= float64(row.arrow * body); l.Edge == "" {
		return
	}
	// An arrow to the lower edge of the label, which is to be the part's.
	d.Line(drawing.Medium, geom.Point{X: x + body/3, Y: y + body}, geom.Point{X: x + body/3, Y: y + body/4})
	d.Loops(drawing.Pen{}, 1, geom.Polygon(geom.Point{X: x + body/3, Y: y - body/5},
		geom.Point{X: x + 2*body/3, Y: y + body/4}, geom.Point{X: x, Y: y + body/4}))
	said := l.arrow()
	if l.besideArrow(body, room.Width()) {
		said += ", " + l.Face
	}
	d.Words(x+body, y, body, drawing.Bold, drawing.Fit(drawing.Bold, body, room.Width()-body, said))
}

// grain draws an arrow with two heads and the word.
func grain(d *drawing.Drawing, at geom.Point, body float64) {
	a, b := geom.Point{X: at.X, Y: at.Y + body/2}, geom.Point{X: at.X + 1.8*body, Y: at.Y + body/2}
	d.Line(drawing.Thin, a, b)
	for _, end := range []struct {
		p    geom.Point
		into float64
	}{{a, body / 3}, {b, -body / 3}} {
		d.Line(drawing.Thin, geom.Point{X: end.p.X + end.into, Y: end.p.Y + body/5}, end.p, geom.Point{X: end.p.X + end.into, Y: end.p.Y - body/5})
	}
	d.Words(b.X+body/3, at.Y+0.15*body, body, drawing.Regular, "grain")
}

// triangle draws the joiner's triangle over a row of pieces: on the pieces standing
// side by side it makes one triangle, so that each shows its place and which end is up.
// That of the piece is filled.
func triangle(d *drawing.Drawing, r geom.Rect, place, set int) {
	at := func(x float64) float64 { return r.Min.X + float64(r.Width()*x/float64(set)) }
	height := func(x float64) float64 { // of the triangle over a place
		half := float64(set) / 2
		return r.Height() * (1 - math.Abs(x-half)/half)
	}
	for i := range set {
		d.Loops(drawing.Pen{Width: 0.18, Ink: 1}, 0, geom.Rectangle(at(float64(i)), r.Min.Y, at(float64(i+1)), r.Max.Y))
	}
	from, to := float64(place-1), float64(place)
	mine := geom.Loop{{Point: geom.Point{X: at(from), Y: r.Min.Y}}, {Point: geom.Point{X: at(to), Y: r.Min.Y}}, {Point: geom.Point{X: at(to), Y: r.Min.Y + height(to)}}}
	if half := float64(set) / 2; from < half && half < to {
		mine = append(mine, geom.Vertex{Point: geom.Point{X: at(half), Y: r.Max.Y}})
	}
	mine = append(mine, geom.Vertex{Point: geom.Point{X: at(from), Y: r.Min.Y + height(from)}})
	d.Loops(drawing.Pen{}, 0.6, mine)
	d.Line(drawing.Medium, geom.Point{X: r.Min.X, Y: r.Min.Y}, geom.Point{X: r.Center().X, Y: r.Max.Y}, geom.Point{X: r.Max.X, Y: r.Min.Y}, geom.Point{X: r.Min.X, Y: r.Min.Y})
}
