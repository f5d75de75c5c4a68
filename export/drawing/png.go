package drawing

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"drawerwright/geom"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

const inch = 25.4 // mm

// mostPixels is the largest picture that is made: about 64 MB as it is drawn.
const mostPixels = 1 << 26

// WritePNG writes a drawing as a grey picture with so many dots to the inch.
func (d Drawing) WritePNG(w io.Writer, dots float64) error {
	scale := dots / inch
	wide, high := math.Ceil(d.Width*scale), math.Ceil(d.Height*scale)
	if !(wide >= 1 && high >= 1 && float64(wide*high) <= mostPixels) {
		return fmt.Errorf("png: %.0f x %.0f dots are none or too many", wide, high)
	}
	p := painter{drawing: d, scale: scale, out: image.NewGray(image.Rect(0, 0, int(wide), int(high)))}
	draw.Draw(p.out, p.out.Bounds(), image.White, image.Point{}, draw.Src)
	p.brush = vector.NewRasterizer(int(wide), int(high))
	for _, s := range d.Shapes {
		p.shape(s)
	}
	for _, t := range d.Texts {
		p.text(t)
	}
	return png.Encode(w, p.out)
}

type painter struct {
	drawing Drawing
	scale   float64 // dots to the mm
	out     *image.Gray
	brush   *vector.Rasterizer
}

func (p *painter) dots(q geom.Point) (x, y float32) {
	return float32(q.X * p.scale), float32((p.drawing.Height - q.Y) * p.scale)
}

// paint fills what the brush went round.
func (p *painter) paint(i Ink) {
	p.brush.Draw(p.out, p.out.Bounds(), image.NewUniform(color.Gray{Y: uint8(level(i))}), image.Point{})
	p.brush.Reset(p.out.Bounds().Dx(), p.out.Bounds().Dy())
}

// shape fills and strokes. The brush fills by winding number: loops that lie in
// others run the other way round in all that is drawn here, or are drawn apart.
func (p *painter) shape(s Shape) {
	lines := s.flat()
	if s.Fill > 0 {
		for _, l := range evenOdd(lines) {
			p.ring(l)
		}
		p.paint(s.Fill)
	}
	if s.Pen.Width > 0 && s.Pen.Ink > 0 {
		half := max(s.Pen.Width, 1/p.scale) / 2 // a dot at least
		for _, l := range lines {
			if s.Closed && len(l) > 0 {
				l = append(l, l[0])
			}
			for _, dash := range dashes(l, s.Pen.Dash) {
				p.stroke(dash, half)
			}
		}
		p.paint(s.Pen.Ink)
	}
}

func (p *painter) ring(l []geom.Point) {
	for i, q := range l {
		x, y := p.dots(q)
		if i == 0 {
			p.brush.MoveTo(x, y)
		} else {
			p.brush.LineTo(x, y)
		}
	}
	p.brush.ClosePath()
}

// stroke goes round every side of a line, all the same way, and round its corners.
func (p *painter) stroke(l []geom.Point, half float64) {
	for i := range len(l) - 1 {
		a, b := l[i], l[i+1]
		long := a.To(b)
		if long == 0 {
			continue
		}
		ux, uy := (b.X-a.X)/long*half, (b.Y-a.Y)/long*half
		at := func(q geom.Point, along, across float64) geom.Point {
			return geom.Point{X: q.X + float64(along*ux) - float64(across*uy), Y: q.Y + float64(along*uy) + float64(across*ux)}
		}
		// Half an octagon at each end, near enough to a round pen at these widths.
		const c = 0.4142
		p.ring([]geom.Point{at(a, -c, -1), at(b, c, -1), at(b, 1, -c), at(b, 1, c), at(b, c, 1), at(a, -c, 1), at(a, -1, c), at(a, -1, -c)})
	}
}

// text fills the outlines of letters.
func (p *painter) text(t Text) {
	c := cuts[t.Face]()
	c.mu.Lock()
	defer c.mu.Unlock()
	per := t.Size / c.units // mm of a unit
	x := 0.0
	body := fixed.Int26_6(c.font.UnitsPerEm()) << 6
	long := 0.0
	advance := func(g sfnt.GlyphIndex) float64 {
		a, _ := c.font.GlyphAdvance(&c.buf, g, body, font.HintingNone)
		return float64(a) / 64 * per
	}
	glyphs := make([]sfnt.GlyphIndex, 0, len(t.String))
	for _, r := range t.String {
		g, _ := c.font.GlyphIndex(&c.buf, r)
		glyphs = append(glyphs, g)
		long += advance(g)
	}
	switch t.Align {
	case Middle:
		x = -long / 2
	case Right:
		x = -long
	}
	for _, g := range glyphs {
		segments, err := c.font.LoadGlyph(&c.buf, g, body, nil)
		if err != nil {
			continue
		}
		at := func(q fixed.Point26_6) (float32, float32) {
			return p.dots(t.turned(x+float64(float64(q.X)/64*per), -float64(q.Y)/64*per))
		}
		for _, s := range segments {
			ax, ay := at(s.Args[0])
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				p.brush.ClosePath()
				p.brush.MoveTo(ax, ay)
			case sfnt.SegmentOpLineTo:
				p.brush.LineTo(ax, ay)
			case sfnt.SegmentOpQuadTo:
				bx, by := at(s.Args[1])
				p.brush.QuadTo(ax, ay, bx, by)
			case sfnt.SegmentOpCubeTo:
				bx, by := at(s.Args[1])
				cx, cy := at(s.Args[2])
				p.brush.CubeTo(ax, ay, bx, by, cx, cy)
			}
		}
		p.brush.ClosePath()
		x += advance(g)
	}
	p.paint(t.Ink)
}
