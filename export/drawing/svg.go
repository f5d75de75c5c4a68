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

// num prints millimetres to a tenth of a micrometre. They are whole nanometres before,
// because processors differ in the last bit of a float64, which would say to which side
// a half goes.
func num(mm float64) string {
	tenths := math.Round(float64(geom.LengthOf(mm)) / 100)
	return strconv.FormatFloat(tenths/1e4+0, 'f', -1, 64)
}

// shade is an ink as a colour.
func shade(i Ink) string {
	v := level(i)
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// level is an ink as a grey from 0, black, to 255.
func level(i Ink) int { return int(math.Round(255 * (1 - float64(i)))) }

// WriteSVG writes a drawing in real millimetres. Letters are text, in whatever
// sans-serif the reader has. A drawing in groups has each as an element of that id, and
// no white ground, which a machine would take for a piece.
func (d Drawing) WriteSVG(w io.Writer, title string) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\">\n<title>", num(d.Width), num(d.Height), num(d.Width), num(d.Height))
	escape(&b, title)
	b.WriteString("</title>\n")
	if !slices.ContainsFunc(d.Shapes, func(s Shape) bool { return s.Group != "" }) {
		b.WriteString("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n")
	}
	at := func(p geom.Point) string { return num(p.X) + " " + num(d.Height-p.Y) }
	group := ""
	enter := func(name string) {
		if name == group {
			return
		}
		if group != "" {
			b.WriteString("</g>\n")
		}
		if group = name; name != "" {
			b.WriteString("<g id=\"")
			escape(&b, name)
			b.WriteString("\">\n")
		}
	}
	for _, s := range d.Shapes {
		enter(s.Group)
		b.WriteString("<path d=\"")
		s.follow(
			func(p geom.Point) { b.WriteString("M" + at(p)) },
			func(p geom.Point) { b.WriteString("L" + at(p)) },
			func(c curve) { b.WriteString("C" + at(c.c1) + " " + at(c.c2) + " " + at(c.to)) },
			func() { b.WriteString("Z") })
		b.WriteByte('"')
		if s.Fill > 0 {
			fmt.Fprintf(&b, " fill=\"%s\" fill-rule=\"evenodd\"", shade(s.Fill))
		} else {
			b.WriteString(" fill=\"none\"")
		}
		if s.Pen.Width > 0 && s.Pen.Ink > 0 {
			fmt.Fprintf(&b, " stroke=\"%s\" stroke-width=\"%s\" stroke-linecap=\"round\" stroke-linejoin=\"round\"", shade(s.Pen.Ink), num(s.Pen.Width))
			if len(s.Pen.Dash) > 0 {
				b.WriteString(" stroke-dasharray=\"")
				for _, on := range s.Pen.Dash {
					b.WriteString(num(on) + " ")
				}
				b.WriteByte('"')
			}
		}
		b.WriteString("/>\n")
	}
	enter("")
	for _, t := range d.Texts {
		family, weight := "sans-serif", ""
		switch t.Face {
		case Mono:
			family = "monospace"
		case Bold:
			weight = " font-weight=\"bold\""
		}
		fmt.Fprintf(&b, "<text font-family=\"%s\"%s font-size=\"%s\" fill=\"%s\"", family, weight,
			num(t.Size), shade(t.Ink))
		if t.Align != Left {
			fmt.Fprintf(&b, " text-anchor=\"%s\"", [...]string{Middle: "middle", Right: "end"}[t.Align])
		}
		if q := t.Quarter & 3; q != 0 {
			fmt.Fprintf(&b, " transform=\"translate(%s) rotate(%d)\">", at(t.At), -90*q)
		} else {
			fmt.Fprintf(&b, " x=\"%s\" y=\"%s\">", num(t.At.X), num(d.Height-t.At.Y))
		}
		escape(&b, t.String)
		b.WriteString("</text>\n")
	}
	b.WriteString("</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

// escape writes what a job's names may hold as text. A buffer takes everything.
func escape(b *bytes.Buffer, s string) { _ = xml.EscapeText(b, []byte(s)) }
