package cabinet

import (
	"io"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// margin is left round the side in the picture, and textHeight is the letters' size, in mm.
const margin, textHeight = 12.0, 7.0

// SVG writes the left side at its true size: a user unit is a millimeter.
func SVG(w io.Writer, s Side, u geom.Unit) error {
	d := drawing.Drawing{Width: s.Depth + 2*margin, Height: s.Height + 2*margin + 5*textHeight}
	at := func(x, y float64) geom.Point { return geom.Point{X: margin + x, Y: margin + y} }
	words := func(x, y float64, line string) {
		d.Words(margin+x, margin+y, textHeight, drawing.Regular, line)
	}
	thick, thin := drawing.Pen{Width: 0.5, Ink: 1}, drawing.Pen{Width: 0.25, Ink: 1}
	d.Loops(thick, 0, geom.Rectangle(margin, margin, margin+s.Depth, margin+s.Height))
	for _, l := range s.Lines {
		d.Line(thin, at(0, l.At), at(s.Depth, l.At))
		words(s.Depth/3, l.At+4, l.words(u)) // clear of the holes
	}
	for _, h := range s.Holes {
		d.Loops(thin, 0, geom.Circle(at(h.X, h.Y), s.Diameter/2))
	}
	heading := s.heading(Left, u)
	for i, line := range heading[:3] {
		words(0, s.Height+textHeight*(3.8-1.3*float64(i)), line)
	}
	return d.WriteSVG(w, heading[0])
}
