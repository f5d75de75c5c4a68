package drawing

import (
	"fmt"
	"io"
	"iter"
	"math"
	"slices"
	"strings"

	"drawerwright/export/pdf"
	"drawerwright/geom"
)

// Page is a page of a document, with its entries in the list of contents and what it consists of.
type Page struct {
	Drawing
	Bookmarks []Bookmark
	Later     []Placed
	elements  []element
}

// Later is a drawing that pages show before it is made: it is taken when the last page is out, so that it may
// say what is known only then.
type Later struct{ Drawing }

// Placed is a later drawing with its lower left corner at a place of a page, in mm.
type Placed struct {
	*Later
	At  geom.Point
	Tag Tag
}

// Bookmark is an entry in the list of contents; one of level 1 is within one of
// level 0.
type Bookmark struct {
	Name  string
	Level int
}

// Info is what a document says of itself.
type Info struct{ Title, Subject string }

var families = [faces]string{Regular: "Go-Regular", Bold: "Go-Bold", Mono: "Go-Mono"}

// WritePDF writes pages, all of them, at their true size, with the letters that they
// use. Each is written before the next one is asked for.
func WritePDF(w io.Writer, info Info, pages iter.Seq[Page]) error {
	out := sheet{file: pdf.New(w), forms: make(map[*Later]pdf.Form)}
	for p := range pages {
		out.page(p)
	}
	out.later()
	if err := out.file.Close(pdf.Info{Title: info.Title, Subject: info.Subject, Creator: "drawerwright"}); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// sheet draws one page after the other.
type sheet struct {
	file  *pdf.File
	fonts [faces]*pdf.Font // that the document has so far
	shown []*Later         // in the order in which pages showed them first
	forms map[*Later]pdf.Form
	pdf.Content
}

func (s *sheet) page(p Page) {
	s.Reset()
	m := marking{Content: &s.Content, elements: p.elements, marks: make([][]int, len(p.elements))}
	for _, shape := range p.Shapes {
		m.shape(shape.Tag)
		s.shape(shape)
	}
	for i, t := range p.Texts {
		m.text(t.Tag, i)
		s.text(t)
	}
	for _, l := range p.Later {
		form, known := s.forms[l.Later]
		if !known {
			form = s.file.Form()
			s.forms[l.Later], s.shown = form, append(s.shown, l.Later)
		}
		m.text(l.Tag, len(p.Texts))
		s.Form(form, points(l.At.X), points(l.At.Y))
	}
	m.end()
	marks := make([]pdf.Bookmark, len(p.Bookmarks))
	for i, b := range p.Bookmarks {
		marks[i] = pdf.Bookmark(b)
	}
	s.file.Page(pdf.Page{Wide: points(p.Width), High: points(p.Height), Content: &s.Content, Elements: m.list(),
		Bookmarks: marks})
}

// draw draws what belongs to another content.
func (s *sheet) draw(d Drawing) {
	s.Reset()
	for _, shape := range d.Shapes {
		s.shape(shape)
	}
	for _, t := range d.Texts {
		s.text(t)
	}
}

// later writes what pages show and what is made by now.
func (s *sheet) later() {
	for _, l := range s.shown {
		s.draw(l.Drawing)
		s.file.Fill(s.forms[l], points(l.Width), points(l.Height), &s.Content)
	}
}

// points converts a length by way of whole nanometers, so that its last bits do not show.
func points(mm float64) float64 { return geom.LengthOf(mm).MM() * 72 / inch }

func (s *sheet) shape(shape Shape) {
	stroked := shape.Pen.Width > 0 && shape.Pen.Ink > 0
	how := pdf.Stroke
	switch {
	case shape.Fill > 0 && stroked:
		how = pdf.AreaAndStroke
	case shape.Fill > 0:
		how = pdf.Area
	case !stroked:
		return
	}
	if stroked {
		dash := make([]float64, len(shape.Pen.Dash))
		for i, long := range shape.Pen.Dash {
			dash[i] = points(long)
		}
		s.Pen(points(shape.Pen.Width), gray(shape.Pen.Ink), dash)
	}
	switch {
	case shape.Tint != (Tint{}):
		s.FillColor(shape.Tint)
	case shape.Fill > 0:
		s.Fill(gray(shape.Fill))
	}
	if shape.rectangles() {
		for _, path := range shape.Paths {
			s.rectangle(path)
		}
		s.Paint(how)
		return
	}
	shape.follow(
		func(p geom.Point) { s.Move(points(p.X), points(p.Y)) },
		func(p geom.Point) { s.Line(points(p.X), points(p.Y)) },
		func(c curve) {
			s.Curve([6]float64{points(c.c1.X), points(c.c1.Y), points(c.c2.X), points(c.c2.Y), points(c.to.X),
				points(c.to.Y)})
		},
		s.Close)
	s.Paint(how)
}

// gray is an ink as a level of gray, as dots have it.
func gray(ink Ink) float64 { return float64(level(ink)) / 255 }

// rectangle goes on with a path in one operator instead of five, which square codes
// have by the hundred. Its corners are rounded as all others are.
func (s *sheet) rectangle(path []geom.Vertex) {
	b := geom.Loop(path).Bounds()
	hundredth := func(mm float64) float64 { return math.Round(points(mm)*100) / 100 }
	x, y := hundredth(b.Min.X), hundredth(b.Min.Y)
	s.Rectangle(x, y, hundredth(b.Max.X)-x, hundredth(b.Max.Y)-y)
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

func (s *sheet) text(t Text) {
	if s.fonts[t.Face] == nil {
		s.fonts[t.Face] = s.file.Font(pdf.Letters{Name: families[t.Face], TTF: letters[t.Face],
			Glyph: cuts[t.Face]().glyph})
	}
	at := t.At
	switch long := Width(t.Face, t.Size, t.String); t.Align {
	case Middle:
		at = t.turned(-long/2, 0)
	case Right:
		at = t.turned(-long, 0)
	}
	s.Fill(gray(t.Ink))
	place := [2]float64{points(at.X), points(at.Y)}
	s.Text(s.fonts[t.Face], points(t.Size), place, t.Quarter, strings.Map(basic, t.String))
}

// basic puts an empty box for letters beyond the basic plane, which the codes of letters in
// documents do not reach and the fonts do not have.
func basic(r rune) rune {
	if r > 0xFFFF {
		return '\uFFFD'
	}
	return r
}
