package drawing

import (
	"fmt"
	"io"
	"iter"
	"slices"
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
	for f, name := range families {
		pdf.AddUTF8FontFromBytes(name, "", slices.Clone(letters[f])) // it writes into them
	}
	for p := range pages {
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: p.Width, Ht: p.Height})
		for _, b := range p.Bookmarks {
			pdf.Bookmark(b.Name, b.Level, 0)
		}
		pdf.SetLineCapStyle("round")
		pdf.SetLineJoinStyle("round")
		sheet{pdf, p.Drawing}.draw()
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
	shape.follow(
		func(p geom.Point) { s.pdf.MoveTo(p.X, s.Height-p.Y) },
		func(p geom.Point) { s.pdf.LineTo(p.X, s.Height-p.Y) },
		func(c curve) {
			s.pdf.CurveBezierCubicTo(c.c1.X, s.Height-c.c1.Y, c.c2.X, s.Height-c.c2.Y, c.to.X, s.Height-c.to.Y)
		},
		s.pdf.ClosePath)
	s.pdf.DrawPath(how)
}

func (s sheet) text(t Text) {
	v := level(t.Ink)
	s.pdf.SetTextColor(v, v, v)
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
	s.pdf.Text(from, y, t.String)
}
