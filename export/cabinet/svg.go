package cabinet

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"

	"drawerwright/geom"
)

// margins of the picture round the side, in mm.
const margin, textHeight = 12.0, 7.0

// SVG writes the left side at its true size: a user unit is a millimetre.
func SVG(w io.Writer, s Side, u geom.Unit) error {
	var out bytes.Buffer
	width, height := s.Depth+2*margin, s.Height+2*margin+5*textHeight
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %s %s" font-family="sans-serif" font-size="%g">`+"\n",
		mm(width)+"mm", mm(height)+"mm", mm(width), mm(height), textHeight)
	y := func(v float64) float64 { return height - margin - v }
	line := func(x0, y0, x1, y1, thick float64) {
		fmt.Fprintf(&out, `<path d="M%s %sL%s %s" stroke="black" stroke-width="%g"/>`+"\n", mm(margin+x0), mm(y(y0)), mm(margin+x1), mm(y(y1)), thick)
	}
	text := func(x, low float64, words string) {
		fmt.Fprintf(&out, `<text x="%s" y="%s">`, mm(margin+x), mm(y(low)))
		xml.EscapeText(&out, []byte(words)) // into memory: it cannot fail
		out.WriteString("</text>\n")
	}
	fmt.Fprintf(&out, `<rect x="%s" y="%s" width="%s" height="%s" fill="none" stroke="black" stroke-width="0.5"/>`+"\n", mm(margin), mm(y(s.Height)), mm(s.Depth), mm(s.Height))
	for _, l := range s.Lines {
		line(0, l.At, s.Depth, l.At, 0.25)
		text(s.Depth/3, l.At+4, l.words(u)) // clear of the holes
	}
	for _, h := range s.Holes {
		fmt.Fprintf(&out, `<circle cx="%s" cy="%s" r="%s" fill="none" stroke="black" stroke-width="0.25"/>`+"\n", mm(margin+h.X), mm(y(h.Y)), mm(s.Diameter/2))
	}
	for i, words := range s.heading(Left, u)[:3] {
		text(0, s.Height+textHeight*(3.8-1.3*float64(i)), words)
	}
	out.WriteString("</svg>\n")
	_, err := w.Write(out.Bytes())
	return err
}

// mm is a coordinate to the micrometre.
func mm(v float64) string { return geom.LengthOf(v).Decimal(geom.Millimetre) }
