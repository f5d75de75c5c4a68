package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"

	"drawerwright/geom"
)

// num prints millimeters to a tenth of a micrometer. They are whole nanometers before,
// because processors differ in the last bit of a float64, which would say to which side
// a half goes.
func num(mm float64) string {
	tenths := math.Round(float64(geom.LengthOf(mm)) / 100)
	return strconv.FormatFloat(tenths/1e4+0, 'f', -1, 64)
}

// shade is an ink as a color.
func shade(i Ink) string {
	v := level(i)
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// level is an ink as a gray from 0, black, to 255.
func level(i Ink) int { return int(math.Round(255 * (1 - float64(i)))) }

// WriteSVG writes a drawing in real millimeters. Letters are text, in whatever
// sans-serif the reader has. A drawing in groups has each as an element of that id, and
// no white ground, which a machine would take for a piece.
func (d Drawing) WriteSVG(w io.Writer, title string) error {
	b := svg{height: d.Height}
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\"", num(d.Width), num(d.Height))
	fmt.Fprintf(&b, " viewBox=\"0 0 %s %s\">\n<title>", num(d.Width), num(d.Height))
	b.escape(title)
	b.WriteString("</title>\n")
	if !slices.ContainsFunc(d.Shapes, func(s Shape) bool { return s.Group != "" }) {
		b.WriteString("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n")
	}
	for _, s := range d.Shapes {
		b.enter(s.Group)
		b.path(s)
	}
	b.enter("")
	for _, t := range d.Texts {
		b.text(t)
	}
	b.WriteString("</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

// svg is a file in the making.
type svg struct {
	bytes.Buffer
	height float64 // of the drawing: y runs down in the file
	group  string  // that is open
}

// at is a point as paths have it.
func (b *svg) at(p geom.Point) string { return num(p.X) + " " + num(b.height-p.Y) }

// enter closes the group that is open and opens another; "" is none.
func (b *svg) enter(group string) {
	if group == b.group {
		return
	}
	if b.group != "" {
		b.WriteString("</g>\n")
	}
	if b.group = group; group != "" {
		b.WriteString("<g id=\"")
		b.escape(group)
		b.WriteString("\">\n")
	}
}

// path writes a shape.
func (b *svg) path(s Shape) {
	b.WriteString("<path d=\"")
	b.follow(s)
	b.WriteByte('"')
	if s.Fill > 0 {
		fill := shade(s.Fill)
		if s.Tint != (Tint{}) {
			fill = fmt.Sprintf("#%02x%02x%02x", s.Tint[0], s.Tint[1], s.Tint[2])
		}
		fmt.Fprintf(b, " fill=\"%s\" fill-rule=\"evenodd\"", fill)
	} else {
		b.WriteString(" fill=\"none\"")
	}
	b.stroke(s.Pen)
	b.WriteString("/>\n")
}

// follow writes the chains of a shape as a path has them.
func (b *svg) follow(s Shape) {
	s.follow(
		func(p geom.Point) { b.WriteString("M" + b.at(p)) },
		func(p geom.Point) { b.WriteString("L" + b.at(p)) },
		func(c curve) { b.WriteString("C" + b.at(c.c1) + " " + b.at(c.c2) + " " + b.at(c.to)) },
		func() { b.WriteString("Z") })
}

// stroke writes a pen as attributes; one without width or ink draws nothing.
func (b *svg) stroke(p Pen) {
	if p.Width <= 0 || p.Ink <= 0 {
		return
	}
	fmt.Fprintf(b, " stroke=\"%s\" stroke-width=\"%s\" stroke-linecap=\"round\" stroke-linejoin=\"round\"",
		shade(p.Ink), num(p.Width))
	if len(p.Dash) == 0 {
		return
	}
	b.WriteString(" stroke-dasharray=\"")
	for _, on := range p.Dash {
		b.WriteString(num(on) + " ")
	}
	b.WriteByte('"')
}

// anchors are the words of SVG for which end of a text is at its place.
var anchors = [...]string{Left: "start", Middle: "middle", Right: "end"}

// text writes a line of letters.
func (b *svg) text(t Text) {
	family, weight := "sans-serif", ""
	switch t.Face {
	case Mono:
		family = "monospace"
	case Bold:
		weight = " font-weight=\"bold\""
	}
	fmt.Fprintf(b, "<text font-family=\"%s\"%s font-size=\"%s\" fill=\"%s\"", family, weight,
		num(t.Size), shade(t.Ink))
	if t.Align != Left {
		fmt.Fprintf(b, " text-anchor=\"%s\"", anchors[t.Align])
	}
	if q := t.Quarter & 3; q != 0 {
		fmt.Fprintf(b, " transform=\"translate(%s) rotate(%d)\">", b.at(t.At), -90*q)
	} else {
		fmt.Fprintf(b, " x=\"%s\" y=\"%s\">", num(t.At.X), num(b.height-t.At.Y))
	}
	b.escape(t.String)
	b.WriteString("</text>\n")
}

// escape writes what a job's names may hold as text. A buffer takes everything.
func (b *svg) escape(s string) { _ = xml.EscapeText(b, []byte(s)) }
