package drawing

import (
	"fmt"
	"io"
	"iter"
	"math"
	"slices"
	"strings"
	"time"

	"drawerwright/geom"

	"github.com/go-pdf/fpdf"
)

// Page is a page of a document, with its entries in the list of contents.
type Page struct {
	Drawing
	Bookmarks []Bookmark
}

// Bookmark is an entry in the list of contents; one of level 1 is within one of
// level 0.
type Bookmark struct {
	Name  string
	Level int
}

// Info is what a document says of itself.
type Info struct{ Title, Subject string }

// printed is the date in every document, so that the same job gives the same bytes.
var printed = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

var families = [faces]string{Regular: "regular", Bold: "bold", Mono: "mono"}

// WritePDF writes pages, all of them, at their true size, with the letters that they
// use.
func WritePDF(w io.Writer, info Info, pages iter.Seq[Page]) error {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	pdf.SetCreationDate(printed)
	pdf.SetModificationDate(printed)
	pdf.SetCatalogSort(true)
	pdf.SetTitle(info.Title, true)
	pdf.SetSubject(info.Subject, true)
	pdf.SetCreator("drawerwright", false)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	fonts := new([faces]bool)
	for p := range pages {
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: p.Width, Ht: p.Height})
		for _, b := range p.Bookmarks {
			pdf.Bookmark(b.Name, b.Level, 0)
		}
		pdf.SetLineCapStyle("round")
		pdf.SetLineJoinStyle("round")
		sheet{pdf, p.Drawing, fonts}.draw()
	}
	if err := pdf.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// sheet draws one page; the format's y runs down.
type sheet struct {
	pdf *fpdf.Fpdf
	Drawing
	fonts *[faces]bool // that the document has so far
}

func (s sheet) draw() {
	for _, shape := range s.Shapes {
		s.shape(shape)
	}
	for _, t := range s.Texts {
		s.text(t)
	}
}

func (s sheet) shape(shape Shape) {
	stroked := shape.Pen.Width > 0 && shape.Pen.Ink > 0
	how := "D"
	switch {
	case shape.Fill > 0 && stroked:
		how = "FD*"
	case shape.Fill > 0:
		how = "F*"
	case !stroked:
		return
	}
	if stroked {
		v := level(shape.Pen.Ink)
		s.pdf.SetDrawColor(v, v, v)
		s.pdf.SetLineWidth(shape.Pen.Width)
		s.pdf.SetDashPattern(shape.Pen.Dash, 0)
	}
	if shape.Fill > 0 {
		v := level(shape.Fill)
		s.pdf.SetFillColor(v, v, v)
	}
	if shape.rectangles() {
		for _, path := range shape.Paths {
			s.rectangle(path)
		}
		s.pdf.DrawPath(how)
		return
	}
	shape.follow(
		func(p geom.Point) { s.pdf.MoveTo(p.X, s.Height-p.Y) },
		func(p geom.Point) { s.pdf.LineTo(p.X, s.Height-p.Y) },
		func(c curve) {
			s.pdf.CurveBezierCubicTo(c.c1.X, s.Height-c.c1.Y, c.c2.X, s.Height-c.c2.Y, c.to.X, s.Height-c.to.Y)
		},
		s.pdf.ClosePath)
	s.pdf.DrawPath(how)
}

// rectangle goes on with a path in one operator instead of five, which square codes
// have by the hundred. Its corners are rounded as all others are.
func (s sheet) rectangle(path []geom.Vertex) {
	b := geom.Loop(path).Bounds()
	// By way of whole nanometres, as num does.
	point := func(mm float64) float64 { return math.Round(geom.LengthOf(mm).MM()*72/inch*100) / 100 }
	x, y := point(b.Min.X), point(b.Min.Y)
	s.pdf.RawWriteStr(fmt.Sprintf("%.2f %.2f %.2f %.2f re", x, y, point(b.Max.X)-x, point(b.Max.Y)-y))
}

// rectangles reports whether a shape is filled and consists of upright rectangles.
func (s Shape) rectangles() bool {
	return s.Closed && s.Fill > 0 && !slices.ContainsFunc(s.Paths, func(path []geom.Vertex) bool {
		if len(path) != 4 {
			return true
		}
		for i, v := range path {
			if n := path[(i+1)%4]; v.Bulge != 0 || (v.X == n.X) == (v.Y == n.Y) || (v.X == n.X) == (i%2 == 0) != (path[0].X == path[1].X) {
				return true
			}
		}
		return false
	})
}

func (s sheet) text(t Text) {
	v := level(t.Ink)
	s.pdf.SetTextColor(v, v, v)
	if !s.fonts[t.Face] {
		s.fonts[t.Face] = true
		s.pdf.AddUTF8FontFromBytes(families[t.Face], "", slices.Clone(letters[t.Face])) // it writes into them
	}
	s.pdf.SetFont(families[t.Face], "", 0)
	s.pdf.SetFontUnitSize(t.Size)
	x, y := t.At.X, s.Height-t.At.Y
	from := x
	switch long := Width(t.Face, t.Size, t.String); t.Align {
	case Middle:
		from -= long / 2
	case Right:
		from -= long
	}
	if q := t.Quarter & 3; q != 0 {
		s.pdf.TransformBegin()
		s.pdf.TransformRotate(float64(90*q), x, y)
		defer s.pdf.TransformEnd()
	}
	s.pdf.Text(from, y, strings.Map(basic, t.String))
}

// basic puts an empty box for letters beyond the basic plane, which the library's tables
// do not reach and the fonts do not have.
func basic(r rune) rune {
	if r > 0xFFFF {
		return '\uFFFD'
	}
	return r
}
